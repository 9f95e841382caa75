/**
 * The standard normal distribution.
 *
 * Tail: rational approximation number 5666 of Hart et al., Computer Approximations, 1968, up to 3, and those of Cody,
 * Mathematics of Computation 23, 1969, beyond (coefficients recalled, checked against
 * tests/reference/distribution-grid.json). Quantile: Wichura, Algorithm AS 241, Applied
 * Statistics 37, 1988, routine of 16 figures (coefficients recalled, checked the same way).
 */

/** 1 / sqrt(2 pi). */
export const INV_SQRT_2PI = 0.3989422804014327;

/** Up to here Hart's approximation keeps its relative accuracy; beyond it Cody's take over. */
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
  const v = 1 / (y * y);
  const correction =
    (v *
      (((((0.016315387137302097 * v + 0.30532663496123236) * v + 0.36034489994980445) * v + 0.12578172611122926) * v +
        0.016083785148742275) *
        v +
        0.0006587491615298378)) /
    (((((v + 2.568520192289822) * v + 1.8729528499234673) * v + 0.5279051029514285) * v + 0.06051834131244132) * v +
      0.0023352049762686918);
  return (0.5 * (0.5641895835477563 - correction)) / y;
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
  let r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  let x: number;
  if (r <= 5) {
    r -= 1.6;
    x =
      (((((((0.0007745450142783414 * r + 0.022723844989269184) * r + 0.2417807251774506) * r + 1.2704582524523684) * r +
        3.6478483247632045) *
        r +
        5.769497221460691) *
        r +
        4.630337846156546) *
        r +
        1.4234371107496835) /
      (((((((1.0507500716444169e-9 * r + 0.0005475938084995345) * r + 0.015198666563616457) * r + 0.14810397642748008) *
        r +
        0.6897673349851) *
        r +
        1.6763848301838038) *
        r +
        2.053191626637759) *
        r +
        1);
  } else {
    r -= 5;
    x =
      (((((((2.0103343992922881e-7 * r + 2.7115555687434876e-5) * r + 0.0012426609473880784) * r +
        0.026532189526576124) *
        r +
        0.29656057182850487) *
        r +
        1.7848265399172913) *
        r +
        5.463784911164114) *
        r +
        6.657904643501103) /
      (((((((2.0442631033899397e-15 * r + 1.421511758316446e-7) * r + 1.8463183175100548e-5) * r +
        0.0007868691311456133) *
        r +
        0.014875361290850615) *
        r +
        0.1369298809227358) *
        r +
        0.599832206555888) *
        r +
        1);
  }
  return q < 0 ? -x : x;
}
