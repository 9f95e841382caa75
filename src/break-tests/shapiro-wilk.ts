/**
 * Shapiro and Wilk's test of normality, by Royston's algorithm AS R94 (Applied Statistics 44, 1995, 547-551), without
 * censoring. Coefficients recalled, checked against the `sw-` entries of tests/reference/published-checks.json.
 */
import { normalQuantile, normalSurvival } from '../numerics/normal.ts';
import { assertScatter, assertValues, sorted } from './checks.ts';

export interface ShapiroWilk {
  readonly n: number;
  /** Squared correlation of the ordered pulls with what normal ones would be: 1 at most. */
  readonly w: number;
  /** Chance of so small a w for normal pulls. */
  readonly p: number;
}

/** Sum of c[i] x^i. */
function polynomial(c: readonly number[], x: number): number {
  return c.reduceRight((sum, each) => sum * x + each, 0);
}

const LAST_WEIGHT = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
const SECOND_WEIGHT = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];
const SMALL_GAMMA = [-2.273, 0.459];
const SMALL_MEAN = [0.544, -0.39978, 0.025054, -6.714e-4];
const SMALL_SD = [1.3822, -0.77857, 0.062767, -0.0020322];
const LARGE_MEAN = [-1.5861, -0.31082, -0.083751, 0.0038915];
const LARGE_SD = [-0.4803, -0.082676, 0.0030302];

/** Weights of the upper half of the ordered pulls, the largest first; the lower half has them with the other sign. */
function weightsOf(n: number): number[] {
  if (n === 3) return [Math.SQRT1_2];
  const half = Math.floor(n / 2);
  const scores = Array.from({ length: half }, (_, i) => -normalQuantile((i + 1 - 0.375) / (n + 0.25)));
  const squares = 2 * scores.reduce((sum, m) => sum + m * m, 0);
  const u = 1 / Math.sqrt(n);
  const [first = 0, second = 0] = scores;
  const top = polynomial(LAST_WEIGHT, u) + first / Math.sqrt(squares);
  const fixed = [top];
  let left = squares - 2 * first * first;
  let room = 1 - 2 * top * top;
  if (n > 5) {
    const next = polynomial(SECOND_WEIGHT, u) + second / Math.sqrt(squares);
    fixed.push(next);
    left -= 2 * second * second;
    room -= 2 * next * next;
  }
  const scale = Math.sqrt(left / room);
  return [...fixed, ...scores.slice(fixed.length).map((m) => m / scale)];
}

/** Chance of a w so small, for n normal pulls. */
function chance(w: number, n: number): number {
  if (n === 3) {
    const p = (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75)));
    return Math.min(1, Math.max(0, p));
  }
  const y = Math.log1p(-w);
  const ln = Math.log(n);
  if (n <= 11) {
    // Above y for each n: w is n / (n - 1) times the square of the first weight at least, which is 0.63 for four.
    const gamma = polynomial(SMALL_GAMMA, n);
    const z = (-Math.log(gamma - y) - polynomial(SMALL_MEAN, n)) / Math.exp(polynomial(SMALL_SD, n));
    return normalSurvival(z);
  }
  return normalSurvival((y - polynomial(LARGE_MEAN, ln)) / Math.exp(polynomial(LARGE_SD, ln)));
}

/**
 * The test on the values as given; for lognormal pulls pass their logarithms.
 * @throws RangeError unless there are 3 to 5000 finite values that are not all equal.
 */
export function shapiroWilk(values: readonly number[]): ShapiroWilk {
  assertValues(values, 3);
  if (values.length > 5000) throw new RangeError(`values must hold at most 5000 (got ${values.length}).`);
  assertScatter(values);
  const n = values.length;
  const order = sorted(values);
  const weights = weightsOf(n);
  const range = (order[n - 1] as number) - (order[0] as number);
  const x = order.map((value) => (value - (order[0] as number)) / range);
  const mean = x.reduce((sum, value) => sum + value, 0) / n;
  // 1 - w without cancellation: (sum of squares - b^2) factored. The squares of the weights sum to one.
  let squares = 0;
  let b = 0;
  for (const value of x) squares += (value - mean) ** 2;
  weights.forEach((weight, i) => {
    b += weight * ((x[n - 1 - i] as number) - (x[i] as number));
  });
  const root = Math.sqrt(squares);
  const short = Math.max(0, ((root - b) * (root + b)) / squares);
  const w = 1 - short;
  return { n, w, p: chance(w, n) };
}
