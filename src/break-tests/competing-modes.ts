/**
 * Two links that can break, pulled together: each pull shows the strength of the link that went first, and of the other
 * only that it is at least that. If the two strengths of a rig are independent, each link's own strength follows with the
 * other link's breaks as censored pulls. From such pulls nobody can test that they are independent (Tsiatis, PNAS 72,
 * 1975); Peterson's bounds (PNAS 73, 1976) are what remains without it.
 */
import { assertForces, type Interval, sorted } from './checks.ts';
import type { CensoredPulls } from './censored.ts';
import { fitLognormal, type LognormalFit } from './fit-lognormal.ts';
import { fitNormal, type NormalFit } from './fit-normal.ts';
import { fitWeibull, type WeibullFit } from './fit-weibull.ts';
import { productLimit, type ProductLimitStep } from './product-limit.ts';
import { shareInterval } from './mode-shares.ts';

/** One pull and the link that broke. */
export interface ModePull {
  readonly force: number;
  /** Name of the link; null where it ended with no break: then every link is censored. */
  readonly mode: string | null;
}

export interface LinkStrength {
  readonly mode: string;
  readonly pulls: Required<CensoredPulls>;
  /** Fits with the other links' breaks censored; null where fewer than two of this link's breaks differ. */
  readonly lognormal: LognormalFit | null;
  readonly weibull: WeibullFit | null;
  readonly normal: NormalFit | null;
  readonly productLimit: readonly ProductLimitStep[];
}

function assertPulls(pulls: readonly ModePull[]): void {
  assertForces(pulls.map((pull) => pull.force), 1, 'pulls.force');
}

/** Pulls as one link sees them: its own breaks, and everything else as "at least". */
export function seenByLink(pulls: readonly ModePull[], mode: string): Required<CensoredPulls> {
  const of = (mine: boolean): number[] => pulls.filter((p) => (p.mode === mode) === mine).map((p) => p.force);
  return { broken: of(true), atLeast: of(false) };
}

/**
 * Each link's own strength, if the links of a rig are independent. Links in the order in which they first broke.
 * @throws RangeError when there is no pull or a force is not positive.
 */
export function linkStrengths(pulls: readonly ModePull[]): LinkStrength[] {
  assertPulls(pulls);
  const modes = [...new Set(pulls.map((pull) => pull.mode).filter((mode) => mode !== null))];
  return modes.map((mode) => {
    const seen = seenByLink(pulls, mode);
    const fits = new Set(seen.broken).size > 1;
    return {
      mode,
      pulls: seen,
      lognormal: fits ? fitLognormal(seen) : null,
      weibull: fits ? fitWeibull(seen) : null,
      normal: fits ? fitNormal(seen) : null,
      productLimit: productLimit(seen),
    };
  });
}

export interface PetersonBound {
  readonly force: number;
  /** Least and greatest share of this link's strengths at or below the force, whatever the dependence; from the pulls. */
  readonly share: Interval;
  /** The same with exact intervals about both ends: low end of the least, high end of the greatest. */
  readonly widened: Interval;
}

/**
 * Peterson's bounds on a link's own distribution, at each force at which something ended. Least: the share of pulls in
 * which this link broke at or below the force. Greatest: the share of pulls that ended at or below it at all.
 * @throws RangeError when there is no pull, a force is not positive, or a pull ended with no break.
 */
export function petersonBounds(pulls: readonly ModePull[], mode: string, level = 0.95): PetersonBound[] {
  assertPulls(pulls);
  if (pulls.some((pull) => pull.mode === null)) {
    throw new RangeError('pulls.mode must name what broke in every pull: the bounds count all pulls.');
  }
  const n = pulls.length;
  return [...new Set(sorted(pulls.map((pull) => pull.force)))].map((force) => {
    const ended = pulls.filter((pull) => pull.force <= force);
    const own = ended.filter((pull) => pull.mode === mode).length;
    return {
      force,
      share: { low: own / n, high: ended.length / n },
      widened: { low: shareInterval(own, n, level).low, high: shareInterval(ended.length, n, level).high },
    };
  });
}

/**
 * Between which forces a quantile of the link's own strength must lie, from the pulls: where the greatest share first
 * reaches p, and where the least does. The high end is Infinity where this link broke in too few pulls to say.
 * @throws RangeError as `petersonBounds`, or when p does not lie strictly between 0 and 1.
 */
export function petersonQuantile(pulls: readonly ModePull[], mode: string, p: number): Interval {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must lie strictly between 0 and 1 (got ${p}).`);
  const bounds = petersonBounds(pulls, mode);
  const first = (end: 'low' | 'high'): number => bounds.find((bound) => bound.share[end] >= p)?.force ?? Infinity;
  return { low: first('high'), high: first('low') };
}
