/**
 * References as BibTeX: the fields of O. Patashnik, BibTeXing (1988), and besides them those that BibLaTeX adds
 * (date, version, url, urldate). Classic styles print neither version nor address, so the note says the version again.
 *
 * Names of bodies and whole titles stand in double braces, so that no style parts or recases them. A brace in a text
 * is written as a command, since BibTeX counts braces even behind a backslash.
 */
import type { Author, Work, WorkType } from './citable.ts';
import { dateParts, noteOf, oneLine } from './words.ts';

const ENTRIES: Readonly<Record<WorkType, string>> = {
  dataset: 'dataset', report: 'techreport', standard: 'misc', article: 'misc', 'article-journal': 'article', 'paper-conference': 'inproceedings',
  book: 'book', chapter: 'incollection', webpage: 'online', post: 'online', legislation: 'misc', thesis: 'thesis',
};

const COMMANDS: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}', '{': '\\textbraceleft{}', '}': '\\textbraceright{}', '~': '\\textasciitilde{}', '^': '\\textasciicircum{}',
  '&': '\\&', '%': '\\%', '$': '\\$', '#': '\\#', _: '\\_',
};

/** A text as TeX prints it. Two marks that TeX would join into one (dashes, quotes, opening marks) are kept apart. */
export function texText(text: string): string {
  return oneLine(text)
    .replace(/[\\{}~^&%$#_]/g, (mark) => COMMANDS[mark] as string)
    .replace(/([-'`,<>])(?=\1)/g, '$1{}')
    .replace(/([?!])(?=`)/g, '$1{}');
}

/** An address, which TeX reads as it stands: only what would end its braces is written as a code. */
const verbatim = (url: string): string => oneLine(url).replace(/[{}\\ ]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);
const author = (one: Author): string => ('literal' in one ? `{${texText(one.literal)}}` : `${texText(one.family)}, ${texText(one.given)}`);

/** Name of the field that says who published an entry of a type. */
const publisherField = (entry: string): string => (entry === 'techreport' || entry === 'thesis' ? 'institution' : entry === 'online' ? 'organization' : 'publisher');
/** Name of the field that says what an entry stands in. */
const containerField = (entry: string): string => (entry === 'article' ? 'journal' : entry === 'inproceedings' || entry === 'incollection' ? 'booktitle' : 'howpublished');

/** One work as an entry. */
export function bibtexEntry(work: Work): string {
  const entry = ENTRIES[work.type];
  if (!/^[a-z0-9-]+$/.test(work.key)) throw new RangeError(`key: must be lower-case letters, digits and hyphens (got ${work.key})`);
  const text = (value: string | undefined) => value && `{${texText(value)}}`;
  const whole = (value: string | undefined) => value && `{{${texText(value)}}}`;
  const fields: [string, string | undefined][] = [
    ['author', `{${work.authors.map(author).join(' and ')}}`],
    ['title', whole(work.title)],
    [containerField(entry), whole(work.container)],
    [publisherField(entry), whole(work.publisher)],
    ['address', text(work.place)],
    ['type', text(work.genre)],
    ['number', text(work.number)],
    ['edition', text(work.edition)],
    ['year', work.issued ? `{${dateParts(work.issued)[0]}}` : undefined],
    ['date', work.issued ? `{${work.issued}}` : undefined],
    ['version', text(work.version)],
    ['note', text(noteOf(work))],
    ['doi', work.doi && `{${verbatim(work.doi)}}`],
    ['url', work.url && `{${verbatim(work.url)}}`],
    ['urldate', work.accessed && `{${work.accessed}}`],
  ];
  return `@${entry}{${work.key},\n${fields.flatMap(([name, value]) => (value ? [`  ${name} = ${value}`] : [])).join(',\n')}\n}\n`;
}

/** Works as the text of a file. */
export function bibtex(works: readonly Work[]): string {
  return works.map(bibtexEntry).join('\n');
}
