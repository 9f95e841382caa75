/** The pooled mean at its edges: one study, wrong arguments, intervals that need more studies. Published values are in tests/reference/pooling.test.ts. */
import normal from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';
import { describe, expect, it } from 'vitest';
import type { Effect } from '../../../src/evidence/effect-sizes.ts';
import { generalisedQ, meanInterval, pauleMandel, type PredictionKind, pool, predictionInterval, solveQ } from '../../../src/evidence/random-effects.ts';

const effects = (...pairs: readonly (readonly [number, number])[]): Effect[] => pairs.map(([value, variance]) => ({ value, variance }));
const three = effects([1, 0.5], [2, 0.5], [6, 0.5]);
const KINDS: readonly PredictionKind[] = ['normal', 't-2', 'hartung-knapp-t-2', 'hartung-knapp-t-1', 'floored-t-2', 'floored-t-1'];
const close = (x: number) => expect.closeTo(x, 9);

describe('a pooled mean', () => {
  it('of one study is that study: multiplier 1', () => {
    expect(pool(effects([3, 0.04]), 0.05)).toEqual({ count: 1, tauSquared: 0.05, mean: close(3), se: close(0.3), multiplier: 1, seHartungKnapp: close(0.3), seFloored: close(0.3) });
  });
  it('of three with equal errors of 0.5: mean 3, se^2 = 0.5 / 3, multiplier = squares of 14 / 0.5 / 2', () => {
    const pooled = pool(three, 0);
    expect([pooled.mean, pooled.se ** 2, pooled.multiplier]).toEqual([close(3), close(1 / 6), close(14)]);
    expect(pooled.seHartungKnapp).toBeCloseTo(Math.sqrt(14 / 6), 9);
    // With tau^2 of 13.5 the squares are 14 / 14 over 2: below one, so the floored one stays.
    const wide = pool(three, 13.5);
    expect([wide.multiplier, wide.seHartungKnapp ** 2, wide.seFloored ** 2]).toEqual([close(0.5), close(7 / 3), close(14 / 3)]);
  });
  it('is refused with nothing, with an error that is none, with a negative spread', () => {
    expect(() => pool([], 0)).toThrow('effects must hold at least 1 (got 0).');
    for (const variance of [0, -1, Infinity, Number.NaN]) expect(() => pool(effects([1, 1], [1, variance]), 0)).toThrow(`effects[1].variance must be positive and finite (got ${variance}).`);
    for (const value of [Infinity, Number.NaN]) expect(() => pool(effects([value, 1]), 0)).toThrow(`effects[0].value must be finite (got ${value}).`);
    for (const tau of [-0.1, Infinity, Number.NaN]) expect(() => pool(three, tau)).toThrow(`tauSquared must be 0 or more (got ${tau}).`);
    expect(() => pauleMandel(effects([1, 1]))).toThrow('effects must hold at least 2 (got 1).');
  });
});

describe('intervals', () => {
  const pooled = pool(three, 13.5);
  const around = (half: number) => ({ low: close(3 - half), high: close(3 + half) });
  it('of the mean: a normal, or t with two degrees of freedom', () => {
    expect(meanInterval(pooled, 'normal', 0.9)).toEqual(around(normal.quantile(0.95, 0, 1) * Math.sqrt(14 / 3)));
    expect(meanInterval(pooled, 'hartung-knapp', 0.9)).toEqual(around(t.quantile(0.95, 2) * Math.sqrt(7 / 3)));
    expect(meanInterval(pooled, 'hartung-knapp-floored', 0.9)).toEqual(around(t.quantile(0.95, 2) * Math.sqrt(14 / 3)));
  });
  it('of a further study: tau^2 on top', () => {
    const half = (quantile: number, se2: number): number => quantile * Math.sqrt(13.5 + se2);
    const [one, two] = [t.quantile(0.95, 1), t.quantile(0.95, 2)];
    const halves: Record<PredictionKind, number> = {
      normal: half(normal.quantile(0.95, 0, 1), 14 / 3), 't-2': half(one, 14 / 3), 'hartung-knapp-t-2': half(one, 7 / 3), 'hartung-knapp-t-1': half(two, 7 / 3), 'floored-t-2': half(one, 14 / 3), 'floored-t-1': half(two, 14 / 3),
    };
    for (const kind of KINDS) {
      const { low, high } = predictionInterval(pooled, kind, 0.9);
      expect([kind, low, high]).toEqual([kind, expect.closeTo(3 - halves[kind], 7), expect.closeTo(3 + halves[kind], 7)]);
    }
    // Where the multiplier is above one, the floored kind goes with it.
    const spread = pool(three, 0);
    expect(predictionInterval(spread, 'floored-t-1')).toEqual(predictionInterval(spread, 'hartung-knapp-t-1'));
  });
  it('need their studies, and a level between 0 and 1', () => {
    const two = pool(effects([1, 1], [2, 1]), 0);
    expect(() => meanInterval(pool(effects([1, 1]), 0), 'hartung-knapp')).toThrow('pooled.count is too small for this interval (got 0 degrees of freedom).');
    expect(() => predictionInterval(two, 't-2')).toThrow('pooled.count is too small for this interval (got 0 degrees of freedom).');
    expect(predictionInterval(two, 'floored-t-1').high).toBeGreaterThan(1.5);
    for (const level of [0, 1, -1, Number.NaN]) {
      expect(() => meanInterval(pooled, 'normal', level)).toThrow(`level must lie strictly between 0 and 1 (got ${level}).`);
      for (const kind of KINDS) expect(() => predictionInterval(pooled, kind, level)).toThrow(`level must lie strictly between 0 and 1 (got ${level}).`);
    }
  });
});

describe('the spread at which Q comes to a target', () => {
  it('is nothing where Q is there already, and is found far beyond the squares of unequal errors', () => {
    expect(solveQ([three], generalisedQ(three, 0))).toBe(0);
    // A precise study among poor ones: the mean at 0 lies on it, and squares about that mean tell little of the rest.
    for (const target of [0.01, 1, 5]) {
      const odd = effects([0, 1e-6], [3, 2], [3.5, 2], [-40, 3]);
      const tau = solveQ([odd], target);
      expect(generalisedQ(odd, tau)).toBeCloseTo(target, 9);
    }
    const groups = [three, effects([10, 0.2], [14, 0.3])];
    const tau = solveQ(groups, 2);
    expect(groups.reduce((sum, group) => sum + generalisedQ(group, tau), 0)).toBeCloseTo(2, 9);
  });
});
