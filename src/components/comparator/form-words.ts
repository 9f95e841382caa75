/** Between the words of the form and a rig: both ways, by the parser of links, so that form and link can never disagree. */
import { parseLink } from '../../links/parse-link.ts';
import { INPUT_RANGES, RIG_KEYS, type RigKey } from '../../links/rig-keys.ts';
import { rigWords } from '../../links/serialise-link.ts';
import type { Rig } from '../../strength/types.ts';

/** Each input as the word that stands, or would stand, in a link; numbers as typed. */
export type Words = Record<RigKey, string>;
/** Inputs whose "not known" is ticked although something is typed. */
export type Off = Partial<Record<RigKey, boolean>>;
/** What is wrong with each input that could not be used. */
export type Faults = Partial<Record<RigKey, string>>;

/** True for inputs that are typed as a number. */
export const isNumberKey = (key: RigKey): boolean => key in INPUT_RANGES;

/** Words of the form for a rig: an unknown number is an empty field. */
export function wordsOf(rig: Rig): Words {
  const words = Object.fromEntries(rigWords(rig)) as Words;
  for (const key of RIG_KEYS) if (isNumberKey(key) && !/^\d/.test(words[key])) words[key] = '';
  return words;
}

/** The rig that the form describes, and what is wrong with each input that could not be used. */
export function rigOf(words: Words, off: Off, slings: readonly string[]): { rig: Rig; faults: Faults } {
  const asked = RIG_KEYS.map((key): [RigKey, string] => {
    const unknown = key === 'bearing' ? 'unmeasured' : key === 'demand' ? 'rating' : 'unknown';
    return [key, isNumberKey(key) && (off[key] || words[key].trim() === '') ? unknown : words[key]];
  });
  const parsed = parseLink(asked.map(([key, word]) => `${key}=${encodeURIComponent(word)}`).join('&'), { slings });
  const faults: Faults = {};
  for (const { piece, why } of parsed.notUnderstood) faults[piece.slice(0, piece.indexOf('=')) as RigKey] = why;
  return { rig: parsed.rig, faults };
}
