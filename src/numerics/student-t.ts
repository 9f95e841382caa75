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
  const share = df / (df + square);
  const rest = square / (df + square);
  // Near the middle the half is taken off what lies between 0 and x; farther out the tail is computed itself.
  return square < df
    ? 0.5 - 0.5 * incompleteBeta(rest, 0.5, 0.5 * df, share)
    : 0.5 * incompleteBeta(share, 0.5 * df, 0.5, rest);
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
  // In ln |x| the tail is close to a straight line.
  const found = invertTails(
    (v) => tCdf(Math.exp(v), df),
    (v) => tSurvival(Math.exp(v), df),
    1 - p,
    start,
    0.25,
  );
  return -Math.exp(found);
}
