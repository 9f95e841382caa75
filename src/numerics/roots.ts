/** Roots of a function of one variable that changes sign between two known ends. */

/**
 * The x in [low, high] with f(x) = 0, by the Anderson-Bjorck variant of false position with bisection as its guard
 * (BIT 13, 1973). Stops when the bracket is narrower than `tolerance * max(1, |x|)` or f is exactly 0.
 * @throws RangeError when f has the same sign at both ends, or gives NaN.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-14): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) {
    throw new RangeError(`low and high must enclose a change of sign (got f(${low}) = ${fa}, f(${high}) = ${fb}).`);
  }
  for (let step = 0; step < 300; step++) {
    const width = Math.abs(b - a);
    if (width <= tolerance * Math.max(1, Math.abs(a), Math.abs(b))) break;
    // Every third step halves, so that a stubborn end cannot stall the rest.
    let x = step % 3 === 2 ? 0.5 * (a + b) : b - (fb * (b - a)) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = 0.5 * (a + b);
    if (x === a || x === b) break;
    const fx = f(x);
    if (Number.isNaN(fx)) throw new RangeError(`f gave no number at ${x}.`);
    if (fx === 0) return x;
    if (fx * fb < 0) {
      a = b;
      fa = fb;
    } else {
      const ratio = 1 - fx / fb;
      fa *= ratio > 0 ? ratio : 0.5;
    }
    b = x;
    fb = fx;
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
