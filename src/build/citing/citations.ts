/** Everything of the site that can be cited, made from the records: the site, each figure, each series, each comparison, each lesson, all lessons, the course kit. */
import type { Author, Citable, Work } from '../../citing/citable.ts';
import { serialiseLink } from '../../links/serialise-link.ts';
import type { SourceRecord } from '../../records/schema.ts';
import type { Lesson } from '../../records/lessons.ts';
import type { Rig } from '../../strength/types.ts';
import { downloads } from '../downloads/all-files.ts';
import { siteWork } from '../downloads/citation.ts';
import { MODEL } from '../evidence.ts';
import { figureBook, isOrdinary } from '../figures/figures.ts';
import { siteRecords } from '../records.ts';
import { allSeries } from '../series/page.ts';
import { address, figurePath } from '../site.ts';

/** Initials before a surname: "C. Harmston", "J. M. Beverly". */
const PERSON = /^((?:\p{Lu}\.[ -]?)+)\s*(\p{Lu}.*)$/u;

/** An author of a source. One with initials is a person; any other is taken as a body, under the whole name. */
export function authorOf(name: string): Author {
  const [, given, family] = PERSON.exec(name) ?? [];
  return given && family ? { given: given.trim(), family } : { literal: name };
}

/** A source as a work, and the place in it that is cited. */
export function sourceWork(id: string, source: SourceRecord, locator?: string): Work {
  const { type, title, authors, issued, publisher, container, number, edition, url, doi, language } = source;
  return {
    key: id, type, title, authors: authors.map(authorOf), issued: issued === 'unknown' ? null : issued,
    // A number that the title says already is not said twice.
    number: number && !title.includes(number) ? number : undefined,
    edition: edition && !title.includes(edition) ? edition : undefined,
    publisher, container, url, doi, language, locator: locator === 'not-recorded' ? undefined : locator,
  };
}

/** The site's own work. */
export function siteCitable(): Citable {
  const { citation, release } = downloads();
  return { what: 'site', own: siteWork(citation, release), original: null };
}

/** A part of the site: all that it shares with the whole, under its own title and address. */
function part(kind: string, id: string, fields: Pick<Work, 'title' | 'genre' | 'number' | 'url'>): Work {
  const key = `second-sling-${kind}-${id}`.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return { ...siteCitable().own, type: 'report', key, ...fields };
}

function originalOf(source: string | null, locator: string | null | undefined): Work | null {
  const record = source === null ? undefined : siteRecords().sources.get(source);
  return source !== null && record ? sourceWork(source, record, locator ?? undefined) : null;
}

/** A figure by its record's id. Throws a RangeError where there is none, or where it moved or was withdrawn. */
export function figureCitable(id: string): Citable {
  const record = figureBook().records.get(id);
  if (!record || !isOrdinary(record)) throw new RangeError(`id: no figure stands under ${id}`);
  return {
    what: 'figure',
    own: part('figure', id, { title: record.what, genre: 'Figure', number: id, url: address(figurePath(id)) }),
    original: originalOf(id.split('/')[0] as string, record.locator),
  };
}

/** A series of breaks. Throws a RangeError where there is none, or where it is invented: nobody should cite that. */
export function seriesCitable(id: string): Citable {
  const series = allSeries().get(id);
  if (!series || series.invented) throw new RangeError(`id: no published series has the id ${id}`);
  const { record, source, locator } = series;
  return {
    what: 'series',
    own: part('series', id, { title: record.what, genre: 'Series of breaks', number: id, url: address(`/breaks/${id}/`) }),
    original: originalOf(source, locator),
  };
}

/**
 * The comparison of a rig that is built as a page. Its link leads to that page, which needs no script, and carries every
 * input, the version of the evidence and the number of the model.
 * @param shown the rig in words
 */
export function comparisonCitable(rig: Readonly<Rig>, shown: string): Citable {
  const { version } = siteRecords();
  const id = `${rig.ratingKn}/${rig.eye}/${rig.sling}`;
  const url = address(`/compare/${id}/?${serialiseLink(rig, { evidence: version, model: MODEL })}`);
  return { what: 'comparison', own: part('comparison', id, { title: `Ways to attach a new sling, compared: ${shown}`, genre: 'Comparison', number: `${id}, model ${MODEL}`, url }), original: null };
}

/** A lesson with its handout and exercise. */
export function lessonCitable({ id, title }: Pick<Lesson, 'id' | 'title'>): Citable {
  return { what: 'lesson', own: part('lesson', id, { title, genre: 'Lesson', number: id, url: address(`/teach/${id}/`) }), original: null };
}

/** All lessons, as the list of them. */
export const lessonsCitable = (): Citable => ({ what: 'lesson', own: part('lesson', 'all', { title: 'Lessons on slings and protection devices', genre: 'Lessons', url: address('/teach/') }), original: null });

/** The course kit: all lessons with their drawings, plans and files. */
export const kitCitable = (): Citable => ({ what: 'kit', own: part('course', 'kit', { title: 'Course kit: lessons on slings and protection devices', genre: 'Course kit', url: address('/teach/kit/') }), original: null });

/** Ids of the figures that can be cited. */
export const citedFigures = (): string[] => [...figureBook().records].flatMap(([id, record]) => (isOrdinary(record) ? [id] : []));

/** Works of several citables for one file: each source once, without the place that one figure cites. */
export function worksInOneFile(citables: readonly Citable[]): Work[] {
  const sources = new Map(citables.flatMap(({ original }) => (original ? [[original.key, { ...original, locator: undefined }] as const] : [])));
  return [...sources.values(), ...citables.map(({ own }) => own)];
}
