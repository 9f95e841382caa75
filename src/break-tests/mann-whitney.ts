/** Rank test of two series: needs no distribution, and with few pulls can hardly ever say much. */
import { normalSurvival } from '../numerics/normal.ts';
import { assertShare, assertValues, type Interval, sorted } from './checks.ts';

export interface MannWhitney {
  /** Pairs in which a is the stronger; a tie counts one half. */
  readonly u: number;
  /** Share of pairs. */
  readonly share: number;
  readonly ties: boolean;
  /**
   * Exact p-values, given the ties: over all ways to deal the pulls into two series. `greater`: a the stronger. Null where
   * a series has more than 50 pulls.
   */
  readonly exact: { readonly greater: number; readonly less: number; readonly twoSided: number } | null;
  /** Normal approximation with the correction for ties and for continuity. Null where all pulls are equal. */
  readonly approximate: { readonly z: number; readonly twoSided: number } | null;
  /** The smallest two-sided p-value that so many pulls can give at all: 2 / C(n + m, n). */
  readonly smallestP: number;
  /** Hodges and Lehmann's shift: the median of all differences a - b. */
  readonly shift: number;
  /** Exact interval of it, without ties; the level that it attains is `attained`. Null where there are ties or it is not exact. */
  readonly shiftInterval: (Interval & { readonly attained: number }) | null;
}

/** Beyond this many pulls in a series the exact distribution is not computed. */
const EXACT_LIMIT = 50;

/** Twice the midrank of each value among all. */
function doubleRanks(all: readonly number[]): number[] {
  const order = all.map((value, i) => ({ value, i })).sort((p, q) => p.value - q.value);
  const ranks = new Array<number>(all.length).fill(0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (order[to + 1]?.value === order[from]?.value) to++;
    for (let k = from; k <= to; k++) ranks[(order[k] as { i: number }).i] = from + to + 2;
    from = to + 1;
  }
  return ranks;
}

/** Chances of each sum of `count` of the doubled ranks, over all choices, by the sum. */
function distribution(ranks: readonly number[], count: number): Float64Array {
  const top = sorted(ranks).slice(-count).reduce((sum, rank) => sum + rank, 0);
  // ways[k][s], scaled so that the last row sums to 1: rank j is taken with its share of what is left.
  const rows = Array.from({ length: count + 1 }, () => new Float64Array(top + 1));
  (rows[0] as Float64Array)[0] = 1;
  ranks.forEach((rank, seen) => {
    for (let k = Math.min(count, seen + 1); k >= 0; k--) {
      const row = rows[k] as Float64Array;
      // Row k of the first `seen` ranks is a mean over C(seen, k) choices; with one more rank, over C(seen + 1, k).
      const stay = (seen + 1 - k) / (seen + 1);
      const take = k / (seen + 1);
      const less = k > 0 ? (rows[k - 1] as Float64Array) : null;
      for (let s = top; s >= 0; s--) {
        const taken = less && s >= rank ? (less[s - rank] as number) * take : 0;
        row[s] = (row[s] as number) * stay + taken;
      }
    }
  });
  return rows[count] as Float64Array;
}

/** C(n, k) as a number. */
function choose(n: number, k: number): number {
  let product = 1;
  for (let i = 1; i <= k; i++) product = (product * (n - k + i)) / i;
  return product;
}

/**
 * Wilcoxon, Mann and Whitney's test of independent series. Two-sided p: twice the smaller tail, at most 1.
 * @throws RangeError when a series is empty, a value is not finite, or level does not lie strictly between 0 and 1.
 */
export function mannWhitney(a: readonly number[], b: readonly number[], level = 0.95): MannWhitney {
  assertValues(a, 1, 'a');
  assertValues(b, 1, 'b');
  assertShare(level, 'level');
  const n = a.length;
  const m = b.length;
  const all = [...a, ...b];
  const ranks = doubleRanks(all);
  const sum = ranks.slice(0, n).reduce((total, rank) => total + rank, 0);
  const floor = n * (n + 1);
  const u = (sum - floor) / 2;
  const ties = new Set(all).size < all.length;
  const differences = sorted(a.flatMap((x) => b.map((y) => x - y)));
  const middle = (n * m) / 2;
  const at = (i: number): number => differences[i] as number;
  const shift = (n * m) % 2 === 1 ? at((n * m - 1) / 2) : 0.5 * (at(middle - 1) + at(middle));
  let exact: MannWhitney['exact'] = null;
  let shiftInterval: MannWhitney['shiftInterval'] = null;
  if (n <= EXACT_LIMIT && m <= EXACT_LIMIT) {
    const chances = distribution(ranks, n);
    let less = 0;
    let greater = 0;
    for (let s = 0; s < chances.length; s++) {
      if (s <= sum) less += chances[s] as number;
      if (s >= sum) greater += chances[s] as number;
    }
    exact = { greater: Math.min(1, greater), less: Math.min(1, less), twoSided: Math.min(1, 2 * Math.min(less, greater)) };
    if (!ties) {
      // The end is the q-th difference, q the first U whose lower tail reaches (1 - level) / 2; at least the first.
      const outside = 0.5 * (1 - level);
      let q = 0;
      let below = chances[floor] as number;
      while (below < outside) below += chances[floor + 2 * ++q] as number;
      q = Math.max(1, q);
      let missed = 0;
      for (let i = 0; i < q; i++) missed += chances[floor + 2 * i] as number;
      shiftInterval = { low: at(q - 1), high: at(n * m - q), attained: 1 - 2 * missed };
    }
  }
  const total = n + m;
  const counts = new Map<number, number>();
  for (const rank of ranks) counts.set(rank, (counts.get(rank) ?? 0) + 1);
  let tied = 0;
  for (const count of counts.values()) tied += count ** 3 - count;
  const variance = ((n * m) / 12) * (total + 1 - tied / (total * Math.max(1, total - 1)));
  let approximate: MannWhitney['approximate'] = null;
  if (variance > 0) {
    const off = u - middle;
    const z = (off - 0.5 * Math.sign(off)) / Math.sqrt(variance);
    approximate = { z, twoSided: Math.min(1, 2 * normalSurvival(Math.abs(z))) };
  }
  return { u, share: u / (n * m), ties, exact, approximate, smallestP: Math.min(1, 2 / choose(total, n)), shift, shiftInterval };
}
