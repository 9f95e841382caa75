/** From studies of one configuration to what the model knows of the next rig. */
import { NINETY } from './observation.ts';
import type { StudyEstimate } from './classes.ts';
import { tQuantile95 } from '../numerics/t-95.ts';
import { pauleMandel, pool } from './random-effects.ts';

/** Mean and spreads of a factor, on the scale of ln. */
export interface Pooled {
  mu: number;
  /** Variance of what we do not know of the mean of a new laboratory's pieces. */
  knowledge2: number;
  /** Variance between pieces. */
  specimen2: number;
  /** True where these studies differ by more than their class does. */
  disagree: boolean;
}

/** From this many studies on, the spread between them is their own. */
export const OWN_TAU_FROM = 5;

/**
 * Pools studies into the mean of a rig that none of them built.
 *
 * Fewer than five studies: tau of the class, raised to what these studies show (Paule-Mandel) where they differ more;
 * knowledge variance tau^2 + se^2. Five or more: tau by Paule-Mandel, se by Hartung-Knapp with its multiplier floored
 * at one, and the 5 % point of the t prediction interval with k - 2 degrees of freedom sets the knowledge spread.
 * The raise is ours: without it a study that contradicts the others would make us surer.
 *
 * Throws a RangeError when there is no study.
 */
export function poolStudies(studies: readonly StudyEstimate[], classTau: number): Pooled {
  if (studies.length === 0) throw new RangeError('studies must not be empty');
  const effects = studies.map((study) => ({ value: study.mean, variance: study.variance }));
  const own2 = studies.length > 1 ? pauleMandel(effects) : 0;
  const few = studies.length < OWN_TAU_FROM;
  const tau2 = few ? Math.max(classTau ** 2, own2) : own2;
  const pooled = pool(effects, tau2);
  let weight = 0;
  let specimen2 = 0;
  for (const study of studies) {
    const w = 1 / (tau2 + study.variance);
    weight += w;
    specimen2 += w * study.scatter2;
  }
  const knowledge2 = few ? tau2 + pooled.se ** 2 : (tQuantile95(studies.length - 2) / NINETY) ** 2 * (tau2 + pooled.seFloored ** 2);
  return { mu: pooled.mean, knowledge2, specimen2: specimen2 / weight, disagree: own2 > classTau ** 2 };
}
