/** A class of factors shares one scatter within studies and one spread between them. */
import type { FactorClassRecord } from '../records/schema.ts';
import { type Observation, type Reading, observe } from './observation.ts';
import { type PooledCv, pooledCv } from './effect-sizes.ts';
import { pooledTau } from './between-studies.ts';
import { normalHazard } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';

/** Values of a class as the model uses them, with the intervals that `/model/` shows. */
export interface ClassValue {
  /** Within-study coefficient of variation, as a share of one. */
  cv: number;
  /** Degrees of freedom behind it; null where it is assumed. */
  cvDf: number | null;
  /** 95 % interval of it; null where it is assumed. */
  cvInterval: readonly [number, number] | null;
  /** Used where a series of unknown size, or of ten and more, states no scatter. */
  ceiling: number;
  /** Spread between studies: sd of ln. */
  tau: number;
  /** 95 % interval of it by the Q profile; null where it is assumed. */
  tauInterval: readonly [number, number] | null;
  /** Where tau comes from. */
  tauFrom: 'estimated' | 'borrowed' | 'assumed';
}

/** From this many pulls on, a series' own scatter is used instead of its class's. */
export const OWN_SCATTER_FROM = 10;

/**
 * Coefficient of variation to use for one series. Ten pulls or more that state their scatter: their own. Fewer: the
 * class's. A scatter of unknown n: the larger of the two. No scatter with ten pulls or more, or no n either: the
 * ceiling, so that dropping n or sd from a record never narrows anything. (Assumed; reasons on `/model/`.)
 */
export function scatterOf(series: Pick<Observation, 'n' | 'cv'>, group: Pick<ClassValue, 'cv' | 'ceiling'>): number {
  const { n, cv } = series;
  if (n === null) return cv === null ? group.ceiling : Math.max(cv, group.cv);
  if (n < OWN_SCATTER_FROM) return group.cv;
  return cv ?? group.ceiling;
}

/** Variance of a series' mean of ln: cv^2 / n; an unknown n counts as one pull. */
export function meanVariance(series: Pick<Observation, 'n' | 'cv'>, group: Pick<ClassValue, 'cv' | 'ceiling'>): number {
  return scatterOf(series, group) ** 2 / (series.n ?? 1);
}

/**
 * Mean of ln and its variance. Where some pulls ended with another part giving way, they say "at least": the mean is then
 * the most likely one for lognormal pieces with the scatter of the class, the variance from the curvature there.
 */
export function centre(series: Observation, group: Pick<ClassValue, 'cv' | 'ceiling'>): { mean: number; variance: number } {
  const { pulls } = series;
  if (!pulls) return { mean: series.logMean, variance: meanVariance(series, group) };
  const scatter = scatterOf(series, group);
  return censoredMean(pulls.broken, pulls.held, scatter);
}

/**
 * Most likely mean of normals with a known sd when some are known only to exceed a value, and its variance.
 * @throws RangeError when nothing broke: bounds alone have no most likely mean.
 */
export function censoredMean(broken: readonly number[], held: readonly number[], sd: number): { mean: number; variance: number } {
  if (broken.length === 0) throw new RangeError('broken must not be empty: bounds alone give no mean');
  const slope = (mean: number): number => broken.reduce((sum, y) => sum + (y - mean) / sd, 0) + held.reduce((sum, y) => sum + normalHazard((y - mean) / sd), 0);
  const low = Math.min(...broken);
  let high = Math.max(...broken, ...held) + sd;
  while (slope(high) > 0) high += high - low;
  const mean = findRoot(slope, low, high);
  const information = broken.length + held.reduce((sum, y) => {
    const z = (y - mean) / sd;
    const hazard = normalHazard(z);
    return sum + hazard * (hazard - z);
  }, 0);
  return { mean, variance: (sd * sd) / information };
}

/** One study's estimate: series of one study in one configuration are one number. */
export interface StudyEstimate {
  study: string;
  figures: string[];
  /** Mean of ln (kN, or a ratio). */
  mean: number;
  /** Variance of that mean. */
  variance: number;
  /** Squared scatter of pieces. */
  scatter2: number;
}

/** Merges observations by study, weighting by the variance of each mean. */
export function byStudy(observations: readonly Observation[], group: Pick<ClassValue, 'cv' | 'ceiling'>): StudyEstimate[] {
  const studies = new Map<string, Observation[]>();
  for (const each of observations) studies.set(each.study, [...(studies.get(each.study) ?? []), each]);
  return [...studies].map(([study, series]) => {
    let weight = 0;
    let mean = 0;
    let scatter2 = 0;
    for (const each of series) {
      const own = centre(each, group);
      const w = 1 / own.variance;
      weight += w;
      mean += w * own.mean;
      scatter2 += w * scatterOf(each, group) ** 2;
    }
    return { study, figures: series.map((s) => s.figure), mean: mean / weight, variance: 1 / weight, scatter2: scatter2 / weight };
  });
}

/**
 * Values of every class. `borrowed` tau is that of the named class.
 * Throws a RangeError that names the class when a figure it lists cannot be read, or when it borrows in a circle.
 */
export function classValues(
  classes: Readonly<Record<string, FactorClassRecord>>,
  figures: Readonly<Record<string, Reading>>,
): Record<string, ClassValue> {
  const read = (id: string, name: string): Observation => {
    const figure = figures[id];
    const seen = figure && observe(figure);
    if (!seen) throw new RangeError(`class ${name}: figure ${id} gives no number that may feed`);
    return seen;
  };
  const values: Record<string, ClassValue> = {};
  const value = (name: string, asking: readonly string[]): ClassValue => {
    const known = values[name];
    if (known) return known;
    const record = classes[name];
    if (!record) throw new RangeError(`class ${asking.at(-1) ?? ''}: borrows from ${name}, which is no class`);
    if (asking.includes(name)) throw new RangeError(`class ${name}: borrows in a circle (${[...asking, name].join(' < ')})`);
    let pooled: PooledCv | null = null;
    if ('from' in record.cv) {
      pooled = pooledCv(record.cv.from.map((id) => {
        const seen = read(id, name);
        if (seen.cv === null || seen.n === null || seen.n < 2) throw new RangeError(`class ${name}: figure ${id} states no scatter with its n`);
        return { cv: seen.cv, n: seen.n };
      }));
    }
    const cv = pooled ? pooled.cv : (record.cv as { assumed: number }).assumed;
    const ceiling = Math.max(record.ceiling.cv, cv);
    let tau: number;
    let tauInterval: ClassValue['tauInterval'] = null;
    let tauFrom: ClassValue['tauFrom'] = 'assumed';
    if ('groups' in record.tau) {
      const counted = (id: string): Observation => {
        const seen = read(id, name);
        // An unknown n would widen the error within the study and so narrow what is left between studies.
        if (seen.n === null) throw new RangeError(`class ${name}: figure ${id} does not say how many pulls; tau needs its n`);
        return seen;
      };
      const scatter = { cv, ceiling };
      const estimate = pooledTau(record.tau.groups.map((group) => {
        // A share has the errors of both its sides. The record check sees to it that each is another study's.
        const shares = group.filter((each) => typeof each !== 'string').map(({ figure, over }) => {
          const part = centre(counted(figure), scatter);
          const whole = centre(counted(over), scatter);
          return { value: part.mean - whole.mean, variance: part.variance + whole.variance };
        });
        const means = byStudy(group.filter((each) => typeof each === 'string').map(counted), scatter);
        return [...means.map((study) => ({ value: study.mean, variance: study.variance })), ...shares];
      }));
      tau = Math.sqrt(estimate.tauSquared);
      tauInterval = [Math.sqrt(estimate.low), Math.sqrt(estimate.high)];
      tauFrom = 'estimated';
    } else if ('borrowed' in record.tau) {
      const lender = value(record.tau.borrowed, [...asking, name]);
      tau = lender.tau;
      tauInterval = lender.tauInterval;
      tauFrom = 'borrowed';
    } else tau = record.tau.assumed;
    values[name] = { cv, cvDf: pooled?.df ?? null, cvInterval: pooled && [pooled.low, pooled.high], ceiling, tau, tauInterval, tauFrom };
    return values[name];
  };
  for (const name of Object.keys(classes)) value(name, []);
  return values;
}
