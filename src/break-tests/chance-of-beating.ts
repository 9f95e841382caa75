/** The chance that one pull of series a breaks above one of series b. */
import { normalQuantile } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';
import { assertShare, assertValues, type Interval } from './checks.ts';

export interface ChanceOfBeating {
  /** Share of all pairs in which a is above b; a tie counts one half. */
  readonly chance: number;
  readonly interval: Interval;
}

/** Variance of the share of pairs at a chance, for exponential pulls, with both series as long as their mean (Newcombe's V2). */
function variance(chance: number, n: number, m: number): number {
  const middle = (n + m) / 2 - 1;
  const both = (1 - chance) / (2 - chance) + chance / (1 + chance);
  return (chance * (1 - chance) * (1 + middle * both)) / (n * m);
}

/**
 * Share of pairs, with Newcombe's interval number 5 (Statistics in Medicine 25, 2006, 559-573): all chances whose distance
 * from the share is at most z standard errors, the error being taken at that chance. It never degenerates where every
 * pull of a is above every one of b.
 * @throws RangeError when a series is empty, a value is not finite, or level does not lie strictly between 0 and 1.
 */
export function chanceOfBeating(a: readonly number[], b: readonly number[], level = 0.95): ChanceOfBeating {
  assertValues(a, 1, 'a');
  assertValues(b, 1, 'b');
  let pairs = 0;
  for (const x of a) for (const y of b) pairs += x > y ? 1 : x === y ? 0.5 : 0;
  return { chance: pairs / (a.length * b.length), interval: chanceInterval(pairs / (a.length * b.length), a.length, b.length, level) };
}

/** The interval alone, from the share of pairs and the lengths of both series. */
export function chanceInterval(chance: number, n: number, m: number, level = 0.95): Interval {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance must lie between 0 and 1 (got ${chance}).`);
  assertShare(level, 'level');
  const z = normalQuantile(0.5 * (1 + level));
  const miss = (at: number): number => Math.abs(chance - at) - z * Math.sqrt(variance(at, n, m));
  // A share of 0 or 1 solves the equation itself, with no error left; the end sought is the other root.
  const inner = Math.min(1 - 1e-12, Math.max(1e-12, chance));
  const end = (edge: 0 | 1): number => (chance === edge ? edge : findRoot(miss, edge, inner, 1e-15));
  return { low: end(0), high: end(1) };
}
