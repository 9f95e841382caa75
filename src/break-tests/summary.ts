/** What a handful of breaks says at first sight: mean, scatter, extremes, each with its interval. */
import { meanOfValues, sampleSd } from '../numerics/descriptive.ts';
import { unbiasingConstant } from '../numerics/unbiasing.ts';
import { assertForces, assertShare, type Interval } from './checks.ts';
import { cvInterval, meanInterval, sdInterval } from './intervals.ts';

/** Scatter of two pulls or more. */
export interface Spread {
  /** Sample standard deviation (denominator n - 1), in the unit of the pulls. */
  readonly sd: number;
  readonly sdInterval: Interval;
  /** c4(n): what sd comes to on average, as a share of the true one. */
  readonly c4: number;
  /** sd / c4: unbiased for normal data. */
  readonly sdUnbiased: number;
  /** sd / mean. */
  readonly cv: number;
  readonly cvInterval: Interval;
  readonly meanInterval: Interval;
  /** mean - 3 sd: see `promiseOfMeanLess` for what it promises. May be negative. */
  readonly meanLessThreeSd: number;
}

export interface Summary {
  readonly n: number;
  readonly mean: number;
  readonly minimum: number;
  readonly maximum: number;
  /** Share of the intervals that contain the true value in the long run. */
  readonly level: number;
  /** Null for one pull, and where all pulls are equal: then rounding hides the scatter. */
  readonly spread: Spread | null;
  readonly noSpread: 'one-pull' | 'all-equal' | null;
}

/**
 * Summary of breaking forces. Intervals are exact for normal data: t for the mean, chi-square for sd, noncentral t for cv.
 * @throws RangeError when `forces` is empty or holds what is not positive, or level is not strictly between 0 and 1.
 */
export function summarise(forces: readonly number[], level = 0.95): Summary {
  assertForces(forces, 1, 'forces');
  assertShare(level, 'level');
  const n = forces.length;
  const mean = meanOfValues(forces);
  const minimum = Math.min(...forces);
  const maximum = Math.max(...forces);
  const base = { n, mean, minimum, maximum, level };
  if (n === 1) return { ...base, spread: null, noSpread: 'one-pull' };
  if (minimum === maximum) return { ...base, spread: null, noSpread: 'all-equal' };
  const sd = sampleSd(forces);
  const c4 = unbiasingConstant(n);
  const cv = sd / mean;
  return {
    ...base,
    spread: {
      sd,
      sdInterval: sdInterval(sd, n, level),
      c4,
      sdUnbiased: sd / c4,
      cv,
      cvInterval: cvInterval(cv, n, level),
      meanInterval: meanInterval(mean, sd, n, level),
      meanLessThreeSd: mean - 3 * sd,
    },
    noSpread: null,
  };
}
