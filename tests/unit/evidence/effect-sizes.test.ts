/** Effect sizes at their edges: what they refuse, by name, and a pooled cv with its interval. Published values are in tests/reference/pooling.test.ts. */
import { describe, expect, it } from 'vitest';
import { cohensD, hedgesFactor, hedgesG, logCoefficientOfVariation, logMean, logMeanVariance, logResponseRatio, pooledCv, type Summary } from '../../../src/evidence/effect-sizes.ts';

const fine: Summary = { mean: 10, sd: 1, n: 4 };

describe('what is refused', () => {
  const bad: readonly (readonly [Partial<Summary>, string])[] = [
    ...[-0.1, Infinity, Number.NaN].map((sd) => [{ sd }, `sd must be 0 or more (got ${sd}).`] as const),
    ...[0, 2.5, -1, Number.NaN].map((n) => [{ n }, `n must be a whole number from 1 (got ${n}).`] as const),
    ...[Infinity, Number.NaN].map((mean) => [{ mean }, `mean must be finite (got ${mean}).`] as const),
  ];
  const notPositive = [0, -2].map((mean) => [{ mean }, `mean must be positive (got ${mean}).`] as const);
  it.each([...bad, ...notPositive])('a summary with %o', (change, says) => {
    const given = { ...fine, ...change };
    for (const ask of [logMean, logCoefficientOfVariation]) expect(() => ask(given)).toThrow(`summary.${says}`);
    expect(() => logResponseRatio(given, fine)).toThrow(`a.${says}`);
    expect(() => logResponseRatio(fine, given)).toThrow(`b.${says}`);
  });
  it.each(bad)('a difference with %o', (change, says) => {
    const given = { ...fine, ...change };
    for (const ask of [cohensD, hedgesG]) {
      expect(() => ask(given, { ...fine, n: 9 })).toThrow(`a.${says}`);
      expect(() => ask({ ...fine, n: 9 }, given)).toThrow(`b.${says}`);
    }
  });
  it('too few tests, and a scatter that is none', () => {
    for (const change of [{ n: 1 }, { sd: 0 }]) expect(() => logCoefficientOfVariation({ ...fine, ...change })).toThrow('summary must have n of 2 or more and an sd above 0.');
    expect(() => cohensD({ ...fine, n: 1 }, { ...fine, n: 1 })).toThrow('a and b must hold three tests together at least (got 2).');
    for (const df of [1, 0, Number.NaN]) expect(() => hedgesFactor(df)).toThrow(`df must be above 1 (got ${df}).`);
    for (const cv of [-0.1, Infinity, Number.NaN]) expect(() => logMeanVariance(cv, 4)).toThrow(`cv must be 0 or more (got ${cv}).`);
    for (const n of [0.5, Number.NaN]) expect(() => logMeanVariance(0.1, n)).toThrow(`n must be 1 or more (got ${n}).`);
  });
});

describe('what is not', () => {
  it('one test, and tests that are all alike', () => {
    expect(logMeanVariance(0, 1)).toBe(0);
    expect(logMean({ mean: 10, sd: 0, n: 1 })).toEqual({ value: Math.log(10), variance: 0 });
    // Two of one series give its scatter: d = (10 - 12) / 1.
    expect(cohensD({ mean: 10, sd: 1, n: 2 }, { mean: 12, sd: 0, n: 1 })).toBe(-2);
    // By the formula: ln 0.1 + 1 / 2, with 1 / 2 + 0.01 / 2.
    expect(logCoefficientOfVariation({ mean: 10, sd: 1, n: 2 })).toEqual({ value: expect.closeTo(Math.log(0.1) + 0.5, 12), variance: expect.closeTo(0.505, 12) });
  });
});

describe('one scatter of several series', () => {
  const series = [{ cv: 0.1, n: 5 }, { cv: 0.2, n: 3 }, { cv: 0.9, n: 1 }];
  it('weighs each by its tests less one: (4 x 0.01 + 2 x 0.04) / 6 = 0.02; chi-square of 6 degrees at 0.05 and 0.95 is 1.635383 and 12.591587 (any table)', () => {
    const { cv, df, low, high } = pooledCv(series, 0.9);
    expect([df, cv ** 2]).toEqual([6, expect.closeTo(0.02, 12)]);
    expect([low ** 2, high ** 2]).toEqual([expect.closeTo(0.12 / 12.591587, 7), expect.closeTo(0.12 / 1.635383, 6)]);
    expect(pooledCv([{ cv: 0, n: 2 }]).cv).toBe(0);
  });
  it('is refused by field', () => {
    for (const level of [0, 1, Number.NaN]) expect(() => pooledCv(series, level)).toThrow(`level must lie between 0 and 1 (got ${level}).`);
    for (const cv of [-0.1, Infinity, Number.NaN]) expect(() => pooledCv([{ cv, n: 3 }])).toThrow(`series.cv must be 0 or more (got ${cv}).`);
    for (const n of [0, 2.5]) expect(() => pooledCv([{ cv: 0.1, n }])).toThrow(`series.n must be a whole number from 1 (got ${n}).`);
    expect(() => pooledCv([{ cv: 0.1, n: 1 }])).toThrow('series must hold one of two tests or more.');
  });
});
