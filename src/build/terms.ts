/** Terms as pages show them, and their words made ready for linking. */
import { readFiles } from '../records/files.ts';
import { firstUses, type Lexicon, lexiconOf } from '../records/prose/link-terms.ts';
import { readTerms, type Term } from '../records/terms.ts';

/** All terms in order of name, and the words that link to them. */
export interface TermBook {
  terms: readonly Term[];
  lexicon: Lexicon;
}

let cached: TermBook | undefined;

/** The book of all terms below `root`, read once. What is wrong with them, the record check has said before. */
export function termBook(root = process.cwd()): TermBook {
  cached ??= readTermBook(root);
  return cached;
}

/** The book read anew: the server of a page that is being written asks for it at each start. */
export function readTermBook(root: string): TermBook {
  const { terms } = readTerms(readFiles(root));
  const ordered = [...terms.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
  return { terms: ordered, lexicon: lexiconOf(ordered) };
}

/** A piece of a text: words, and the term that they lead to where they are its first use. */
export interface Piece {
  words: string;
  id?: string;
}

/** A plain text cut at the first uses of terms that are not in `seen`; each is added to it. */
export function cutAtTerms(text: string, lexicon: Lexicon, seen: Set<string>): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const { start, end, id } of firstUses(text, lexicon, seen)) {
    if (start > from) pieces.push({ words: text.slice(from, start) });
    pieces.push({ words: text.slice(start, end), id });
    from = end;
  }
  if (from < text.length) pieces.push({ words: text.slice(from) });
  return pieces;
}

/** Terms that the prose of a file need not link: a term's own, and those that its meaning, which stands above, links. */
export function linkedBefore(file: string, { terms, lexicon }: TermBook): Set<string> {
  const own = terms.find((term) => file.endsWith(`/${term.file}`) || file === term.file);
  if (!own) return new Set();
  const seen = new Set([own.id]);
  firstUses(own.meaning, lexicon, seen);
  return seen;
}
