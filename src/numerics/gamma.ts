/** The gamma distribution with `shape` and `scale`, and the chi-square distribution as its special case. */
import { lowerGamma, upperGamma } from './incomplete-gamma.ts';
import { invertTails } from './invert.ts';
import { logGamma } from './log-gamma.ts';

function assertPositive(value: number, name: string): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be positive and finite (got ${value}).`);
}

function assertArguments(shape: number, scale: number): void {
  assertPositive(shape, 'shape');
  assertPositive(scale, 'scale');
}

/**
 * Density at `x`.
 * @throws RangeError unless shape > 0 and scale > 0; the same holds for the functions below.
 */
export function gammaPdf(x: number, shape: number, scale: number): number {
  assertArguments(shape, scale);
  if (x <= 0) return 0;
  const y = x / scale;
  return Math.exp((shape - 1) * Math.log(y) - y - logGamma(shape)) / scale;
}

/** P(X <= x). */
export function gammaCdf(x: number, shape: number, scale: number): number {
  assertArguments(shape, scale);
  return lowerGamma(shape, Math.max(0, x / scale));
}

/** P(X > x). */
export function gammaSurvival(x: number, shape: number, scale: number): number {
  assertArguments(shape, scale);
  return upperGamma(shape, Math.max(0, x / scale));
}

/**
 * The x with P(X <= x) = p.
 * @throws RangeError unless 0 < p < 1, shape > 0 and scale > 0.
 */
export function gammaQuantile(p: number, shape: number, scale: number): number {
  assertArguments(shape, scale);
  const found = invertTails(
    (v) => lowerGamma(shape, Math.exp(v)),
    (v) => upperGamma(shape, Math.exp(v)),
    p,
    Math.log(shape),
    0.5 / Math.sqrt(shape),
  );
  return scale * Math.exp(found);
}

/**
 * P(chi-square > x) with `df` degrees of freedom.
 * @throws RangeError unless df > 0.
 */
export function chiSquareSurvival(x: number, df: number): number {
  assertPositive(df, 'df');
  return gammaSurvival(x, 0.5 * df, 2);
}

/**
 * The x with P(chi-square <= x) = p.
 * @throws RangeError unless 0 < p < 1 and df > 0.
 */
export function chiSquareQuantile(p: number, df: number): number {
  assertPositive(df, 'df');
  return gammaQuantile(p, 0.5 * df, 2);
}
