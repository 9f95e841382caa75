/**
 * Tags in a page's head from which reference managers and indexes take it as a report: title, each author, the day of
 * publication as year/month/day, and the institution and number of a technical report.
 * Source: Google Scholar, Inclusion Guidelines for Webmasters, "Indexing Guidelines", which requires title, author and
 * date, https://scholar.google.com/intl/en/scholar/inclusion.html
 */
import type { Work } from './citable.ts';
import { dateParts, nameOf, oneLine, versionWords } from './words.ts';

/** Name and content of one tag. */
export type MetaTag = readonly [name: string, content: string];

/**
 * The tags of a work. The version of the evidence stands with the number: the guidelines have no tag for it.
 * Throws a RangeError where a title, an author or a date is missing, since an index then refuses the page.
 */
export function metaTags({ title, authors, issued, publisher, genre, number, version, language }: Work): MetaTag[] {
  if (oneLine(title) === '') throw new RangeError('title: must not be empty');
  if (authors.length === 0) throw new RangeError('authors: must name at least one');
  if (issued === null) throw new RangeError('issued: must be a date');
  const parts = dateParts(issued);
  const place = [genre, number].filter(Boolean).join(' ');
  const tags: [string, string | undefined][] = [
    ['title', oneLine(title)],
    ...authors.map((author): [string, string] => ['author', nameOf(author)]),
    // A whole date, or the year alone: a month without a day has no form there.
    ['publication_date', parts.length === 3 ? parts.join('/') : String(parts[0])],
    ['technical_report_institution', publisher],
    ['technical_report_number', [place, version && versionWords(version)].filter(Boolean).join(', ')],
    ['language', language],
  ];
  return tags.flatMap(([name, content]) => (content ? [[`citation_${name}`, content] as const] : []));
}
