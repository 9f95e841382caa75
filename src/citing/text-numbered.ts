/**
 * A reference as text, for lists that are numbered in the order of citing. It follows the guide of the National Library
 * of Medicine for works on the Internet: authors; title with "[Internet]"; edition; place, publisher and date; "[cited]";
 * notes; "Available from".
 * Source: K. Patrias and D. Wendling (editor), Citing Medicine, 2nd edition, National Library of Medicine (US),
 * chapters 18, 22, 24 and 25, https://www.ncbi.nlm.nih.gov/books/NBK7256/
 *
 * As in the guide's own suggested citation, "cited Year Month Day" stands where the day is the reader's to fill in.
 * A place or date that nobody recorded is "[place unknown]" and "[date unknown]", as the guide says.
 */
import type { Author, Work } from './citable.ts';
import { dateWords, linkOf, nameOf, oneLine, sentence, versionWords } from './words.ts';

/** Surname and initials without stops, or a body's name. */
const author = (one: Author): string => ('literal' in one ? nameOf(one) : oneLine(`${one.family} ${one.given.replace(/[.\s-]+/g, '')}`));

/** The reference on one line, without its number in a list. */
export function numbered(work: Work): string {
  const link = linkOf(work);
  const cited = link ? ` [cited ${work.accessed ? dateWords(work.accessed) : 'Year Month Day'}]` : '';
  const date = `${work.issued === null ? '[date unknown]' : dateWords(work.issued)}${cited}.`;
  const publisher = work.publisher ?? (work.container ? undefined : '[publisher unknown]');
  const edition = (work.version && versionWords(work.version)) ?? (work.edition && (/\bed\b/.test(work.edition) ? work.edition : `Edition ${work.edition}`));
  const parts = [
    sentence(work.authors.map(author).join(', ')),
    link ? sentence(`${oneLine(work.title).replace(/\.$/, '')} [Internet]`) : sentence(work.title),
    edition && sentence(edition),
    work.container && sentence(`In: ${work.container}`),
    publisher ? `${work.place ?? '[place unknown]'}: ${oneLine(publisher)}; ${date}` : date,
    work.locator && sentence(work.locator),
    work.number && (work.genre ? sentence(`${work.genre} ${work.number}`) : work.type === 'report' ? sentence(`Report No.: ${work.number}`) : sentence(work.number)),
    link && `Available from: ${link}`,
  ];
  return parts.filter(Boolean).join(' ');
}
