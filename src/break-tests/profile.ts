/** Intervals from a likelihood: all values of a quantity at which the best likelihood has not fallen too far. */
import { chiSquareQuantile } from '../numerics/gamma.ts';
import { findRoot } from '../numerics/roots.ts';
import { assertShare, type Interval } from './checks.ts';

/**
 * Profile-likelihood interval: the ends where twice the fall of `profile` from its top reaches the chi-square quantile
 * with one degree of freedom (Meeker and Escobar, Statistical Methods for Reliability Data, 1998, section 8.3). Search
 * widens from steps of `stride`; an end not met within a hundred thousand strides is infinite.
 */
export function profileInterval(
  profile: (value: number) => number,
  best: number,
  top: number,
  stride: number,
  level: number,
): Interval {
  assertShare(level, 'level');
  const fall = 0.5 * chiSquareQuantile(level, 1);
  const miss = (value: number): number => top - profile(value) - fall;
  const end = (sign: 1 | -1): number => {
    let inner = 0;
    let outer = stride;
    while (!(miss(best + sign * outer) >= 0)) {
      inner = outer;
      outer *= 1.6;
      if (outer > 1e5 * stride) return sign * Infinity;
    }
    return best + sign * findRoot((share) => miss(best + sign * share * outer), inner / outer, 1, 1e-13) * outer;
  };
  return { low: end(-1), high: end(1) };
}

/** The root of a falling score in ln(value), searched from `start` on. */
export function rootOfScore(score: (value: number) => number, start: number): number {
  const at = (v: number): number => score(Math.exp(v));
  let low = Math.log(start);
  let high = low;
  let step = 0.1;
  if (at(low) > 0) {
    while (at(high) > 0) {
      low = high;
      high += step;
      step *= 1.6;
      if (step > 1e4) throw new RangeError('broken scatters too little for a fit.');
    }
  } else {
    while (at(low) < 0) {
      high = low;
      low -= step;
      step *= 1.6;
      if (step > 1e4) throw new RangeError('broken scatters too much for a fit.');
    }
  }
  return Math.exp(low === high ? low : findRoot(at, low, high, 1e-15));
}
