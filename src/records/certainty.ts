/** Certainty of a figure: a judgement by stated steps, apart from its standing. */
import type { Lowered } from './schema.ts';

export type CertaintyWord = 'high' | 'moderate' | 'low' | 'very low';

const WORDS = ['high', 'moderate', 'low', 'very low'] as const;

/** What certainty needs to know of a figure. */
export interface Judged {
  kind: string;
  lowered?: readonly Lowered[] | undefined;
  locator?: string | undefined;
}

/**
 * Steps down from high: those of `lowered`, and one more where the page was not
 * recorded, since nobody can look the number up.
 */
export function stepsDown(figure: Judged): number {
  const stated = (figure.lowered ?? []).reduce((sum, step) => sum + step.steps, 0);
  return stated + (figure.locator === 'not-recorded' ? 1 : 0);
}

/** The word of a count of steps: none high, one moderate, two low, more very low. Throws a RangeError on a count that is none. */
export function certaintyWord(steps: number): CertaintyWord {
  if (!Number.isInteger(steps) || steps < 0) throw new RangeError(`steps must be a whole number from 0 (got ${steps})`);
  return WORDS[Math.min(steps, 3)] as CertaintyWord;
}

/** Certainty of a figure; only what is measured has one, so a requirement, a rule or a constant gives null. */
export function certaintyOf(figure: Judged): CertaintyWord | null {
  return figure.kind === 'measured' ? certaintyWord(stepsDown(figure)) : null;
}
