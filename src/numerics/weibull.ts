/** The Weibull distribution from 0 upwards with `shape` and `scale`: P(X > x) = exp(-(x / scale)^shape). */
import { assertProbability } from './invert.ts';

function assertParameters(shape: number, scale: number): void {
  if (!(shape > 0 && shape < Infinity)) throw new RangeError(`shape must be positive and finite (got ${shape}).`);
  if (!(scale > 0 && scale < Infinity)) throw new RangeError(`scale must be positive and finite (got ${scale}).`);
}

/** Density at `x`. */
export function weibullPdf(x: number, shape: number, scale: number): number {
  assertParameters(shape, scale);
  if (x <= 0) return 0;
  const power = (x / scale) ** shape;
  return (shape / x) * power * Math.exp(-power);
}

/** P(X <= x). */
export function weibullCdf(x: number, shape: number, scale: number): number {
  assertParameters(shape, scale);
  return x <= 0 ? 0 : -Math.expm1(-((x / scale) ** shape));
}

/** The x with P(X <= x) = p. */
export function weibullQuantile(p: number, shape: number, scale: number): number {
  assertParameters(shape, scale);
  assertProbability(p);
  return scale * (-Math.log1p(-p)) ** (1 / shape);
}
