/**
 * The model scored on what was published: each study is left out in turn, and its mean is predicted from the others as
 * if it had never been made. Pure.
 *
 * What may be predicted is a case: a factor's configuration (one width, one bearing), or a group from which a class takes
 * its spread between studies, in which two studies or more have numbers. Of every two cases with the same studies and
 * pulls in common one counts, the factor's first.
 *
 * All logarithms are natural. Forces in kN; a factor that multiplies another is predicted as the share that it is.
 */
import { sigmaLogFromCv } from '../numerics/lognormal.ts';
import { INV_SQRT_2PI, normalQuantile } from '../numerics/normal.ts';
import type { Compared, FactorClassRecord, FactorRecord, RigConditions } from '../records/schema.ts';
import { SAME_BEARING_MM } from './bearing-place.ts';
import { type ClassValue, type StudyEstimate, byStudy, centre, classValues } from './classes.ts';
import { sameWidth } from './factor.ts';
import { NINETY, type Observation, type Reading, observe } from './observation.ts';
import { poolStudies } from './pool.ts';

/**
 * The guess that the model must beat: half of the straight strength in the middle, and a coefficient of variation that
 * was fixed before any score was computed. Assumed; the reason stands on `/model/`.
 */
export const BASELINE = { share: 0.5, cv: 0.35 } as const;

/** A figure as scoring reads it. */
export interface ScoredFigure extends Reading {
  /** What it is a share of, or is to be compared with: a figure's address or a named denominator. */
  of?: string | undefined;
  rig: Pick<RigConditions, 'form' | 'method' | 'widthMm' | 'diameterMm' | 'bearingMm' | 'legs'>;
}

export interface ScoredRecords {
  factors: Readonly<Record<string, FactorRecord>>;
  classes: Readonly<Record<string, FactorClassRecord>>;
  figures: Readonly<Record<string, ScoredFigure>>;
}

/** Lower and upper end. */
export type Ends = readonly [number, number];

/** One study, predicted from the others of its case. */
export interface Prediction {
  /** The study left out, and its figures in this case. */
  study: string;
  figures: string[];
  /** Figures that it was predicted from. */
  from: string[];
  /** Spread between studies that was used, sd of ln, estimated without the study. */
  tau: number;
  /** What was measured, kN: for a share of a straight strength, that share times the study's own straight strength. */
  observed: number;
  /** Half of such means were expected below. */
  middle: number;
  fifty: Ends;
  ninety: Ends;
  insideFifty: boolean;
  insideNinety: boolean;
  /** Upper end of the 90 % interval over its lower end. */
  widthRatio: number;
  /** Natural logarithm of the density that was predicted for ln of the mean, at what was measured. */
  logScore: number;
  /** The same for the fixed guess; null where nobody printed a straight strength, and for straight pulls themselves. */
  baseline: { /** kN. */ straight: number; figure: string; /** Whether the straight strength is another study's. */ lent: boolean; logScore: number } | null;
}

/** Where studies can be set against each other. */
export interface Case {
  /** Name that no other case has: the factor or the class, with a number. */
  id: string;
  factor: string | null;
  class: string;
  /** What each study can be predicted as; in the order of the records. */
  predictions: Prediction[];
  /** Studies that could not be predicted, since nothing else shows the spread between studies of the class. */
  unpredicted: { study: string; figures: string[] }[];
}

/** A configuration that feeds the model and that one study alone has measured. */
export interface Alone { factor: string; study: string; figures: string[] }

export interface Scores {
  cases: Case[];
  alone: Alone[];
  summary: ScoreSummary;
}

/** Counts over all predictions, and means of the log scores over those that have both. */
export interface ScoreSummary {
  predictions: number;
  insideFifty: number;
  insideNinety: number;
  /** Studies in cases that could not be predicted for want of a spread. */
  unpredicted: number;
  /** Configurations with one study. */
  alone: number;
  /** Predictions with a fixed guess beside them; the two means are null where there is none. */
  compared: number;
  meanLogScore: number | null;
  meanBaseline: number | null;
  /** In how many of those the model's log score is the higher. */
  better: number;
}

/** Members of a case: figures, or figures as a share of another. */
interface Setting { id: string; factor: string | null; class: string; members: Compared[] }

const partOf = (member: Compared): string => (typeof member === 'string' ? member : member.figure);
const namesOf = (members: readonly Compared[]): string[] => members.flatMap((each) => (typeof each === 'string' ? [each] : [each.figure, each.over]));

function figureOf({ figures }: Pick<ScoredRecords, 'figures'>, id: string): ScoredFigure {
  const figure = figures[id];
  if (!figure) throw new RangeError(`figures: none has the address ${id}`);
  return figure;
}

/** Reads a figure that a record lists as feeding. */
function read(records: Pick<ScoredRecords, 'figures'>, id: string): Observation {
  const seen = observe(figureOf(records, id));
  if (!seen) throw new RangeError(`figures: ${id} gives no number that may feed`);
  return seen;
}

const studyOf = (records: ScoredRecords, member: Compared): string => figureOf(records, partOf(member)).study;
const studiesOf = (records: ScoredRecords, members: readonly Compared[]): string[] => [...new Set(members.map((member) => studyOf(records, member)))];

/** Splits a sorted list wherever `same` says that the next is no longer the same as the first. */
function runs<T>(sorted: readonly T[], same: (first: T, next: T) => boolean): T[][] {
  const found: T[][] = [];
  for (const each of sorted) {
    const last = found.at(-1);
    if (last && same(last[0] as T, each)) last.push(each);
    else found.push([each]);
  }
  return found;
}

/**
 * Configurations of a factor as it matches them: readings on one bearing (where it runs along the bearing) and of one
 * width, counted from the thinnest and from the narrowest. What is carried over to another width is no configuration. A
 * figure whose width or bearing is not known matches nothing and stands in none.
 */
function configurations(records: ScoredRecords, id: string, factor: FactorRecord): Setting[] {
  const seen = factor.from.map((figure) => {
    const { rig } = figureOf(records, figure);
    const taken = factor.taken.find((one) => one.figure === figure);
    return { figure, form: rig.form ?? 'sewn-loop', width: rig.widthMm ?? rig.diameterMm ?? taken?.diameterMm, bearing: rig.bearingMm ?? taken?.bearingMm };
  });
  const along = factor.along !== undefined;
  const known = seen.filter((one) => one.width !== undefined && (!along || one.bearing !== undefined)) as (typeof seen[number] & { width: number })[];
  const byBearing = along ? runs([...known].sort((a, b) => Number(a.bearing) - Number(b.bearing)), (a, b) => Number(b.bearing) - Number(a.bearing) <= SAME_BEARING_MM) : [known];
  const found = byBearing.flatMap((cluster) => runs([...cluster].sort((a, b) => a.width - b.width), (a, b) => sameWidth(a.form, a.width, b.width)));
  return found.map((group, i) => ({ id: `${id}-${i + 1}`, factor: id, class: factor.class, members: group.map((one) => one.figure) }));
}

/** Whether two settings are one: as many studies, each of them with pulls in common. */
function isOne(records: ScoredRecords, a: Setting, b: Setting): boolean {
  const studies = studiesOf(records, a.members);
  if (studies.length !== studiesOf(records, b.members).length) return false;
  return studies.every((study) => a.members.some((member) => studyOf(records, member) === study && b.members.some((other) => partOf(other) === partOf(member))));
}

/** All settings that have numbers, each once: those of factors first, then the groups of the classes. */
function settings(records: ScoredRecords): Setting[] {
  const ofFactors = Object.entries(records.factors).flatMap(([id, factor]) => configurations(records, id, factor));
  const ofClasses = Object.entries(records.classes).flatMap(([id, { tau }]) =>
    ('groups' in tau ? tau.groups.map((members, i): Setting => ({ id: `${id}-${i + 1}`, factor: null, class: id, members })) : []));
  const found: Setting[] = [];
  for (const each of [...ofFactors, ...ofClasses]) if (!found.some((other) => isOne(records, other, each))) found.push(each);
  return found;
}

/**
 * Values of the classes as they would be had some figures not been published. A group that loses a side still says what
 * its other studies say. A scatter with no series left is the ceiling of its class. A class whose spread has no group of
 * two studies left has no value, and neither has one that borrows from it: we then have nothing to predict with, and put
 * no guess in its place.
 */
export function classesWithout({ classes, figures }: Omit<ScoredRecords, 'factors'>, leftOut: ReadonlySet<string>): Partial<Record<string, ClassValue>> {
  const studies = (group: readonly Compared[]): number => new Set(group.map((each) => figureOf({ figures }, partOf(each)).study)).size;
  const rest: Record<string, FactorClassRecord> = {};
  for (const [id, record] of Object.entries(classes)) {
    let { cv, tau } = record;
    if ('from' in cv) {
      const from = cv.from.filter((figure) => !leftOut.has(figure));
      const counted = from.some((figure) => (read({ figures }, figure).n ?? 0) > 1);
      cv = counted ? { ...cv, from } : { assumed: record.ceiling.cv, why: 'the ceiling of the class' };
    }
    if ('groups' in tau) {
      const groups = tau.groups.map((group) => group.filter((each) => !namesOf([each]).some((figure) => leftOut.has(figure)))).filter((group) => group.length > 0);
      if (!groups.some((group) => studies(group) > 1)) continue;
      tau = { ...tau, groups };
    }
    rest[id] = { ...record, cv, tau };
  }
  const hasSpread = (id: string): boolean => {
    const tau = rest[id]?.tau;
    return tau !== undefined && (!('borrowed' in tau) || hasSpread(tau.borrowed));
  };
  return classValues(Object.fromEntries(Object.entries(rest).filter(([id]) => hasSpread(id))), figures);
}

/** What each study of some members says, and ln of the straight strength that a share is of (0 for a force). */
function estimates(records: ScoredRecords, members: readonly Compared[], group: ClassValue): (StudyEstimate & { whole: number })[] {
  const forces = byStudy(members.filter((each) => typeof each === 'string').map((id) => read(records, id)), group);
  const shares = members.filter((each) => typeof each !== 'string').map(({ figure, over }) => {
    const part = centre(read(records, figure), group);
    const whole = centre(read(records, over), group);
    // Scatter of pieces is not asked for here: a mean is predicted, and its error is in the variance.
    return { study: studyOf(records, figure), figures: [figure, over], mean: part.mean - whole.mean, variance: part.variance + whole.variance, scatter2: 0, whole: whole.mean };
  });
  return [...forces.map((one) => ({ ...one, whole: 0 })), ...shares];
}

const LOG_DENSITY_AT_MIDDLE = Math.log(INV_SQRT_2PI);
/** ln of the density of a normal with this mean and sd, at `x`. */
function logDensity(x: number, mean: number, sd: number): number {
  const z = (x - mean) / sd;
  return LOG_DENSITY_AT_MIDDLE - Math.log(sd) - 0.5 * z * z;
}

/** Log score of the fixed guess for a mean of `observed` kN of textile that bears `straight` kN pulled straight. */
export function baselineScore(observed: number, straight: number): number {
  return logDensity(Math.log(observed), Math.log(BASELINE.share * straight), sigmaLogFromCv(BASELINE.cv));
}

/** What can feed and is no share is a force. */
const isForce = ({ unit }: ScoredFigure): boolean => unit !== 'ratio' && unit !== 'percent';

/**
 * Straight strength that a figure names as what it is to be compared with, kN, for as many legs as the figure has. Null
 * where it names none, where that is no measured force, and where the legs of either are not known.
 */
function straightOf(records: ScoredRecords, id: string): { straight: number; figure: string } | null {
  const { of, rig } = figureOf(records, id);
  const whole = of === undefined ? undefined : records.figures[of];
  const seen = whole && isForce(whole) ? observe(whole) : null;
  if (!seen || !whole?.rig.legs || !rig.legs) return null;
  return { straight: (Math.exp(seen.logMean) * rig.legs) / whole.rig.legs, figure: whole.id };
}

/** Straight strength for the fixed guess: the study's own, else that of those it is compared with. */
function baselineOf(records: ScoredRecords, own: readonly Compared[], rest: readonly Compared[], observed: number): Prediction['baseline'] {
  const ids = own.map(partOf);
  // A straight pull has no straight strength but itself.
  if (ids.some((id) => figureOf(records, id).rig.method === 'straight' || !isForce(figureOf(records, id)))) return null;
  const first = (members: readonly string[]) => members.map((id) => straightOf(records, id)).find((one) => one !== null) ?? null;
  const mine = first(ids);
  const used = mine ?? first(rest.map(partOf));
  return used && { ...used, lent: mine === null, logScore: baselineScore(observed, used.straight) };
}

/**
 * One study predicted from the others of its case: ln of its mean is normal about their pooled mean, with the knowledge
 * variance of the pool and the variance of the study's own mean (scatter^2 / n) on top. The class's spread between
 * studies and its scatter are estimated without the study's figures in this case. Other figures of the same laboratory
 * stay, so the score is a little kinder than a laboratory that nobody had heard of would be. Null where the class then
 * has no spread.
 */
function predict(records: ScoredRecords, setting: Setting, study: string): Prediction | null {
  const own = setting.members.filter((member) => studyOf(records, member) === study);
  const rest = setting.members.filter((member) => studyOf(records, member) !== study);
  const group = classesWithout(records, new Set(namesOf(own)))[setting.class];
  if (!group) return null;
  const pooled = poolStudies(estimates(records, rest, group), group.tau);
  const [seen] = estimates(records, own, group) as [StudyEstimate & { whole: number }];
  const sd = Math.sqrt(pooled.knowledge2 + seen.variance);
  const inKn = (z: number): number => Math.exp(pooled.mu + seen.whole + z * sd);
  const ends = (z: number): Ends => [inKn(-z), inKn(z)];
  const observed = Math.exp(seen.mean + seen.whole);
  const away = Math.abs(seen.mean - pooled.mu);
  const half = normalQuantile(0.75);
  return {
    study, figures: namesOf(own), from: namesOf(rest), tau: group.tau,
    observed, middle: inKn(0), fifty: ends(half), ninety: ends(NINETY),
    insideFifty: away <= half * sd, insideNinety: away <= NINETY * sd,
    widthRatio: Math.exp(2 * NINETY * sd),
    logScore: logDensity(seen.mean, pooled.mu, sd),
    baseline: baselineOf(records, own, rest, observed),
  };
}

function summaryOf(cases: readonly Case[], alone: readonly Alone[]): ScoreSummary {
  const all = cases.flatMap((one) => one.predictions);
  const both = all.flatMap(({ logScore, baseline }) => (baseline ? [{ model: logScore, guess: baseline.logScore }] : []));
  const mean = (values: readonly number[]): number | null => (values.length === 0 ? null : values.reduce((sum, x) => sum + x, 0) / values.length);
  return {
    predictions: all.length,
    insideFifty: all.filter((one) => one.insideFifty).length,
    insideNinety: all.filter((one) => one.insideNinety).length,
    unpredicted: cases.reduce((sum, one) => sum + one.unpredicted.length, 0),
    alone: alone.length,
    compared: both.length,
    meanLogScore: mean(both.map((one) => one.model)),
    meanBaseline: mean(both.map((one) => one.guess)),
    better: both.filter((one) => one.model > one.guess).length,
  };
}

/**
 * Scores the model on some records. Throws a RangeError that names the figure when a record lists one that cannot be read.
 */
export function score(records: ScoredRecords): Scores {
  const all = settings(records).map((setting) => ({ setting, studies: studiesOf(records, setting.members) }));
  const cases = all.filter(({ studies }) => studies.length > 1).map(({ setting, studies }): Case => {
    const predictions: Prediction[] = [];
    const unpredicted: Case['unpredicted'] = [];
    for (const study of studies) {
      const found = predict(records, setting, study);
      if (found) predictions.push(found);
      else unpredicted.push({ study, figures: namesOf(setting.members.filter((member) => studyOf(records, member) === study)) });
    }
    return { id: setting.id, factor: setting.factor, class: setting.class, predictions, unpredicted };
  });
  const alone = all.flatMap(({ setting, studies }): Alone[] =>
    (setting.factor !== null && studies.length === 1 ? [{ factor: setting.factor, study: studies[0] as string, figures: namesOf(setting.members) }] : []));
  return { cases, alone, summary: summaryOf(cases, alone) };
}
