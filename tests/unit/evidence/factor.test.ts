/** Values of a factor, worked by hand. Each expectation names its arithmetic; d2 from ASTM's table of control-chart constants. */
import { expect, test } from 'vitest';
import type { ClassValue } from '../../../src/evidence/classes.ts';
import { classValues } from '../../../src/evidence/classes.ts';
import { type FactorFigure, type Sought, factorValue, sameWidth } from '../../../src/evidence/factor.ts';
import { observe } from '../../../src/evidence/observation.ts';
import { poolStudies } from '../../../src/evidence/pool.ts';
import { type FactorRecord, factor, factorClass } from '../../../src/records/schema.ts';

const group: ClassValue = { cv: 0.05, cvDf: 9, cvInterval: [0.03, 0.09], ceiling: 0.2, tau: 0.1, tauInterval: null, tauFrom: 'assumed' };
const figure = (id: string, value: FactorFigure['value'], rig: FactorFigure['rig'] = {}, unit: FactorFigure['unit'] = 'kN'): FactorFigure =>
  ({ id, study: id.split('/')[0] as string, kind: 'measured', standing: 'read', value, unit, certainty: 'low', rig });
const record = (from: string[], more: Record<string, unknown> = {}): FactorRecord =>
  factor.parse({ what: 'a test', acts: 'loop', class: 'any', applies: { materials: ['hmpe'], forms: ['sewn-loop'] }, from, ...more });
const sought: Sought = { material: 'hmpe', form: 'sewn-loop', widthMm: 10, bearingMm: 4 };
const byId = (...figures: FactorFigure[]): Record<string, FactorFigure> => Object.fromEntries(figures.map((f) => [f.id, f]));
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

test('between two bearings ln strength runs along ln bearing: 8 kN at 2 mm and 18 kN at 8 mm give 12 kN at 4 mm', () => {
  const figures = byId(figure('a/thin', { mean: 8, n: 4 }, { widthMm: 10, bearingMm: 2 }), figure('b/thick', { mean: 18, n: 4 }, { widthMm: 10, bearingMm: 8 }));
  const found = ask(record(['a/thin', 'b/thick'], { along: 'bearingMm' }), figures);
  if (!('value' in found)) throw new Error('no value');
  expect(Math.exp(found.value.mu)).toBeCloseTo(12, 10);
  expect(found.value.between).toBe(true);
  // Midway: a quarter of each end's variance, and the whole of the class's tau^2.
  expect(found.value.knowledge).toBeCloseTo(Math.sqrt(0.5 * (0.02 + 0.0025 / 4) + 0.01), 12);
});

test('never beyond the tested bearings, and one within half a millimetre is the tested one', () => {
  const figures = byId(figure('a/thin', { mean: 8, n: 4 }, { widthMm: 10, bearingMm: 2 }), figure('b/thick', { mean: 18, n: 4 }, { widthMm: 10, bearingMm: 8 }));
  const along = record(['a/thin', 'b/thick'], { along: 'bearingMm' });
  expect(ask(along, figures, { bearingMm: 1.4 })).toEqual({ miss: 'thinner' });
  expect(ask(along, figures, { bearingMm: 8.6 })).toEqual({ miss: 'thicker' });
  const near = ask(along, figures, { bearingMm: 2.5 });
  expect('value' in near && Math.exp(near.value.mu)).toBeCloseTo(8, 10);
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
