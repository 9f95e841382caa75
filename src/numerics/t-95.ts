/** Coefficients of z, z^3, z^5, ... in the terms in 1/df, 1/df^2, 1/df^3, 1/df^4. */
const TERMS: readonly (readonly [divisor: number, ...coefficients: number[]])[] = [
  [4, 1, 1],
  [96, 3, 16, 5],
  [384, -15, 17, 19, 3],
  [92160, -945, -1920, 1482, 776, 79],
];
const Z_95 = 1.6448536269514722;

/**
 * The 95 % point of Student's t by its expansion about the normal (Abramowitz and Stegun 26.7.5): within one part in two
 * thousand from three degrees of freedom on. For the page, which needs this one point and not the whole distribution.
 * @throws RangeError below three degrees of freedom.
 */
export function tQuantile95(df: number): number {
  if (!(df >= 3)) throw new RangeError(`df must be 3 or more (got ${df})`);
  let value = Z_95;
  TERMS.forEach(([divisor, ...coefficients], i) => {
    const polynomial = coefficients.reduce((sum, c, power) => sum + c * Z_95 ** (2 * power + 1), 0);
    value += polynomial / divisor / df ** (i + 1);
  });
  return value;
}
