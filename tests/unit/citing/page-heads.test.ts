/** What pages say of themselves to programs, against the published requirements; and `CITATION.cff` against the record. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { authorOf, citedFigures, figureCitable, lessonCitable, siteCitable, sourceWork, worksInOneFile } from '../../../src/build/citing/citations.ts';
import { citationFiles } from '../../../src/build/citing/files.ts';
import { siteLessons } from '../../../src/build/lessons.ts';
import { siteRecords } from '../../../src/build/records.ts';
import { readVersion, versionIndex } from '../../../src/build/versions/versions.ts';
import type { Citable, Work } from '../../../src/citing/citable.ts';
import { datasetJsonLd, jsonLdText, lessonJsonLd } from '../../../src/citing/json-ld.ts';
import { metaTags } from '../../../src/citing/meta-tags.ts';
import { typedLinks } from '../../../src/citing/signposting.ts';
import { ROOT } from '../../support/step.ts';
import { oddText, report } from './works.ts';

const SOUND: Work = {
  key: 'a', type: 'report', title: 'Slings', authors: [{ family: 'Tester', given: 'A. B.' }, { literal: 'Outing club' }], issued: '2026-11-25', publisher: 'Second Sling',
  genre: 'Figure', number: 'lab/a', version: '2026-11-25.4', url: 'https://example.org/figures/lab/a/', licence: { name: 'CC-BY-4.0', url: 'https://creativecommons.org/licenses/by/4.0/' },
};
const figures: Citable[] = citedFigures().map(figureCitable);
const DESCRIPTION = 'Breaking forces of slings over thin wires, each with its source and its conditions.';

describe('tags for reference managers', () => {
  test('title, each author in a tag of its own, the date as year/month/day, and the institution of a report', () => {
    // Google Scholar, Inclusion Guidelines for Webmasters: title, author and publication date are required; "2010/5/12"; one author a tag.
    expect(metaTags(SOUND)).toEqual([
      ['citation_title', 'Slings'], ['citation_author', 'A. B. Tester'], ['citation_author', 'Outing club'], ['citation_publication_date', '2026/11/25'],
      ['citation_technical_report_institution', 'Second Sling'], ['citation_technical_report_number', 'Figure lab/a, Evidence 2026-11-25.4'],
    ]);
  });

  test('"a year alone otherwise": a month without a day is left out', () => {
    expect(metaTags({ ...SOUND, issued: '2010-05' })).toContainEqual(['citation_publication_date', '2010']);
    expect(metaTags({ ...SOUND, issued: '2010-05-12' })).toContainEqual(['citation_publication_date', '2010/5/12']);
  });

  test.each([
    ['title', { title: ' ' }, 'title: must not be empty'],
    ['author', { authors: [] }, 'authors: must name at least one'],
    ['date', { issued: null }, 'issued: must be a date'],
  ] as [string, Partial<Work>, string][])('a page without %s, which an index refuses, is not built', (_name, fields, message) => {
    expect(() => metaTags({ ...SOUND, ...fields })).toThrow(message);
  });

  test('an impossible date is refused by name', () => {
    for (const date of ['2026-13-01', '26-11-25', '2026-11-32', '25 November 2026', '']) expect(() => metaTags({ ...SOUND, issued: date })).toThrow(`date: must be yyyy, yyyy-mm or yyyy-mm-dd (got ${date})`);
  });
});

describe('JSON-LD', () => {
  // Google, "Dataset structured data": name and description are required; a description has 50 to 5,000 characters;
  // a DataDownload must have its contentUrl. Types of values are those of schema.org.
  const text = { type: 'string', minLength: 1 };
  const url = { type: 'string', format: 'uri' };
  const body = { type: 'object', required: ['@type', 'name'], properties: { '@type': { enum: ['Organization', 'Person'] }, name: text }, additionalProperties: false };
  const ajv = new Ajv();
  addFormats(ajv);
  const validate = ajv.compile({
    type: 'object', required: ['@context', '@type', 'name', 'description'], additionalProperties: false,
    properties: {
      '@context': { const: 'https://schema.org' }, '@type': { const: 'Dataset' }, name: text, description: { type: 'string', minLength: 50, maxLength: 5000 },
      url, identifier: url, version: text, datePublished: { type: 'string', format: 'date' }, license: url, inLanguage: text, isAccessibleForFree: { type: 'boolean' },
      creator: { type: 'array', items: body }, publisher: body, keywords: { type: 'array', items: text }, citation: text,
      isPartOf: { type: 'object', required: ['@type', 'name', 'url'], properties: { '@type': { const: 'Dataset' }, name: text, url }, additionalProperties: false },
      distribution: { type: 'array', items: { type: 'object', required: ['@type', 'contentUrl'], properties: { '@type': { const: 'DataDownload' }, contentUrl: url, encodingFormat: text }, additionalProperties: false } },
    },
  });

  test('of every figure is a data set as the guideline asks, part of the whole, and cites its source', () => {
    for (const citable of figures) {
      validate(datasetJsonLd(citable, { description: DESCRIPTION, files: [{ url: 'https://example.org/data/figures.csv', mediatype: 'text/csv' }], partOf: { name: 'Second Sling', url: 'https://example.org/data/' } }));
      expect(validate.errors, citable.own.key).toBeNull();
    }
    const { citation, version, datePublished } = datasetJsonLd(figureCitable('ibarra-2021/girth-on-wire'), { description: DESCRIPTION, files: [] }) as unknown as Record<string, string>;
    expect(citation).toMatch(/^Ibarra, M \(2021\): /);
    expect([version, datePublished]).toEqual([siteRecords().version, siteRecords().version.slice(0, 10)]);
  });

  test('of the whole has keywords and files', () => {
    validate(datasetJsonLd(siteCitable(), { description: DESCRIPTION, keywords: ['slings'], files: [{ url: 'https://example.org/a.zip', mediatype: 'application/zip' }] }));
    expect(validate.errors).toBeNull();
  });

  test('of every lesson is a learning resource: level, aims, and its time as a duration', () => {
    // schema.org/LearningResource: learningResourceType, educationalLevel, teaches; timeRequired of CreativeWork is a duration of ISO 8601.
    const isLesson = ajv.compile({
      type: 'object', required: ['@context', '@type', 'name', 'learningResourceType', 'educationalLevel', 'teaches', 'timeRequired'], additionalProperties: false,
      properties: {
        '@context': { const: 'https://schema.org' }, '@type': { const: 'LearningResource' }, name: text, description: text, learningResourceType: text, educationalLevel: text,
        timeRequired: { type: 'string', format: 'duration' }, teaches: { type: 'array', minItems: 1, items: text }, url, version: text, datePublished: { type: 'string', format: 'date' }, license: url,
        inLanguage: text, isAccessibleForFree: { const: true }, author: { type: 'array', minItems: 1, items: body }, publisher: body,
      },
    });
    const lessons = siteLessons();
    for (const lesson of lessons) {
      isLesson(lessonJsonLd(lessonCitable(lesson), { ...lesson, level: 'Start' }));
      expect(isLesson.errors, lesson.id).toBeNull();
      expect(typedLinks(lessonCitable(lesson), citationFiles('lesson'), [], false)).toContainEqual({ rel: 'type', href: 'https://schema.org/LearningResource' });
    }
    expect(() => lessonJsonLd(siteCitable(), { says: 'None.', minutes: 0, aims: [], level: 'Start' })).toThrow('minutes: must be a whole number above 0 (got 0)');
  });

  test.each([[49], [5001]])('a description of %i characters is refused', (length) => {
    expect(() => datasetJsonLd({ what: 'site', own: SOUND, original: null }, { description: 'a'.repeat(length), files: [] })).toThrow(`description: must have 50 to 5,000 characters (has ${length})`);
  });

  test('no title can end the script element that it stands in, and the text reads back as it was', () => {
    fc.assert(fc.property(report, fc.oneof(oddText, fc.constantFrom('</script><b>', '<!--<script>')), (work, title) => {
      const value = datasetJsonLd({ what: 'figure', own: { ...work, title }, original: work }, { description: DESCRIPTION, files: [] });
      const script = jsonLdText(value);
      expect(script).not.toContain('<');
      expect(JSON.parse(script)).toEqual(JSON.parse(JSON.stringify(value)));
    }), { numRuns: 200 });
  });
});

test('typed links keep to level 1 of the FAIR Signposting Profile, on every figure and on the page of the data', () => {
  // Section 2.1.1, table of links from the landing page: cite-as 1; describedby 1 or more, with a media type; item 0 or more, with one;
  // license 0 or 1, an SPDX address where there is one; type 2 or 1, schema.org first, AboutPage only on a page that leads to the content.
  const csv = [{ url: 'https://example.org/data/figures.csv', mediatype: 'text/csv' }];
  const pages = [...figures.map((citable) => [citable, false] as const), [siteCitable(), true] as const];
  for (const [citable, isLanding] of pages) {
    const links = typedLinks(citable, citationFiles(citable.what), csv, isLanding);
    const of = (rel: string) => links.filter((link) => link.rel === rel);
    expect(of('cite-as').map(({ href }) => href)).toEqual([citable.own.url]);
    expect(of('type').map(({ href }) => href)).toEqual(['https://schema.org/Dataset', ...(isLanding ? ['https://schema.org/AboutPage'] : [])]);
    expect(of('license').map(({ href }) => href)).toEqual(['https://spdx.org/licenses/CC-BY-4.0']);
    // Media types from the profile's own list of common ones.
    expect(of('describedby').map(({ type }) => type)).toEqual(['application/x-bibtex', 'application/x-research-info-systems', 'application/vnd.citationstyles.csl+json']);
    expect(of('item').map(({ type }) => type)).toEqual(['text/csv']);
  }
  expect(() => typedLinks({ what: 'site', own: SOUND, original: null }, [], [], false)).toThrow('describedBy: must name at least one file');
});

describe('the record behind it', () => {
  const cff = parse(readFileSync(join(ROOT, 'CITATION.cff'), 'utf8')) as Record<string, never>;

  test('CITATION.cff says of title, authors and licence what the site is cited by, and names the newest frozen version and its day', () => {
    const { title, authors, licence, type } = siteCitable().own;
    expect([cff['title'], cff['authors'], cff['license'], cff['type']]).toEqual([title, authors.map((author) => ({ name: (author as { literal: string }).literal })), licence?.name, type]);
    const newest = versionIndex().at(-1)?.version as string;
    expect([cff['version'], cff['date-released']]).toEqual([newest, newest.slice(0, 10)]);
    expect(readVersion(newest).evidence.version).toBe(newest);
  });

  test('CITATION.cff is of the Citation File Format 1.2.0', () => {
    // Its published schema, https://citation-file-format.github.io/1.2.0/schema: what it requires, and the fields that we use.
    const words = { type: 'string', minLength: 1 };
    const ajv = new Ajv();
    addFormats(ajv);
    const validate = ajv.compile({
      type: 'object', required: ['authors', 'cff-version', 'message', 'title'], additionalProperties: false,
      properties: {
        abstract: words, 'cff-version': { type: 'string', pattern: '^1\\.2\\.0$' }, 'date-released': { type: 'string', format: 'date' }, license: { enum: ['CC-BY-4.0', 'MIT'] },
        message: words, title: words, type: { enum: ['dataset', 'software'] }, version: words,
        authors: { type: 'array', minItems: 1, uniqueItems: true, items: { type: 'object', required: ['name'], properties: { name: words }, additionalProperties: false } },
        keywords: { type: 'array', minItems: 1, uniqueItems: true, items: words },
      },
    });
    validate(cff);
    expect(validate.errors).toBeNull();
  });

  test.each([
    ['C. Harmston', { given: 'C.', family: 'Harmston' }],
    ['J. M. Beverly', { given: 'J. M.', family: 'Beverly' }],
    ['Occupational Safety and Health Administration (US)', { literal: 'Occupational Safety and Health Administration (US)' }],
    ['a climbers\' blog', { literal: 'a climbers\' blog' }],
    ['Evans', { literal: 'Evans' }],
    ['ASME', { literal: 'ASME' }],
  ])('the author %s is a person or a body as the record has it', (name, author) => {
    expect(authorOf(name)).toEqual(author);
  });

  test('no page, number or date is made up for a source that bears none', () => {
    const { issued, number, locator, publisher } = sourceWork('osha', {
      type: 'legislation', title: '29 CFR 1926.251 Rigging equipment', authors: ['OSHA'], number: '29 CFR 1926.251', issued: 'unknown', language: 'en', free: true, checked: '2026-11-24',
    }, 'not-recorded');
    expect([issued, number, locator, publisher]).toEqual([null, undefined, undefined, undefined]);
  });

  test('a file of all figures has each source once, before ours', () => {
    const works = worksInOneFile(figures);
    expect(new Set(works.map(({ key }) => key)).size).toBe(works.length);
    const firstOwn = works.findIndex(({ key }) => key.startsWith('second-sling'));
    expect(works.slice(firstOwn).every(({ key }) => key.startsWith('second-sling-figure-'))).toBe(true);
    expect(new Set(works.slice(0, firstOwn).map(({ key }) => key))).toEqual(new Set(figures.flatMap(({ original }) => original?.key ?? [])));
  });
});
