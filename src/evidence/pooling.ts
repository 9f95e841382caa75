/**
 * Random-effects pooling: studies estimate one quantity, each with its own error, and differ among themselves by more
 * than their errors. Between-study variance is tau^2; weights are 1 / (v_i + tau^2).
 * Reference values: the `ma-` checks of tests/reference/published-checks.json, each with its source.
 */
import { chiSquareQuantile, chiSquareSurvival } from '../numerics/gamma.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';
import { tQuantile } from '../numerics/student-t.ts';
import type { Effect } from './effect-sizes.ts';

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

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A pooled mean at a given tau^2. */
export interface Pooled {
  /** Number of studies. */
  readonly count: number;
  readonly tauSquared: number;
  readonly mean: number;
  /** 1 / sqrt(sum of weights). */
  readonly se: number;
  /** Hartung-Knapp's q: weighted squares about the mean over count - 1. 1 for a single study. */
  readonly multiplier: number;
  /** sqrt(q) se. */
  readonly seHartungKnapp: number;
  /** sqrt(max(1, q)) se: never narrower than `se` (Rover, Knapp and Friede, BMC Med Res Methodol 15, 2015). */
  readonly seFloored: number;
}

function assertEffects(effects: readonly Effect[], least: number): void {
  if (effects.length < least) throw new RangeError(`effects must hold at least ${least} (got ${effects.length}).`);
  for (let i = 0; i < effects.length; i++) {
    const { value, variance } = effects[i] as Effect;
    if (!Number.isFinite(value)) throw new RangeError(`effects[${i}].value must be finite (got ${value}).`);
    if (!(variance > 0 && variance < Infinity)) {
      throw new RangeError(`effects[${i}].variance must be positive and finite (got ${variance}).`);
    }
  }
}

function assertLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`level must lie strictly between 0 and 1 (got ${level}).`);
}

/** Weighted mean at tau^2. */
function meanAt(effects: readonly Effect[], tauSquared: number): number {
  let weights = 0;
  let sum = 0;
  for (const { value, variance } of effects) {
    const weight = 1 / (variance + tauSquared);
    weights += weight;
    sum += weight * value;
  }
  return sum / weights;
}

/** Generalised Q at tau^2: weighted squares about the weighted mean. Falls as tau^2 grows. */
export function generalisedQ(effects: readonly Effect[], tauSquared: number): number {
  const mean = meanAt(effects, tauSquared);
  let sum = 0;
  for (const { value, variance } of effects) sum += (value - mean) ** 2 / (variance + tauSquared);
  return sum;
}

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

/** The tau^2 at which summed generalised Q equals `target`; 0 when it is below that at 0 already. */
function solveQ(groups: readonly (readonly Effect[])[], target: number): number {
  const q = (tauSquared: number): number => {
    let sum = 0;
    for (const group of groups) sum += generalisedQ(group, tauSquared);
    return sum;
  };
  if (q(0) <= target) return 0;
  // Q is at most sum of squares / tau^2, so this end is beyond the answer.
  let squares = 0;
  for (const group of groups) {
    const mean = meanAt(group, 0);
    for (const { value } of group) squares += (value - mean) ** 2;
  }
  let high = squares / target;
  while (q(high) > target) high *= 2;
  // Scaled by the square so that the tolerance is relative to the answer's own size.
  return high * findRoot((share) => q(share * high) - target, 0, 1, 1e-16);
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
  if (scale === 0) return 0;
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
      return solveQ([effects], count - 1);
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

/**
 * Pooled mean at a given tau^2.
 * @throws RangeError when there are no effects, a variance is not positive, or tau^2 is negative.
 */
export function pool(effects: readonly Effect[], tauSquared: number): Pooled {
  assertEffects(effects, 1);
  if (!(tauSquared >= 0 && tauSquared < Infinity)) {
    throw new RangeError(`tauSquared must be 0 or more (got ${tauSquared}).`);
  }
  const count = effects.length;
  let weights = 0;
  for (const { variance } of effects) weights += 1 / (variance + tauSquared);
  const se = 1 / Math.sqrt(weights);
  const multiplier = count === 1 ? 1 : generalisedQ(effects, tauSquared) / (count - 1);
  return {
    count,
    tauSquared,
    mean: meanAt(effects, tauSquared),
    se,
    multiplier,
    seHartungKnapp: Math.sqrt(multiplier) * se,
    seFloored: Math.sqrt(Math.max(1, multiplier)) * se,
  };
}

/** `normal`: se and normal quantile. The other two: t quantile with count - 1 degrees of freedom. */
export type MeanIntervalKind = 'normal' | 'hartung-knapp' | 'hartung-knapp-floored';

function around(centre: number, half: number): Interval {
  return { low: centre - half, high: centre + half };
}

function tFactor(level: number, df: number): number {
  if (df < 1) throw new RangeError(`pooled.count is too small for this interval (got ${df} degrees of freedom).`);
  return tQuantile(0.5 * (1 + level), df);
}

/**
 * Interval of the pooled mean.
 * @throws RangeError when the kind needs more studies.
 */
export function meanInterval(pooled: Pooled, kind: MeanIntervalKind, level = 0.95): Interval {
  assertLevel(level);
  if (kind === 'normal') return around(pooled.mean, normalQuantile(0.5 * (1 + level)) * pooled.se);
  const se = kind === 'hartung-knapp' ? pooled.seHartungKnapp : pooled.seFloored;
  return around(pooled.mean, tFactor(level, pooled.count - 1) * se);
}

/**
 * What a further study's true value is predicted with: sqrt(tau^2 + se^2) times a quantile.
 * `normal`: se, normal. `t-2`: se, t with count - 2 (Higgins, Thompson and Spiegelhalter, JRSS A 172, 2009).
 * `hartung-knapp-t-2`, `hartung-knapp-t-1`: Hartung-Knapp's se, t with count - 2 or count - 1.
 * `floored-t-2`, `floored-t-1`: the same with the multiplier floored at 1.
 */
export type PredictionKind =
  | 'normal'
  | 't-2'
  | 'hartung-knapp-t-2'
  | 'hartung-knapp-t-1'
  | 'floored-t-2'
  | 'floored-t-1';

/**
 * Prediction interval for the true value of a further study.
 * @throws RangeError when the kind needs more studies.
 */
export function predictionInterval(pooled: Pooled, kind: PredictionKind, level = 0.95): Interval {
  assertLevel(level);
  const se = kind.startsWith('hartung')
    ? pooled.seHartungKnapp
    : kind.startsWith('floored')
      ? pooled.seFloored
      : pooled.se;
  const factor =
    kind === 'normal'
      ? normalQuantile(0.5 * (1 + level))
      : tFactor(level, pooled.count - (kind.endsWith('-1') ? 1 : 2));
  return around(pooled.mean, factor * Math.sqrt(pooled.tauSquared + se * se));
}
