/**
 * References as RIS, tagged lines that reference managers read. Each line is a tag of two letters, two spaces, a hyphen,
 * a space and a value; `TY` comes first and `ER` last; lines end with carriage return and line feed.
 * Source: Research Information Systems, RIS Format Specifications, section "Tag Format".
 *
 * A comma parts surname from given names there, so the name of a body is written with dashes for its commas.
 */
import type { Author, Work, WorkType } from './citable.ts';
import { dateParts, noteOf, oneLine } from './words.ts';

/** Types of the format. A law goes as generic: the format's type for statutes has no author. */
const TYPES: Readonly<Record<WorkType, string>> = {
  dataset: 'DATA', report: 'RPRT', standard: 'STAND', article: 'MGZN', 'article-journal': 'JOUR', 'paper-conference': 'CPAPER', book: 'BOOK',
  chapter: 'CHAP', webpage: 'ELEC', post: 'ICOMM', legislation: 'GEN', thesis: 'THES',
};

/** Tag of the number: reports and standards have one of their own. */
const numberTag = (type: WorkType): string => (type === 'report' || type === 'standard' ? 'SN' : 'M1');
const author = (one: Author): string => ('literal' in one ? oneLine(one.literal).replace(/\s*,\s*/g, ' - ') : oneLine(`${one.family.replaceAll(',', ' ')}, ${one.given}`));
const day = (date: string): string => {
  const [year, month, dayOfMonth] = dateParts(date).map((part) => String(part).padStart(2, '0'));
  return `${year}/${month ?? ''}/${dayOfMonth ?? ''}`.replace(/\/+$/, '');
};

/** One work as a record, with its last line ended. */
export function risRecord(work: Work): string {
  const lines: [string, string | undefined][] = [
    ['TY', TYPES[work.type]],
    ['ID', work.key],
    ...work.authors.map((one): [string, string] => ['AU', author(one)]),
    ['TI', oneLine(work.title)],
    ['T2', work.container],
    ['PY', work.issued ? String(dateParts(work.issued)[0]) : undefined],
    ['DA', work.issued ? day(work.issued) : undefined],
    ['PB', work.publisher],
    ['CY', work.place],
    ['M3', work.genre],
    [numberTag(work.type), work.number],
    ['ET', work.version ?? work.edition],
    ['N1', noteOf(work)],
    ['LA', work.language],
    ['DO', work.doi],
    ['UR', work.url],
    ['Y2', work.accessed && day(work.accessed)],
  ];
  return `${lines.flatMap(([tag, value]) => (value ? [`${tag}  - ${oneLine(value)}`] : [])).join('\r\n')}\r\nER  - \r\n`;
}

/** Works as the text of a file. */
export function ris(works: readonly Work[]): string {
  return works.map(risRecord).join('');
}
