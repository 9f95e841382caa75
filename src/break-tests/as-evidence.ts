/**
 * A reader's own series beside the published evidence ("your tests"). It enters in two ways: as an observation like any
 * figure's, for the pool of a rig that somebody else builds; and as what is known of the reader's own rig, where no
 * spread between laboratories stands in between.
 */
import { type ClassValue, censoredMean } from '../evidence/classes.ts';
import { NINETY, type Observation } from '../evidence/observation.ts';
import type { Pooled } from '../evidence/pool.ts';
import { sampleCv, sampleSd } from '../numerics/descriptive.ts';
import { sigmaLogFromCv } from '../numerics/lognormal.ts';
import { tQuantile95 } from '../numerics/t-95.ts';
import { assertForces } from './checks.ts';
import { fitLognormal } from './fit-lognormal.ts';

/** Pulls of one rig by the reader, in kN. */
export interface OwnSeries {
  /** Name under which it stands; its study is the same, so that all series of a reader under one name are one study. */
  readonly name: string;
  readonly brokenKn: readonly number[];
  /** Pulls in which something else gave way first: the strength is at least this. */
  readonly atLeastKn?: readonly number[];
  /** True where all slings came from one lot, and the devices from one batch. */
  readonly oneLot: boolean;
}

/** From this many breaks on a reader's own scatter is used for the reader's own rig. */
export const OWN_RIG_SCATTER_FROM = 5;

/**
 * The series as one observation. Beside published figures it is pooled like them: with the scatter of its class below ten
 * pulls, and with the spread between laboratories, for the rig of anybody else.
 * @throws RangeError when there is no break or a force is not positive.
 */
export function asObservation(series: OwnSeries): Observation {
  assertForces(series.brokenKn, 1, 'brokenKn');
  assertForces(series.atLeastKn ?? [], 0, 'atLeastKn');
  const broken = series.brokenKn.map(Math.log);
  const held = (series.atLeastKn ?? []).map(Math.log);
  const n = broken.length;
  const seen: Observation = {
    figure: series.name,
    study: series.name,
    logMean: broken.reduce((sum, x) => sum + x, 0) / n,
    n,
    cv: n > 1 ? sampleCv(series.brokenKn) : null,
  };
  return held.length > 0 ? { ...seen, pulls: { broken, held } } : seen;
}

/** What the series says of the reader's next rig of the same kind, on the scale of ln. */
export interface OwnRig extends Omit<Pooled, 'disagree'> {
  /** Whether the scatter is the series' own or that of the class. */
  readonly scatterFrom: 'series' | 'class';
  /** One lot: the true spread of pieces bought later is likely wider than this says. */
  readonly understated: boolean;
}

/**
 * The reader's own rig. No tau: the laboratory is the reader's own. What is added instead is `rigToRig`, the sd of ln
 * between one built rig and the next beyond the scatter of pulls (assumed; the caller's record gives it), as spread of
 * pieces: 0 where each pull had a rig of its own, since the pulls then scatter by it already.
 *
 * Below five breaks: scatter of the class, knowledge scatter^2 / n as for any figure. From five on: the sd of ln of the
 * pulls themselves, and knowledge so wide that the 5 % point of the next pull is that of Student's t prediction,
 * t s sqrt(1 + 1/n): a scatter from few pulls is itself uncertain. Pulls of one lot never count as scattering less than
 * the class, which saw several lots. Censored pulls: most likely values, sd by maximum likelihood times
 * sqrt(breaks / (breaks - 1)).
 * @throws RangeError when nothing broke, a force is not positive, or rigToRig is negative.
 */
export function ownRig(series: OwnSeries, group: Pick<ClassValue, 'cv'>, rigToRig: number): OwnRig {
  assertForces(series.brokenKn, 1, 'brokenKn');
  assertForces(series.atLeastKn ?? [], 0, 'atLeastKn');
  if (!(rigToRig >= 0 && rigToRig < Infinity)) throw new RangeError(`rigToRig must be 0 or more (got ${rigToRig}).`);
  if (!(group.cv > 0 && group.cv < Infinity)) throw new RangeError(`group.cv must be positive (got ${group.cv}).`);
  const broken = series.brokenKn.map(Math.log);
  const held = (series.atLeastKn ?? []).map(Math.log);
  const n = broken.length;
  const ofClass = sigmaLogFromCv(group.cv);
  const scatters = broken.some((x) => x !== broken[0]);
  const own = n >= OWN_RIG_SCATTER_FROM && scatters;
  let scatter = ofClass;
  if (own) {
    const seen =
      held.length > 0
        ? fitLognormal({ broken: series.brokenKn, atLeast: series.atLeastKn ?? [] }).sigmaLog * Math.sqrt(n / (n - 1))
        : sampleSd(broken);
    scatter = series.oneLot ? Math.max(seen, ofClass) : seen;
  }
  const { mean, variance } = censoredMean(broken, held, scatter);
  const share = variance / (scatter * scatter);
  // Student's t with one degree of freedom fewer than breaks, where the scatter is the pulls' own and not the class's.
  const widen = own && scatter !== ofClass ? (tQuantile95(n - 1) / NINETY) ** 2 : 1;
  return {
    mu: mean,
    knowledge2: scatter * scatter * (widen * (1 + share) - 1),
    specimen2: scatter * scatter + rigToRig * rigToRig,
    scatterFrom: own && scatter !== ofClass ? 'series' : 'class',
    understated: series.oneLot,
  };
}
