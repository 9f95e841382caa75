/**
 * Dixon's Q for three to ten pulls: the gap between the farthest pull and its neighbour over the range. Reported, never a
 * reason to take a pull out by itself.
 */
import { assertScatter, assertValues, sorted } from './checks.ts';

/** Critical values for 3 to 10 pulls, two-tailed: Dean and Dixon, Analytical Chemistry 23, 1951; Rorabacher, ibid. 63, 1991. */
const CRITICAL = {
  0.1: [0.941, 0.765, 0.642, 0.56, 0.507, 0.468, 0.437, 0.412],
  0.05: [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466],
  0.01: [0.994, 0.926, 0.821, 0.74, 0.68, 0.634, 0.598, 0.568],
} as const;

/** Chance of a false alarm that the tables give. */
export type DixonAlpha = keyof typeof CRITICAL;

export interface Dixon {
  readonly end: 'lowest' | 'highest';
  readonly value: number;
  readonly q: number;
  readonly critical: number;
  readonly beyond: boolean;
}

/**
 * Critical Q, two-tailed.
 * @throws RangeError when n is no whole number from 3 to 10.
 */
export function dixonCritical(n: number, alpha: DixonAlpha): number {
  const critical = Number.isInteger(n) ? CRITICAL[alpha]?.[n - 3] : undefined;
  if (critical === undefined) {
    throw new RangeError(`n must be from 3 to 10 and alpha 0.1, 0.05 or 0.01 (got ${n} and ${alpha}).`);
  }
  return critical;
}

/**
 * Q of both ends, the larger first.
 * @throws RangeError unless there are 3 to 10 finite values that are not all equal.
 */
export function dixon(values: readonly number[], alpha: DixonAlpha = 0.05): [Dixon, Dixon] {
  assertValues(values, 3);
  assertScatter(values);
  const critical = dixonCritical(values.length, alpha);
  const x = sorted(values);
  const n = x.length;
  const range = (x[n - 1] as number) - (x[0] as number);
  const low = ((x[1] as number) - (x[0] as number)) / range;
  const high = ((x[n - 1] as number) - (x[n - 2] as number)) / range;
  const lowest: Dixon = { end: 'lowest', value: x[0] as number, q: low, critical, beyond: low > critical };
  const highest: Dixon = { end: 'highest', value: x[n - 1] as number, q: high, critical, beyond: high > critical };
  return high > low ? [highest, lowest] : [lowest, highest];
}
