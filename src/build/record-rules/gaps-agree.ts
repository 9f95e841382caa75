/**
 * A rule of the record check that needs the engine: what the comparison leaves empty and what the gaps say are empty are
 * the same. Every method is asked with every sling on every kind of eye: new on bearings inside and outside the tested,
 * used on one.
 */
import { faultOf } from '../../records/check/references-exist.ts';
import type { Rule } from '../../records/check/rule.ts';
import type { RecordFile, Records } from '../../records/read.ts';
import { referencesOf } from '../../records/references.ts';
import { EYES, type Eye, type GapRecord } from '../../records/schema.ts';
import { compare } from '../../strength/compare.ts';
import type { Evidence, Row } from '../../strength/types.ts';
import { evidenceOf } from '../evidence.ts';

/** Bearings that are asked, mm: not measured, and just inside and outside those that the evidence has tests on. */
const BEARINGS_MM: readonly (number | null)[] = [null, 2.5, 3, 3.5, 3.8, 4.5, 6, 9, 10, 10.4, 11, 15];

/** How far beside a limit of a gap the comparison is asked again, mm. */
const BESIDE_MM = 0.01;
/** More bearings than this are given by their ends, and of a method with more open places only the first is told. */
const MOST_NAMED = 6;

/** One cell of the comparison and what it says. */
interface Cell {
  method: string;
  sling: string;
  eye: Eye;
  bearingMm: number;
  /** Whether the bearing was asked for, or is what an unmeasured one counts as. */
  measured: boolean;
  used: boolean;
  row: Row;
}

export const gapsAgree: Rule = {
  name: 'gaps-agree',
  description: 'Every cell of the comparison without data has a gap that names it, and no gap names a cell that has a result.',
  check(report, records) {
    // Nothing can be computed from records that do not hang together; their own faults are told.
    if (records.faults.length > 0) return;
    if (referencesOf(records).some(({ collection, to }) => faultOf(records, collection, to))) return;
    if (records.methods.size === 0 || records.slings.size === 0) return;
    let cells: Cell[];
    try {
      cells = cellsOf(evidenceOf(records), bearingsFor(records));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      report({
        at: { file: 'data', line: 1, col: 1 },
        subject: 'evidence',
        problem: `nothing can be compared: ${error.message.replace(/\.$/, '')}`,
        advice: 'Correct the other faults first; where there is none, the engine asks for more than the check does.',
      });
      return;
    }
    for (const gap of records.gaps.values()) tellResults(gap, cells);
    tellUncovered(cells);

    /** One fault for each block that names cells with a result. */
    function tellResults(gap: RecordFile<GapRecord>, all: readonly Cell[]): void {
      for (const [i, block] of gap.data.blocks.entries()) {
        const wrong = all.filter((cell) => covers(block, cell) && hasResult(cell.row));
        const [first] = wrong;
        if (!first) continue;
        const name = (cell: Cell): string => `${cell.method} with ${place(cell)}`;
        const others = new Set(wrong.map(name)).size - 1;
        const at = bearings(wrong.filter((cell) => name(cell) === name(first)));
        report({
          at: gap.at(['blocks', i]),
          subject: gap.id,
          problem: 'names a cell that has a result',
          got: `${name(first)} at ${at}${others ? `, and ${others} more` : ''}`,
          advice: 'Narrow the block to what no figure reaches, or remove it.',
        });
      }
    }

    /** One fault for each method, sling and eye with an empty cell that no gap names; of many, as of a new method, one in all. */
    function tellUncovered(all: readonly Cell[]): void {
      const blocks = [...records.gaps.values()].flatMap(({ data }) => data.blocks);
      const empty = all.filter((cell) => cell.row.state === 'no-data' && !blocks.some((block) => covers(block, cell)));
      for (const [id, own] of Map.groupBy(empty, (cell) => cell.method)) {
        const method = records.methods.get(id);
        if (!method) continue;
        const open = [...Map.groupBy(own, place)];
        for (const [where, group] of open.length > MOST_NAMED ? open.slice(0, 1) : open) {
          report({
            at: method.at(),
            subject: id,
            problem: `has no data with ${where}, and no gap names it`,
            got: `${bearings(group)}${open.length > MOST_NAMED ? `, and ${open.length - 1} more slings and eyes` : ''}`,
            advice: 'Add a block to a record of data/gaps/, with the test that would answer it.',
          });
        }
      }
    }
  },
};

const place = (cell: Cell): string => `${cell.used ? 'used ' : ''}${cell.sling} on ${cell.eye}`;

/** Bearings of some cells: named one by one, or by their ends where they are many. */
function bearings(cells: readonly Cell[]): string {
  const asked = [...new Set(cells.filter(({ measured }) => measured).map(({ bearingMm }) => bearingMm))].sort((a, b) => a - b);
  const words = asked.length > MOST_NAMED ? [`${asked.length} bearings from ${asked[0]} to ${asked.at(-1)}`] : asked.map(String);
  if (cells.some(({ measured }) => !measured)) words.unshift('unmeasured');
  return `${words.join(', ')}${asked.length > 0 ? ' mm' : ''}`;
}

/** A number came out; a row set apart that only shows published breaks has none. */
const hasResult = (row: Row): boolean => row.state === 'result' || (row.state === 'apart' && row.attachment !== null);

/** Whether a block names a cell. Written apart from the engine on purpose: the two must agree. */
function covers(block: GapRecord['blocks'][number], cell: Cell): boolean {
  if (block.used && !cell.used) return false;
  if (block.methods && !block.methods.includes(cell.method)) return false;
  if (block.slings && !block.slings.includes(cell.sling)) return false;
  if (block.eyes && !block.eyes.includes(cell.eye)) return false;
  if (block.belowMm !== undefined && cell.bearingMm >= block.belowMm) return false;
  return block.aboveMm === undefined || cell.bearingMm > block.aboveMm;
}

/** The fixed bearings, and both sides of each limit that a gap states: a limit in the wrong place shows there. */
function bearingsFor(records: Records): (number | null)[] {
  const blocks = [...records.gaps.values()].flatMap(({ data }) => data.blocks);
  const limits = blocks.flatMap(({ belowMm, aboveMm }) => [belowMm, aboveMm]).filter((mm) => mm !== undefined);
  const beside = limits.flatMap((mm) => [mm - BESIDE_MM, mm, mm + BESIDE_MM]).map((mm) => Number(mm.toFixed(2)));
  return [...new Set([...BEARINGS_MM, ...beside])]
    .filter((mm) => mm === null || mm > 0)
    .sort((a, b) => (a ?? 0) - (b ?? 0));
}

function cellsOf(evidence: Evidence, asked: readonly (number | null)[]): Cell[] {
  const cells: Cell[] = [];
  for (const sling of Object.keys(evidence.slings)) {
    for (const eye of EYES) {
      for (const bearingMm of asked) ask(sling, eye, bearingMm, false);
      ask(sling, eye, null, true);
    }
  }
  return cells;

  function ask(sling: string, eye: Eye, bearingMm: number | null, used: boolean): void {
    const { bearing, rows } = compare(evidence, {
      ratingKn: null, eye, bearingMm, sling, lengthCm: null, slingState: used ? 'used' : 'new', demandKn: null, old: null,
    });
    const { mm, measured } = bearing;
    for (const row of rows) cells.push({ method: row.method, sling, eye, bearingMm: mm, measured, used, row });
  }
}
