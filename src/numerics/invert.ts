/** Quantiles from a distribution's tails, where no formula gives them. */
import { findRoot } from './roots.ts';

/** Fails unless 0 < p < 1. */
export function assertProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must lie strictly between 0 and 1 (got ${p}).`);
}

/**
 * The v at which a rising distribution function reaches p. `below` and `above` are its two tails; the smaller one is
 * matched by its logarithm, so far tails keep their accuracy. The search starts at `start` and widens in steps from
 * `stride` until it encloses the answer.
 */
export function invertTails(
  below: (v: number) => number,
  above: (v: number) => number,
  p: number,
  start: number,
  stride: number,
): number {
  assertProbability(p);
  const lower = p <= 0.5;
  const target = Math.log(lower ? p : 1 - p);
  const miss = (v: number): number => {
    const tail = Math.max(lower ? below(v) : above(v), 1e-320);
    return lower ? Math.log(tail) - target : target - Math.log(tail);
  };
  let low = start;
  let high = start;
  let step = stride;
  const first = miss(start);
  if (first === 0) return start;
  for (let widen = 0; widen < 200; widen++) {
    if (first < 0) {
      low = high;
      high += step;
      if (miss(high) >= 0) break;
    } else {
      high = low;
      low -= step;
      if (miss(low) <= 0) break;
    }
    step *= 1.6;
  }
  return findRoot(miss, low, high, 1e-16);
}
