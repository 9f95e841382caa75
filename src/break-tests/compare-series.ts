/** Two series of breaks beside each other, by every method that their lengths allow. */
import { type ChanceOfBeating, chanceOfBeating } from './chance-of-beating.ts';
import { assertShare } from './checks.ts';
import { type MannWhitney, mannWhitney } from './mann-whitney.ts';
import { assertPulls, endsOf, type Pull } from './pulls.ts';
import { fiellerRatio, type RatioOfMeans, ratioOfGeometricMeans } from './ratio-of-means.ts';
import { type Welch, welch } from './welch.ts';

/** What needs scatter in both series, in one at least, and two pulls of each. */
export interface MeansCompared {
  /** Ratio of the geometric means: first of the two to show. */
  readonly geometric: RatioOfMeans;
  /** Ratio of the means; null where the second mean is too uncertain to divide by. */
  readonly arithmetic: RatioOfMeans | null;
  readonly welch: Welch;
}

export interface SeriesCompared {
  readonly n: readonly [number, number];
  /** How many pulls of each ended with no break of the part in question. They count at the force that they came to. */
  readonly atLeast: readonly [number, number];
  /** Null with a reason: a series of one pull, or no scatter at all. */
  readonly means: MeansCompared | null;
  readonly noMeans: 'one-pull' | 'all-equal' | null;
  readonly rank: MannWhitney;
  readonly chance: ChanceOfBeating;
  readonly level: number;
}

/**
 * Compares the forces at which pulls of `a` and of `b` ended, in one unit.
 * @throws RangeError when a series is empty, a force is not positive, or level does not lie strictly between 0 and 1.
 */
export function compareSeries(a: readonly Pull[], b: readonly Pull[], level = 0.95): SeriesCompared {
  assertPulls(a, 'a');
  assertPulls(b, 'b');
  assertShare(level, 'level');
  const [x, y] = [endsOf(a), endsOf(b)];
  const flat = (forces: readonly number[]): boolean => forces.every((force) => force === forces[0]);
  const noMeans = x.length < 2 || y.length < 2 ? 'one-pull' : flat(x) && flat(y) ? 'all-equal' : null;
  const count = (pulls: readonly Pull[]): number => pulls.filter((pull) => pull.atLeast).length;
  return {
    n: [x.length, y.length],
    atLeast: [count(a), count(b)],
    means: noMeans ? null : { geometric: ratioOfGeometricMeans(x, y, level), arithmetic: fiellerRatio(x, y, level), welch: welch(x, y, level) },
    noMeans,
    rank: mannWhitney(x, y, level),
    chance: chanceOfBeating(x, y, level),
    level,
  };
}
