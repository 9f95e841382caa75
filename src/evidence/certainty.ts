/** Order among the four words of certainty. The word of a figure itself comes with the record. */
import type { CertaintyWord } from '../records/certainty.ts';

export type { CertaintyWord };
const WORDS: readonly CertaintyWord[] = ['high', 'moderate', 'low', 'very low'];

/** The lowest of several words; `high` for none. */
export function lowest(words: Iterable<CertaintyWord>): CertaintyWord {
  let worst = 0;
  for (const word of words) worst = Math.max(worst, WORDS.indexOf(word));
  return WORDS[worst] as CertaintyWord;
}

/** The highest of several words; `very low` for none. */
export function highest(words: Iterable<CertaintyWord>): CertaintyWord {
  let best = WORDS.length - 1;
  for (const word of words) best = Math.min(best, WORDS.indexOf(word));
  return WORDS[best] as CertaintyWord;
}

/** A word lowered by some steps, never below the last. */
export function lowered(word: CertaintyWord, steps: number): CertaintyWord {
  return WORDS[Math.min(WORDS.indexOf(word) + steps, WORDS.length - 1)] as CertaintyWord;
}
