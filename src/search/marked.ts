/** Texts in which figures and names of sources stand: their pieces, their plain words, and the sentence that shows what was found. */
import type { Marked } from './pages.ts';
import { wordsOf } from './words.ts';

/** A stretch of text; a figure with its words and standing; a name or number of a source. */
export type Piece = { kind: 'text'; words: string } | { kind: 'figure'; id: string; words: string; standing: string } | { kind: 'name'; words: string };

const MARK = /\{([^{}|]*)\|([^{}|]*)(?:\|([^{}|]*))?\}/g;

/** A figure inside a text. Signs that would close the mark are left out. */
export const figureMark = (id: string, words: string, standing: string): string => `{${id}|${words.replace(/[{}|]/g, '')}|${standing}}`;
/** The name of a source inside a text. */
export const nameMark = (words: string): string => `{|${words.replace(/[{}|]/g, '')}}`;

/** The pieces of a text, in order. */
export function piecesOf(text: Marked): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const match of text.matchAll(MARK)) {
    const [whole, id = '', words = '', standing = ''] = match;
    if (match.index > from) pieces.push({ kind: 'text', words: text.slice(from, match.index) });
    pieces.push(id === '' ? { kind: 'name', words } : { kind: 'figure', id, words, standing });
    from = match.index + whole.length;
  }
  if (from < text.length) pieces.push({ kind: 'text', words: text.slice(from) });
  return pieces;
}

/** Its plain words. */
export const textOf = (text: Marked): string => piecesOf(text).map(({ words }) => words).join('');

/** Where a sentence ends: behind its stop, which may stand within a mark that closes, before a capital letter or a mark, but never inside one; and at each line's end. */
const ENDS = /(?<=[.!?]|[.!?]\|[^{}|]*\})\s+(?=[\p{Lu}{"'(])(?![^{]*\})|\n+/u;

/** The sentences of a text, in order. */
export const sentencesOf = (text: Marked): Marked[] => text.split(ENDS).filter((sentence) => sentence !== '');

/** The sentence with most of the words; the first of those with as many. */
export function sentenceWith(text: Marked, words: ReadonlySet<string>): Marked {
  let best = '';
  let most = -1;
  for (const sentence of sentencesOf(text)) {
    const count = new Set(wordsOf(textOf(sentence), true).filter((word) => words.has(word))).size;
    if (count > most) [best, most] = [sentence, count];
  }
  return best;
}

/** A stretch of words, and whether it is one of those that were found. */
export interface Stretch { words: string; isFound: boolean }

/** Cuts plain words so that those that were found stand apart. */
export function stretchesOf(words: string, found: ReadonlySet<string>): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [piece] of words.matchAll(/[\p{L}\p{M}\p{N}'\u2019.,]*[\p{L}\p{M}\p{N}]+(?:\u00a0[\p{L}%]+)?|[^\p{L}\p{M}\p{N}]+/gu)) {
    const isFound = wordsOf(piece, true).some((word) => found.has(word));
    const last = stretches.at(-1);
    if (last && last.isFound === isFound) last.words += piece;
    else stretches.push({ words: piece, isFound });
  }
  return stretches;
}
