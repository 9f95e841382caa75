/**
 * A random-effects mean: studies estimate one quantity, each with its own error, and differ among themselves by more than
 * their errors. Between-study variance is tau^2; weights are 1 / (v_i + tau^2). What the page needs of pooling; the other
 * published estimators stand in between-studies.ts.
 * Reference values: the `ma-` checks of tests/reference/published-checks.json, each with its source.
 */
import { normalQuantile } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';
import { tQuantile } from '../numerics/student-t.ts';
import type { Effect } from './effect-sizes.ts';

/** Ends of an interval. */
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

/** Throws a RangeError when there are fewer effects than `least`, or one is not finite with a positive variance. */
export function assertEffects(effects: readonly Effect[], least: number): void {
  if (effects.length < least) throw new RangeError(`effects must hold at least ${least} (got ${effects.length}).`);
  for (let i = 0; i < effects.length; i++) {
    const { value, variance } = effects[i] as Effect;
    if (!Number.isFinite(value)) throw new RangeError(`effects[${i}].value must be finite (got ${value}).`);
    if (!(variance > 0 && variance < Infinity)) {
      throw new RangeError(`effects[${i}].variance must be positive and finite (got ${variance}).`);
    }
  }
}

/** Throws a RangeError when the level does not lie strictly between 0 and 1. */
export function assertLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`level must lie strictly between 0 and 1 (got ${level}).`);
}

/** Weighted mean at tau^2. */
export function meanAt(effects: readonly Effect[], tauSquared: number): number {
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

/** The tau^2 at which summed generalised Q equals `target`; 0 when it is below that at 0 already. */
export function solveQ(groups: readonly (readonly Effect[])[], target: number): number {
  const q = (tauSquared: number): number => {
    let sum = 0;
    for (const group of groups) sum += generalisedQ(group, tauSquared);
    return sum;
  };
  if (q(0) <= target) return 0;
  // Q is at most sum of squares / tau^2, so twice that is beyond the answer.
  let squares = 0;
  for (const group of groups) {
    const mean = meanAt(group, 0);
    for (const { value } of group) squares += (value - mean) ** 2;
  }
  const high = (2 * squares) / target;
  // Scaled by the square so that the tolerance is relative to the answer's own size.
  return high * findRoot((share) => q(share * high) - target, 0, 1, 1e-16);
}

/**
 * Between-study variance by Paule and Mandel (J Res NBS 87, 1982): the root of Q(tau^2) = count - 1, never below 0.
 * @throws RangeError when there are fewer than two effects or a variance is not positive.
 */
export function pauleMandel(effects: readonly Effect[]): number {
  assertEffects(effects, 2);
  return solveQ([effects], effects.length - 1);
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
