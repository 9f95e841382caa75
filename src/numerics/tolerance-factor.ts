/** One-sided tolerance factors for normal data. */
import { noncentralTQuantile } from './noncentral-t.ts';
import { normalQuantile } from './normal.ts';

/**
 * The k for which mean - k sd of n values lies, with the given confidence, below a share `coverage` of the population:
 * the quantile of the noncentral t with n - 1 degrees of freedom and delta = z sqrt(n), over sqrt(n). Exact.
 * @throws RangeError when n is below 2, or coverage or confidence do not lie strictly between 0 and 1.
 */
export function oneSidedToleranceFactor(n: number, coverage: number, confidence: number): number {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number from 2 upwards (got ${n}).`);
  const root = Math.sqrt(n);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root) / root;
}
