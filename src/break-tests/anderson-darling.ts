/**
 * Anderson and Darling's test of fit with both parameters taken from the pulls. Two p-values are in use for normal data
 * and they differ: that of Stephens (case 3; D'Agostino and Stephens, Goodness-of-Fit Techniques, 1986, table 4.9), which
 * is the one to report, and the "observed significance level" of composite-material handbooks (MIL-HDBK-17 after Lawless,
 * Statistical Models and Methods for Lifetime Data, 1982). For Weibull pulls there is the second alone.
 */
import { meanOfValues, sampleSd } from '../numerics/descriptive.ts';
import { logNormalSurvival } from '../numerics/normal.ts';
import { assertForces, assertScatter, assertValues, sorted } from './checks.ts';
import { fitWeibull } from './fit-weibull.ts';

export interface AndersonDarling {
  readonly n: number;
  /** The statistic, unscaled. */
  readonly a2: number;
  /** Stephens' p-value, case 3. Null below eight pulls, where his formula was not made for, and for Weibull. */
  readonly p: number | null;
  /** Observed significance level of the handbooks. Null below eight pulls likewise. */
  readonly significance: number | null;
}

/** From this many pulls on there is a p-value. */
export const LEAST_FOR_P = 8;

/** A^2 = -n - (1/n) sum of (2i - 1)(ln F(x_i) + ln(1 - F(x_(n+1-i)))), from both logarithms at the ordered pulls. */
function statistic(logBelow: readonly number[], logAbove: readonly number[]): number {
  const n = logBelow.length;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += (2 * i + 1) * ((logBelow[i] as number) + (logAbove[n - 1 - i] as number));
  return -n - sum / n;
}

/** Stephens' four pieces. */
function stephens(a2: number, n: number): number {
  const a = a2 * (1 + 0.75 / n + 2.25 / (n * n));
  if (a < 0.2) return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
  if (a < 0.34) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
  if (a < 0.6) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
  // Beyond 10 the parabola would turn up again.
  const far = Math.min(a, 10);
  return Math.exp(1.2937 - 5.709 * far + 0.0186 * far * far);
}

/** A logistic in a + b ln A + c A. */
function logistic(scaled: number, a: number, b: number, c: number): number {
  return 1 / (1 + Math.exp(a + b * Math.log(scaled) + c * scaled));
}

/** A^2 of normal pulls scaled as the handbooks' level needs it: (1 + 4/n - 25/n^2). */
export function scaledForNormal(a2: number, n: number): number {
  return a2 * (1 + 4 / n - 25 / (n * n));
}

/** A^2 of Weibull pulls scaled likewise: (1 + 0.2 / sqrt(n)). */
export function scaledForWeibull(a2: number, n: number): number {
  return a2 * (1 + 0.2 / Math.sqrt(n));
}

/** Observed significance level at a scaled A^2 of normal pulls. */
export function normalLevel(scaled: number): number {
  return logistic(scaled, -0.48, 0.78, 4.58);
}

/** Observed significance level at a scaled A^2 of Weibull pulls. */
export function weibullLevel(scaled: number): number {
  return logistic(scaled, -0.1, 1.24, 4.48);
}

/**
 * Against the normal distribution.
 * @throws RangeError when there are fewer than three values, one is not finite, or all are equal.
 */
export function andersonDarlingNormal(values: readonly number[]): AndersonDarling {
  assertValues(values, 3);
  assertScatter(values);
  const n = values.length;
  const mean = meanOfValues(values);
  const sd = sampleSd(values);
  const z = sorted(values).map((x) => (x - mean) / sd);
  const a2 = statistic(
    z.map((x) => logNormalSurvival(-x)),
    z.map((x) => logNormalSurvival(x)),
  );
  if (n < LEAST_FOR_P) return { n, a2, p: null, significance: null };
  return { n, a2, p: stephens(a2, n), significance: normalLevel(scaledForNormal(a2, n)) };
}

/** Against the lognormal distribution: the normal test on the logarithms. */
export function andersonDarlingLognormal(forces: readonly number[]): AndersonDarling {
  assertForces(forces, 3, 'forces');
  return andersonDarlingNormal(forces.map(Math.log));
}

/**
 * Against the Weibull distribution of two parameters, at its maximum-likelihood fit.
 * @throws RangeError when there are fewer than three pulls, one is not positive, or all are equal.
 */
export function andersonDarlingWeibull(forces: readonly number[]): AndersonDarling {
  assertForces(forces, 3, 'forces');
  assertScatter(forces, 'forces');
  const n = forces.length;
  const { shape, scale } = fitWeibull({ broken: forces });
  const power = sorted(forces).map((x) => (x / scale) ** shape);
  const a2 = statistic(
    power.map((x) => Math.log(-Math.expm1(-x))),
    power.map((x) => -x),
  );
  if (n < LEAST_FOR_P) return { n, a2, p: null, significance: null };
  return { n, a2, p: null, significance: weibullLevel(scaledForWeibull(a2, n)) };
}
