/** What a figure's page says beyond its record: what stands beside it, what it moves, since when it stands; and what gaps leave empty. */
import { describe, expect, test } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { besideOf, overlapOf, printedRange, sameRig } from '../../../src/build/figures/beside.ts';
import { effectOf, evidenceWithout } from '../../../src/build/figures/effect.ts';
import { historyOf, historyWords } from '../../../src/build/figures/history.ts';
import { allFigures, figure, figureBook } from '../../../src/build/figures/figures.ts';
import { gapCells } from '../../../src/build/comparator/gap-cells.ts';
import type { Figure } from '../../../src/strength/types.ts';

const all = allFigures();
const besides = (id: string) => besideOf(figure(id), all);

describe('what stands beside a figure', () => {
  test.each([
    [{ method: 'basket', form: 'sewn-loop', material: 'hmpe', widthMm: 10 }, { method: 'basket', form: 'sewn-loop', material: 'hmpe', widthMm: 12 }, true],
    [{ method: 'basket', form: 'sewn-loop', material: 'hmpe', widthMm: 10 }, { method: 'basket', form: 'sewn-loop', material: 'hmpe', widthMm: 12.1 }, false],
    [{ method: 'overhand', form: 'cord', material: 'nylon', diameterMm: 7 }, { method: 'overhand', form: 'cord', material: 'nylon', diameterMm: 7.5 }, true],
    [{ method: 'overhand', form: 'cord', material: 'nylon', diameterMm: 7 }, { method: 'overhand', form: 'cord', material: 'nylon', diameterMm: 7.6 }, false],
    [{ method: 'overhand', form: 'cord', material: 'nylon', diameterMm: 7 }, { method: 'overhand', form: 'cord', material: 'nylon' }, false],
    [{ form: 'cord', material: 'nylon' }, { form: 'cord', material: 'nylon' }, false],
  ] as const)('%j and %j are one rig: %s', (a, b, same) => {
    expect(sameRig(a, b)).toBe(same);
    expect(sameRig(b, a)).toBe(same);
  });

  test.each([
    [[4, 6], [7, 9], 'above'], [[4, 6], [1, 3], 'below'], [[4, 6], [6, 9], 'overlap'], [[4, 6], [7, 7], 'above'], [[4, 4], [7, 7], 'unknown'],
    [[4, 6], [5, Number.POSITIVE_INFINITY], 'overlap'], [[4, 6], [0, 3], 'below'],
  ] as [[number, number], [number, number], string][])('beside %j, %j lies %s', (a, b, lies) => {
    expect(overlapOf(a, b)).toBe(lies);
  });

  test('a pull that did not break leaves the upper end open', () => {
    expect(printedRange({ tests: [10, 12], censored: [11] }, 1)).toEqual([10, Number.POSITIVE_INFINITY]);
  });

  test('two laboratories that broke the same cord loop far apart are set against each other', () => {
    // T. Moyer, 2000: mean 22.53 kN of five; M. DiMeo, 1999: 3286, 3605 and 3299 lbf, all below 16.1 kN.
    expect(besides('dimeo-1999/cords#nylon-7-double-fishermans-loop')).toMatchObject([{ figure: { id: 'moyer-2000/double-fishermans-loop#nylon-7' }, overlap: 'above', differs: ['bearing'] }]);
    expect(besides('moyer-2000/double-fishermans-loop#nylon-7')).toMatchObject([{ figure: { id: 'dimeo-1999/cords#nylon-7-double-fishermans-loop' }, overlap: 'below' }]);
  });

  test('whatever stands beside another has it beside itself; never of its own study, never another kind of number', () => {
    for (const one of all) for (const { figure: other } of besideOf(one, all)) {
      expect(other.study).not.toBe(one.study);
      expect(besideOf(other, all).map((each) => each.figure.id)).toContain(one.id);
    }
    expect(besides('helix-operations-2021/anchor-cord#new-single-strand-sd')).toEqual([]);
  });
});

describe('what a figure moves', () => {
  const evidence = loadEvidence();
  const middles = (id: string) => effectOf(id)?.rigs.flatMap(({ rig, rows }) => rows.map((row) => ({ sling: rig.sling, method: row.method, now: row.before.middle, without: row.after?.middle ?? null })));

  test('the only pulls of a hitch on a wire leave no data behind: the next tested bearing is far thicker', () => {
    // M. Ibarra, 4 August 2021, is the one source of HMPE girth-hitched on a wire; the other pulls were on a 10 mm pin.
    expect(middles('ibarra-2021/girth-on-wire')).toMatchObject([{ sling: 'hmpe-10', method: 'girth-hitch', without: null }]);
  });

  test('of two laboratories the other one remains', () => {
    // Without T. Moyer's 22.53 kN, three pulls of M. DiMeo: (3286 x 3605 x 3299)^(1/3) lbf = 3394 lbf = 15.10 kN; and the reverse.
    const of = (id: string) => middles(id)?.find((row) => row.sling === 'nylon-cord-7' && row.method === 'cord-loop-double-fishermans')?.without;
    expect(of('moyer-2000/double-fishermans-loop#nylon-7')).toBeCloseTo(15.1, 1);
    expect(of('dimeo-1999/cords#nylon-7-double-fishermans-loop')).toBeCloseTo(22.53, 1);
  });

  test('what the model does not compute with moves nothing', () => {
    for (const id of ['common-practice/textile-life', 'climbers-blog-2015/hmpe-8-knots#girth', 'hse-crr-364/knots#bowline']) expect(effectOf(id)).toBeNull();
  });

  test('a figure that only gives its scatter is used in no row', () => {
    expect(effectOf('jones-1999/sewn-nylon-17#draws')?.rigs).toEqual([]);
  });

  test('it is taken out of the scatter of its class', () => {
    // Left are the four pulls of M. Ibarra's girth hitch, 11.162, 9.166, 11.425 and 11.417 kN: mean 10.7925, sd 1.0912, so cv 0.1011.
    expect(evidenceWithout(evidence, 'ibarra-2021/basket-on-wire').classes['textile-on-thin-bearing']?.cv).toBeCloseTo(0.1011, 4);
  });

  test('a pair of laboratories is no pair without either: the spread is the same whichever is taken out', () => {
    const tau = (id: string) => evidenceWithout(evidence, id).classes['knots']?.tau;
    const one = tau('moyer-2000/figure-eight-loop#hmpe-nylon-cord');
    expect(one).toBeCloseTo(tau('dimeo-1999/cords#hmpe-5.5-figure-eight-strand') as number, 10);
    expect(one).not.toBeCloseTo(evidence.classes['knots']?.tau as number, 3);
  });

  test('every figure can be taken out, also of its class, and the evidence itself stays as it was', () => {
    const before = JSON.stringify(evidence);
    const named = [...figureBook().feeds.keys(), ...[...figureBook().others].filter(([, uses]) => uses.some(({ kind }) => kind === 'class')).map(([id]) => id)];
    expect(named.length).toBeGreaterThan(20);
    for (const id of named) {
      const without = evidenceWithout(evidence, id);
      expect(Object.values(without.factors).some(({ from }) => from.includes(id)), id).toBe(false);
      for (const { cv, tau } of Object.values(without.classes)) expect(cv > 0 && tau > 0, id).toBe(true);
    }
    expect(JSON.stringify(evidence)).toBe(before);
  });
});

describe('history', () => {
  const says = (kn: number): Figure => ({ id: 'a/b', source: 'a', what: 'x', kind: 'measured', value: { mean: kn, n: 2 }, unit: 'kN', rig: {}, study: 'a', standing: 'read', certainty: 'low', seen: null });
  const version = (name: string, kn?: number) => ({ version: name, figures: kn === undefined ? {} : { 'a/b': says(kn) } });

  test('a figure is unchanged since the first version that says what it says today', () => {
    const history = historyOf('a/b', { 'a/b': says(5) }, [version('v1'), version('v2', 4), version('v3', 5), version('v4', 5)]);
    expect(history).toEqual({ state: 'stands', first: 'v2', since: 'v3', changed: ['v3'], newest: 'v4' });
    expect(historyWords(history)).toBe('It stands in the versions from v2 on, and is unchanged since v3.');
  });

  test('one that never changed says so in a word', () => {
    expect(historyWords(historyOf('a/b', { 'a/b': says(5) }, [version('v1', 5), version('v2', 5)]))).toBe('Unchanged since version v1, the first that has it.');
  });

  test('a change after the newest version is told', () => {
    expect(historyWords(historyOf('a/b', { 'a/b': says(6) }, [version('v1', 5)]))).toBe('It stands in the versions from v1 on. After v1 it was changed.');
  });

  test('a newer one, one that nothing reads, and a site without versions', () => {
    expect(historyOf('a/b', { 'a/b': says(5) }, [version('v1')])).toEqual({ state: 'after', newest: 'v1' });
    expect(historyOf('a/b', {}, [version('v1')])).toEqual({ state: 'never read' });
    expect(historyWords(historyOf('a/b', { 'a/b': says(5) }, []))).toBe('No version is frozen yet.');
  });

  test('other words about a figure are no change of it', () => {
    expect(historyOf('a/b', { 'a/b': { ...says(5), what: 'y' } }, [version('v1', 5)])).toMatchObject({ since: 'v1' });
  });
});

describe('cells that a gap leaves empty', () => {
  const { gaps } = gapCells(loadEvidence());
  // By hand from data/slings and the methods' own lists: twelve slings, of which three are tape, on five kinds of eye.
  test.each([
    ['bowline-on-a-bight', 12 * 5], ['beer-knot', 3 * 5], ['quick-link-on-eye', 2 * 12 * 5], ['tied-loop-on-eye', 5 * 8 * 4], ['nylon-basket', 5 * 2 * 4],
  ])('%s: %i on every bearing', (id, cells) => {
    expect(gaps.get(id)).toMatchObject({ whole: cells, part: 0, used: 0 });
  });

  test('a gap about thin or thick bearings leaves its cells empty only there', () => {
    // Five kinds of cord under two knots on three kinds of wire eye: never on a wire of any thickness.
    expect(gaps.get('cord-on-wire')).toMatchObject({ whole: 2 * 5 * 3, part: 0 });
    // On a bar those, and two tapes with a ring bend: tested on a 10 mm pin alone.
    expect(gaps.get('tied-loop-on-bar')).toMatchObject({ whole: 0, part: 2 * 5 + 2 });
  });

  test('a question about used slings counts cells with used slings, and one that blocks nothing counts none', () => {
    expect(gaps.get('used-sling-hitched')).toMatchObject({ whole: 0, part: 0, used: expect.any(Number) });
    expect(gaps.get('used-sling-hitched')?.used).toBeGreaterThan(0);
    expect(gaps.get('wet-and-frozen')).toEqual({ whole: 0, part: 0, used: 0, forms: [] });
  });
});
