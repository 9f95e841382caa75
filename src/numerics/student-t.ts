/** Student's t distribution with `df` degrees of freedom (any positive number). */
import { incompleteBeta, logBeta } from './incomplete-beta.ts';
import { assertProbability, invertTails } from './invert.ts';
import { normalQuantile } from './normal.ts';

function assertDf(df: number): void {
  if (!(df > 0 && df < Infinity)) throw new RangeError(`df must be positive and finite (got ${df}).`);
}

/** Density at `x`. */
export function tPdf(x: number, df: number): number {
  assertDf(df);
  return Math.exp(-0.5 * (df + 1) * Math.log1p((x * x) / df) - logBeta(0.5, 0.5 * df)) / Math.sqrt(df);
}

/** P(T > x). */
export function tSurvival(x: number, df: number): number {
  assertDf(df);
  if (x < 0) return 1 - tSurvival(-x, df);
  if (x === Infinity) return 0;
  const square = x * x;
  return 0.5 * incompleteBeta(df / (df + square), 0.5 * df, 0.5, square / (df + square));
}

/** P(T <= x). */
export function tCdf(x: number, df: number): number {
  return tSurvival(-x, df);
}

/**
 * The x with P(T <= x) = p.
 * @throws RangeError unless 0 < p < 1 and df > 0.
 */
export function tQuantile(p: number, df: number): number {
  assertDf(df);
  assertProbability(p);
  if (p === 0.5) return 0;
  if (p > 0.5) return -tQuantile(1 - p, df);
  if (df === 1) return -1 / Math.tan(Math.PI * p);
  if (df === 2) return -(1 - 2 * p) / Math.sqrt(2 * p * (1 - p));
  const start = Math.log(-normalQuantile(p));
  // In ln |x| the tail is close to a straight line; by symmetry it is searched as an upper one, without forming 1 - p.
  const found = invertTails(
    (v) => tSurvival(Math.exp(-v), df),
    (v) => tCdf(Math.exp(-v), df),
    p,
    -start,
    0.25,
  );
  return -Math.exp(-found);
}
