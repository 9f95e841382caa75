/**
 * All that a series of breaks says, gathered for a page: each part is a result, or the reason why there is none. Words
 * for both stand with the page.
 *
 * Two questions are kept apart. At what force does such a rig come apart, whatever gives way? Every pull answers that, at
 * the force at which it ended: summary, bounds and outliers. How strong is the part in question? Pulls in which something
 * else gave way say "at least": the fits. Since a part is at least as strong as the force that it came to, a lower bound
 * of the first is one of the second, too.
 */
import { type AndersonDarling, andersonDarlingLognormal, andersonDarlingNormal, andersonDarlingWeibull } from './anderson-darling.ts';
import { assertShare, type Interval } from './checks.ts';
import type { CensoredPulls } from './censored.ts';
import { type LinkStrength, linkStrengths, petersonQuantile } from './competing-modes.ts';
import { type Dixon, dixon } from './dixon.ts';
import { fitLognormal, lognormalQuantileInterval } from './fit-lognormal.ts';
import { fitNormal, normalQuantileInterval } from './fit-normal.ts';
import { fitWeibull, weibullQuantileInterval } from './fit-weibull.ts';
import { type Grubbs, grubbs } from './grubbs.ts';
import { type ModeShare, modeShares } from './mode-shares.ts';
import { DOTS_FROM, nextPulls } from './next-pulls.ts';
import { type OrderBound, orderBound } from './order-bound.ts';
import { assertPulls, endsOf, linkPulls, type Pull, seenByPart } from './pulls.ts';
import { type ShapiroWilk, shapiroWilk } from './shapiro-wilk.ts';
import { type Summary, summarise } from './summary.ts';
import { promiseOfMeanLess, type SigmaPromise } from './three-sigma.ts';
import { lowerToleranceBound, type Pair, STANDARD_PAIRS, type ToleranceBound } from './tolerance-bound.ts';

/**
 * Why a part has no result. `one-pull`: there is only one. `all-equal`: the pulls do not scatter. `too-few`: more are
 * needed. `censored`: the method is for complete pulls. `no-break`: the part broke in no pull, or in one, or always at one
 * force. `unnamed`: nobody wrote down what broke. `one-link`: the same part broke every time.
 */
export type WhyNot = 'one-pull' | 'all-equal' | 'too-few' | 'censored' | 'no-break' | 'unnamed' | 'one-link';
/** A part that cannot be given. */
export interface None { readonly why: WhyNot; /** From how many pulls on it could. */ readonly needed?: number }
export type Part<T> = T | None;
/** Whether a part has no result. */
export const isNone = <T extends object>(part: Part<T>): part is None => 'why' in part;

/** Three lower bounds for one pair of share and confidence. */
export interface Bounds {
  readonly pair: Pair;
  readonly normal: Part<ToleranceBound>;
  readonly lognormal: Part<ToleranceBound>;
  /** From the smallest pulls alone; its own `bound` is null where they are too few. */
  readonly order: OrderBound;
}

export const FAMILIES = ['normal', 'lognormal', 'weibull'] as const;
export type FitFamily = (typeof FAMILIES)[number];

/** One distribution fitted to the part in question. */
export interface Fit {
  readonly family: FitFamily;
  /** The two parameters: mean and sd; mu and sigma of ln; shape and scale. */
  readonly parameters: readonly [number, number];
  readonly logLikelihood: number;
  /** The force that one piece in two, and one in twenty, lies below: best value and profile-likelihood interval. */
  readonly half: Interval & { readonly best: number };
  readonly twentieth: Interval & { readonly best: number };
  /** Tests of fit. Shapiro and Wilk's is for normal pulls or logarithms; there is none for Weibull. */
  readonly shapiroWilk: ShapiroWilk | null;
  readonly andersonDarling: AndersonDarling | null;
  /** Why there are no tests; null where there are. */
  readonly untested: None | null;
}

export interface Outliers {
  /** Grubbs on the pulls, and on their logarithms. */
  readonly grubbs: Grubbs;
  readonly grubbsOfLogs: Grubbs;
  /** Dixon, the farther end first; null beyond ten pulls. */
  readonly dixon: readonly [Dixon, Dixon] | null;
}

export interface Shares {
  readonly shares: readonly ModeShare[];
  /** Pulls of which nobody wrote it down: left out of the shares. */
  readonly unnamed: number;
}

/** A link's own strength with the other links' breaks censored, and what is left without independence. */
export interface CompetingLink extends LinkStrength {
  /** Most likely middle and one-in-twenty of the lognormal fit; null where too few of its breaks differ. */
  readonly half: (Interval & { readonly best: number }) | null;
  readonly twentieth: (Interval & { readonly best: number }) | null;
  /** Peterson's bounds on the same two, from the pulls. Null where a pull ended with no break. */
  readonly halfAnyway: Interval | null;
  readonly twentiethAnyway: Interval | null;
}

export interface Analysis {
  readonly level: number;
  readonly pulls: number;
  /** How many ended without a break of the part in question. */
  readonly atLeast: number;
  readonly summary: Summary;
  /** What mean - 3 sd promises at this n. */
  readonly promise: Part<SigmaPromise>;
  readonly bounds: readonly Bounds[];
  readonly fits: Part<{ readonly all: readonly Fit[] }>;
  readonly outliers: Part<Outliers>;
  readonly modes: Part<Shares>;
  readonly links: Part<Shares>;
  readonly competing: Part<{ readonly links: readonly CompetingLink[] }>;
  /** Twenty equally likely forces of the next pull. */
  readonly dots: Part<{ readonly forces: readonly number[] }>;
}

export interface AnalysisOptions {
  /** Level of intervals. */
  readonly level?: number;
  /** Pairs of share and confidence for bounds. */
  readonly pairs?: readonly Pair[];
}

/** The force below which a share of pieces lies, by whatever computes it. */
type QuantileOf = (pulls: CensoredPulls, p: number, level: number) => Interval & { readonly best: number };
const QUANTILES: Readonly<Record<FitFamily, QuantileOf>> = { normal: normalQuantileInterval, lognormal: lognormalQuantileInterval, weibull: weibullQuantileInterval };
const LEAST_FOR_TESTS = 3;

function parametersOf(family: FitFamily, seen: CensoredPulls): Pick<Fit, 'parameters' | 'logLikelihood'> {
  if (family === 'normal') {
    const { mean, sd, logLikelihood } = fitNormal(seen);
    return { parameters: [mean, sd], logLikelihood };
  }
  if (family === 'lognormal') {
    const { muLog, sigmaLog, logLikelihood } = fitLognormal(seen);
    return { parameters: [muLog, sigmaLog], logLikelihood };
  }
  const { shape, scale, logLikelihood } = fitWeibull(seen);
  return { parameters: [shape, scale], logLikelihood };
}

function fitOf(family: FitFamily, seen: Required<CensoredPulls>, level: number): Fit {
  const { broken, atLeast } = seen;
  const untested: None | null = atLeast.length > 0 ? { why: 'censored' } : broken.length < LEAST_FOR_TESTS ? { why: 'too-few', needed: LEAST_FOR_TESTS } : null;
  const darling = { normal: andersonDarlingNormal, lognormal: andersonDarlingLognormal, weibull: andersonDarlingWeibull }[family];
  return {
    family,
    ...parametersOf(family, seen),
    half: QUANTILES[family](seen, 0.5, level),
    twentieth: QUANTILES[family](seen, 0.05, level),
    shapiroWilk: untested || family === 'weibull' ? null : shapiroWilk(family === 'normal' ? broken : broken.map(Math.log)),
    andersonDarling: untested ? null : darling(broken),
    untested,
  };
}

function sharesOf(names: readonly string[], level: number): Part<Shares> {
  const named = names.filter((name) => name !== '');
  return named.length === 0 ? { why: 'unnamed' } : { shares: modeShares(named, level), unnamed: names.length - named.length };
}

/** Links that compete; or why not. A break without a link stops it: nobody knows whose it was. */
function competingOf(pulls: readonly Pull[], level: number): Analysis['competing'] {
  if (pulls.some(({ link, atLeast }) => link === '' && !atLeast)) return { why: 'unnamed' };
  const seen = linkPulls(pulls);
  if (new Set(seen.map(({ mode }) => mode).filter((mode) => mode !== null)).size < 2) return { why: 'one-link' };
  const isComplete = seen.every(({ mode }) => mode !== null);
  return {
    links: linkStrengths(seen).map((link) => ({
      ...link,
      half: link.lognormal && lognormalQuantileInterval(link.pulls, 0.5, level),
      twentieth: link.lognormal && lognormalQuantileInterval(link.pulls, 0.05, level),
      halfAnyway: isComplete ? petersonQuantile(seen, link.mode, 0.5) : null,
      twentiethAnyway: isComplete ? petersonQuantile(seen, link.mode, 0.05) : null,
    })),
  };
}

/**
 * Everything that the pulls say, in their unit.
 * @throws RangeError when there is no pull, a force is not positive, or a share does not lie strictly between 0 and 1.
 */
export function analyse(pulls: readonly Pull[], { level = 0.95, pairs = STANDARD_PAIRS }: AnalysisOptions = {}): Analysis {
  assertPulls(pulls);
  assertShare(level, 'level');
  const ends = endsOf(pulls);
  const seen = seenByPart(pulls);
  const summary = summarise(ends, level);
  const flat: None | null = summary.noSpread ? { why: summary.noSpread, ...(summary.noSpread === 'one-pull' && { needed: 2 }) } : null;
  const canFit = new Set(seen.broken).size > 1;
  const canDraw = canFit && seen.broken.length >= DOTS_FROM;
  return {
    level,
    pulls: pulls.length,
    atLeast: seen.atLeast.length,
    summary,
    promise: flat ?? promiseOfMeanLess(ends.length),
    bounds: pairs.map((pair) => ({
      pair,
      normal: flat ?? lowerToleranceBound(ends, pair, 'normal'),
      lognormal: flat ?? lowerToleranceBound(ends, pair, 'lognormal'),
      order: orderBound(ends, pair),
    })),
    fits: canFit ? { all: FAMILIES.map((family) => fitOf(family, seen, level)) } : { why: 'no-break' },
    outliers: flat ?? (ends.length < LEAST_FOR_TESTS ? { why: 'too-few', needed: LEAST_FOR_TESTS } : {
      grubbs: grubbs(ends),
      grubbsOfLogs: grubbs(ends.map(Math.log)),
      dixon: ends.length <= 10 ? dixon(ends) : null,
    }),
    modes: sharesOf(pulls.map(({ mode }) => mode), level),
    links: sharesOf(pulls.map(({ link }) => link), level),
    competing: competingOf(pulls, level),
    dots: canDraw ? { forces: nextPulls(seen) } : seen.broken.length >= DOTS_FROM ? { why: 'all-equal' } : { why: 'too-few', needed: DOTS_FROM },
  };
}
