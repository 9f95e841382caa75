/** Lower bounds that a stated share of pieces lies above with a stated confidence. */
import { meanOfValues, sampleSd } from '../numerics/descriptive.ts';
import { oneSidedToleranceFactor } from '../numerics/tolerance-factor.ts';
import { twoSidedToleranceFactor } from '../numerics/two-sided-tolerance-factor.ts';
import { assertForces, assertScatter, assertShare, type Interval } from './checks.ts';

/** The share of pieces above the bound, and how sure it is. */
export interface Pair {
  readonly coverage: number;
  readonly confidence: number;
}

/** The pairs that standards and handbooks ask for: 90/95, 95/95 and 99/95. */
export const STANDARD_PAIRS: readonly Pair[] = [
  { coverage: 0.9, confidence: 0.95 },
  { coverage: 0.95, confidence: 0.95 },
  { coverage: 0.99, confidence: 0.95 },
];

/** What the pulls, or their logarithms, are taken to follow. */
export type Family = 'normal' | 'lognormal';

export interface ToleranceBound extends Pair {
  readonly family: Family;
  readonly n: number;
  /** Factor on the standard deviation (of the pulls, or of their logarithms). */
  readonly k: number;
  /** In the unit of the pulls. A normal bound may be negative: then it says nothing of strength. */
  readonly bound: number;
}

/** Throws a RangeError unless both shares of a pair lie strictly between 0 and 1. */
export function assertPair(pair: Pair): void {
  assertShare(pair.coverage, 'coverage');
  assertShare(pair.confidence, 'confidence');
}

/**
 * The exact one-sided bound: mean - k sd with k from the noncentral t; lognormal: exp of the same of the logarithms.
 * @throws RangeError when there are fewer than two pulls, one is not positive, or all are equal.
 */
export function lowerToleranceBound(forces: readonly number[], pair: Pair, family: Family = 'normal'): ToleranceBound {
  assertForces(forces, 2, 'forces');
  assertScatter(forces, 'forces');
  assertPair(pair);
  const values = family === 'normal' ? forces : forces.map(Math.log);
  const k = oneSidedToleranceFactor(forces.length, pair.coverage, pair.confidence);
  const bound = meanOfValues(values) - k * sampleSd(values);
  return { ...pair, family, n: forces.length, k, bound: family === 'normal' ? bound : Math.exp(bound) };
}

/**
 * The exact two-sided interval that contains a share `coverage` of pieces with the confidence asked for.
 * @throws RangeError when there are fewer than two pulls, one is not positive, or all are equal.
 */
export function toleranceInterval(
  forces: readonly number[],
  pair: Pair,
  family: Family = 'normal',
): Interval & { readonly k: number } {
  assertForces(forces, 2, 'forces');
  assertScatter(forces, 'forces');
  const values = family === 'normal' ? forces : forces.map(Math.log);
  const k = twoSidedToleranceFactor(forces.length, pair.coverage, pair.confidence);
  const mean = meanOfValues(values);
  const half = k * sampleSd(values);
  const back = (x: number): number => (family === 'normal' ? x : Math.exp(x));
  return { low: back(mean - half), high: back(mean + half), k };
}
