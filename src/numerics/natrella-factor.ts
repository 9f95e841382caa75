/** Natrella's approximation of the one-sided tolerance factor, for comparison with old tables only. */
import { normalQuantile } from './normal.ts';

/** Factor and the two terms that it is made of. */
export interface NatrellaFactor {
  readonly a: number;
  readonly b: number;
  readonly k: number;
}

/**
 * k = (z_p + sqrt(z_p^2 - a b)) / a with a = 1 - z_g^2 / (2 (n - 1)) and b = z_p^2 - z_g^2 / n (Natrella, Experimental
 * Statistics, Handbook 91, 1963). Far off for few pulls, a quarter too high at three: no page uses it.
 * @throws RangeError where it is not defined: a is not positive for few pulls.
 */
export function natrellaFactor(n: number, coverage: number, confidence: number): NatrellaFactor {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number from 2 upwards (got ${n}).`);
  const zp = normalQuantile(coverage);
  const zg = normalQuantile(confidence);
  const a = 1 - (zg * zg) / (2 * (n - 1));
  if (!(a > 0)) throw new RangeError(`n is too small for this approximation (got ${n}).`);
  const b = zp * zp - (zg * zg) / n;
  return { a, b, k: (zp + Math.sqrt(zp * zp - a * b)) / a };
}
