/** What one figure says of a mean and a scatter, each kind of value with its arithmetic. 1 lbf = 4.4482216152605 N (exact). */
import { expect, test } from 'vitest';
import { observe, type Reading } from '../../../src/evidence/observation.ts';

const LBF = 0.0044482216152605;
const figure = (value: Reading['value'], more: Partial<Reading> = {}): Reading => ({ id: 'a/b', study: 'a', kind: 'measured', standing: 'read', value, unit: 'lbf', ...more });
const close = (x: number) => expect.closeTo(x, 12);
const from = { figure: 'a/b', study: 'a' };

test('single breaks: the mean of ln, sd over mean; of one alone no scatter', () => {
  // sqrt(((8 - 10)^2 + 0 + 2^2) / 2) = 2.
  expect(observe(figure({ tests: [8, 10, 12] }))).toEqual({ ...from, logMean: close(Math.log(960) / 3 + Math.log(LBF)), n: 3, cv: close(0.2) });
  expect(observe(figure({ tests: [9] }))).toEqual({ ...from, logMean: close(Math.log(9 * LBF)), n: 1, cv: null });
});

test('pulls in which something else gave way are kept apart, in the same unit', () => {
  expect(observe(figure({ tests: [8, 12], censored: [10, 11] }))?.pulls).toEqual({ broken: [8, 12].map((x) => close(Math.log(x * LBF))), held: [10, 11].map((x) => close(Math.log(x * LBF))) });
});

test('a mean: its cv, or its sd over it, or none; its n or none', () => {
  const said = (value: object) => observe(figure({ mean: 10, ...value } as Reading['value']));
  expect(said({ cv: 0.07, n: 5 })).toEqual({ ...from, logMean: close(Math.log(10 * LBF)), n: 5, cv: 0.07 });
  expect(said({ sd: 0.5, n: 5 })).toMatchObject({ n: 5, cv: 0.05 });
  expect(said({})).toMatchObject({ n: null, cv: null });
});

test('a range: extremes of n by d2, nine in ten products within 2 x 1.644854 sd, any other says nothing', () => {
  const range = { low: 18, high: 22 };
  // d2 of five is 2.326 (ASTM, control-chart constants).
  expect(observe(figure({ ...range, kind: 'extremes of n', n: 5 }))).toEqual({ ...from, logMean: close(Math.log(20 * LBF)), n: 5, cv: expect.closeTo(4 / 2.326 / 20, 4) });
  expect(observe(figure({ ...range, kind: 'between products' }))).toEqual({ ...from, logMean: close(Math.log(20 * LBF)), n: null, cv: expect.closeTo(4 / 3.289707 / 20, 7) });
  expect(observe(figure({ ...range, kind: 'between products', n: 7 }))?.n).toBe(7);
  for (const kind of ['teaching', "author's interval"] as const) expect(observe(figure({ ...range, kind, n: 5 }))).toBeNull();
  // Without n, extremes say nothing of a scatter; from nothing upwards there is no ln.
  expect(observe(figure({ ...range, kind: 'extremes of n' } as Reading['value']))).toBeNull();
  expect(observe(figure({ low: 0, high: 22, kind: 'between products' }))).toBeNull();
  expect(observe(figure({ atLeast: 3, kind: 'between products' } as unknown as Reading['value']))).toBeNull();
});

test('what is not measured, is invented, has no value or is no force never feeds', () => {
  const value = { mean: 10, n: 4 };
  expect(observe(figure(value))).not.toBeNull();
  for (const more of [{ kind: 'required' }, { standing: 'invented' }, { value: undefined }, { unit: 'mm' }] as const) expect(observe(figure(value, more))).toBeNull();
});
