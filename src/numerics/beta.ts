/** The beta distribution on (0, 1) with shapes `a` and `b`. */
import { incompleteBeta, logBeta } from './incomplete-beta.ts';
import { invertTails } from './invert.ts';

/** Density at `x`. */
export function betaPdf(x: number, a: number, b: number): number {
  if (x <= 0 || x >= 1) return 0;
  return Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - logBeta(a, b));
}

/** P(X <= x). */
export function betaCdf(x: number, a: number, b: number): number {
  return incompleteBeta(Math.min(1, Math.max(0, x)), a, b);
}

/** P(X > x). */
export function betaSurvival(x: number, a: number, b: number): number {
  const inside = Math.min(1, Math.max(0, x));
  return incompleteBeta(1 - inside, b, a, inside);
}

/**
 * The x with P(X <= x) = p.
 * @throws RangeError unless 0 < p < 1 and both shapes are positive.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  // In the log odds both ends stretch to infinity, and 1 - x is known as well as x.
  const odds = invertTails(
    (v) => incompleteBeta(1 / (1 + Math.exp(-v)), a, b, 1 / (1 + Math.exp(v))),
    (v) => incompleteBeta(1 / (1 + Math.exp(v)), b, a, 1 / (1 + Math.exp(-v))),
    p,
    Math.log(a / b),
    0.5 / Math.sqrt(Math.min(a, b)),
  );
  return 1 / (1 + Math.exp(-odds));
}
