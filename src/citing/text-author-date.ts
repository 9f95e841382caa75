/**
 * A reference as text, by author and date. It follows the format that the DataCite Metadata Schema prefers, with its
 * optional version: "Creator (PublicationYear): Title. Version. Publisher. (resourceTypeGeneral). Identifier", creators
 * parted by semicolons.
 * Source: DataCite Metadata Working Group, DataCite Metadata Schema 4.5, section "Citation",
 * https://datacite-metadata-schema.readthedocs.io/en/4.5/introduction/citation/
 *
 * Of our own: "no date" where a work bears none; a number, a container and the place cited stand after the title.
 */
import type { Author, Work, WorkType } from './citable.ts';
import { dateParts, linkOf, nameOf, oneLine, sentence, versionWords } from './words.ts';

/** Types in the words of the schema's list (its appendix on controlled lists), in small letters as in its examples. */
const TYPES: Readonly<Record<WorkType, string>> = {
  dataset: 'dataset', report: 'report', standard: 'standard', article: 'text', 'article-journal': 'journal article',
  'paper-conference': 'conference paper', book: 'book', chapter: 'book chapter', webpage: 'text', post: 'text', legislation: 'text', thesis: 'dissertation',
};

const creator = (author: Author): string => ('literal' in author ? nameOf(author) : oneLine(`${author.family}, ${author.given.replace(/\.$/, '')}`));

/** The reference on one line. */
export function authorDate(work: Work): string {
  const year = work.issued === null ? 'no date' : dateParts(work.issued)[0];
  const parts = [
    `${work.authors.map(creator).join('; ')} (${year}): ${sentence(work.title)}`,
    work.number && sentence([work.genre, work.number].filter(Boolean).join(' ')),
    work.edition && sentence(`Edition ${work.edition}`),
    work.container && sentence(work.container),
    work.locator && sentence(work.locator),
    work.version && sentence(versionWords(work.version)),
    work.publisher && sentence(work.publisher),
    `(${TYPES[work.type]}).`,
    linkOf(work),
  ];
  return parts.filter(Boolean).join(' ');
}
