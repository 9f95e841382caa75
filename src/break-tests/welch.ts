/** Difference of the means of two series whose scatters may differ. */
import { meanOfValues, sampleVariance } from '../numerics/descriptive.ts';
import { tQuantile, tSurvival } from '../numerics/student-t.ts';
import { assertShare, assertValues, type Interval } from './checks.ts';

export interface Welch {
  /** Mean of a less mean of b. */
  readonly difference: number;
  readonly se: number;
  readonly t: number;
  /** Welch and Satterthwaite's degrees of freedom. */
  readonly df: number;
  /** Two-sided p-value. */
  readonly p: number;
  readonly interval: Interval;
  readonly level: number;
}

/**
 * Welch's t test (Biometrika 34, 1947).
 * @throws RangeError when a series has fewer than two values, one is not finite, or neither series scatters.
 */
export function welch(a: readonly number[], b: readonly number[], level = 0.95): Welch {
  assertValues(a, 2, 'a');
  assertValues(b, 2, 'b');
  assertShare(level, 'level');
  const va = sampleVariance(a) / a.length;
  const vb = sampleVariance(b) / b.length;
  if (!(va + vb > 0)) throw new RangeError('a and b must not both consist of equal values.');
  const difference = meanOfValues(a) - meanOfValues(b);
  const se = Math.sqrt(va + vb);
  const df = (va + vb) ** 2 / (va ** 2 / (a.length - 1) + vb ** 2 / (b.length - 1));
  const t = difference / se;
  const half = tQuantile(0.5 * (1 + level), df) * se;
  const p = Math.min(1, 2 * tSurvival(Math.abs(t), df));
  return { difference, se, t, df, p, interval: { low: difference - half, high: difference + half }, level };
}
