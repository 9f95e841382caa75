/** Values of a factor at the edges of its rules, on made-up figures with round numbers. Each expectation names its arithmetic. */
import t from '@stdlib/stats-base-dists-t';
import { describe, expect, test } from 'vitest';
import { highest, lowered, lowest } from '../../../src/evidence/certainty.ts';
import type { ClassValue } from '../../../src/evidence/classes.ts';
import { applies, type FactorFigure, type FactorRead, type FactorValue, factorValue, type Sought, sameWidth } from '../../../src/evidence/factor.ts';
import { poolStudies } from '../../../src/evidence/pool.ts';
import { near } from '../break-tests/near.ts';

const group: ClassValue = { cv: 0.05, cvDf: 9, cvInterval: [0.03, 0.09], ceiling: 0.2, tau: 0.1, tauInterval: null, tauFrom: 'assumed' };
const sought: Sought = { material: 'hmpe', form: 'sewn-loop', widthMm: 10, bearingMm: 4 };
/** A figure of four pulls with this mean, kN. */
const figure = (id: string, kn: number, rig: FactorFigure['rig'], certainty: FactorFigure['certainty'] = 'low'): FactorFigure =>
  ({ id, seen: { figure: id, study: id.split('/')[0] as string, logMean: Math.log(kn), n: 4, cv: null }, certainty, rig });
const factor = (from: string[], more: Partial<FactorRead> = {}): FactorRead => ({ what: 'made up', acts: 'loop', class: 'any', applies: {}, from, ...more }) as FactorRead;
const ask = (record: FactorRead, figures: readonly FactorFigure[], asked: Partial<Sought> = {}) =>
  factorValue('one', record, group, Object.fromEntries(figures.map((each) => [each.id, each])), { ...sought, ...asked });
function valueFor(...asked: Parameters<typeof ask>): FactorValue {
  const found = ask(...asked);
  if ('miss' in found) throw new Error(found.miss);
  return found.value;
}

test('rope is as wide as cord is: within half a millimetre; tape less than two', () => {
  expect([sameWidth('rope', 10, 10.5), sameWidth('rope', 10, 10.6), sameWidth('sewn-loop', 10, 11.9), sameWidth('sewn-loop', 10, 12)]).toEqual([true, false, true, false]);
});

test('a factor speaks of the materials and forms that it names, of all where it names none; one of devices of every form', () => {
  const of = (names: FactorRead['applies']): boolean => applies(factor([], { applies: names }), sought);
  expect([of({}), of({ materials: ['hmpe'] }), of({ materials: ['nylon'] }), of({ forms: ['sewn-loop'] }), of({ forms: ['cord'] }), of({ forms: ['device'] }), of({ materials: ['nylon'], forms: ['sewn-loop'] })])
    .toEqual([true, true, false, true, false, true, false]);
});

describe('figures', () => {
  test('that are not there or may not feed are named', () => {
    const says = 'factor one: figure a/b gives no number that may feed';
    expect(() => ask(factor(['a/b']), [])).toThrow(says);
    expect(() => ask(factor(['a/b']), [{ ...figure('a/b', 10, {}), seen: null }])).toThrow(says);
  });
  test('none at all leave no value', () => expect(ask(factor([]), [])).toEqual({ miss: 'no-figure' }));
  test('without a word of certainty count as very low; what a source implies costs a step for each condition', () => {
    const of = (certainty: FactorFigure['certainty'], taken: FactorRead['taken'] = []) => valueFor(factor(['a/b'], { taken }), [figure('a/b', 10, { widthMm: 10 }, certainty)]).certainty;
    expect(of(null)).toBe('very low');
    expect(of('high')).toBe('high');
    const implied = { figure: 'a/b', why: 'made up' };
    expect(of('high', [{ ...implied, bearingMm: 4 }])).toBe('moderate');
    expect(of('high', [{ ...implied, bearingMm: 4, diameterMm: 10 }])).toBe('low');
    expect(of('high', [{ ...implied, figure: 'c/d', bearingMm: 4 }])).toBe('high');
  });
  test('without a width are of no width, however narrow the sling', () => {
    for (const widthMm of [10, 1]) expect(ask(factor(['a/b']), [figure('a/b', 10, {})], { widthMm })).toEqual({ miss: 'other-width' });
  });
});

describe('along bearings', () => {
  const along = { along: 'bearingMm' } as const;
  test('figures within half a millimetre of the thinnest are one bearing, whatever their order; ones without a bearing count for none', () => {
    const figures = [figure('a/x', 16, { widthMm: 10, bearingMm: 4.5 }), figure('b/x', 9, { widthMm: 10, bearingMm: 4 }), figure('c/x', 50, { widthMm: 10 })];
    for (const from of [['a/x', 'b/x', 'c/x'], ['b/x', 'c/x', 'a/x']]) {
      // Two studies of four pulls: the geometric mean of 9 and 16 is 12.
      const value = valueFor(factor(from, along), figures, { bearingMm: 4 });
      expect(Math.exp(value.mu)).toBeCloseTo(12, 10);
      expect(value.figures).toEqual(['b/x', 'a/x']);
      expect(value).toMatchObject({ bridged: false, between: false, assumed: false });
    }
  });
  test('between two the nearer one\'s figures come first, each study once', () => {
    const figures = [figure('a/thin', 8, { widthMm: 10, bearingMm: 2 }), figure('a/thick', 18, { widthMm: 10, bearingMm: 8 }), figure('b/thick', 18, { widthMm: 10, bearingMm: 8 })];
    const at = (bearingMm: number) => valueFor(factor(['a/thin', 'a/thick', 'b/thick'], along), figures, { bearingMm });
    // Half way on the line of ln from 2.5 to 8 mm: sqrt(20) = 4.47 mm.
    expect(at(4.4)).toMatchObject({ figures: ['a/thin', 'a/thick', 'b/thick'], studies: ['a', 'b'], bridged: false, between: true, assumed: false });
    expect(at(4.6)).toMatchObject({ figures: ['a/thick', 'b/thick', 'a/thin'], studies: ['a', 'b'] });
  });
  test('with one end carried over from another width, the line is', () => {
    const bridge = { widthMm: [8, 20] as [number, number], spread: 0.3, why: 'made up' };
    const ends = (thinWidth: number, thickWidth: number) => valueFor(factor(['a/thin', 'a/thick'], { ...along, bridge }), [figure('a/thin', 8, { widthMm: thinWidth, bearingMm: 2 }), figure('a/thick', 18, { widthMm: thickWidth, bearingMm: 8 })], { bearingMm: 4 }).bridged;
    expect([ends(10, 10), ends(20, 10), ends(10, 20), ends(20, 20)]).toEqual([false, true, true, true]);
  });
});

describe('a bridge', () => {
  const bridge = { widthMm: [8, 20] as [number, number], spread: 0.3, why: 'made up' };
  test('carries over only what both ends of it hold in, the ends with them', () => {
    const over = (from: number, to: number) => ask(factor(['a/b'], { bridge }), [figure('a/b', 10, { widthMm: from })], { widthMm: to });
    for (const [from, to] of [[20, 8], [8, 20], [12, 16]] as const) expect(over(from, to)).toMatchObject({ value: { bridged: true } });
    for (const [from, to] of [[20.1, 12], [7.9, 12], [12, 20.1], [12, 7.9]] as const) expect(over(from, to), `${from} to ${to}`).toEqual({ miss: 'other-width' });
  });
  test('leaves out figures beyond it and those without a width', () => {
    const figures = [figure('a/in', 9, { widthMm: 20 }), figure('b/beyond', 90, { widthMm: 40 }), figure('c/none', 90, {})];
    expect(valueFor(factor(['a/in', 'b/beyond', 'c/none'], { bridge }), figures)).toMatchObject({ figures: ['a/in'], mu: expect.closeTo(Math.log(9), 12) });
  });
});

test('an assumed range has no figures and is very low', () => {
  expect(valueFor(factor([], { assumed: { low: 0.8, high: 1.25, why: 'made up' } }), [])).toMatchObject({ figures: [], studies: [], mu: expect.closeTo(0, 12), certainty: 'very low', bridged: false, between: false, assumed: true });
});

test('an assumed multiplier moves the mean and widens what is known: 10 kN times 1.2', () => {
  const figures = [figure('a/b', 10, { widthMm: 10 }, 'high')];
  const plain = valueFor(factor(['a/b']), figures);
  const times = valueFor(factor(['a/b'], { times: { by: 1.2, spread: 0.15, why: 'made up' } } as Partial<FactorRead>), figures);
  expect(Math.exp(times.mu)).toBeCloseTo(12, 10);
  expect(times.knowledge).toBeCloseTo(Math.hypot(plain.knowledge, 0.15), 12);
  expect([plain.certainty, times.certainty]).toEqual(['high', 'very low']);
});

test('the words of certainty in order: of none the highest is very low, and the lowest high', () => {
  expect([highest(['low', 'high', 'moderate']), lowest(['low', 'high', 'moderate']), highest([]), lowest([])]).toEqual(['high', 'low', 'very low', 'high']);
  expect([lowered('high', 0), lowered('high', 2), lowered('low', 5)]).toEqual(['high', 'low', 'very low']);
});

describe('studies that are pooled', () => {
  const study = (mean: number, variance: number, scatter2 = 0.01) => ({ study: `${mean}`, figures: [], mean, variance, scatter2 });
  const NINETY = 1.6448536269514722;
  test('none are refused', () => expect(() => poolStudies([], 0.1)).toThrow('studies must not be empty'));
  test('scatter between pieces is weighed as the means are: weights 1 / 0.02 and 1 / 0.05 give (50 x 0.01 + 20 x 0.045) / 70 = 0.02', () => {
    expect(poolStudies([study(1, 0.01, 0.01), study(1, 0.04, 0.045)], 0.1).specimen2).toBeCloseTo(0.02, 12);
  });
  test('five have a spread of their own, whatever the class says; t with three degrees of freedom', () => {
    // Equal errors v: Paule and Mandel give tau^2 = s^2 - v; se^2 = s^2 / 5. s^2 of 1 to 5 is 2.5.
    const five = [1, 2, 3, 4, 5].map((mean) => study(mean, 0.5));
    const times = (t.quantile(0.95, 3) / NINETY) ** 2;
    const { mu, knowledge2, disagree } = poolStudies(five, 9);
    expect([mu, disagree]).toEqual([expect.closeTo(3, 12), false]);
    // The expansion of t is good to one part in two thousand, so its square to one in a thousand.
    near(knowledge2, times * (2 + 2.5 / 5), 1e-3);
    expect(poolStudies(five, 1).disagree).toBe(true);
    // Nothing between them: the multiplier of Hartung and Knapp stays at one, se^2 = v / 5.
    near(poolStudies([1, 1.1, 0.9, 1, 1].map((mean) => study(mean, 0.5)), 9).knowledge2, times * 0.1, 1e-3);
    // Four have the class's: tau^2 = 81, se^2 = (81 + 0.5) / 4.
    expect(poolStudies(five.slice(1), 9).knowledge2).toBeCloseTo(81 + 81.5 / 4, 9);
  });
});
