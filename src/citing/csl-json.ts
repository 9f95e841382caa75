/**
 * References as CSL-JSON, the format of the Citation Style Language, version 1.0.2.
 * Source: https://resource.citationstyles.org/schema/latest/input/json/csl-data.json
 */
import type { Author, Work } from './citable.ts';
import { dateParts, nameOf, noteOf, oneLine } from './words.ts';

/** A date of that format. */
export interface CslDate { 'date-parts': [number[]] }

/** One entry; a field that the work does not have is absent. */
export interface CslEntry {
  id: string;
  type: Work['type'];
  title: string;
  author: ({ family: string; given: string } | { literal: string })[];
  issued?: CslDate;
  accessed?: CslDate;
  publisher?: string;
  'publisher-place'?: string;
  'container-title'?: string;
  genre?: string;
  number?: string;
  edition?: string;
  version?: string;
  URL?: string;
  DOI?: string;
  language?: string;
  note?: string;
}

const author = (one: Author) => ('literal' in one ? { literal: nameOf(one) } : { family: oneLine(one.family), given: oneLine(one.given) });
const date = (text: string | null | undefined): CslDate | undefined => (text ? { 'date-parts': [dateParts(text)] } : undefined);

/** One work as an entry. The licence and the place cited have no field of their own and stand in its note. */
export function cslEntry(work: Work): CslEntry {
  const { locator, licence } = work;
  const fields = {
    id: work.key, type: work.type, title: oneLine(work.title), author: work.authors.map(author),
    issued: date(work.issued), accessed: date(work.accessed),
    publisher: work.publisher, 'publisher-place': work.place, 'container-title': work.container,
    genre: work.genre, number: work.number, edition: work.edition, version: work.version,
    URL: work.url, DOI: work.doi, language: work.language, note: noteOf({ version: undefined, locator, licence }) || undefined,
  };
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as unknown as CslEntry;
}

/** Works as the text of a file, one entry a line. */
export function cslJson(works: readonly Work[]): string {
  return `[\n${works.map((work) => JSON.stringify(cslEntry(work))).join(',\n')}\n]\n`;
}
