/** What all exporters share: dates in parts, names in order, and text on one line. */
import type { Author, Work } from './citable.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DATE = /^(\d{4})(?:-(0[1-9]|1[0-2])(?:-(0[1-9]|[12]\d|3[01]))?)?$/;

/** Year, month and day of a date as numbers, as far as it goes. Throws a RangeError where the text is no such date. */
export function dateParts(date: string): number[] {
  const [, ...parts] = DATE.exec(date) ?? [];
  if (parts.length === 0) throw new RangeError(`date: must be yyyy, yyyy-mm or yyyy-mm-dd (got ${date})`);
  return parts.filter((part) => part !== undefined).map(Number);
}

/** A date in the order year, month, day, with the month's first three letters. */
export function dateWords(date: string): string {
  const [year, month, day] = dateParts(date);
  return [year, month && MONTHS[month - 1], day].filter(Boolean).join(' ');
}

/** Text on one line: a line break, a tab or a control character becomes a space, and spaces are joined. */
export function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ').trim();
}

/** Name of an author as printed in running text. */
export function nameOf(author: Author): string {
  return oneLine('literal' in author ? author.literal : `${author.given} ${author.family}`);
}

/** A sentence: the text with a full stop, unless it closes with a mark of its own. */
export function sentence(text: string): string {
  const line = oneLine(text);
  return /[.?!]$/.test(line) ? line : `${line}.`;
}

/** Where a reader finds the work: its DOI as a link, or its address. */
export function linkOf({ doi, url }: Pick<Work, 'doi' | 'url'>): string | undefined {
  return doi ? `https://doi.org/${doi}` : url;
}

/** A version in words: one that begins with a digit is of the evidence; any other says itself what it is of. */
export function versionWords(version: string): string {
  return /^\d/.test(version) ? `Evidence ${version}` : version;
}

/** What no field of an exchange format takes: version, edition, place cited, licence. */
export function noteOf({ version, locator, licence }: Pick<Work, 'version' | 'locator' | 'licence'>): string {
  return [version && versionWords(version), locator && `Cited: ${locator}`, licence && `Licence: ${licence.name}`].filter(Boolean).join('. ');
}
