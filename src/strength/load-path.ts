/** From a method's record and a rig to links of a chain, or to the first link that no figure reaches. */
import { type FactorRead, type FactorValue, type Found, type Miss, type Sought, factorValue } from '../evidence/factor.ts';
import { toModelUnit } from '../evidence/force.ts';
import type { LinkRecord, MethodRecord } from '../records/schema.ts';
import type { ChainLink } from './chain.ts';
import type { Evidence } from './types.ts';

/** A factor's part in a link. */
export interface FactorPart { factor: string; value: FactorValue }

/** One link ready for the chain: its parts, and its required minimum in kN where it has one. */
export interface BuiltLink {
  record: LinkRecord;
  parts: FactorPart[];
  /** Mean of ln kN; of a link that multiplies the device's rating, mean of ln of that multiple. */
  mu: number;
  ofRating: boolean;
  /** Sd of ln between pieces. */
  specimen: number;
  floorKn: number | null;
}

export type Path = { links: BuiltLink[] } | { stop: { link: LinkRecord; miss: Miss; factor: string } };

/** Evidence with what every comparison needs of it, worked out once. */
export interface PreparedEvidence {
  evidence: Evidence;
  smallestBearingMm: number;
  /** Values of factors so far: several methods share a factor, and few factors depend on the bearing. */
  values: Map<string, Found>;
}

/** So many values of factors are kept at most; then all go. */
const KEPT_VALUES = 1000;

/** Works out what every comparison of one evidence needs. */
export function prepare(evidence: Evidence): PreparedEvidence {
  let smallest = Number.POSITIVE_INFINITY;
  for (const record of Object.values(evidence.factors)) {
    if (record.along === undefined) continue;
    for (const id of record.from) smallest = Math.min(smallest, evidence.figures[id]?.rig.bearingMm ?? Number.POSITIVE_INFINITY);
  }
  return { evidence, smallestBearingMm: smallest, values: new Map() };
}

function numberIn(evidence: Evidence, address: string): number {
  const figure = evidence.figures[address];
  const scale = toModelUnit(figure?.unit);
  if (!figure || typeof figure.value !== 'number' || scale === null) throw new RangeError(`floor ${address}: is no single force`);
  return figure.value * scale;
}

function valueFor({ evidence, values }: PreparedEvidence, id: string, sought: Sought): { record: FactorRead; found: Found } {
  const record = evidence.factors[id];
  const group = record && evidence.classes[record.class];
  if (!record || !group) throw new RangeError(`factor ${id}: no such record, or no such class`);
  const { material, form, widthMm, bearingMm } = sought;
  const key = `${id} ${material} ${form} ${widthMm} ${record.along && bearingMm}`;
  let found = values.get(key);
  if (!found) {
    found = factorValue(id, record, group, evidence.figures, sought);
    if (values.size >= KEPT_VALUES) values.clear();
    values.set(key, found);
  }
  return { record, found };
}

/** The factor and those that it multiplies, outermost first. */
function partsOf(prepared: PreparedEvidence, id: string, sought: Sought): { parts: FactorPart[] } | { miss: Miss; factor: string } {
  const parts: FactorPart[] = [];
  for (let next: string | null = id; next !== null; ) {
    const { record, found } = valueFor(prepared, next, sought);
    if ('miss' in found) return { miss: found.miss, factor: next };
    parts.push({ factor: next, value: found.value });
    next = typeof record.acts === 'object' ? record.acts.multiplies : null;
  }
  return { parts };
}

/** What a miss says of how near the evidence comes; larger is nearer. */
const NEARNESS: Record<Miss, number> = { 'other-material': 0, 'no-figure': 1, 'other-width': 2, thinner: 3, thicker: 3 };

function buildLink(prepared: PreparedEvidence, record: LinkRecord, sought: Sought): BuiltLink | { miss: Miss; factor: string } {
  let nearest: { miss: Miss; factor: string } | null = null;
  for (const id of record.factors) {
    const found = partsOf(prepared, id, sought);
    if ('miss' in found) {
      if (!nearest || NEARNESS[found.miss] > NEARNESS[nearest.miss]) nearest = found;
      continue;
    }
    const factor = prepared.evidence.factors[id] as FactorRead;
    const floorKn = factor.floor ? numberIn(prepared.evidence, factor.floor) : null;
    return {
      record,
      parts: found.parts,
      mu: found.parts.reduce((sum, p) => sum + p.value.mu, 0),
      ofRating: factor.acts === 'rating',
      specimen: Math.hypot(...found.parts.map((p) => p.value.specimen)),
      floorKn,
    };
  }
  return nearest as { miss: Miss; factor: string };
}

/** Whether a link's strength is a multiple of the device's rating. */
export function needsRating(evidence: Evidence, link: LinkRecord): boolean {
  return link.factors.some((id) => evidence.factors[id]?.acts === 'rating');
}

/**
 * The load path of a method for one sling and bearing. Links that multiply the device's rating are left out where it has
 * none. The first link without a figure stops it; a stop at the eye is told before one elsewhere.
 */
export function loadPath(prepared: PreparedEvidence, method: MethodRecord, sought: Sought, hasRating: boolean): Path {
  const links: BuiltLink[] = [];
  const order = [...method.links].sort((a, b) => Number(b.at === 'eye') - Number(a.at === 'eye'));
  for (const record of order) {
    if (!hasRating && needsRating(prepared.evidence, record)) continue;
    const built = buildLink(prepared, record, sought);
    if ('miss' in built) return { stop: { link: record, ...built } };
    links.push(built);
  }
  links.sort((a, b) => method.links.indexOf(a.record) - method.links.indexOf(b.record));
  return { links };
}

/** The same links of a chain for a device of this rating: `chain` is theirs for a rating of 1 kN, one link each. */
export function atRating(chain: readonly ChainLink[], links: readonly BuiltLink[], ratingKn: number | null): ChainLink[] {
  const shift = Math.log(ratingKn ?? 1);
  return chain.map((link, i) => ((links[i] as BuiltLink).ofRating ? { ...link, muLog: link.muLog + shift } : link));
}

/**
 * Chain of some links, for a rating of 1 kN. Knowledge of a factor is shared by all links that it acts on, named by its
 * id: `names` gives the order of the shared factors, so that two chains with the same names can be compared.
 */
export function chainOf(links: readonly BuiltLink[], names: readonly string[]): ChainLink[] {
  return links.map(({ parts, mu, specimen, floorKn }) => {
    // A required minimum cuts what is sold, whatever its mean turns out to be: what we do not know and scatter together.
    // So a link with a floor keeps the knowledge of its factors to itself.
    if (floorKn !== null) {
      const own = Math.hypot(specimen, ...parts.map((p) => p.value.knowledge));
      return { muLog: mu, shared: names.map(() => 0), own, floor: floorKn };
    }
    const shared = names.map(() => 0);
    for (const { factor, value } of parts) shared[names.indexOf(factor)] = value.knowledge;
    return { muLog: mu, shared, own: specimen };
  });
}

/** Ids of all factors that act on some links, each once. */
export function factorNames(...paths: readonly (readonly BuiltLink[])[]): string[] {
  return [...new Set(paths.flatMap((links) => links.flatMap((link) => link.parts.map((p) => p.factor))))];
}
