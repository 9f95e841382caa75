/** Lower bounds from the smallest pulls alone: no distribution is assumed, and many pulls are needed. */
import { binomialAtLeast } from '../numerics/binomial.ts';
import { assertCount, assertForces, sorted } from './checks.ts';
import { assertPair, type Pair } from './tolerance-bound.ts';

export interface OrderBound extends Pair {
  readonly n: number;
  /** Which pull it is, counted from the smallest; null where even the smallest does not reach the confidence. */
  readonly rank: number | null;
  /** That pull; null likewise. */
  readonly bound: number | null;
  /** Confidence of that pull; without one, of the smallest pull. */
  readonly attained: number;
  /** Pulls at which the smallest alone would do. */
  readonly pullsNeeded: number;
}

/**
 * Confidence that the pull of this rank, of n, lies below a share `coverage` of pieces: P(`rank` or more of n pulls fall
 * into the lowest 1 - coverage) (Wilks, Annals of Mathematical Statistics 12, 1941).
 * @throws RangeError unless 1 <= rank <= n and coverage lies strictly between 0 and 1.
 */
export function orderConfidence(n: number, rank: number, coverage: number): number {
  assertCount(n, 1);
  assertCount(rank, 1, 'rank');
  if (rank > n) throw new RangeError(`rank must not exceed n (got ${rank} of ${n}).`);
  assertPair({ coverage, confidence: 0.5 });
  return binomialAtLeast(rank, n, 1 - coverage);
}

/**
 * The fewest pulls at which the one of this rank is such a bound. For rank 1: ln(1 - confidence) / ln(coverage), rounded up.
 * @throws RangeError when rank is below 1 or a share does not lie strictly between 0 and 1.
 */
export function pullsForOrderBound(rank: number, pair: Pair): number {
  assertCount(rank, 1, 'rank');
  assertPair(pair);
  const enough = (n: number): boolean => orderConfidence(n, rank, pair.coverage) >= pair.confidence;
  let low = rank - 1;
  let high = rank;
  while (!enough(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * The largest pull that is such a bound, with the confidence that it attains.
 * @throws RangeError when there is no pull, one is not positive, or a share does not lie strictly between 0 and 1.
 */
export function orderBound(forces: readonly number[], pair: Pair): OrderBound {
  assertForces(forces, 1, 'forces');
  const n = forces.length;
  const pullsNeeded = pullsForOrderBound(1, pair);
  let rank = 0;
  while (rank < n && orderConfidence(n, rank + 1, pair.coverage) >= pair.confidence) rank++;
  const attained = orderConfidence(n, Math.max(1, rank), pair.coverage);
  if (rank === 0) return { ...pair, n, rank: null, bound: null, attained, pullsNeeded };
  return { ...pair, n, rank, bound: sorted(forces)[rank - 1] as number, attained, pullsNeeded };
}
