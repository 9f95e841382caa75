/** Small panels of materials, and points over bearings. Expected numbers are those that the named sources print. */
import { describe, expect, test } from 'vitest';
import { bearingPanelOf, BEARINGS, FIBRES, type Fibre, knotFigures, modelLine, OVER, type Over, wirePanel } from '../../../src/build/comparator/bearing-points.ts';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { allFigures, figure, type ShownFigure } from '../../../src/build/figures/figures.ts';
import { panelRows, rowsToCompare } from '../../../src/build/material-chart.ts';
import { rackMaterials, rowsOf, topicOf } from '../../../src/build/materials-page.ts';
import { TOPICS } from '../../../src/records/schema.ts';

const materials = rackMaterials();
const all = allFigures();
const evidence = loadEvidence();
const over = (id: Over['id']): Over => OVER.find((one) => one.id === id) as Over;
/** A figure as the pages see one, with what matters here. */
const shown = (fields: Partial<ShownFigure>): ShownFigure => ({
  id: 'lab/x', record: 'lab/x', source: 'lab', what: 'A result', kind: 'measured', rig: {}, study: 'lab', standing: 'read', checked: '2026-01-05', lowered: [], ...fields,
});

describe('rows of panels', () => {
  test('never mix units, wholes, or what is kept with what is lost', () => {
    const found = TOPICS.flatMap((topic) => rowsOf(materials, topic).flatMap((row) => {
      const figures = [...row.panels.values()].flatMap((panel) => panel.figures);
      const isForce = row.unit === 'kN';
      // A force is a force whatever it is compared with; of shares the whole must be one, by name or by being one straight strand.
      const wholes = new Set(isForce ? [] : figures.map(({ of }) => (of?.includes('/') ? 'strand' : of)));
      return wholes.size > 1 ? [`${row.id}: ${[...wholes].join(', ')}`] : [];
    }));
    expect(found).toEqual([]);
  });

  test('leave statements, years and cycles to words', () => {
    const figures = [
      shown({ value: { statement: 'No loss.' } }), shown({ value: 10, unit: 'years' }), shown({ value: { tests: [806] }, unit: 'cycles' }), shown({ value: 12, unit: 'mm' }),
    ];
    expect(panelRows('age', new Map([['nylon', figures]]), figure)).toEqual([]);
  });

  test('draw what is required or taught lighter than what was measured', () => {
    const figures = [shown({ value: 20, unit: 'kN', rig: { form: 'tape' } }), shown({ value: { low: 60, high: 70, kind: 'teaching' }, unit: 'percent', of: 'unknotted', kind: 'rule', what: 'Share of the strength without a knot' })];
    const rows = panelRows('knots', new Map([['nylon', figures]]), figure);
    expect(rows.map(({ title, panels }) => [title, panels.get('nylon')?.lane.signs.map(({ taught }) => taught), panels.get('nylon')?.lane.bars.map(({ taught }) => taught)])).toEqual([
      ['Breaking force, tape', [undefined], []], ['Strength kept, of the same piece without the knot', [], [true]],
    ]);
  });

  test('keep a loss apart from what is left', () => {
    const kept = shown({ value: 60, unit: 'percent', of: 'new', what: 'Share of strength left' });
    const lost = shown({ value: 40, unit: 'percent', of: 'new', what: 'Loss of strength' });
    expect(panelRows('age', new Map([['hmpe', [kept, lost]]]), figure).map(({ title }) => title)).toEqual(['Strength kept, of the same piece when new', 'Strength lost, of the same piece when new']);
  });

  test('have one axis for all their panels, with every force on one of two', () => {
    const ends = new Set(TOPICS.flatMap((topic) => rowsOf(materials, topic)).filter(({ unit }) => unit === 'kN').map(({ axis }) => axis.end));
    expect([...ends].sort()).toEqual([30, 60]);
  });

  test('are compared where two materials stand, or a sewn sling', () => {
    const tape = (material: string) => shown({ value: 20, unit: 'kN', rig: { form: 'tape' }, what: material });
    const row = (...ids: string[]) => panelRows('age', new Map(ids.map((id) => [id, [tape(id)]])), figure);
    expect(rowsToCompare(row('nylon')).length).toBe(0);
    expect(rowsToCompare(row('nylon', 'hmpe')).length).toBe(1);
    const sling = panelRows('age', new Map([['hmpe', [shown({ value: 20, unit: 'kN', rig: { form: 'sewn-loop' } })]]]), figure);
    expect(rowsToCompare(sling).length).toBe(1);
  });
});

test('the panel of moisture has the three values of the book: 4.5, 0.5 and 6 percent', () => {
  const row = rowsOf(materials, 'wet').find(({ title }) => title.startsWith('Moisture'));
  expect(row?.axis.end).toBe(10);
  expect([...(row?.panels ?? [])].map(([id, { lane }]) => [id, lane.signs.map(({ at }) => at)])).toEqual([['nylon', [45]], ['polyester', [5]], ['aramid', [60]]]);
});

test('a topic is one of the eight, and no other word', () => {
  expect(TOPICS.map(topicOf)).toEqual([...TOPICS]);
  expect(() => topicOf('cold')).toThrow(RangeError);
});

describe('points over bearings', () => {
  const panel = (fibre: Fibre, id: Over['id']) => bearingPanelOf(all, evidence, fibre, over(id));

  test('a girth hitch of HMPE: four pulls on the wire of 3.8 mm, and two means on the pin of 10 mm', () => {
    const { panel: drawn, tested, height } = panel('hmpe', 'girth-hitch');
    expect(tested).toEqual([3.8, 10]);
    // Forces as the two sources print them; the axis ends at 30 kN and 15 mm.
    const shown = drawn.signs.map(({ y }) => 30 * (1 - y / height));
    for (const kn of [11.162, 9.166, 11.425, 11.417, 19.7, 19.24]) expect(shown.some((each) => Math.abs(each - kn) < 0.02), `${kn}`).toBe(true);
    expect(BEARINGS.end).toBe(15);
    expect(new Set(drawn.signs.map(({ x }) => x))).toEqual(new Set([25.3, 66.7]));
  });

  test('a hitch whose source does not say the bearing is listed, not placed', () => {
    expect(panel('hmpe', 'girth-hitch').unplaced.map(({ id }) => id)).toEqual(['climbers-blog-2015/hmpe-8-knots#girth']);
  });

  test('a nylon girth hitch has two points, by two sources: 7 kN on 3.5 mm and 19.89 kN on 10 mm', () => {
    expect(panel('nylon', 'girth-hitch').figures.map(({ figure: { value }, bearing }) => [bearing, (value as { mean: number }).mean])).toEqual([[3.5, 7], [10, 19.89]]);
  });

  test('polyester and aramid have no point at all, and the whole panel stays empty', () => {
    for (const fibre of ['polyester', 'aramid'] as const) {
      for (const { id } of OVER) {
        const { panel: drawn, figures, lineFor } = panel(fibre, id);
        expect([figures, drawn.signs, drawn.line, lineFor, drawn.untested]).toEqual([[], [], null, null, [{ from: 0, width: 100 }]]);
      }
    }
  });

  test('the line begins and ends at tested bearings, and never runs where only one was tested', () => {
    for (const fibre of Object.keys(FIBRES) as Fibre[]) {
      for (const each of OVER) {
        const { tested } = bearingPanelOf(all, evidence, fibre, each);
        const line = modelLine(evidence, fibre, each)?.line;
        if (tested.length < 2) expect(line).toBeUndefined();
        else expect([line?.[0]?.[0], line?.at(-1)?.[0]]).toEqual([tested[0], tested.at(-1)]);
      }
    }
  });

  test('no used sling and no wide weave of HMPE with nylon is among them', () => {
    const placed = (Object.keys(FIBRES) as Fibre[]).flatMap((fibre) => OVER.flatMap((each) => bearingPanelOf(all, evidence, fibre, each).figures.map(({ figure: { rig } }) => rig)));
    expect(placed.length).toBeGreaterThan(8);
    expect(placed.filter(({ state, material }) => state === 'used' || material === 'hmpe-nylon')).toEqual([]);
  });

  test('wire bent round a pin has the ten steps of the table, from the rope as thick as the pin to a pin of forty times', () => {
    const { tested, panel: drawn } = wirePanel(all);
    expect(tested).toEqual([1, 2, 4, 6, 8, 10, 15, 20, 30, 40]);
    expect(drawn.signs.every(({ taught }) => taught)).toBe(true);
    expect(drawn.line).toBeNull();
  });
});

test('knots: every figure is of a fibre that can be chosen, new or of a state that is not said', () => {
  const found = knotFigures(all);
  expect(found.length).toBeGreaterThan(40);
  expect(found.filter(({ rig }) => !rig.material || !(rig.material in FIBRES) || rig.state === 'used')).toEqual([]);
});
