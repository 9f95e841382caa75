/** Spread between studies where published examples do not come: two peaks, no spread at all, what is refused. Expected values by hand or by plain search. */
import { describe, expect, it } from 'vitest';
import { heterogeneity, iSquared, pooledTau, type TauMethod, tauSquared, tauSquaredInterval } from '../../../src/evidence/between-studies.ts';
import type { Effect } from '../../../src/evidence/effect-sizes.ts';

const effects = (...pairs: readonly (readonly [number, number])[]): Effect[] => pairs.map(([value, variance]) => ({ value, variance }));
const METHODS: readonly TauMethod[] = ['dersimonian-laird', 'hedges', 'hunter-schmidt', 'sidik-jonkman', 'maximum-likelihood', 'restricted-likelihood', 'empirical-bayes', 'paule-mandel'];

/** Log likelihood of tau^2 less a constant, from its definition: normals with variances v + tau^2 about their weighted mean. */
function logLikelihood(of: readonly Effect[], t: number): number {
  const weights = of.map(({ variance }) => 1 / (variance + t));
  const mean = of.reduce((sum, { value }, i) => sum + value * (weights[i] as number), 0) / weights.reduce((a, b) => a + b, 0);
  return of.reduce((sum, { value }, i) => sum + 0.5 * (Math.log(weights[i] as number) - (weights[i] as number) * (value - mean) ** 2), 0);
}

/** The highest point by trying 200,000 places. */
function highest(of: readonly Effect[]): number {
  let best = 0;
  for (let i = 0; i <= 200_000; i++) if (logLikelihood(of, i / 50_000) > logLikelihood(of, best)) best = i / 50_000;
  return best;
}

describe('a likelihood with two peaks', () => {
  it('gives the higher one, at nothing or inside', () => {
    const inside = effects([0.5, 1], [1.5, 1], [3.1, 0.01]);
    expect(tauSquared(inside, 'maximum-likelihood')).toBeCloseTo(highest(inside), 4);
    expect(highest(inside)).toBeGreaterThan(0.5);
    // The same with the first study nearer: falls from nothing, rises again, and stays below.
    const atNothing = effects([1.2, 1], [1.5, 1], [3.1, 0.01]);
    expect(highest(atNothing)).toBe(0);
    expect(tauSquared(atNothing, 'maximum-likelihood')).toBe(0);
    const many = effects([3.8, 0.01], [2, 0.5], [0.3, 1], [2.2, 4], [3.8, 0.01]);
    expect(tauSquared(many, 'maximum-likelihood')).toBeCloseTo(highest(many), 4);
    expect(highest(many)).toBeGreaterThan(0.5);
  });
});

it('studies that agree to the last digit have no spread, by every estimator', () => {
  for (const method of METHODS) expect([method, tauSquared(effects([2, 0.1], [2, 0.4], [2, 1]), method)]).toEqual([method, 0]);
});

it('groups of one study count for nothing: two groups of two and a lone one give what the two give', () => {
  const pairs = [effects([1, 0.01], [2, 0.01]), effects([5, 0.02], [5.5, 0.03])];
  expect(pooledTau([...pairs, effects([9, 0.1])])).toEqual(pooledTau(pairs));
  // One group of two with equal errors v: Q = d^2 / 2 / (v + tau^2) = 1, so tau^2 = d^2 / 2 - v.
  expect(pooledTau([effects([1, 0.01], [2, 0.01])])).toMatchObject({ df: 1, tauSquared: expect.closeTo(0.49, 12) });
});

describe('what is refused', () => {
  const one = effects([1, 0.1]);
  const two = effects([1, 0.1], [2, 0.1]);
  it('fewer than two effects, or an error that is none', () => {
    const asks: readonly ((given: readonly Effect[]) => unknown)[] = [heterogeneity, (e) => iSquared(e, 0.1), (e) => tauSquaredInterval(e), ...[...METHODS, 'fixed' as const].map((method) => (e: readonly Effect[]) => tauSquared(e, method))];
    for (const ask of asks) {
      expect(() => ask(one)).toThrow('effects must hold at least 2 (got 1).');
      expect(() => ask([...one, { value: 1, variance: 0 }])).toThrow('effects[1].variance must be positive and finite (got 0).');
      expect(() => ask([...one, { value: Number.NaN, variance: 1 }])).toThrow('effects[1].value must be finite (got NaN).');
    }
  });
  it('groups without a pair, an empty group, a level beyond 0 to 1', () => {
    expect(() => pooledTau([one, one])).toThrow('groups must hold one of two studies or more.');
    expect(() => pooledTau([two, []])).toThrow('effects must hold at least 1 (got 0).');
    for (const level of [0, 1, Number.NaN]) {
      expect(() => tauSquaredInterval(two, level)).toThrow(`level must lie strictly between 0 and 1 (got ${level}).`);
      expect(() => pooledTau([two], level)).toThrow(`level must lie strictly between 0 and 1 (got ${level}).`);
    }
  });
});
