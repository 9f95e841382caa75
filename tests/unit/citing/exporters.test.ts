/** Citations in every form: texts against published examples, files read back by parsers that are not ours. */
import { Cite } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import '@citation-js/plugin-ris';
import Ajv from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { citedFigures, comparisonCitable, figureCitable, kitCitable, lessonCitable, lessonsCitable, seriesCitable, siteCitable } from '../../../src/build/citing/citations.ts';
import { prebuiltRigs } from '../../../src/build/comparator/page.ts';
import { siteLessons } from '../../../src/build/lessons.ts';
import { allSeries } from '../../../src/build/series/page.ts';
import { bibtex } from '../../../src/citing/bibtex.ts';
import { type Author, type Citable, type Work, worksOf } from '../../../src/citing/citable.ts';
import { cslJson } from '../../../src/citing/csl-json.ts';
import { ris } from '../../../src/citing/ris.ts';
import { authorDate } from '../../../src/citing/text-author-date.ts';
import { numbered } from '../../../src/citing/text-numbered.ts';
import { report } from './works.ts';

type Entry = Record<string, unknown>;
const parsed = (text: string): Entry[] => new Cite(text).data;
const spaced = (text: string) => text.replace(/[\s\u2028]+/g, ' ').trim();
const parts = (date: string | null | undefined) => (date ? { 'date-parts': [date.split('-').map(Number)] } : undefined);

describe('by author and date, the text is as DataCite prefers it', () => {
  // The examples of "Citation" in the DataCite Metadata Schema 4.5, word for word.
  test.each([
    [
      'Irino, T; Tada, R (2009): Chemical and mineral compositions of sediments from ODP Site 127-797. V. 2.1. Geological Institute, University of Tokyo. (dataset). https://doi.org/10.1594/PANGAEA.726855',
      { authors: [{ family: 'Irino', given: 'T.' }, { family: 'Tada', given: 'R.' }], title: 'Chemical and mineral compositions of sediments from ODP Site 127-797', version: 'V. 2.1', publisher: 'Geological Institute, University of Tokyo', doi: '10.1594/PANGAEA.726855' },
    ],
    [
      'Geofon operator (2009): GEFON event gfz2009kciu (NW Balkan Region). GeoForschungsZentrum Potsdam (GFZ). (dataset). https://doi.org/10.1594/GFZ.GEOFON.gfz2009kciu',
      { authors: [{ literal: 'Geofon operator' }], title: 'GEFON event gfz2009kciu (NW Balkan Region)', publisher: 'GeoForschungsZentrum Potsdam (GFZ)', doi: '10.1594/GFZ.GEOFON.gfz2009kciu' },
    ],
    [
      'Denhard, Michael (2009): dphase_mpeps: MicroPEPS LAF-Ensemble run by DWD for the MAP DPHASE project. World Data Center for Climate. (dataset). https://doi.org/10.1594/WDCC/dphase_mpeps',
      { authors: [{ family: 'Denhard', given: 'Michael' }], title: 'dphase_mpeps: MicroPEPS LAF-Ensemble run by DWD for the MAP DPHASE project', publisher: 'World Data Center for Climate', doi: '10.1594/WDCC/dphase_mpeps' },
    ],
  ] as [string, Pick<Work, 'authors' | 'title' | 'publisher' | 'doi'>][])('%s', (text, fields) => {
    expect(authorDate({ key: 'x', type: 'dataset', issued: '2009', ...fields })).toBe(text);
  });
});

describe('for numbered lists, the text is as the National Library of Medicine asks', () => {
  test('the suggested citation of Citing Medicine, without its second editor and its day of update, which our records have no field for', () => {
    const suggested = 'Patrias K. Citing medicine: the NLM style guide for authors, editors, and publishers [Internet]. 2nd ed. Wendling DL, technical editor. Bethesda (MD): National Library of Medicine (US); 2007 - [updated 2015 Oct 2; cited Year Month Day]. Available from: http://www.nlm.nih.gov/citingmedicine';
    expect(numbered({
      key: 'x', type: 'book', title: 'Citing medicine: the NLM style guide for authors, editors, and publishers', authors: [{ family: 'Patrias', given: 'K.' }], issued: '2007',
      edition: '2nd ed.', place: 'Bethesda (MD)', publisher: 'National Library of Medicine (US)', url: 'http://www.nlm.nih.gov/citingmedicine',
    })).toBe(suggested.replace(' Wendling DL, technical editor.', '').replace(' - [updated 2015 Oct 2; ', ' ['));
  });

  test('the citation of its supplement on Internet formats, from the title on, without the count of pages', () => {
    // National Network of Libraries of Medicine, Citing the Internet: A Brief Tour, summer 2001.
    const published = 'National Library of Medicine recommended formats for bibliographic citation. Supplement: Internet formats [Internet]. Bethesda (MD): National Library of Medicine; 2001 Jul [cited 2001 Aug 8]. 106p. Available from: http://www.nlm.nih.gov/pubs/formats/internet.pdf';
    const text = numbered({
      key: 'x', type: 'report', title: 'National Library of Medicine recommended formats for bibliographic citation. Supplement: Internet formats', authors: [{ family: 'Patrias', given: 'K.' }], issued: '2001-07', accessed: '2001-08-08',
      place: 'Bethesda (MD)', publisher: 'National Library of Medicine', url: 'http://www.nlm.nih.gov/pubs/formats/internet.pdf',
    });
    expect(text).toBe(`Patrias K. ${published.replace(' 106p.', '')}`);
  });
});

/** An entry as a record of ours must come back. */
function expected(work: Work, author: (one: Author) => unknown): Entry {
  return {
    type: 'report', title: spaced(work.title), author: work.authors.map(author), issued: parts(work.issued), accessed: parts(work.accessed),
    publisher: 'Second Sling', genre: 'Figure', number: work.number, URL: work.url,
  };
}

describe('an independent parser reads back what was written, whatever marks a title has', () => {
  test('from BibTeX, with the version', () => {
    fc.assert(fc.property(report, (work) => {
      // A name in braces comes back as one word for the parser: as a surname alone. It takes small words before a surname apart, as BibTeX does.
      const author = (one: Author) => {
        if ('literal' in one) return { family: one.literal };
        const [, particle, family] = /^((?:[a-z]+ )*)(.*)$/.exec(one.family) as unknown as [string, string, string];
        return particle ? { given: one.given, 'non-dropping-particle': particle.trim(), family } : one;
      };
      expect(parsed(bibtex([work]))).toMatchObject([{ id: work.key, version: work.version, note: 'Evidence 2026-11-25.4. Licence: CC-BY-4.0', ...expected(work, author) }]);
    }), { numRuns: 400 });
  });

  test('from RIS, whose reports have an edition for the version', () => {
    fc.assert(fc.property(report, (work) => {
      const author = (one: Author) => one;
      expect(parsed(ris([work]))).toMatchObject([{ edition: work.version, language: 'en', note: 'Evidence 2026-11-25.4. Licence: CC-BY-4.0', ...expected(work, author) }]);
    }), { numRuns: 400 });
  });

  test('from CSL-JSON, word for word', () => {
    fc.assert(fc.property(report, (work) => {
      expect(parsed(cslJson([work]))).toMatchObject([{ id: work.key, version: work.version, language: 'en', note: 'Licence: CC-BY-4.0', ...expected(work, (one) => one) }]);
    }), { numRuns: 200 });
  });
});

/** What the published schema of CSL-JSON says of the fields that we write: nothing else may stand in an entry. */
const CSL_SCHEMA = (() => {
  const text = { type: 'string' };
  const date = { type: 'object', additionalProperties: false, required: ['date-parts'], properties: { 'date-parts': { type: 'array', minItems: 1, maxItems: 2, items: { type: 'array', minItems: 1, maxItems: 3, items: { type: ['string', 'number'] } } } } };
  const names = ['title', 'publisher', 'publisher-place', 'container-title', 'genre', 'version', 'URL', 'DOI', 'language', 'note'];
  return {
    type: 'array',
    items: {
      type: 'object', additionalProperties: false, required: ['type', 'id'],
      properties: {
        id: { type: ['string', 'number'] },
        // From its list of types, those that sources and works of ours can have.
        type: { enum: ['article', 'article-journal', 'book', 'chapter', 'dataset', 'legislation', 'paper-conference', 'post', 'report', 'standard', 'thesis', 'webpage'] },
        author: { type: 'array', items: { type: 'object', additionalProperties: false, properties: { family: text, given: text, literal: text } } },
        number: { type: ['string', 'number'] }, edition: { type: ['string', 'number'] }, issued: date, accessed: date,
        ...Object.fromEntries(names.map((name) => [name, text])),
      },
    },
  };
})();

describe('every citation of the site', () => {
  const all: Citable[] = [
    siteCitable(), ...citedFigures().map(figureCitable), ...[...allSeries()].flatMap(([id, { invented }]) => (invented ? [] : [seriesCitable(id)])),
    ...siteLessons().map(lessonCitable), lessonsCitable(), kitCitable(),
    ...prebuiltRigs().map((rig) => comparisonCitable(rig, 'a rig in words')),
  ];
  const works = all.flatMap(worksOf);

  test('comes back from BibTeX with title, year, authors and link, the source before us', () => {
    const entries = parsed(bibtex(works));
    expect(entries).toHaveLength(works.length);
    for (const [i, work] of works.entries()) {
      const { id, title, author = [], issued, URL: url } = entries[i] as Record<string, never>;
      // The parser writes the code of a plus anew. A version has one while records differ from what is frozen.
      expect([id, title, (author as unknown[]).length, (url as string | undefined)?.replaceAll('%252B', '%2B')]).toEqual([work.key, work.title, work.authors.length, work.url]);
      expect((issued as Entry | undefined)?.['date-parts'], work.key).toEqual(parts(work.issued)?.['date-parts']);
    }
    const figure = figureCitable('ibarra-2021/girth-on-wire');
    expect(worksOf(figure).map(({ key }) => key)).toEqual(['ibarra-2021', 'second-sling-figure-ibarra-2021-girth-on-wire']);
  });

  test('comes back from RIS with title, authors, year and link', () => {
    const entries = parsed(ris(works));
    expect(entries).toHaveLength(works.length);
    for (const [i, work] of works.entries()) {
      const { title, author = [], issued, URL: url } = entries[i] as Record<string, never>;
      expect([title, (author as unknown[]).length, url]).toEqual([work.title, work.authors.length, work.url]);
      expect((issued as Entry | undefined)?.['date-parts'] ?? undefined, work.key).toEqual(work.issued === null ? undefined : [expect.arrayContaining([Number(work.issued.slice(0, 4))])]);
    }
  });

  test('is CSL-JSON by the published schema of its fields', () => {
    // https://resource.citationstyles.org/schema/latest/input/json/csl-data.json, version 1.0.2.
    const validate = new Ajv({ allowUnionTypes: true }).compile(CSL_SCHEMA);
    validate(JSON.parse(cslJson(works)));
    expect(validate.errors).toBeNull();
  });

  test('of ours names version, day and link; no two have one key or one link', () => {
    const own = all.map((citable) => citable.own);
    for (const work of own) expect([work.version, work.issued, work.url].every(Boolean), work.key).toBe(true);
    expect(new Set(own.map(({ key }) => key)).size).toBe(own.length);
    expect(new Set(own.map(({ url }) => url)).size).toBe(own.length);
    expect(() => seriesCitable('gear-room-basket')).toThrow('id: no published series has the id gear-room-basket');
  });
});
