/** Grubbs' test: does the farthest pull belong to the others? It says so; it never takes a pull out. */
import { meanOfValues, sampleSd } from '../numerics/descriptive.ts';
import { tQuantile, tSurvival } from '../numerics/student-t.ts';
import { assertCount, assertScatter, assertShare, assertValues } from './checks.ts';

/** Which pull is asked about: the smallest, the largest, or whichever is farther off (counted as two tests). */
export type GrubbsEnd = 'lowest' | 'highest' | 'either';

export interface Grubbs {
  readonly end: GrubbsEnd;
  /** Index of the pull. */
  readonly index: number;
  readonly value: number;
  /** Its distance from the mean in standard deviations. */
  readonly g: number;
  readonly critical: number;
  /** Chance of so large a distance for normal pulls; an upper bound, exact where it is small. */
  readonly p: number;
  readonly beyond: boolean;
}

/**
 * Critical distance: (n - 1) / sqrt(n) sqrt(t^2 / (n - 2 + t^2)) with t the upper alpha / n point of Student's t with n - 2
 * degrees of freedom; alpha / (2n) for `either` (NIST/SEMATECH Handbook 1.3.5.17.1).
 * @throws RangeError when n is below 3 or alpha does not lie strictly between 0 and 1.
 */
export function grubbsCritical(n: number, alpha: number, end: GrubbsEnd): number {
  assertCount(n, 3);
  assertShare(alpha, 'alpha');
  const t = tQuantile(1 - alpha / (end === 'either' ? 2 * n : n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * The test, on the values as given.
 * @throws RangeError when there are fewer than three values, one is not finite, or all are equal.
 */
export function grubbs(values: readonly number[], end: GrubbsEnd = 'either', alpha = 0.05): Grubbs {
  assertValues(values, 3);
  assertScatter(values);
  const n = values.length;
  const critical = grubbsCritical(n, alpha, end);
  const mean = meanOfValues(values);
  const sd = sampleSd(values);
  let index = 0;
  let g = Number.NEGATIVE_INFINITY;
  values.forEach((value, i) => {
    const off = (value - mean) / sd;
    const distance = end === 'lowest' ? -off : end === 'highest' ? off : Math.abs(off);
    if (distance > g) {
      g = distance;
      index = i;
    }
  });
  const largest = (n - 1) / Math.sqrt(n);
  const room = largest * largest - g * g;
  const t = room > 0 ? g * Math.sqrt((n - 2) / room) : Infinity;
  const p = Math.min(1, (end === 'either' ? 2 * n : n) * tSurvival(t, n - 2));
  return { end, index, value: values[index] as number, g, critical, p, beyond: g > critical };
}
