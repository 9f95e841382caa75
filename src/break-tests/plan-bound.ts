/** How many pulls a lower bound needs, and what each further pull buys. For normal pulls with a cv guessed beforehand. */
import { normalQuantile } from '../numerics/normal.ts';
import { oneSidedToleranceFactor } from '../numerics/tolerance-factor.ts';
import { unbiasingConstant } from '../numerics/unbiasing.ts';
import { assertCount, assertPositive } from './checks.ts';
import { assertPair, type Pair } from './tolerance-bound.ts';

/** What n pulls may be expected to give. Shares are of the true mean. */
export interface ExpectedBound {
  readonly n: number;
  /** Tolerance factor. */
  readonly k: number;
  /** The bound on average: 1 - k c4 cv. */
  readonly bound: number;
  /** What it would be if mean and sd were known: 1 - z cv. */
  readonly known: number;
  /** By how much the bound falls short of that on average: (k c4 - z) cv. */
  readonly shortfall: number;
  /** How much the bound itself scatters from one set of n pulls to another: cv sqrt(1/n + k^2 (1 - c4^2)). */
  readonly scatter: number;
}

/** The most pulls that a plan is looked for. */
const MOST = 100_000;

/**
 * Expected bound of n pulls.
 * @throws RangeError when n is below 2, cv is not positive, or a share does not lie strictly between 0 and 1.
 */
export function expectedBound(n: number, pair: Pair, cv: number): ExpectedBound {
  assertPair(pair);
  assertPositive(cv, 'cv');
  const k = oneSidedToleranceFactor(n, pair.coverage, pair.confidence);
  const c4 = unbiasingConstant(n);
  const z = normalQuantile(pair.coverage);
  return {
    n,
    k,
    bound: 1 - k * c4 * cv,
    known: 1 - z * cv,
    shortfall: (k * c4 - z) * cv,
    scatter: cv * Math.sqrt(1 / n + k * k * (1 - c4 * c4)),
  };
}

/**
 * The fewest pulls whose bound falls short by no more than `shortfall` of the mean on average.
 * @throws RangeError as `expectedBound`, or when shortfall is not positive or asks for more than 100,000 pulls.
 */
export function pullsForBound(pair: Pair, cv: number, shortfall: number): ExpectedBound {
  assertPositive(shortfall, 'shortfall');
  let low = 1;
  let high = 2;
  while (expectedBound(high, pair, cv).shortfall > shortfall) {
    low = high;
    high *= 2;
    if (high > MOST) throw new RangeError(`shortfall asks for more than ${MOST} pulls (got ${shortfall}).`);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (expectedBound(middle, pair, cv).shortfall > shortfall) low = middle;
    else high = middle;
  }
  return expectedBound(high, pair, cv);
}

/** What n pulls give, and each further one up to n + `more`. */
export function whatFurtherPullsBuy(n: number, more: number, pair: Pair, cv: number): ExpectedBound[] {
  assertCount(more, 0, 'more');
  return Array.from({ length: more + 1 }, (_, i) => expectedBound(n + i, pair, cv));
}
