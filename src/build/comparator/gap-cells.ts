/**
 * How many cells of the comparison each gap leaves empty, asked of the engine. A cell is one method with one sling on one
 * kind of eye; methods that are made from another sling have no cell with this one.
 */
import { EYES, type Eye, type Form, type GapRecord } from '../../records/schema.ts';
import { compare } from '../../strength/compare.ts';
import type { Evidence } from '../../strength/types.ts';
import { loadEvidence } from '../evidence.ts';

/** What one gap leaves empty, of a number of cells. */
export interface GapCells {
  /** Cells with a new sling that are empty on every bearing that was asked. */
  whole: number;
  /** Cells with a new sling that are empty on some bearings only. */
  part: number;
  /** Cells with a used sling. */
  used: number;
  /** Forms of the slings of all those cells. */
  forms: Form[];
}

/** Counts for all gaps. */
export interface GapCount {
  /** Cells that there are, with a new sling. */
  all: number;
  /** Cells with a new sling that are empty on every bearing asked, each counted once. */
  empty: number;
  gaps: Map<string, GapCells>;
}

/** How far beside a limit the comparison is asked, mm. */
const BESIDE_MM = 0.01;

interface Asked { method: string; sling: string; eye: Eye; bearingMm: number; used: boolean }

/** Whether a block names what was asked. */
function names(block: GapRecord['blocks'][number], { method, sling, eye, bearingMm, used }: Asked): boolean {
  return (!block.used || used) && (!block.methods || block.methods.includes(method)) && (!block.slings || block.slings.includes(sling)) &&
    (!block.eyes || block.eyes.includes(eye)) && (block.belowMm === undefined || bearingMm < block.belowMm) && (block.aboveMm === undefined || bearingMm > block.aboveMm);
}

/** The bearings to ask: not measured, and both sides of each limit that a gap names. */
function bearingsOf(evidence: Evidence): (number | null)[] {
  const limits = Object.values(evidence.gaps).flatMap(({ blocks }) => blocks.flatMap(({ belowMm, aboveMm }) => [belowMm, aboveMm])).filter((mm) => mm !== undefined);
  return [null, ...new Set(limits.flatMap((mm) => [mm - BESIDE_MM, mm + BESIDE_MM]))];
}

/** Asks the engine for every cell and counts what each gap leaves empty. */
export function gapCells(evidence: Evidence): GapCount {
  /** By cell: how many bearings were asked, on how many it is empty, and on how many of these each gap names it. */
  const cells = new Map<string, { sling: string; used: boolean; asked: number; empty: number; byGap: Map<string, number> }>();
  const rigs = (used: boolean): (number | null)[] => (used ? [null] : bearingsOf(evidence));
  for (const sling of Object.keys(evidence.slings)) for (const eye of EYES) for (const used of [false, true]) for (const bearingMm of rigs(used)) {
    const { rows, bearing } = compare(evidence, { ratingKn: null, eye, bearingMm, sling, lengthCm: null, slingState: used ? 'used' : 'new', demandKn: null, old: null });
    for (const { method, state } of rows) {
      if (state === 'other-sling') continue;
      const key = `${method} ${sling} ${eye} ${used}`;
      const cell = cells.get(key) ?? { sling, used, asked: 0, empty: 0, byGap: new Map<string, number>() };
      cells.set(key, cell);
      cell.asked += 1;
      if (state !== 'no-data') continue;
      cell.empty += 1;
      for (const [id, { blocks }] of Object.entries(evidence.gaps)) {
        const isNamed = blocks.some((block) => names(block, { method, sling, eye, bearingMm: bearing.mm, used }) && (!used || block.used));
        if (isNamed) cell.byGap.set(id, (cell.byGap.get(id) ?? 0) + 1);
      }
    }
  }
  const gaps = new Map(Object.keys(evidence.gaps).map((id): [string, GapCells] => [id, { whole: 0, part: 0, used: 0, forms: [] }]));
  const fresh = [...cells.values()].filter(({ used }) => !used);
  for (const { sling, used, asked, byGap } of cells.values()) for (const [id, empty] of byGap) {
    const count = gaps.get(id) as GapCells;
    if (used) count.used += 1;
    else if (empty === asked) count.whole += 1;
    else count.part += 1;
    const form = evidence.slings[sling]?.form;
    if (form && !count.forms.includes(form)) count.forms.push(form);
  }
  return { all: fresh.length, empty: fresh.filter(({ asked, empty }) => asked === empty).length, gaps };
}

let counted: GapCount | undefined;

/** The counts for this site's evidence, worked out once. */
export function siteGapCells(): GapCount {
  counted ??= gapCells(loadEvidence());
  return counted;
}
