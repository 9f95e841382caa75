/** Exact intervals for a mean, a standard deviation and a coefficient of variation of normal data. */
import { chiSquareQuantile } from '../numerics/gamma.ts';
import { noncentralTDelta } from '../numerics/noncentral-t.ts';
import { tQuantile } from '../numerics/student-t.ts';
import { assertCount, assertPositive, assertShare, type Interval } from './checks.ts';

/**
 * Interval of the mean: mean -+ t sd / sqrt(n) with n - 1 degrees of freedom. Exact for normal data.
 * @throws RangeError when n is below 2, sd is not positive, or level does not lie strictly between 0 and 1.
 */
export function meanInterval(mean: number, sd: number, n: number, level = 0.95): Interval {
  assertCount(n, 2);
  assertPositive(sd, 'sd');
  assertShare(level, 'level');
  const half = (tQuantile(0.5 * (1 + level), n - 1) * sd) / Math.sqrt(n);
  return { low: mean - half, high: mean + half };
}

/**
 * Interval of the standard deviation: sd sqrt((n - 1) / chi-square), equal tails. Exact for normal data.
 * @throws RangeError when n is below 2, sd is not positive, or level does not lie strictly between 0 and 1.
 */
export function sdInterval(sd: number, n: number, level = 0.95): Interval {
  assertCount(n, 2);
  assertPositive(sd, 'sd');
  assertShare(level, 'level');
  const end = (p: number): number => sd * Math.sqrt((n - 1) / chiSquareQuantile(p, n - 1));
  return { low: end(0.5 * (1 + level)), high: end(0.5 * (1 - level)) };
}

/**
 * Interval of the coefficient of variation, equal tails: sqrt(n) mean / sd has the noncentral t distribution with n - 1
 * degrees of freedom and delta = sqrt(n) / cv, which is solved for delta at both ends. Exact for normal data (the method
 * that McKay, JRSS 95, 1932, and Vangel, The American Statistician 50, 1996, approximate). The high end is Infinity
 * where few pulls scatter so much that a mean of 0 is not ruled out.
 * @throws RangeError when n is below 2, cv is not positive, or level does not lie strictly between 0 and 1.
 */
export function cvInterval(cv: number, n: number, level = 0.95): Interval {
  assertCount(n, 2);
  assertPositive(cv, 'cv');
  assertShare(level, 'level');
  const root = Math.sqrt(n);
  const far = noncentralTDelta(0.5 * (1 - level), root / cv, n - 1);
  const near = noncentralTDelta(0.5 * (1 + level), root / cv, n - 1);
  return { low: root / far, high: near > 0 ? root / near : Infinity };
}

/**
 * Where the next pull lies: mean -+ t sd sqrt(1 + 1/n) (Hahn and Meeker, Statistical Intervals, 1991). One-sided: `low`
 * alone, with all of the chance on that side.
 * @throws RangeError when n is below 2, sd is not positive, or level does not lie strictly between 0 and 1.
 */
export function nextPull(mean: number, sd: number, n: number, level = 0.95): Interval & { oneSidedLow: number } {
  assertPositive(sd, 'sd');
  const two = nextPullFactor(n, level, 'two') * sd;
  return { low: mean - two, high: mean + two, oneSidedLow: mean - nextPullFactor(n, level, 'one') * sd };
}

/** The factor of `nextPull`: t sqrt(1 + 1/n). */
export function nextPullFactor(n: number, level: number, sides: 'one' | 'two'): number {
  assertCount(n, 2);
  assertShare(level, 'level');
  return tQuantile(sides === 'two' ? 0.5 * (1 + level) : level, n - 1) * Math.sqrt(1 + 1 / n);
}
