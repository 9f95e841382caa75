/**
 * Estimators of tau^2, the variance between studies, with its interval and tests. The mean itself is in
 * random-effects.ts.
 * Reference values: the `ma-` checks of tests/reference/published-checks.json, each with its source.
 */
import { chiSquareQuantile, chiSquareSurvival } from '../numerics/gamma.ts';
import { findRoot } from '../numerics/roots.ts';
import type { Effect } from './effect-sizes.ts';
import { assertEffects, assertLevel, generalisedQ, type Interval, meanAt, pauleMandel, solveQ } from './random-effects.ts';

/**
 * How tau^2 is estimated. `fixed`: taken as 0. `empirical-bayes` (Morris 1983) has the equation of `paule-mandel`
 * and so the same answer; both names exist because published results use both.
 */
export type TauMethod =
  | 'fixed'
  | 'dersimonian-laird'
  | 'hedges'
  | 'hunter-schmidt'
  | 'sidik-jonkman'
  | 'maximum-likelihood'
  | 'restricted-likelihood'
  | 'empirical-bayes'
  | 'paule-mandel';

/** Q, its degrees of freedom and p (chi-square) for the hypothesis that all studies estimate one number. */
export function heterogeneity(effects: readonly Effect[]): { q: number; df: number; p: number } {
  assertEffects(effects, 2);
  const q = generalisedQ(effects, 0);
  const df = effects.length - 1;
  return { q, df, p: chiSquareSurvival(q, df) };
}

/** The typical error variance of Higgins and Thompson (Statistics in Medicine 21, 2002). */
function typicalVariance(effects: readonly Effect[]): number {
  let first = 0;
  let second = 0;
  for (const { variance } of effects) {
    first += 1 / variance;
    second += 1 / variance ** 2;
  }
  return ((effects.length - 1) * first) / (first * first - second);
}

/**
 * I^2: share (0 to 1) of the variance among estimates that tau^2 accounts for: tau^2 / (tau^2 + typical error
 * variance).
 * With DerSimonian-Laird's tau^2 this is (Q - df) / Q.
 */
export function iSquared(effects: readonly Effect[], tauSquared: number): number {
  assertEffects(effects, 2);
  return tauSquared / (tauSquared + typicalVariance(effects));
}

function moment(effects: readonly Effect[]): number {
  let first = 0;
  let second = 0;
  for (const { variance } of effects) {
    first += 1 / variance;
    second += 1 / variance ** 2;
  }
  return Math.max(0, (generalisedQ(effects, 0) - (effects.length - 1)) / (first - second / first));
}

function plainVariance(effects: readonly Effect[], denominator: number): number {
  let sum = 0;
  for (const { value } of effects) sum += value;
  const mean = sum / effects.length;
  let squares = 0;
  for (const { value } of effects) squares += (value - mean) ** 2;
  return squares / denominator;
}

function sidikJonkman(effects: readonly Effect[]): number {
  const start = plainVariance(effects, effects.length);
  if (start === 0) return 0;
  const scaled = effects.map(({ value, variance }) => ({ value, variance: variance / start + 1 }));
  return generalisedQ(scaled, 0) / (effects.length - 1);
}

/** Slope and height of the (restricted) log likelihood at tau^2. */
function likelihood(effects: readonly Effect[], tauSquared: number, restricted: boolean): [number, number] {
  const mean = meanAt(effects, tauSquared);
  let weights = 0;
  let squared = 0;
  let slope = 0;
  let height = 0;
  for (const { value, variance } of effects) {
    const weight = 1 / (variance + tauSquared);
    const deviation = (value - mean) ** 2;
    weights += weight;
    squared += weight * weight;
    slope += 0.5 * (weight * weight * deviation - weight);
    height += 0.5 * (Math.log(weight) - weight * deviation);
  }
  return restricted ? [slope + (0.5 * squared) / weights, height - 0.5 * Math.log(weights)] : [slope, height];
}

/** Highest point of the (restricted) likelihood: a scan, since it can have two peaks, then the root of its slope. */
function likeliest(effects: readonly Effect[], restricted: boolean): number {
  const scale = plainVariance(effects, 1);
  const at = (i: number): number => (i === 0 ? 0 : 2 * scale * 10 ** ((i - 120) / 12));
  let best = 0;
  let highest = -Infinity;
  for (let i = 0; i <= 120; i++) {
    const height = likelihood(effects, at(i), restricted)[1];
    if (height > highest) {
      highest = height;
      best = i;
    }
  }
  const low = at(Math.max(0, best - 1));
  const high = at(Math.min(120, best + 1));
  const slope = (tauSquared: number): number => likelihood(effects, tauSquared, restricted)[0];
  if (slope(low) <= 0) return low === 0 ? 0 : at(best);
  if (slope(high) >= 0) return high;
  return high * findRoot((share) => slope(share * high), low / high, 1, 1e-16);
}

/**
 * Between-study variance by one of the published estimators, never below 0.
 * @throws RangeError when there are fewer than two effects or a variance is not positive.
 */
export function tauSquared(effects: readonly Effect[], method: TauMethod): number {
  assertEffects(effects, 2);
  const count = effects.length;
  switch (method) {
    case 'fixed':
      return 0;
    case 'dersimonian-laird':
      return moment(effects);
    case 'hedges': {
      let mean = 0;
      for (const { variance } of effects) mean += variance / count;
      return Math.max(0, plainVariance(effects, count - 1) - mean);
    }
    case 'hunter-schmidt': {
      let weights = 0;
      for (const { variance } of effects) weights += 1 / variance;
      return Math.max(0, (generalisedQ(effects, 0) - count) / weights);
    }
    case 'sidik-jonkman':
      return sidikJonkman(effects);
    case 'maximum-likelihood':
      return likeliest(effects, false);
    case 'restricted-likelihood':
      return likeliest(effects, true);
    case 'empirical-bayes':
    case 'paule-mandel':
      return pauleMandel(effects);
  }
}

/**
 * Interval of tau^2 by the Q profile (Viechtbauer, Statistics in Medicine 26, 2007): the values at which Q reaches the
 * chi-square quantiles of count - 1 degrees of freedom.
 */
export function tauSquaredInterval(effects: readonly Effect[], level = 0.95): Interval {
  assertEffects(effects, 2);
  return profileInterval([effects], effects.length - 1, level);
}

function profileInterval(groups: readonly (readonly Effect[])[], df: number, level: number): Interval {
  assertLevel(level);
  const outside = 0.5 * (1 - level);
  return {
    low: solveQ(groups, chiSquareQuantile(1 - outside, df)),
    high: solveQ(groups, chiSquareQuantile(outside, df)),
  };
}

/** One tau^2 for several groups of effects, with its Q-profile interval. */
export interface PooledTau extends Interval {
  readonly tauSquared: number;
  /** Sum over the groups of studies less one. */
  readonly df: number;
}

/**
 * Between-study variance common to several groups, each with a mean of its own: Paule and Mandel's equation summed,
 * sum of Q_g(tau^2) = sum of (k_g - 1). Groups of one study say nothing and count for nothing.
 * @throws RangeError when no group has two studies.
 */
export function pooledTau(groups: readonly (readonly Effect[])[], level = 0.95): PooledTau {
  let df = 0;
  for (const group of groups) {
    assertEffects(group, 1);
    df += group.length - 1;
  }
  if (df === 0) throw new RangeError('groups must hold one of two studies or more.');
  return { tauSquared: solveQ(groups, df), df, ...profileInterval(groups, df, level) };
}
