/** Loads against strengths, where a formula gives the answer. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceExceeds, demandDots, demandOfPeaks, demandOfRange } from '../../../src/falls/demand.ts';
import { lognormalCdf, lognormalSurvival } from '../../../src/numerics/lognormal.ts';
import { normalCdf } from '../../../src/numerics/normal.ts';
import { interference, survival } from '../../../src/strength/chain.ts';

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('of two lognormals the larger one is a normal question of their logarithms', () => {
  fc.assert(fc.property(amount(1, 3), amount(0.05, 0.5), amount(1.5, 3.2), amount(0.05, 0.3), (muLog, sigmaLog, strength, spread) => {
    const found = chanceExceeds({ dist: 'lognormal', muLog, sigmaLog }, { below: (kn) => lognormalCdf(kn, strength, spread) });
    expect(Math.abs(found - normalCdf((muLog - strength) / Math.hypot(sigmaLog, spread)))).toBeLessThan(1e-9);
  }));
});

test('a strength that is certain is exceeded as often as the load lies above it', () => {
  const demand = demandOfRange(5, 12);
  for (const kn of [4, 7, 9.5, 14]) {
    const found = chanceExceeds(demand, { below: (load) => (load >= kn ? 1 : 0), kinksKn: [kn] });
    expect(found).toBeCloseTo(lognormalSurvival(kn, demand.muLog, demand.sigmaLog), 12);
  }
});

test('asked from the side of the strength, the model\'s chain gives the same chance', () => {
  const demand = demandOfRange(4, 11);
  const links = [{ muLog: Math.log(14), shared: [0.1, 0.05], own: 0.08 }, { muLog: Math.log(16), shared: [0.1, 0], own: 0.12 }];
  expect(chanceExceeds(demand, { below: (kn) => 1 - survival(links, kn) })).toBeCloseTo(interference(links, demand), 8);
});

test('the dots are twenty equal parts: half below the middle, one in twenty below the first two\'s midpoint', () => {
  const dots = demandDots({ dist: 'normal', mu: 10, sigma: 2 });
  expect(dots).toHaveLength(20);
  // 0.0627: the 52.5 % point of the standard normal; 1.9600: the 97.5 % point, any table.
  expect(dots[10]).toBeCloseTo(10 + 2 * 0.0627, 3);
  expect(dots[19]).toBeCloseTo(10 + 2 * 1.96, 3);
  expect((dots[9] ?? 0) + (dots[10] ?? 0)).toBeCloseTo(20, 12);
});

test('measured peaks give a demand with the mean and scatter of their logarithms', () => {
  // Logarithms 1, 2 and 3: mean 2, sd 1.
  expect(demandOfPeaks([Math.E, Math.E ** 2, Math.E ** 3])).toEqual({ dist: 'lognormal', muLog: expect.closeTo(2, 12), sigmaLog: expect.closeTo(1, 12) });
});

test('what is no demand is refused by its name', () => {
  expect(() => demandOfRange(0, 5)).toThrow(/^low/);
  expect(() => demandOfRange(5, 5)).toThrow(/^high must be above low/);
  expect(() => demandOfPeaks([4, 5])).toThrow(/^peaksKn must hold three/);
  expect(() => demandOfPeaks([4, 5, -1])).toThrow(/^peaksKn\[2\]/);
  expect(() => demandOfPeaks([4, 4, 4])).toThrow(/must not all be equal/);
});
