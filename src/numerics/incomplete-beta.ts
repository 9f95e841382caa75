/** The regularised incomplete beta function, by its continued fraction. */
import { logGamma } from './log-gamma.ts';

/** ln B(a, b). */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

function fraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  let c = 1;
  // On the side where it is asked for, x < (a + 1) / (a + b + 2), this denominator is above 0.
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 10000; m++) {
    let step = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + step * d;
    if (Math.abs(d) < tiny) d = tiny;
    c = 1 + step / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    value *= d * c;
    step = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + step * d;
    if (Math.abs(d) < tiny) d = tiny;
    c = 1 + step / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}

/**
 * I_x(a, b): chance that a beta variable is at most `x`. `complement` is 1 - x, for callers that know it better than
 * the subtraction would.
 * @throws RangeError unless a > 0, b > 0 and 0 <= x <= 1.
 */
export function incompleteBeta(x: number, a: number, b: number, complement = 1 - x): number {
  if (!(a > 0 && a < Infinity)) throw new RangeError(`a must be positive and finite (got ${a}).`);
  if (!(b > 0 && b < Infinity)) throw new RangeError(`b must be positive and finite (got ${b}).`);
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x must lie between 0 and 1 (got ${x}).`);
  if (x === 0) return 0;
  if (complement === 0) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log(complement) - logBeta(a, b));
  // The fraction converges fast on the side of the mean.
  if (x < (a + 1) / (a + b + 2)) return (front * fraction(a, b, x)) / a;
  return 1 - (front * fraction(b, a, complement)) / b;
}
