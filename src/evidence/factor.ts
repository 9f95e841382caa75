/** The value of a factor for one sling on one bearing, or why there is none. */
import type { FactorRecord, Form, Material } from '../records/schema.ts';
import { bearingPlace, SAME_BEARING_MM } from './bearing-place.ts';
import { type CertaintyWord, highest, lowered, lowest } from './certainty.ts';
import { type ClassValue, byStudy } from './classes.ts';
import { NINETY, type Observation } from './observation.ts';
import { sigmaLogFromCv } from '../numerics/lognormal.ts';
import { poolStudies } from './pool.ts';

/** A figure with the conditions that matching looks at. */
export interface FactorFigure {
  id: string;
  /** What it says of a mean and a scatter; null where it may not feed. */
  seen: Observation | null;
  certainty: CertaintyWord | null;
  rig: { widthMm?: number | undefined; diameterMm?: number | undefined; bearingMm?: number | undefined };
}

/** What the factor is asked for. Lengths in mm. */
export interface Sought { material: Material; form: Form; widthMm: number; bearingMm: number }

/** A factor for one rig. */
export interface FactorValue {
  /** Figures used (addresses), the nearest bearing first. */
  figures: string[];
  studies: string[];
  /** Mean of ln. */
  mu: number;
  /** Sd of ln: what we do not know of the mean. */
  knowledge: number;
  /** Sd of ln between pieces. */
  specimen: number;
  certainty: CertaintyWord;
  /** True where a width was carried over with extra spread. */
  bridged: boolean;
  /** True where the bearing lies between two tested ones. */
  between: boolean;
  /** True where no figure feeds it. */
  assumed: boolean;
}

/** A factor as the engine reads it: what it leaves out stands on its page alone. */
export type FactorRead = Omit<FactorRecord, 'leftOut'>;

/** Why a factor has no value. */
export type Miss = 'other-material' | 'other-width' | 'thinner' | 'thicker' | 'no-figure';
export type Found = { value: FactorValue } | { miss: Miss };

const CORD_FORMS: readonly Form[] = ['cord', 'rope'];

/** Whether a figure of one width speaks for a sling of another: less than 2 mm apart (tape), at most 0.5 mm (cord). */
export function sameWidth(form: Form, a: number, b: number): boolean {
  return CORD_FORMS.includes(form) ? Math.abs(a - b) <= 0.5 : Math.abs(a - b) < 2;
}

/** Whether a factor speaks of this sling at all. */
export function applies(record: FactorRead, sought: Pick<Sought, 'material' | 'form'>): boolean {
  const { materials, forms } = record.applies;
  return (!materials || materials.includes(sought.material)) && (!forms || forms.includes(sought.form) || forms.includes('device'));
}

/** One configuration that was tested, and what it gives. */
interface Tested { bearingMm: number; value: FactorValue }

interface Seen extends Observation { widthMm: number | null; bearingMm: number | null; certainty: CertaintyWord }

/** Figures of a factor that can be read. Throws a RangeError that names the factor and the figure otherwise. */
function readings(id: string, record: FactorRead, figures: Readonly<Record<string, FactorFigure>>): Seen[] {
  return record.from.map((address) => {
    const figure = figures[address];
    const seen = figure?.seen;
    if (!figure || !seen) throw new RangeError(`factor ${id}: figure ${address} gives no number that may feed`);
    // What the source implies and does not print costs a step for each condition.
    const taken = record.taken?.find((one) => one.figure === address);
    const steps = Number(taken?.bearingMm !== undefined) + Number(taken?.diameterMm !== undefined);
    return {
      ...seen,
      widthMm: figure.rig.widthMm ?? figure.rig.diameterMm ?? taken?.diameterMm ?? null,
      bearingMm: figure.rig.bearingMm ?? taken?.bearingMm ?? null,
      certainty: lowered(figure.certainty ?? 'very low', steps),
    };
  });
}

/** Groups readings whose bearings are one, thinnest first. */
function clusters(seen: readonly Seen[]): { bearingMm: number; seen: Seen[] }[] {
  const sorted = seen.filter((s) => s.bearingMm !== null).sort((a, b) => (a.bearingMm as number) - (b.bearingMm as number));
  const found: { bearingMm: number; seen: Seen[] }[] = [];
  for (const each of sorted) {
    const last = found.at(-1);
    if (last && (each.bearingMm as number) - last.bearingMm <= SAME_BEARING_MM) last.seen.push(each);
    else found.push({ bearingMm: each.bearingMm as number, seen: [each] });
  }
  return found;
}

/** Pools readings of one configuration. Studies that agree are as sure as the surest; those that do not, as the least. */
function pooled(seen: readonly Seen[], group: ClassValue, bridge: FactorRecord['bridge'] | null): FactorValue {
  const studies = byStudy(seen, group);
  const { mu, knowledge2, specimen2, disagree } = poolStudies(studies, group.tau);
  const extra = bridge ? bridge.spread ** 2 : 0;
  return {
    figures: seen.map((s) => s.figure), studies: studies.map((s) => s.study), mu, knowledge: Math.sqrt(knowledge2 + extra),
    specimen: sigmaLogFromCv(Math.sqrt(specimen2)), certainty: bridge ? 'very low' : (disagree ? lowest : highest)(seen.map((s) => s.certainty)),
    bridged: bridge !== null, between: false, assumed: false,
  };
}

/** ln force of a reading carried over to another diameter: as the squares of the diameters go. */
function bySection(seen: Seen, widthMm: number): Seen {
  const shift = 2 * Math.log(widthMm / (seen.widthMm as number));
  const moved = (logs: readonly number[]): number[] => logs.map((x) => x + shift);
  return {
    ...seen, logMean: seen.logMean + shift,
    ...(seen.pulls ? { pulls: { broken: moved(seen.pulls.broken), held: moved(seen.pulls.held) } } : {}),
  };
}

/** Readings of this width; failing these, those that the factor's bridge carries over. */
function ofWidth(record: FactorRead, sought: Sought, seen: readonly Seen[]): { seen: Seen[]; bridge: FactorRecord['bridge'] | null } {
  const same = seen.filter((s) => s.widthMm !== null && sameWidth(sought.form, s.widthMm, sought.widthMm));
  if (same.length > 0) return { seen: same, bridge: null };
  const { bridge } = record;
  if (!bridge) return { seen: [], bridge: null };
  const [from, to] = bridge.widthMm;
  const inside = (width: number | null): boolean => width !== null && width >= from && width <= to;
  if (!inside(sought.widthMm)) return { seen: [], bridge: null };
  const near = seen.filter((s) => inside(s.widthMm));
  return { seen: bridge.bySection ? near.map((s) => bySection(s, sought.widthMm)) : near, bridge };
}

/**
 * ln strength against ln bearing, between two tested bearings; the class's tau comes on top at interior points, largest
 * midway (assumed: nothing between the ends was ever tested). The line starts where the thinner test stops counting as
 * the same bearing, so that nothing jumps there. Certainty is the lower of the two ends'.
 */
function interpolate(thin: Tested, thick: Tested, bearingMm: number, tau: number): FactorValue {
  const start = thin.bearingMm + SAME_BEARING_MM;
  const f = Math.log(bearingMm / start) / Math.log(thick.bearingMm / start);
  const mix = (a: number, b: number): number => (1 - f) * a + f * b;
  const a = thin.value;
  const b = thick.value;
  return {
    figures: [...(f <= 0.5 ? a : b).figures, ...(f <= 0.5 ? b : a).figures],
    studies: [...new Set([...a.studies, ...b.studies])],
    mu: mix(a.mu, b.mu),
    knowledge: Math.sqrt((1 - f) ** 2 * a.knowledge ** 2 + f ** 2 * b.knowledge ** 2 + 4 * f * (1 - f) * tau ** 2),
    specimen: mix(a.specimen, b.specimen),
    certainty: lowest([a.certainty, b.certainty]),
    bridged: a.bridged || b.bridged,
    between: true,
    assumed: false,
  };
}

/**
 * Value of the factor `id` for one sling on one bearing: the figures of the same width on the same bearing; between two
 * tested bearings the line through them; never beyond. Where no figure feeds it, its assumed range.
 */
export function factorValue(
  id: string,
  record: FactorRead,
  group: ClassValue,
  figures: Readonly<Record<string, FactorFigure>>,
  sought: Sought,
): Found {
  if (!applies(record, sought)) return { miss: 'other-material' };
  if (record.assumed) {
    const { low, high } = record.assumed;
    return {
      value: {
        figures: [], studies: [], mu: (Math.log(low) + Math.log(high)) / 2, knowledge: Math.log(high / low) / (2 * NINETY),
        specimen: sigmaLogFromCv(group.cv), certainty: 'very low', bridged: false, between: false, assumed: true,
      },
    };
  }
  const seen = readings(id, record, figures);
  if (seen.length === 0) return { miss: 'no-figure' };
  if (record.along === undefined) {
    const chosen = ofWidth(record, sought, seen);
    return chosen.seen.length > 0 ? { value: scaled(record, pooled(chosen.seen, group, chosen.bridge)) } : { miss: 'other-width' };
  }
  const tested = clusters(seen).flatMap((cluster) => {
    const chosen = ofWidth(record, sought, cluster.seen);
    return chosen.seen.length > 0 ? [{ bearingMm: cluster.bearingMm, value: pooled(chosen.seen, group, chosen.bridge) }] : [];
  });
  if (tested.length === 0) return { miss: 'other-width' };
  const place = bearingPlace(sought.bearingMm, tested.map((t) => t.bearingMm));
  if ('miss' in place) return place;
  const testedAt = (mm: number): Tested => tested.find((t) => t.bearingMm === mm) as Tested;
  if ('at' in place) return { value: scaled(record, testedAt(place.at).value) };
  const [thin, thick] = place.between;
  return { value: scaled(record, interpolate(testedAt(thin), testedAt(thick), sought.bearingMm, group.tau)) };
}

/** Applies the assumed multiplier of a factor, with its spread. */
function scaled(record: FactorRead, value: FactorValue): FactorValue {
  if (!record.times) return value;
  return { ...value, mu: value.mu + Math.log(record.times.by), knowledge: Math.hypot(value.knowledge, record.times.spread), certainty: 'very low' };
}
