/** What a plan shows, from three pulls up: what each count of pulls gives, what its last pull bought, and the count that is enough. */
import { assertCount, assertPositive, assertShare } from './checks.ts';
import { shareInterval } from './mode-shares.ts';
import { pullsForOrderBound } from './order-bound.ts';
import { type ExpectedBound, expectedBound, pullsForBound } from './plan-bound.ts';
import { powerOfDifference } from './plan-difference.ts';
import { expectedShareWidth } from './plan-share.ts';
import type { Pair } from './tolerance-bound.ts';

/** Fewer pulls are never planned: the scatter of two says next to nothing. */
export const FEWEST = 3;
/** More pulls than that are no plan for a bench. */
export const MOST = 1000;

/** Pulls that are enough; null where nothing was asked for, Infinity where more than MOST are. */
export type Needed = number | null;

export interface PlanSteps<Step> {
  readonly needed: Needed;
  readonly steps: readonly Step[];
}

/** The expected bound of so many pulls. `bought` is what the last of them added to it, as a share of the mean. */
export interface BoundStep extends ExpectedBound { readonly bought: number }

/** Chance that so many pulls of each method find the difference, and what the last pull of each added. */
export interface PowerStep { readonly n: number; readonly power: number; readonly bought: number }

/** Width of the interval on average, how much narrower the last pull made it, and what stays possible where the part never breaks first. */
export interface ShareStep { readonly n: number; readonly width: number; readonly bought: number; readonly never: number }

const LATER = [15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 600, 800, MOST];

/**
 * The counts that a table shows: each from three to twelve, then wider steps, up to one step beyond what is enough.
 * @throws RangeError when needed is not a whole number from 3 upwards, null or Infinity.
 */
export function countsShown(needed: Needed): number[] {
  if (needed !== null && needed !== Infinity) assertCount(needed, FEWEST, 'needed');
  const enough = needed ?? 0;
  const counts = Array.from({ length: 10 }, (_, i) => FEWEST + i);
  for (const count of LATER) {
    const last = counts.at(-1) as number;
    if (last > enough && last >= 30) break;
    if (enough > last && enough < count) counts.push(enough);
    counts.push(count);
  }
  return counts;
}

/** The fewest pulls from three on that are enough, by halving; Infinity beyond MOST. */
function fewest(isEnough: (n: number) => boolean): number {
  if (isEnough(FEWEST)) return FEWEST;
  if (!isEnough(MOST)) return Infinity;
  let low = FEWEST;
  let high = MOST;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isEnough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** What one bound needs: the steps; the pulls that a bound without a shape needs; the pulls, should the scatter be half as large again. */
export interface BoundPlan extends PlanSteps<BoundStep> {
  readonly pair: Pair;
  readonly cv: number;
  readonly withoutShape: number;
  readonly ifWider: Needed;
}

/** How much larger a guessed scatter is tried: half as large again. */
export const WIDER = 1.5;

/**
 * Plans a lower bound. `shortfall`, a share of the mean, is how far it may fall short on average; null: only the steps.
 * @throws RangeError when cv or shortfall is not positive, or a share of the pair does not lie strictly between 0 and 1.
 */
export function planBound(pair: Pair, cv: number, shortfall: number | null): BoundPlan {
  const pulls = (scatter: number): Needed => {
    if (shortfall === null) return null;
    assertPositive(shortfall, 'shortfall');
    if (expectedBound(MOST, pair, scatter).shortfall > shortfall) return Infinity;
    return Math.max(FEWEST, pullsForBound(pair, scatter, shortfall).n);
  };
  const needed = pulls(cv);
  const steps = countsShown(needed).map((n): BoundStep => {
    const step = expectedBound(n, pair, cv);
    return { ...step, bought: step.bound - expectedBound(n - 1, pair, cv).bound };
  });
  return { pair, cv, needed, steps, withoutShape: pullsForOrderBound(1, pair), ifWider: pulls(WIDER * cv) };
}

export interface TwoMethodsPlan extends PlanSteps<PowerStep> {
  readonly difference: number;
  readonly cv: number;
  /** Pulls of each, should the scatter be half as large again. */
  readonly ifWider: Needed;
}

/**
 * Plans a difference between the means of two methods, two-sided at one in twenty. Difference and cv are shares of one
 * mean, and both methods scatter alike. `power` null: only the steps.
 * @throws RangeError when difference or cv is not positive, or power does not lie between 0.05 and 1.
 */
export function planDifference(difference: number, cv: number, power: number | null): TwoMethodsPlan {
  const chance = (n: number, sd: number): number => powerOfDifference(n, { difference, sd });
  const pulls = (sd: number): Needed => {
    if (power === null) return null;
    assertShare(power, 'power');
    if (!(power > 0.05)) throw new RangeError(`power must be above 0.05 (got ${power}).`);
    return fewest((n) => chance(n, sd) >= power);
  };
  const needed = pulls(cv);
  const steps = countsShown(needed).map((n): PowerStep => ({ n, power: chance(n, cv), bought: chance(n, cv) - chance(n - 1, cv) }));
  return { difference, cv, needed, steps, ifWider: pulls(WIDER * cv) };
}

export interface SharePlan extends PlanSteps<ShareStep> {
  readonly share: number;
  /** Pulls, should the share be one half: the worst case. */
  readonly atHalf: Needed;
}

/**
 * Plans in what share of rigs a part breaks first, with exact intervals of 95 %. `width` null: only the steps.
 * @throws RangeError when share or width do not lie strictly between 0 and 1.
 */
export function planShare(share: number, width: number | null): SharePlan {
  assertShare(share, 'share');
  const pulls = (guess: number): Needed => {
    if (width === null) return null;
    assertShare(width, 'width');
    return fewest((n) => expectedShareWidth(n, guess) <= width);
  };
  const needed = pulls(share);
  const steps = countsShown(needed).map((n): ShareStep => {
    const now = expectedShareWidth(n, share);
    return { n, width: now, bought: expectedShareWidth(n - 1, share) - now, never: shareInterval(0, n).high };
  });
  return { share, needed, steps, atHalf: pulls(0.5) };
}
