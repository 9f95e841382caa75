/** Regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 - P(a, x): series below a + 1, fraction above. */
import { logGamma } from './log-gamma.ts';

function assertArguments(a: number, x: number): void {
  if (!(a > 0 && a < Infinity)) throw new RangeError(`a must be positive and finite (got ${a}).`);
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more (got ${x}).`);
}

/** x^a e^-x / Gamma(a). */
function prefactor(a: number, x: number): number {
  return Math.exp(a * Math.log(x) - x - logGamma(a));
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10000; n++) {
    term *= x / (a + n);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum * prefactor(a, x);
}

function fraction(a: number, x: number): number {
  // Lentz's evaluation of the continued fraction of Q.
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 10000; n++) {
    const step = -n * (n - a);
    b += 2;
    d = step * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + step / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value * prefactor(a, x);
}

/**
 * P(a, x): chance that a gamma variable of shape `a` and scale 1 is at most `x`.
 * @throws RangeError unless a > 0 and x >= 0.
 */
export function lowerGamma(a: number, x: number): number {
  assertArguments(a, x);
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  return x < a + 1 ? Math.min(1, series(a, x)) : 1 - fraction(a, x);
}

/**
 * Q(a, x) = 1 - P(a, x), without loss where it is small.
 * @throws RangeError unless a > 0 and x >= 0.
 */
export function upperGamma(a: number, x: number): number {
  assertArguments(a, x);
  if (x === 0) return 1;
  if (x === Infinity) return 0;
  return x < a + 1 ? Math.max(0, 1 - series(a, x)) : fraction(a, x);
}
