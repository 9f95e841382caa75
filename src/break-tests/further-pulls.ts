/** What more pulls would do to the lower bound of a series, if they came out like those that are there. */
import { meanOfValues, sampleSd } from '../numerics/descriptive.ts';
import { oneSidedToleranceFactor } from '../numerics/tolerance-factor.ts';
import { assertCount, assertForces, assertScatter } from './checks.ts';
import { assertPair, type Pair } from './tolerance-bound.ts';

export interface FurtherBound { /** Pulls in all. */ readonly n: number; readonly k: number; readonly bound: number }

/**
 * The lognormal bound with `more` further pulls, at the mean and scatter of the logarithms as they are now: only the factor k
 * changes. What the pulls will really do to mean and scatter, nobody knows.
 * @throws RangeError when there are fewer than two pulls, one is not positive, all are equal, or more is below 0.
 */
export function boundWithMore(forces: readonly number[], more: number, pair: Pair): FurtherBound {
  assertForces(forces, 2, 'forces');
  assertScatter(forces, 'forces');
  assertCount(more, 0, 'more');
  assertPair(pair);
  const logs = forces.map(Math.log);
  const n = forces.length + more;
  const k = oneSidedToleranceFactor(n, pair.coverage, pair.confidence);
  return { n, k, bound: Math.exp(meanOfValues(logs) - k * sampleSd(logs)) };
}
