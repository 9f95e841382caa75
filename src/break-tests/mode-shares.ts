/** In how many of all rigs a part breaks first, from counted pulls. */
import { betaQuantile } from '../numerics/beta.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { assertCount, assertShare, type Interval } from './checks.ts';

function assertCounts(count: number, n: number, level: number): void {
  assertCount(n, 1);
  assertCount(count, 0, 'count');
  if (count > n) throw new RangeError(`count must not exceed n (got ${count} of ${n}).`);
  assertShare(level, 'level');
}

/**
 * Exact interval of a share, from `count` of `n` pulls (Clopper and Pearson, Biometrika 26, 1934): covers the true share in
 * at least that part of all cases.
 * @throws RangeError unless 0 <= count <= n and level lies strictly between 0 and 1.
 */
export function shareInterval(count: number, n: number, level = 0.95): Interval {
  assertCounts(count, n, level);
  const outside = 0.5 * (1 - level);
  return {
    low: count === 0 ? 0 : betaQuantile(outside, count, n - count + 1),
    high: count === n ? 1 : betaQuantile(1 - outside, count + 1, n - count),
  };
}

/** Wilson's score interval (JASA 22, 1927): covers about right on average, and is narrower. */
export function wilsonInterval(count: number, n: number, level = 0.95): Interval {
  assertCounts(count, n, level);
  const z = normalQuantile(0.5 * (1 + level));
  const share = count / n;
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))) / (1 + (z * z) / n);
  return { low: count === 0 ? 0 : middle - half, high: count === n ? 1 : middle + half };
}

/** Jeffreys' interval: quantiles of the beta distribution with a half added to both counts. */
export function jeffreysInterval(count: number, n: number, level = 0.95): Interval {
  assertCounts(count, n, level);
  const end = (p: number): number => betaQuantile(p, count + 0.5, n - count + 0.5);
  return { low: count === 0 ? 0 : end(0.5 * (1 - level)), high: count === n ? 1 : end(0.5 * (1 + level)) };
}

export interface ModeShare {
  readonly mode: string;
  readonly count: number;
  readonly share: number;
  readonly exact: Interval;
  readonly wilson: Interval;
}

/**
 * Share of each mode among pulls, the most frequent first. Intervals stand each for itself, not for all modes at once.
 * @throws RangeError when there is no pull.
 */
export function modeShares(modes: readonly string[], level = 0.95): ModeShare[] {
  assertCount(modes.length, 1, 'modes.length');
  const counts = new Map<string, number>();
  for (const mode of modes) counts.set(mode, (counts.get(mode) ?? 0) + 1);
  const n = modes.length;
  return [...counts]
    .map(([mode, count]) => ({
      mode,
      count,
      share: count / n,
      exact: shareInterval(count, n, level),
      wilson: wilsonInterval(count, n, level),
    }))
    .sort((a, b) => b.count - a.count);
}
