/**
 * The engine's states against `states.csv`, which was written by hand from the evidence table before the engine.
 * Source of the expectation: that table (published rows, and which of them may feed which link).
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadEvidence } from '../../src/build/evidence.ts';
import { compare } from '../../src/strength/compare.ts';
import type { Eye } from '../../src/records/schema.ts';
import type { Rig, Row } from '../../src/strength/types.ts';
import { CASES, METHODS, SLINGS, readStates } from '../support/states.ts';

const csv = readFileSync(new URL('./states.csv', import.meta.url), 'utf8');
const evidence = loadEvidence();

function rowOf(method: string, sling: string, eye: Eye, bearing: string): Row {
  const rig: Rig = {
    ratingKn: 12, eye, bearingMm: bearing === 'unmeasured' ? null : Number(bearing), sling, lengthCm: 60, slingState: 'new', demandKn: null, old: null,
  };
  return compare(evidence, rig).rows.find((row) => row.method === method) as Row;
}

test('states.csv names every cell exactly once', () => {
  const { cells, faults } = readStates(csv);
  expect(faults).toEqual([]);
  expect(cells.size).toBe(METHODS.length * SLINGS.length * CASES.length);
});

test('the engine agrees with states.csv on every cell', () => {
  const { cells } = readStates(csv);
  const wrong: string[] = [];
  const built: Record<string, number> = {};
  for (const cell of cells.values()) {
    const { state } = rowOf(cell.method, cell.sling, cell.eye, cell.bearing);
    built[state] = (built[state] ?? 0) + 1;
    if (state !== cell.state) wrong.push(`${cell.method} ${cell.sling} ${cell.eye} ${cell.bearing}: engine ${state}, table ${cell.state} (${cell.why})`);
  }
  expect(wrong).toEqual([]);
  console.log(`states: ${Object.entries(built).map(([state, count]) => `${count} ${state}`).join(', ')} of ${cells.size}`);
});

test('every cell without data names its gap, and every gap really has no result', () => {
  const wrong: string[] = [];
  const used = new Set<string>();
  for (const method of Object.keys(evidence.methods)) for (const sling of Object.keys(evidence.slings)) for (const [eye, bearing] of CASES) {
    const row = rowOf(method, sling, eye, bearing);
    if (row.state === 'no-data') {
      if (row.gap) used.add(row.gap);
      else wrong.push(`${method} ${sling} ${eye} ${bearing}: no data and no gap`);
      continue;
    }
    // A method that is not made from this sling has no result with it: a gap says nothing wrong of it.
    if (row.state === 'other-sling') continue;
    const mm = bearing === 'unmeasured' ? 3.5 : Number(bearing);
    for (const [id, gap] of Object.entries(evidence.gaps)) {
      const blocked = gap.blocks.some((b) => !b.used && (!b.methods || b.methods.includes(method)) && (!b.slings || b.slings.includes(sling)) &&
        (!b.eyes || b.eyes.includes(eye)) && (b.belowMm === undefined || mm < b.belowMm) && (b.aboveMm === undefined || mm > b.aboveMm));
      if (blocked) wrong.push(`${method} ${sling} ${eye} ${bearing}: ${row.state}, but gap ${id} says that it is empty`);
    }
  }
  expect(wrong).toEqual([]);
  expect(Object.entries(evidence.gaps).filter(([id, gap]) => gap.blocks.some((b) => !b.used) && !used.has(id)).map(([id]) => id)).toEqual([]);
});

test('a used sling has no result at home, and each such cell names the gap of used slings', () => {
  const rig: Rig = { ratingKn: 12, eye: 'sleeved-wire', bearingMm: null, sling: 'hmpe-10', lengthCm: 60, slingState: 'used', demandKn: null, old: null };
  for (const sling of Object.keys(evidence.slings)) {
    for (const row of compare(evidence, { ...rig, sling }).rows.filter((r) => evidence.methods[r.method]?.role === 'home' && r.state !== 'other-sling')) {
      expect([row.method, row.state, row.gap]).toEqual([row.method, 'no-data', 'used-sling-hitched']);
    }
  }
});
