/** How many times as strong series a is as series b, in two ways. */
import { meanOfValues, sampleVariance } from '../numerics/descriptive.ts';
import { tQuantile } from '../numerics/student-t.ts';
import { assertForces, assertShare, type Interval } from './checks.ts';
import { welch } from './welch.ts';

export interface RatioOfMeans {
  readonly ratio: number;
  readonly interval: Interval;
  readonly df: number;
}

/**
 * Ratio of the geometric means, which is that of the medians where pulls are lognormal: exp of Welch's interval of the
 * difference of the mean logarithms. The one to show first: it is never unbounded and has no preferred series.
 * @throws RangeError when a series has fewer than two pulls, one is not positive, or neither series scatters.
 */
export function ratioOfGeometricMeans(a: readonly number[], b: readonly number[], level = 0.95): RatioOfMeans {
  assertForces(a, 2, 'a');
  assertForces(b, 2, 'b');
  const { difference, interval, df } = welch(a.map(Math.log), b.map(Math.log), level);
  return { ratio: Math.exp(difference), interval: { low: Math.exp(interval.low), high: Math.exp(interval.high) }, df };
}

/**
 * Ratio of the arithmetic means with Fieller's interval for unequal variances: all r for which mean(a) - r mean(b) does not
 * differ from 0, with Welch and Satterthwaite's degrees of freedom at the observed ratio (Tamhane and Logan, Biometrika 91,
 * 2004). Null where the mean of b is too uncertain to divide by.
 * @throws RangeError when a series has fewer than two pulls, one is not positive, or neither series scatters.
 */
export function fiellerRatio(a: readonly number[], b: readonly number[], level = 0.95): RatioOfMeans | null {
  assertForces(a, 2, 'a');
  assertForces(b, 2, 'b');
  assertShare(level, 'level');
  const ma = meanOfValues(a);
  const mb = meanOfValues(b);
  const va = sampleVariance(a) / a.length;
  const vb = sampleVariance(b) / b.length;
  if (!(va + vb > 0)) throw new RangeError('a and b must not both consist of equal values.');
  const ratio = ma / mb;
  const df = (va + ratio ** 2 * vb) ** 2 / (va ** 2 / (a.length - 1) + (ratio ** 2 * vb) ** 2 / (b.length - 1));
  const t2 = tQuantile(0.5 * (1 + level), df) ** 2;
  const lead = mb * mb - t2 * vb;
  if (!(lead > 0)) return null;
  const root = Math.sqrt((ma * mb) ** 2 - lead * (ma * ma - t2 * va));
  return { ratio, interval: { low: (ma * mb - root) / lead, high: (ma * mb + root) / lead }, df };
}
