/**
 * How a text is cut into words to be found: small letters, no accents, one spelling, the singular, and a number together
 * with its unit. Texts of the site and what a reader types go the same way.
 */
import { EMPTY_WORDS, SPELLINGS, UNIT_WORDS } from './trade-words.ts';

const UNITS = new Map(UNIT_WORDS.flatMap(([unit, ...also]) => [unit, ...also].map((word) => [word, unit] as const)));
const OURS = new Map(SPELLINGS.flatMap(([ours, ...others]) => others.map((word) => [word, ours] as const)));
/** Longest first: `kilogram-force` before `kilogram`. */
const UNIT = [...UNITS.keys()].sort((a, b) => b.length - a.length).join('|');
const NUMBER = String.raw`\d+(?:[.,]\d+)*`;
/** A number with its unit, a range with the unit behind it, a number alone, or a word. */
const PIECE = new RegExp(String.raw`(${NUMBER})(?:\s*(?:-|to|and)\s*(${NUMBER}))?\s*(${UNIT})(?![\p{L}\p{N}])|${NUMBER}|[\p{L}\p{M}][\p{L}\p{M}\p{N}]*`, 'gu');
/** Marks on letters, and what stands inside a word without parting it. */
const MARKS = /[\u0300-\u036f\u00ad\u200b-\u200d]|(?<=\p{L})['\u2018\u2019\u02bc](?=\p{L})/gu;

/** Small letters without accents and apostrophes. */
const plain = (text: string): string => text.normalize('NFKD').toLowerCase().replace(MARKS, '');

/** A number as one writes it: no closing zeros, a point before tenths; a comma before exactly three digits parts thousands. */
function number(written: string): string {
  const one = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/.test(written) ? written.replaceAll(',', '') : written.replace(',', '.');
  return /^\d+(?:\.\d+)?$/.test(one) ? String(Number(one)) : one;
}

/** The singular of an English noun, near enough: the same cut is made in every text. */
function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(?:ss|us|is)$/.test(word)) return word;
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`;
  return /(?:x|ch|sh|ss)es$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}

/** One word in our spelling, in the singular. */
function ours(word: string): string {
  const one = OURS.get(word) ?? word;
  const single = singular(one);
  return (OURS.get(single) ?? single).replace(/(?<=....)iz(?=e|ing|ation)/, 'is');
}

/**
 * The words of a text, in order. `22 kN`, `22kN` and `22 kilonewtons` are the word `22kn`; `9 to 11 kN` are `9kn` and `11kn`.
 * @param isText whether a number also stands by itself, as in texts that are to be found; a reader who typed a unit means it
 */
export function wordsOf(text: string, isText = false): string[] {
  const words: string[] = [];
  for (const [piece, low, high, unit] of plain(text).matchAll(PIECE)) {
    if (low === undefined) {
      words.push(/^\d/.test(piece) ? number(piece) : ours(piece));
      continue;
    }
    for (const each of [low, high]) {
      if (each === undefined) continue;
      if (isText) words.push(number(each));
      words.push(`${number(each)}${UNITS.get(unit as string)}`);
    }
  }
  return words;
}

/** What a reader typed, as words: at most `most`. What is pasted need not be read to its end. */
export const askedWords = (typed: string, most = 24): string[] => wordsOf(typed.slice(0, 1000)).slice(0, most);

/** True for a word that says nothing of what is looked for. */
export const isEmpty = (word: string): boolean => EMPTY_WORDS.has(word);

/** A name as one string without gaps, so that `girth-hitch`, `girth hitch` and `girthhitch` are the same. */
export const keyOf = (words: readonly string[]): string => words.join('');
