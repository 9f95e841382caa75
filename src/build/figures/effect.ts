/**
 * How much one figure moves the answers: the comparison with it and without it, for one fixed rig of each sling with
 * which it is used. Without it means everywhere: the factors that it feeds, and the scatter and spread of its class.
 */
import { classValues } from '../../evidence/classes.ts';
import { EXAMPLE_RIG } from '../../links/rig-keys.ts';
import type { Compared, FactorClassRecord } from '../../records/schema.ts';
import { compare } from '../../strength/compare.ts';
import type { Comparison, Evidence, Rig, Row, Spread } from '../../strength/types.ts';
import { loadEvidence } from '../evidence.ts';
import { figureBook } from './figures.ts';
import { siteRecords } from '../records.ts';

/** One method with and without a figure. Of the attachment; null where nothing can be computed without it. */
export interface MethodEffect { method: string; name: string; before: Spread; after: Spread | null }

/** One rig in which the figure is used. */
export interface RigEffect { rig: Rig; sling: string; rows: MethodEffect[] }

/** What a figure moves. */
export interface FigureEffect {
  rigs: RigEffect[];
  /** Rows of the same rigs that do not use it, and yet move by what its class shares out; and the largest change of a middle, kN. */
  through: { rows: number; mostKn: number };
}

/** Class records without one figure; what would be left without any support keeps it. */
function classWithout(record: FactorClassRecord, address: string): FactorClassRecord {
  const names = (each: Compared): boolean => (typeof each === 'string' ? each === address : each.figure === address || each.over === address);
  const { cv, tau } = record;
  const from = 'from' in cv ? cv.from.filter((each) => each !== address) : [];
  const groups = 'groups' in tau ? tau.groups.map((group) => group.filter((each) => !names(each))).filter((group) => group.length > 1) : [];
  return {
    ...record,
    cv: 'from' in cv && from.length > 0 ? { ...cv, from } : cv,
    tau: 'groups' in tau && groups.length > 0 ? { ...tau, groups } : tau,
  };
}

const plain = <T>(map: ReadonlyMap<string, T>): Record<string, T> => Object.fromEntries([...map].sort(([a], [b]) => (a < b ? -1 : 1)));

/** The evidence as it would be without one figure. Its record stays: it still stands beside what shows it. */
export function evidenceWithout(evidence: Evidence, address: string): Evidence {
  const factors = Object.fromEntries(Object.entries(evidence.factors).map(([id, factor]) => [id, factor.from.includes(address) ? { ...factor, from: factor.from.filter((each) => each !== address) } : factor]));
  const { classes } = siteRecords();
  const named = figureBook().others.get(address)?.some(({ kind }) => kind === 'class') ?? false;
  if (!named) return { ...evidence, factors };
  const records = plain(new Map([...classes].map(([id, record]) => [id, classWithout(record, address)])));
  const readings = Object.fromEntries(figureBook().values);
  return { ...evidence, factors, classes: classValues(records, readings) };
}

/** Comparisons of the evidence as it is, by rig: many figures ask for the same ones. */
const known = new Map<string, Comparison>();
function comparisonNow(evidence: Evidence, rig: Rig): Comparison {
  const key = JSON.stringify(rig);
  const found = known.get(key) ?? compare(evidence, rig);
  known.set(key, found);
  return found;
}

const uses = (row: Row, address: string): boolean => row.attachment !== null && row.figures.includes(address);

/** Bearings on which textile was tested, mm, the thickest first. */
function testedBearings(evidence: Evidence): number[] {
  const found = Object.values(evidence.factors).filter(({ along }) => along === 'bearingMm')
    .flatMap(({ from, taken }) => [...from.map((address) => evidence.figures[address]?.rig.bearingMm), ...taken.map(({ bearingMm }) => bearingMm)]);
  return [...new Set(found.filter((mm) => mm !== undefined))].sort((a, b) => b - a);
}

/**
 * The rig in which to look for a figure, with one sling: the example rig; else the first on which some row uses it, on the
 * figure's own bearing before others, on an eye like its own before others. Null where none does.
 */
function rigFor(evidence: Evidence, sling: string, address: string, tested: readonly number[]): Rig | null {
  const { bearing, bearingMm } = evidence.figures[address]?.rig ?? {};
  const eyes = bearing === 'bare-wire' ? (['bare-wire', 'metal-bar', 'twin-eye'] as const) : (['metal-bar', 'bare-wire', 'twin-eye'] as const);
  const bearings = bearingMm === undefined ? tested : [bearingMm, ...tested];
  const candidates: Rig[] = [{ ...EXAMPLE_RIG, sling }, ...bearings.flatMap((mm) => eyes.map((eye): Rig => ({ ...EXAMPLE_RIG, sling, eye, bearingMm: mm })))];
  return candidates.find((rig) => comparisonNow(evidence, rig).rows.some((row) => uses(row, address))) ?? null;
}

/** What a figure moves; null where the model does not compute with it. */
export function effectOf(address: string, evidence: Evidence = loadEvidence()): FigureEffect | null {
  const { feeds, others } = figureBook();
  const inClass = others.get(address)?.some(({ kind }) => kind === 'class') ?? false;
  if (!feeds.has(address) && !inClass) return null;
  const without = evidenceWithout(evidence, address);
  const slings = Object.keys(evidence.slings).sort((a, b) => (evidence.slings[a]?.order ?? 0) - (evidence.slings[b]?.order ?? 0));
  const tested = testedBearings(evidence);
  const found = slings.flatMap((sling) => rigFor(evidence, sling, address, tested) ?? []);
  // A figure that only gives scatter or spread is used in no row: it is looked for in the example rig and on the thickest bar.
  const bar = { eye: 'metal-bar', bearingMm: tested[0] ?? null } as const;
  const rigs = found.length > 0 ? found : slings.flatMap((sling): Rig[] => [{ ...EXAMPLE_RIG, sling }, { ...EXAMPLE_RIG, sling, ...bar }]);
  const through = { rows: 0, mostKn: 0 };
  const effects = rigs.map((rig): RigEffect => {
    const after = new Map(compare(without, rig).rows.map((row) => [row.method, row]));
    const rows: MethodEffect[] = [];
    for (const row of comparisonNow(evidence, rig).rows) {
      const now = after.get(row.method)?.attachment ?? null;
      if (row.attachment === null) continue;
      if (uses(row, address)) rows.push({ method: row.method, name: row.name, before: row.attachment, after: now });
      else if (now && shows(now) !== shows(row.attachment)) {
        through.rows += 1;
        through.mostKn = Math.max(through.mostKn, Math.abs(now.middle - row.attachment.middle), Math.abs(now.low - row.attachment.low));
      }
    }
    return { rig, sling: evidence.slings[rig.sling as string]?.name ?? '', rows };
  });
  return { rigs: effects.filter(({ rows }) => rows.length > 0), through };
}

/** A spread to the digit that pages show, kN. */
const shows = ({ low, middle }: Spread): string => `${low.toFixed(1)} ${middle.toFixed(1)}`;
