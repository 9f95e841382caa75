/** One-sided tolerance factors for normal data: the factor, and what a given factor promises. */
import { noncentralTCdf, noncentralTDelta, noncentralTQuantile } from './noncentral-t.ts';
import { normalCdf, normalQuantile } from './normal.ts';

function assertPulls(n: number): void {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number from 2 upwards (got ${n}).`);
}

function assertFactor(k: number): void {
  if (!Number.isFinite(k)) throw new RangeError(`k must be finite (got ${k}).`);
}

/**
 * The k for which mean - k sd of n values lies, with the given confidence, below a share `coverage` of the population:
 * the quantile of the noncentral t with n - 1 degrees of freedom and delta = z sqrt(n), over sqrt(n). Exact.
 * @throws RangeError when n is below 2, or coverage or confidence do not lie strictly between 0 and 1.
 */
export function oneSidedToleranceFactor(n: number, coverage: number, confidence: number): number {
  assertPulls(n);
  const root = Math.sqrt(n);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root) / root;
}

/**
 * The confidence with which mean - k sd of n values lies below a share `coverage` of the population. Exact.
 * @throws RangeError when n is below 2, k is not finite, or coverage does not lie strictly between 0 and 1.
 */
export function toleranceConfidence(n: number, k: number, coverage: number): number {
  assertPulls(n);
  assertFactor(k);
  const root = Math.sqrt(n);
  return noncentralTCdf(k * root, n - 1, normalQuantile(coverage) * root);
}

/**
 * The share of the population above mean - k sd of n values, at the given confidence. Exact.
 * @throws RangeError when n is below 2, k is not finite, or confidence does not lie strictly between 0 and 1.
 */
export function toleranceCoverage(n: number, k: number, confidence: number): number {
  assertPulls(n);
  assertFactor(k);
  const root = Math.sqrt(n);
  return normalCdf(noncentralTDelta(confidence, k * root, n - 1) / root);
}
