/**
 * The standard normal distribution.
 *
 * Tail: rational approximation number 5666 of Hart et al., Computer Approximations, 1968, up to 3, that of Cody,
 * Mathematics of Computation 23, 1969, up to 4 sqrt 2, and beyond the continued fraction of Laplace, contracted.
 * Quantile: in the middle Wichura, Algorithm AS 241, Applied Statistics 37, 1988, routine of 16 figures; in the tails
 * Hastings, Approximations for Digital Computers, 1955, made exact by Halley's method. Coefficients recalled,
 * checked against tests/reference/distribution-grid.json.
 */

/** 1 / sqrt(2 pi). */
export const INV_SQRT_2PI = 0.3989422804014327;

/** Up to here Hart's approximation keeps its relative accuracy. */
const HART_LIMIT = 3;

/** Density at `x`. */
export function normalPdf(x: number): number {
  return INV_SQRT_2PI * Math.exp(-0.5 * x * x);
}

/**
 * Upper tail of `z >= 0` divided by exp(-z^2 / 2): never underflows, so ratios of far tails keep their accuracy.
 * Falls from 1/2 at 0 towards 1 / (z sqrt(2 pi)).
 */
export function scaledTail(z: number): number {
  if (z < HART_LIMIT) {
    return (
      ((((((3.52624965998911e-2 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z +
        112.079291497871) *
        z +
        221.213596169931) *
        z +
        220.206867912376) /
      (((((((8.83883476483184e-2 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z +
        296.564248779674) *
        z +
        637.333633378831) *
        z +
        793.826512519948) *
        z +
        440.413735824752)
    );
  }
  const y = z * Math.SQRT1_2;
  if (y <= 4) {
    return (
      (0.5 *
        ((((((((2.1531153547440383e-8 * y + 0.5641884969886701) * y + 8.883149794388377) * y + 66.11919063714163) * y +
          298.6351381974001) *
          y +
          881.952221241769) *
          y +
          1712.0476126340707) *
          y +
          2051.0783778260716) *
          y +
          1230.3393547979972)) /
      ((((((((y + 15.744926110709835) * y + 117.6939508913125) * y + 537.1811018620099) * y + 1621.3895745666903) * y +
        3290.7992357334597) *
        y +
        4362.619090143247) *
        y +
        3439.3676741437216) *
        y +
        1230.3393548037495)
    );
  }
  // So far out eleven of its steps, each of two terms, are exact.
  let below = Infinity;
  for (let k = 10; k >= 0; k--) below = z * z + 4 * k + 1 - ((2 * k + 1) * (2 * k + 2)) / below;
  return (INV_SQRT_2PI * z) / below;
}

/** P(Z <= x). */
export function normalCdf(x: number): number {
  if (x > 0) {
    return x > 38.6 ? 1 : 1 - Math.exp(-0.5 * x * x) * scaledTail(x);
  }
  return x < -38.6 ? 0 : Math.exp(-0.5 * x * x) * scaledTail(-x);
}

/** P(Z > x). */
export function normalSurvival(x: number): number {
  return normalCdf(-x);
}

/** ln P(Z > x), also where the tail itself underflows. */
export function logNormalSurvival(x: number): number {
  return x > 0 ? -0.5 * x * x + Math.log(scaledTail(x)) : Math.log1p(-normalCdf(x));
}

/** P(Z > x) / P(Z > floor) for `x >= floor`: the survival of a normal truncated below at `floor`. */
export function truncatedSurvival(x: number, floor: number): number {
  if (floor <= 0) return normalCdf(-x) / normalCdf(-floor);
  return Math.exp(-0.5 * (x - floor) * (x + floor)) * (scaledTail(x) / scaledTail(floor));
}

/** Density at `x` divided by P(Z > x): how fast what is left above `x` goes. */
export function normalHazard(x: number): number {
  return x > 0 ? INV_SQRT_2PI / scaledTail(x) : normalPdf(x) / normalCdf(-x);
}

/**
 * The x with P(Z <= x) = p.
 * @throws RangeError unless 0 < p < 1.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must lie strictly between 0 and 1 (got ${p}).`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (
      (q *
        (((((((2509.0809287301227 * r + 33430.57558358813) * r + 67265.7709270087) * r + 45921.95393154987) * r +
          13731.69376550946) *
          r +
          1971.5909503065513) *
          r +
          133.14166789178438) *
          r +
          3.3871328727963665)) /
      (((((((5226.495278852854 * r + 28729.085735721943) * r + 39307.89580009271) * r + 21213.794301586597) * r +
        5394.196021424751) *
        r +
        687.1870074920579) *
        r +
        42.31333070160091) *
        r +
        1)
    );
  }
  // A first guess, off by less than a thousandth, and two of Halley's steps, each of which cubes the error.
  const t = Math.sqrt(-2 * Math.log(q < 0 ? p : 1 - p));
  let x = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  for (let step = 0; step < 2; step++) {
    const short = (scaledTail(x) - Math.exp(0.5 * (x - t) * (x + t))) / INV_SQRT_2PI;
    x += short / (1 - 0.5 * x * short);
  }
  return q < 0 ? -x : x;
}
