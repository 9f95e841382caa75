/** How many pulls show a difference of two methods, or from a stated force. For normal pulls with an sd guessed beforehand. */
import { noncentralTCdf, noncentralTSurvival } from '../numerics/noncentral-t.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';
import { tQuantile } from '../numerics/student-t.ts';
import { assertPositive, assertShare } from './checks.ts';

export interface DifferencePlan {
  /** The difference that must not be missed, in the unit of sd. */
  readonly difference: number;
  /** Scatter of each series. */
  readonly sd: number;
  /** Chance of calling a difference that is not there; 0.05 unless said. */
  readonly alpha?: number;
  /** Two-sided unless said. */
  readonly sided?: 1 | 2;
  /** Two series of n pulls each unless said; one: against a stated force. */
  readonly series?: 1 | 2;
}

function completed(plan: DifferencePlan): Required<DifferencePlan> {
  const full = { alpha: 0.05, sided: 2 as const, series: 2 as const, ...plan };
  assertPositive(full.difference, 'difference');
  assertPositive(full.sd, 'sd');
  assertShare(full.alpha, 'alpha');
  return full;
}

/**
 * Chance that a t test finds the difference with n pulls a series: by the noncentral t, both tails where two-sided.
 * n need not be whole, as in R's power.t.test.
 * @throws RangeError when n is not above 1, difference or sd is not positive, or alpha not strictly between 0 and 1.
 */
export function powerOfDifference(n: number, plan: DifferencePlan): number {
  if (!(n > 1 && n < Infinity)) throw new RangeError(`n must be above 1 (got ${n}).`);
  const { difference, sd, alpha, sided, series } = completed(plan);
  const df = (n - 1) * series;
  const delta = (Math.sqrt(n / series) * difference) / sd;
  const t = tQuantile(1 - alpha / sided, df);
  return noncentralTSurvival(t, df, delta) + (sided === 2 ? noncentralTCdf(-t, df, delta) : 0);
}

/**
 * The pulls a series needs for this power: the root (`exact`, as R's power.t.test prints it) and the whole number above.
 * @throws RangeError as `powerOfDifference`, or when power does not lie between alpha and 1.
 */
export function pullsForDifference(power: number, plan: DifferencePlan): { exact: number; pulls: number; power: number } {
  assertShare(power, 'power');
  if (!(power > completed(plan).alpha)) throw new RangeError(`power must be above alpha (got ${power}).`);
  // Far out the chi density fills out of reach of quadrature; two pulls are the fewest anyway.
  const miss = (n: number): number => powerOfDifference(n, plan) - power;
  let high = 2;
  while (miss(high) < 0) {
    high *= 2;
    if (high > 1e6) throw new RangeError(`difference is too small to plan for (got ${plan.difference}).`);
  }
  const exact = miss(2) >= 0 ? 2 : findRoot(miss, high / 2, high, 1e-12);
  const pulls = Math.ceil(exact - 1e-9);
  return { exact, pulls, power: powerOfDifference(pulls, plan) };
}

/** The shorter formula with normal quantiles, for one series: (z + z)^2 (sd / difference)^2 (NIST/SEMATECH Handbook 7.2.2.2). */
export function pullsByNormalFormula(power: number, plan: DifferencePlan): number {
  assertShare(power, 'power');
  const { difference, sd, alpha, sided } = completed(plan);
  return ((normalQuantile(1 - alpha / sided) + normalQuantile(power)) * (sd / difference)) ** 2;
}

/**
 * The same with quantiles of Student's t at the n that it gives: the rule that handbooks iterate. A little below the exact
 * count at times; kept for comparison with published tables.
 */
export function pullsByStudentFormula(power: number, plan: DifferencePlan): number {
  assertShare(power, 'power');
  const { difference, sd, alpha, sided } = completed(plan);
  const miss = (df: number): number =>
    df + 1 - ((tQuantile(1 - alpha / sided, df) + tQuantile(power, df)) * (sd / difference)) ** 2;
  let high = 1;
  while (miss(high) < 0) high *= 2;
  let low = high;
  while (miss(low) > 0) low /= 2;
  return Math.ceil(findRoot(miss, low, high, 1e-12) - 1e-9) + 1;
}
