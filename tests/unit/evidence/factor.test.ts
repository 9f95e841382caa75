/** Values of a factor, worked by hand. Each expectation names its arithmetic; d2 from ASTM's table of control-chart constants. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { ClassValue } from '../../../src/evidence/classes.ts';
import { byStudy, censoredMean, classValues } from '../../../src/evidence/classes.ts';
import checks from '../../reference/published-checks.json' with { type: 'json' };
import { type FactorFigure, type Sought, factorValue, sameWidth } from '../../../src/evidence/factor.ts';
import { type Reading, observe } from '../../../src/evidence/observation.ts';
import { poolStudies } from '../../../src/evidence/pool.ts';
import { type FactorRecord, factor, factorClass } from '../../../src/records/schema.ts';

const group: ClassValue = { cv: 0.05, cvDf: 9, cvInterval: [0.03, 0.09], ceiling: 0.2, tau: 0.1, tauInterval: null, tauFrom: 'assumed' };
type Given = Reading & Omit<FactorFigure, 'seen'>;
const figure = (id: string, value: Given['value'], rig: Given['rig'] = {}, unit: Given['unit'] = 'kN'): Given =>
  ({ id, study: id.split('/')[0] as string, kind: 'measured', standing: 'read', value, unit, certainty: 'low', rig });
const record = (from: string[], more: Record<string, unknown> = {}): FactorRecord =>
  factor.parse({ what: 'a test', acts: 'loop', class: 'any', applies: { materials: ['hmpe'], forms: ['sewn-loop'] }, from, ...more });
const sought: Sought = { material: 'hmpe', form: 'sewn-loop', widthMm: 10, bearingMm: 4 };
const byId = (...figures: Given[]): Record<string, Given & FactorFigure> => Object.fromEntries(figures.map((f) => [f.id, { ...f, seen: observe(f) }]));
const ask = (r: FactorRecord, figures: Record<string, FactorFigure>, s: Partial<Sought> = {}) => factorValue('a', r, group, figures, { ...sought, ...s });

test('raw breaks give the mean of ln and their own cv; 1000 lbf is 4.448 kN', () => {
  const seen = observe(figure('a/b', { tests: [1000, 2000] }, {}, 'lbf'));
  expect(seen?.logMean).toBeCloseTo((Math.log(4.4482216152605) + Math.log(8.896443230521)) / 2, 12);
  expect(seen?.cv).toBeCloseTo(Math.SQRT1_2 * 1000 / 1500, 12);
  expect(seen?.n).toBe(2);
});

test('extremes of five give sd = range / 2.326', () => {
  const seen = observe(figure('a/b', { low: 18, high: 22, kind: 'extremes of n', n: 5 }));
  expect((seen?.cv ?? 0) * 20).toBeCloseTo(4 / 2.326, 3);
});

test.each([
  ['a teaching range', { low: 60, high: 65, kind: 'teaching' as const }],
  ['an author\'s interval', { low: 6.67, high: 8.9, kind: "author's interval" as const }],
  ['"up to"', { atMost: 20 }],
  ['a bare number', 45.66],
  ['a bound alone', { atLeast: 13.34 }],
  ['a statement', { statement: 'about half' }],
])('%s never feeds', (_, value) => expect(observe(figure('a/b', value))).toBeNull());

test('what is required, invented or no force never feeds', () => {
  expect(observe({ ...figure('a/b', 22), kind: 'required' })).toBeNull();
  expect(observe({ ...figure('a/b', 22), standing: 'invented' })).toBeNull();
  expect(observe(figure('a/b', 22, {}, 'mm'))).toBeNull();
});

test('8 mm and 10 mm tape are not one width, 10 and 11 are; cord within half a millimetre', () => {
  expect(sameWidth('sewn-loop', 8, 10)).toBe(false);
  expect(sameWidth('sewn-loop', 10, 11)).toBe(true);
  expect(sameWidth('cord', 5.5, 6)).toBe(true);
  expect(sameWidth('cord', 5, 6)).toBe(false);
});

test('one study: knowledge^2 = tau^2 + (tau^2 + cv^2/n)', () => {
  const found = ask(record(['a/b']), byId(figure('a/b', { mean: 10, n: 4 }, { widthMm: 10 })));
  if (!('value' in found)) throw new Error('no value');
  expect(Math.exp(found.value.mu)).toBeCloseTo(10, 12);
  expect(found.value.knowledge).toBeCloseTo(Math.sqrt(0.01 + 0.01 + 0.0025 / 4), 12);
  expect(found.value.specimen).toBeCloseTo(Math.sqrt(Math.log(1 + 0.0025)), 12);
});

test('between two bearings ln strength runs along ln bearing, from half a millimetre above the thinner: 8 kN at 2 mm and 18 kN at 8 mm give 12 kN midway', () => {
  const figures = byId(figure('a/thin', { mean: 8, n: 4 }, { widthMm: 10, bearingMm: 2 }), figure('b/thick', { mean: 18, n: 4 }, { widthMm: 10, bearingMm: 8 }));
  // Midway on the scale of ln between 2.5 and 8 mm; sqrt(8 x 18) = 12 (hand calculation).
  const found = ask(record(['a/thin', 'b/thick'], { along: 'bearingMm' }), figures, { bearingMm: Math.sqrt(2.5 * 8) });
  if (!('value' in found)) throw new Error('no value');
  expect(Math.exp(found.value.mu)).toBeCloseTo(12, 6);
  expect(found.value.between).toBe(true);
  // Midway: a quarter of each end's variance, and the whole of the class's tau^2.
  expect(found.value.knowledge).toBeCloseTo(Math.sqrt(0.5 * (0.02 + 0.0025 / 4) + 0.01), 6);
});

test('between two bearings nothing jumps, and certainty is the lower of the two ends', () => {
  const figures = byId(figure('a/thin', { mean: 8, n: 4 }, { widthMm: 10, bearingMm: 2 }), { ...figure('b/thick', { mean: 18, n: 4 }, { widthMm: 10, bearingMm: 8 }), certainty: 'very low' as const });
  const along = record(['a/thin', 'b/thick'], { along: 'bearingMm' });
  const at = (bearingMm: number) => {
    const found = ask(along, figures, { bearingMm });
    if (!('value' in found)) throw new Error('no value');
    return found.value;
  };
  expect(at(2.5).certainty).toBe('low');
  expect(at(2.51).certainty).toBe('very low');
  expect(at(2.500001).mu - at(2.5).mu).toBeLessThan(1e-4);
  expect(at(8).mu - at(7.999999).mu).toBeLessThan(1e-4);
  // A bearing a little thinner than a tested one is not taken for it where a thinner test gives a line.
  expect(at(7.6).mu).toBeLessThan(at(8).mu);
});

test('never beyond the tested bearings; within half a millimetre of the only tested one it is that one', () => {
  const figures = byId(figure('a/thin', { mean: 8, n: 4 }, { widthMm: 10, bearingMm: 2 }), figure('b/thick', { mean: 18, n: 4 }, { widthMm: 10, bearingMm: 8 }));
  const along = record(['a/thin', 'b/thick'], { along: 'bearingMm' });
  expect(ask(along, figures, { bearingMm: 1.4 })).toEqual({ miss: 'thinner' });
  expect(ask(along, figures, { bearingMm: 8.6 })).toEqual({ miss: 'thicker' });
  for (const bearingMm of [1.5, 2, 2.5]) {
    const near = ask(along, figures, { bearingMm });
    expect('value' in near && Math.exp(near.value.mu)).toBeCloseTo(8, 10);
  }
});

test('studies that agree are as sure as the surest, those that contradict each other as the least', () => {
  const pair = (other: number) => ask(record(['a/b', 'b/c']), byId(figure('a/b', { mean: 10, n: 4 }, { widthMm: 10 }), { ...figure('b/c', { mean: other, n: 4 }, { widthMm: 10 }), certainty: 'very low' as const }));
  expect(pair(10.2)).toMatchObject({ value: { certainty: 'low' } });
  expect(pair(20)).toMatchObject({ value: { certainty: 'very low' } });
});

test('another width has no value without a bridge; with one it spreads more and its certainty is very low', () => {
  const figures = byId(figure('a/b', { mean: 10, n: 4 }, { widthMm: 20 }));
  expect(ask(record(['a/b']), figures)).toEqual({ miss: 'other-width' });
  const found = ask(record(['a/b'], { bridge: { widthMm: [8, 22], spread: 0.3, why: 'a test' } }), figures);
  if (!('value' in found)) throw new Error('no value');
  expect(found.value.knowledge).toBeCloseTo(Math.sqrt(0.02 + 0.0025 / 4 + 0.09), 12);
  expect(found.value).toMatchObject({ bridged: true, certainty: 'very low' });
});

test('another material has no value', () => {
  expect(ask(record(['a/b']), byId(figure('a/b', { mean: 10, n: 4 }, { widthMm: 10 })), { material: 'nylon' })).toEqual({ miss: 'other-material' });
});

test('an assumed range of 1.1 to 1.6 holds nine in ten: middle sqrt(1.1 x 1.6)', () => {
  const found = ask(record([], { assumed: { low: 1.1, high: 1.6, why: 'a test' } }), {});
  if (!('value' in found)) throw new Error('no value');
  expect(Math.exp(found.value.mu)).toBeCloseTo(Math.sqrt(1.1 * 1.6), 12);
  expect(Math.exp(found.value.mu - 1.6448536 * found.value.knowledge)).toBeCloseTo(1.1, 6);
});

test('two studies that differ by more than the class raise the spread to their own: |d| = 1 with no error gives tau^2 = 1/2', () => {
  // Paule-Mandel for two equal variances v: d^2 / (2 (t + v)) = 1, so t = d^2 / 2 - v (hand calculation).
  const study = (mean: number, name: string) => ({ study: name, figures: [name], mean, variance: 0.01, scatter2: 0.01 });
  const { knowledge2 } = poolStudies([study(0, 'a'), study(1, 'b')], 0.1);
  expect(knowledge2).toBeCloseTo(0.49 + 0.25, 9);
});

test('pulls in which something else gave way say "at least": Nelson\'s wires, bonds with the other mode censored', () => {
  // Check `competing-bond-wire`: J. R. King 1971, Table 4.1 of Nelson's Applied Life Data Analysis, package jocre; most
  // likely lognormal mu 7.321212 with sigma 0.379695 for bonds, 7.308571 with 0.309992 for wires.
  const { inputs } = (checks as unknown as { id: string; inputs: { strength: number[]; mode: string[] } }[]).find((c) => c.id === 'competing-bond-wire') ?? { inputs: { strength: [], mode: [] } };
  const of = (mode: string, same: boolean) => inputs.strength.filter((_, i) => (inputs.mode[i] === mode) === same).map(Math.log);
  expect(censoredMean(of('b', true), of('b', false), 0.379695).mean).toBeCloseTo(7.321212, 5);
  expect(censoredMean(of('w', true), of('w', false), 0.309992).mean).toBeCloseTo(7.308571, 5);
});

test('a pull that held on raises the mean of its series, and bounds alone give none', () => {
  const mean = (value: Given['value']): number => byStudy([observe(figure('a/b', value, { widthMm: 10 })) as never], group)[0]?.mean ?? 0;
  expect(mean({ tests: [10, 11, 12], censored: [13] })).toBeGreaterThan(mean({ tests: [10, 11, 12] }));
  expect(() => censoredMean([], [2.5], 0.1)).toThrow('bounds alone give no mean');
});

test('tau needs series that say how many pulls', () => {
  const figures = byId(figure('a/b', { mean: 10 }), figure('b/c', { mean: 12, n: 3 }));
  const raw = factorClass.parse({ what: 'x', cv: { assumed: 0.1, why: 'x' }, ceiling: { cv: 0.3, why: 'x' }, tau: { groups: [['a/b', 'b/c']] } });
  expect(() => classValues({ one: raw }, figures)).toThrow('class one: figure a/b does not say how many pulls; tau needs its n');
});

test('a class pools its cv by degrees of freedom and borrows tau where it says so', () => {
  // cv^2 = (3 x 0.1^2 + 1 x 0.2^2) / 4 = 0.0175 (hand calculation).
  const figures = byId(figure('a/b', { mean: 10, sd: 1, n: 4 }), figure('b/c', { mean: 10, sd: 2, n: 2 }));
  const parse = (raw: unknown) => factorClass.parse(raw);
  const classes = {
    one: parse({ what: 'x', cv: { from: ['a/b', 'b/c'] }, ceiling: { cv: 0.3, why: 'x' }, tau: { borrowed: 'two', why: 'x' } }),
    two: parse({ what: 'x', cv: { assumed: 0.1, why: 'x' }, ceiling: { cv: 0.3, why: 'x' }, tau: { assumed: 0.17, why: 'x' } }),
  };
  const values = classValues(classes, figures);
  expect(values['one']?.cv).toBeCloseTo(Math.sqrt(0.0175), 12);
  expect(values['one']).toMatchObject({ cvDf: 4, tau: 0.17, tauFrom: 'borrowed' });
  const circle = { one: parse({ ...classes.one, tau: { borrowed: 'one', why: 'x' } }) };
  expect(() => classValues(circle, figures)).toThrow('class one: borrows in a circle (one < one)');
});

describe('a condition that the factor takes where a source is silent', () => {
  const cord = (from: string[], more: Record<string, unknown> = {}): FactorRecord =>
    record(from, { applies: { materials: ['nylon'], forms: ['cord'] }, along: 'bearingMm', ...more });
  const on: Sought = { material: 'nylon', form: 'cord', widthMm: 6, bearingMm: 10 };
  const series = (rig: Given['rig'], certainty: Given['certainty'] = 'high', id = 'a/b'): Given => ({ ...figure(id, { mean: 10, n: 4 }, rig), certainty });
  const reading = (conditions: Record<string, number>, of = 'a/b') => ({ figure: of, why: 'a test', ...conditions });

  // Counted by hand on the ladder high, moderate, low, very low: a step for each condition, and no step below the last.
  test.each<[string, Given['rig'], Record<string, number> | null, Given['certainty'], string]>([
    ['none', { bearingMm: 10, diameterMm: 6 }, null, 'high', 'high'],
    ['the bearing', { diameterMm: 6 }, { bearingMm: 10 }, 'high', 'moderate'],
    ['the diameter', { bearingMm: 10 }, { diameterMm: 6 }, 'high', 'moderate'],
    ['both', {}, { bearingMm: 10, diameterMm: 6 }, 'high', 'low'],
    ['both, of a figure of low certainty', {}, { bearingMm: 10, diameterMm: 6 }, 'low', 'very low'],
    ['both, of a figure of very low certainty', {}, { bearingMm: 10, diameterMm: 6 }, 'very low', 'very low'],
  ])('costs a step of certainty: %s', (_what, rig, conditions, before, after) => {
    const found = ask(cord(['a/b'], conditions ? { taken: [reading(conditions)] } : {}), byId(series(rig, before)), on);
    if (!('value' in found)) throw new Error('no value');
    expect(Math.exp(found.value.mu)).toBeCloseTo(10, 12);
    expect(found.value).toMatchObject({ certainty: after, bridged: false, between: false });
  });

  test('without it the figure matches nothing, and one of two is not enough', () => {
    for (const [rig, conditions] of [[{ diameterMm: 6 }, null], [{ bearingMm: 10 }, null], [{}, { bearingMm: 10 }], [{}, { diameterMm: 6 }]] as const) {
      expect(ask(cord(['a/b'], conditions ? { taken: [reading(conditions)] } : {}), byId(series(rig)), on)).toEqual({ miss: 'other-width' });
    }
  });

  test('is held to the same limits as one that is printed', () => {
    const record = cord(['a/b'], { taken: [reading({ bearingMm: 10, diameterMm: 6 })] });
    const at = (more: Partial<Sought>) => ask(record, byId(series({})), { ...on, ...more });
    expect(at({ bearingMm: 10.5 })).toHaveProperty('value');
    expect(at({ bearingMm: 10.6 })).toEqual({ miss: 'thicker' });
    expect(at({ bearingMm: 9.4 })).toEqual({ miss: 'thinner' });
    expect(at({ widthMm: 6.5 })).toHaveProperty('value');
    expect(at({ widthMm: 6.6 })).toEqual({ miss: 'other-width' });
  });

  test('lowers the figure that it is taken of and no other', () => {
    const taken = [reading({ bearingMm: 10, diameterMm: 6 }, 'b/c')];
    const pair = (stated: Given['certainty'], silent: Given['certainty']) =>
      ask(cord(['a/b', 'b/c'], { taken }), byId(series({ bearingMm: 10, diameterMm: 6 }, stated), series({}, silent, 'b/c')), on);
    // Studies that agree are as sure as the surest: the stated one at moderate, beside high lowered by two steps.
    expect(pair('moderate', 'high')).toMatchObject({ value: { certainty: 'moderate', studies: ['a', 'b'] } });
    expect(pair('low', 'high')).toMatchObject({ value: { certainty: 'low' } });
    expect(pair('very low', 'high')).toMatchObject({ value: { certainty: 'low' } });
  });

  test('between a printed and a taken bearing the step counts', () => {
    const found = ask(cord(['a/b', 'b/c'], { taken: [reading({ bearingMm: 10 }, 'b/c')] }), byId(series({ bearingMm: 4, diameterMm: 6 }), series({ diameterMm: 6 }, 'high', 'b/c')), { ...on, bearingMm: 7 });
    expect(found).toMatchObject({ value: { between: true, certainty: 'moderate' } });
  });
});

describe('a force that is carried over with the square of the diameter', () => {
  /** Least breaking force of new accessory cord, kN by mm: EN 564, strength table (F = 0.2 kN/mm2 x d^2). */
  const EN_564: Readonly<Record<string, number>> = { 4: 3.2, 5: 5, 6: 7.2, 7: 9.8, 8: 12.8 };
  const diameters = Object.keys(EN_564).map(Number);
  const minimum = (mm: number): number => EN_564[mm] as number;
  const cord = (bySection: boolean): FactorRecord => record(['a/b'], {
    applies: { materials: ['nylon'], forms: ['cord'] },
    bridge: { widthMm: [3.5, 8.5], spread: 0.15, ...(bySection ? { bySection } : {}), why: 'a test' },
  });
  const value = (factorRecord: FactorRecord, series: Given['value'], from: number, to: number) => {
    const found = ask(factorRecord, byId(figure('a/b', series, { diameterMm: from })), { material: 'nylon', form: 'cord', widthMm: to });
    if (!('value' in found)) throw new Error('no value');
    return found.value;
  };

  test("the record of the standard prints the same minimums", () => {
    const { cells } = parse(readFileSync(new URL('../../../data/figures/en-564/cord.yaml', import.meta.url), 'utf8')) as { cells: Record<string, { value: number }> };
    expect(Object.fromEntries(Object.entries(cells).map(([mm, cell]) => [mm, cell.value]))).toEqual(EN_564);
  });

  test.each(diameters.flatMap((from) => diameters.filter((to) => to !== from).map((to) => [from, to] as const)))('from %i mm to %i mm it goes as the minimums of EN 564 do', (from, to) => {
    const carried = value(cord(true), { mean: minimum(from), n: 4 }, from, to);
    expect(Math.exp(carried.mu)).toBeCloseTo(minimum(to), 10);
    expect(carried).toMatchObject({ bridged: true, certainty: 'very low' });
  });

  test('spread and scatter are those of any bridge: only the middle moves', () => {
    // One study of four pulls: tau^2 twice and cv^2 / 4, and the bridge's own spread on top.
    const carried = value(cord(true), { mean: 7.2, n: 4 }, 6, 7);
    expect(carried.knowledge).toBeCloseTo(Math.sqrt(0.02 + 0.0025 / 4 + 0.15 ** 2), 12);
    expect(carried.specimen).toBeCloseTo(Math.sqrt(Math.log(1 + 0.0025)), 12);
    const { mu: _carried, ...rest } = carried;
    const { mu, ...other } = value(cord(false), { mean: 7.2, n: 4 }, 6, 7);
    expect(Math.exp(mu)).toBeCloseTo(7.2, 12);
    expect(rest).toEqual(other);
  });

  test('a diameter that counts as the same is not carried over', () => {
    const near = value(cord(true), { mean: 7.2, n: 4 }, 6, 6.5);
    expect(Math.exp(near.mu)).toBeCloseTo(7.2, 12);
    expect(near).toMatchObject({ bridged: false, certainty: 'low' });
  });

  test('pulls in which something else gave way are carried over with the others', () => {
    // Carrying the mean and carrying each pull are one thing: (7 / 6)^2 = 49 / 36.
    const pulls = { tests: [7, 7.4, 7.9], censored: [8, 8.2] };
    const times = (kn: number[]): number[] => kn.map((x) => (x * 49) / 36);
    const carried = value(cord(true), pulls, 6, 7);
    const tested = value(cord(true), { tests: times(pulls.tests), censored: times(pulls.censored) }, 7, 7);
    expect(carried.mu).toBeCloseTo(tested.mu, 10);
    expect(carried.specimen).toBeCloseTo(tested.specimen, 12);
    expect(carried.mu).toBeGreaterThan(value(cord(true), { tests: pulls.tests }, 6, 7).mu);
  });
});

describe('tau from shares of a straight strength of the same lot', () => {
  const assumed = { cv: { assumed: 0.1, why: 'a test' }, ceiling: { cv: 0.3, why: 'a test' } };
  const tauOf = (groups: unknown[][], ...figures: Given[]): number =>
    classValues({ one: factorClass.parse({ what: 'a test', ...assumed, tau: { groups } }) }, Object.fromEntries(figures.map((f) => [f.id, f])))['one']?.tau ?? Number.NaN;
  const mean = (id: string, kn: number, n: number): Given => figure(id, { mean: kn, n });
  const SHARES = [[{ figure: 'a/knot', over: 'a/straight' }, { figure: 'b/knot', over: 'b/straight' }]];

  test('two studies by Paule and Mandel: tau^2 = d^2 / 2 less the mean of the variances', () => {
    // Paule and Mandel (J Res NBS 87, 1982): the weighted squares about the mean equal the studies less one. For two,
    //   d^2 / (v1 + v2 + 2 tau^2) = 1, so tau^2 = d^2 / 2 - (v1 + v2) / 2.
    // A share has the errors of both its ends; with a scatter of 0.1 of the class:
    //   a: 6 / 10 kN, v1 = 0.01 / 4 + 0.01 / 5 = 0.0045;  b: 9 / 10 kN, v2 = 0.01 / 8 + 0.01 / 2 = 0.00625.
    //   d = ln(0.9 / 0.6) = ln 1.5 = 0.405465; d^2 / 2 = 0.082201; tau^2 = 0.082201 - 0.005375 = 0.076826; tau = 0.277175.
    const tau = tauOf(SHARES, mean('a/knot', 6, 4), mean('a/straight', 10, 5), mean('b/knot', 9, 8), mean('b/straight', 10, 2));
    expect(tau).toBeCloseTo(Math.sqrt(Math.log(1.5) ** 2 / 2 - (0.0045 + 0.00625) / 2), 9);
    expect(tau).toBeCloseTo(0.277175, 6);
  });

  test('stronger textile in one of the laboratories changes nothing: only the share counts', () => {
    const tau = (times: number): number => tauOf(SHARES, mean('a/knot', 6, 4), mean('a/straight', 10, 5), mean('b/knot', 9 * times, 8), mean('b/straight', 10 * times, 2));
    expect(tau(3)).toBeCloseTo(tau(1), 9);
  });

  test('where the shares differ by less than their errors, nothing is left between the studies', () => {
    // d = ln(0.63 / 0.6) = 0.0488; d^2 / 2 = 0.0012 is below the mean variance 0.0054.
    expect(tauOf(SHARES, mean('a/knot', 6, 4), mean('a/straight', 10, 5), mean('b/knot', 6.3, 8), mean('b/straight', 10, 2))).toBe(0);
  });

  test('a group of forces and a group of shares make one tau', () => {
    // All variances 0.0025: forces of four pulls, shares of eight over eight. Two groups of two studies:
    //   (d1^2 + d2^2) / (2 (tau^2 + 0.0025)) = 2, so tau^2 = (d1^2 + d2^2) / 4 - 0.0025, with d1 = ln(10 / 8), d2 = ln 1.5.
    const tau = tauOf([['c/force', 'd/force'], ...SHARES], mean('c/force', 8, 4), mean('d/force', 10, 4), mean('a/knot', 6, 8), mean('a/straight', 10, 8), mean('b/knot', 9, 8), mean('b/straight', 10, 8));
    expect(tau).toBeCloseTo(Math.sqrt((Math.log(1.25) ** 2 + Math.log(1.5) ** 2) / 4 - 0.0025), 9);
  });

  test('both ends of a share need to say how many pulls', () => {
    const all = [mean('a/knot', 6, 4), mean('a/straight', 10, 5), mean('b/knot', 9, 8), mean('b/straight', 10, 2)];
    for (const { id } of all) {
      const figures = all.map((f) => (f.id === id ? figure(id, { mean: 10 }) : f));
      expect(() => tauOf(SHARES, ...figures)).toThrow(`class one: figure ${id} does not say how many pulls; tau needs its n`);
    }
  });
});
