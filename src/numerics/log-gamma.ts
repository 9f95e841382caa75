/** The gamma function by its logarithm, and the error term of Stirling's formula. */

const HALF_LOG_TWO_PI = 0.9189385332046727;

/** Bernoulli terms B_2k / (2k (2k - 1)) of Stirling's series. */
const STIRLING = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
  43867 / 244188,
] as const;

/** ln Gamma(x) - ((x - 1/2) ln x - x + ln(2 pi) / 2) for x >= 8: what Stirling's formula leaves out. */
export function stirlingError(x: number): number {
  const inverse = 1 / x;
  const square = inverse * inverse;
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) sum = sum * square + (STIRLING[k] as number);
  return sum * inverse;
}

/**
 * ln Gamma(x) for x > 0. Stirling's series from 10 upwards; below, the recurrence lifts x there.
 * @throws RangeError when x is not positive and finite.
 */
export function logGamma(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new RangeError(`x must be positive and finite (got ${x}).`);
  if (x === 1 || x === 2) return 0;
  let product = 1;
  let at = x;
  while (at < 10) {
    product *= at;
    at++;
  }
  return (at - 0.5) * Math.log(at) - at + HALF_LOG_TWO_PI + stirlingError(at) - Math.log(product);
}

/** Gamma(x) for 0 < x < 171. */
export function gammaFunction(x: number): number {
  if (Number.isInteger(x) && x <= 21) {
    let product = 1;
    for (let k = 2; k < x; k++) product *= k;
    return product;
  }
  return Math.exp(logGamma(x));
}
