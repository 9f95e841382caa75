/** The list from A to Z: doors, guides, methods, materials, lessons, terms with their other names, and sources by author. */
import { KIND_NAMES, type Kind, type SearchPage } from '../../search/pages.ts';

/** One line of the list. */
export interface Entry {
  name: string;
  path: string;
  kind: Kind;
  /** The title of a source, whose name is its author's; what another name stands for. */
  rest?: string;
}

/** One letter with its lines. */
export interface Letter { letter: string; entries: Entry[] }

const LISTED: readonly Kind[] = ['page', 'guide', 'method', 'material', 'lesson', 'term', 'source'];

/** Initials in front of a name, by which a source's author is a person: `J. M. `. */
const INITIALS = /^((?:\p{Lu}\.[ -]?)+) /u;
const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Names in the order of an English list, whatever machine puts them so: small letters, no accents, no article in front, letters and digits alone. */
export const orderOf = (name: string): string => name.normalize('NFKD').toLowerCase().replace(/^(?:an?|the) /, '').replace(/[^a-z0-9 ]/g, '');

/** The author and year of a source, the first author by surname: `J. M. Beverly, S. W. Attaway` is `Beverly J. M., S. W. Attaway`. */
export function listedAuthor(by: string): string {
  const initials = INITIALS.exec(by)?.[1];
  if (!initials) return upper(by);
  const [name = '', ...rest] = by.slice(initials.length + 1).split(', ');
  return [`${name} ${initials}`, ...rest].join(', ');
}

function entriesOf({ kind, path, title, also = [], by = '' }: SearchPage): Entry[] {
  if (kind === 'source') return [{ name: listedAuthor(by), path, kind, rest: title }];
  const others = kind === 'term' ? also.map((name) => ({ name: upper(name), path, kind, rest: title.charAt(0).toLowerCase() + title.slice(1) })) : [];
  return [{ name: title, path, kind }, ...others];
}

/** All lines by their letter, in order. @param pages what search finds */
export function lettersOf(pages: readonly SearchPage[]): Letter[] {
  const entries = pages.filter(({ kind, path }) => LISTED.includes(kind) && path !== '/a-z/').flatMap(entriesOf)
    .sort((a, b) => (orderOf(a.name) < orderOf(b.name) ? -1 : orderOf(a.name) > orderOf(b.name) ? 1 : a.path < b.path ? -1 : 1));
  const letters: Letter[] = [];
  for (const entry of entries) {
    const letter = (orderOf(entry.name)[0] ?? '').toUpperCase();
    if (letters.at(-1)?.letter === letter) letters.at(-1)?.entries.push(entry);
    else letters.push({ letter, entries: [entry] });
  }
  return letters;
}

/** A kind in a word, behind a name. */
export const kindWord = (kind: Kind): string => KIND_NAMES[kind].toLowerCase();
