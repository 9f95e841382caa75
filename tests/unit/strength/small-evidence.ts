/** Evidence made up for tests: a few figures, factors and methods with round numbers, so that each answer can be worked out by hand. */
import type { FactorRead } from '../../../src/evidence/factor.ts';
import type { GapRecord, LinkRecord, MethodRecord, SlingRecord } from '../../../src/records/schema.ts';
import { compare } from '../../../src/strength/compare.ts';
import type { Evidence, Figure, Rig, Row } from '../../../src/strength/types.ts';

/** Of ln, one in twenty on each side of a range: 1.644854 (any normal table). */
const NINETY = 1.6448536269514722;
/** Coefficient of variation that means an sd of ln: ln(1 + cv^2) = sd^2. */
const cvOf = (sd: number): number => Math.sqrt(Math.expm1(sd * sd));

/** A figure whose mean is known, as from ever so many pulls; pieces scatter by `sd` of ln. */
export const figure = (id: string, kn: number, rig: Figure['rig'] = {}, { sd = 0.1, ...more }: Partial<Figure> & { sd?: number } = {}): Figure => ({
  id, source: id, what: `what of ${id}`, kind: 'measured', value: { mean: kn, n: 4 }, unit: 'kN', rig: { widthMm: 10, material: 'hmpe', ...rig }, study: id, standing: 'read', certainty: 'low',
  seen: { figure: id, study: id, logMean: Math.log(kn), cv: cvOf(sd), n: 1e12 }, ...more,
});
export const factor = (more: Record<string, unknown> = {}): FactorRead => ({ what: 'made up', acts: 'loop', class: 'tenth', applies: {}, from: [], ...more }) as unknown as FactorRead;
/** An assumed factor round `middle`; what is not known of it is an sd of ln. Pieces scatter by 0.1, or as its class says. */
export const assumed = (middle: number, knowledge = 0, more: Record<string, unknown> = {}): FactorRead =>
  factor({ assumed: { low: middle * Math.exp(-knowledge * NINETY), high: middle * Math.exp(knowledge * NINETY), why: 'made up' }, ...more });

export const link = (at: LinkRecord['at'], factors: string | string[], part: LinkRecord['part'] = at === 'eye' ? 'sling' : at): LinkRecord => ({ name: `${at}: ${factors}`, at, part, factors: [factors].flat() });
/** A home method of one sling at the eye, unless told otherwise. */
export const method = (links: string | LinkRecord[], more: Partial<MethodRecord> = {}): MethodRecord => ({
  name: 'Made up', order: 1, role: 'home', summary: '', takes: ['sewn-loop'], eyes: ['bare-wire', 'sleeved-wire', 'metal-bar'], links: typeof links === 'string' ? [link('eye', links)] : links,
  length: { words: '' }, bulk: 'one strand', oneClipError: { what: 'falls off', releases: false }, closed: { possible: true, why: 'by hand' }, apart: [], shown: [], ...more,
});
const sling = (form: SlingRecord['form'], material: SlingRecord['material'], widthMm: number): SlingRecord => ({ name: 'Made up', order: 1, form, material, widthMm, lengthsCm: [60] });
const CLASS = { cvDf: null, cvInterval: null, ceiling: 1, tau: 0, tauInterval: null, tauFrom: 'assumed' as const };

export interface Parts {
  figures?: Figure[];
  factors?: Record<string, FactorRead>;
  methods?: Record<string, MethodRecord>;
  gaps?: Record<string, Partial<GapRecord>>;
}
/** Each figure feeds a factor of its own name, `nothing` has no figure. */
export const world = ({ figures = [], factors = {}, methods = {}, gaps = {} }: Parts): Evidence => ({
  version: '2026-01-01.1', model: 7, rules: {},
  classes: { tenth: { ...CLASS, cv: cvOf(0.1) }, sure: { ...CLASS, cv: 0 } },
  figures: Object.fromEntries(figures.map((one) => [one.id, one])),
  factors: { nothing: factor(), ...Object.fromEntries(figures.map(({ id }) => [id, factor({ from: [id] })])), ...factors },
  methods, gaps: Object.fromEntries(Object.entries(gaps).map(([id, gap]) => [id, { blocks: [{}], nearest: [], ...gap }])),
  slings: { loop: sling('sewn-loop', 'hmpe', 10), nylon: sling('sewn-loop', 'nylon', 16), cord: sling('cord', 'hmpe', 6) },
});

export const RIG: Rig = { ratingKn: 10, eye: 'bare-wire', bearingMm: 4, sling: 'loop', lengthCm: 60, slingState: 'new', demandKn: null, old: null };
export const rowIn = (evidence: Evidence, rig: Partial<Rig> = {}, id = 'm'): Row => compare(evidence, { ...RIG, ...rig }).rows.find((row) => row.method === id) as Row;
