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
        ((((((((2.15311535474403846e-8 * y + 0.564188496988670089) * y + 8.88314979438837594) * y +
          66.1191906371416295) *
          y +
          298.635138197400131) *
          y +
          881.95222124176909) *
          y +
          1712.04761263407058) *
          y +
          2051.07837782607147) *
          y +
          1230.33935479799725)) /
      ((((((((y + 15.7449261107098347) * y + 117.693950891312499) * y + 537.181101862009858) * y +
        1621.38957456669019) *
        y +
        3290.79923573345963) *
        y +
        4362.61909014324716) *
        y +
        3439.36767414372164) *
        y +
        1230.33935480374942)
    );
  }
  const v = 1 / (y * y);
  const correction =
    (v *
      (((((0.0163153871373020978 * v + 0.305326634961232344) * v + 0.360344899949804439) * v +
        0.125781726111229246) *
        v +
        0.0160837851487422766) *
        v +
        6.58749161529837803e-4)) /
    (((((v + 2.56852019228982242) * v + 1.87295284992346725) * v + 0.527905102951428412) * v +
      0.0605183413124413191) *
      v +
      0.00233520497626869185);
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
        (((((((2509.0809287301226727 * r + 33430.575583588128105) * r + 67265.770927008700853) * r +
          45921.953931549871457) *
          r +
          13731.693765509461125) *
          r +
          1971.5909503065514427) *
          r +
          133.14166789178437745) *
          r +
          3.387132872796366608)) /
      (((((((5226.495278852854561 * r + 28729.085735721942674) * r + 39307.89580009271061) * r +
        21213.794301586595867) *
        r +
        5394.1960214247511077) *
        r +
        687.1870074920579083) *
        r +
        42.313330701600911252) *
        r +
        1)
    );
  }
  let r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  let x: number;
  if (r <= 5) {
    r -= 1.6;
    x =
      (((((((7.7454501427834140764e-4 * r + 0.0227238449892691845833) * r + 0.24178072517745061177) * r +
        1.27045825245236838258) *
        r +
        3.64784832476320460504) *
        r +
        5.7694972214606914055) *
        r +
        4.6303378461565452959) *
        r +
        1.42343711074968357734) /
      (((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 0.0151986665636164571966) * r +
        0.14810397642748007459) *
        r +
        0.68976733498510000455) *
        r +
        1.6763848301838038494) *
        r +
        2.05319162663775882187) *
        r +
        1);
  } else {
    r -= 5;
    x =
      (((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 0.0012426609473880784386) * r +
        0.026532189526576123093) *
        r +
        0.29656057182850489123) *
        r +
        1.7848265399172913358) *
        r +
        5.4637849111641143699) *
        r +
        6.6579046435011037772) /
      (((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r +
        7.868691311456132591e-4) *
        r +
        0.0148753612908506148525) *
        r +
        0.13692988092273580531) *
        r +
        0.59983220655588793769) *
        r +
        1);
  }
  return q < 0 ? -x : x;
}
