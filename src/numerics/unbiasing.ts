/** c4(n): what the standard deviation of n normal values comes to on average, as a share of the true one. */
import { logGamma } from './log-gamma.ts';

/**
 * c4(n) = sqrt(2 / (n - 1)) Gamma(n / 2) / Gamma((n - 1) / 2), so that sd / c4 is unbiased for normal data
 * (NIST/SEMATECH Handbook 6.3.2).
 * @throws RangeError when n is no whole number from 2 upwards.
 */
export function unbiasingConstant(n: number): number {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number from 2 upwards (got ${n}).`);
  return Math.sqrt(2 / (n - 1)) * Math.exp(logGamma(0.5 * n) - logGamma(0.5 * (n - 1)));
}
