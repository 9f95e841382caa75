import { describe, expect, it } from 'vitest';
import { andersonDarlingLognormal, andersonDarlingNormal, andersonDarlingWeibull, normalLevel } from '../../../src/break-tests/anderson-darling.ts';
import { dixon, dixonCritical } from '../../../src/break-tests/dixon.ts';
import { grubbs, grubbsCritical } from '../../../src/break-tests/grubbs.ts';
import { shapiroWilk } from '../../../src/break-tests/shapiro-wilk.ts';
import { lognormalQuantile } from '../../../src/numerics/lognormal.ts';
import { normalQuantile } from '../../../src/numerics/normal.ts';
import { findRoot } from '../../../src/numerics/roots.ts';
import { near, normals, seeded, simulated } from './near.ts';

describe('Shapiro and Wilk', () => {
  // SciPy 1.17.1 scipy.stats.shapiro (reference page: "algorithm AS R94") on lognormal plotting points with sigma 0.3.
  it.each([
    [3, 0.9942001086422335, 0.8544098435458788],
    [4, 0.988986805898976, 0.952221534294972],
    [7, 0.9809156806250057, 0.9638641000140802],
    [11, 0.9760495414798287, 0.9402404703075568],
    [12, 0.9752440386464328, 0.9572912965923014],
    [40, 0.9668138554397089, 0.28396530669267117],
    [200, 0.9602952814190654, 2.129134508734379e-5],
    [1000, 0.9573119768733046, 1.7489642373779518e-16],
    [5000, 0.9561947976403171, 2.4642292689858967e-36],
  ])('%d pulls', (n, w, p) => {
    const x = Array.from({ length: n }, (_, i) => lognormalQuantile((i + 0.6) / (n + 0.2), 0, 0.3));
    const found = shapiroWilk(x);
    near(found.w, w, 1e-9);
    near(found.p, p, 1e-5);
  });

  it('three evenly spaced pulls are as normal as can be (w is 1, p is 1, by its exact formula)', () => {
    expect(shapiroWilk([1, 2, 3])).toEqual({ n: 3, w: 1, p: 1 });
  });

  it('refuses by name', () => {
    expect(() => shapiroWilk([1, 2])).toThrow('values must hold at least 3 (got 2).');
    expect(() => shapiroWilk([2, 2, 2])).toThrow('values must not all be equal.');
    expect(() => shapiroWilk(new Array(5001).fill(0))).toThrow('values must hold at most 5000 (got 5001).');
  });
});

describe('Anderson and Darling', () => {
  it('gives no p below eight pulls, for which the formulas were not made', () => {
    const few = andersonDarlingNormal([20.1, 21.4, 19.8, 22]);
    expect(few.p).toBeNull();
    expect(few.significance).toBeNull();
    expect(few.a2).toBeGreaterThan(0);
  });

  it('lognormal is normal on the logarithms, Weibull has the handbooks\' level alone', () => {
    const x = [21.3, 20.1, 22.4, 19.8, 21.9, 23.5, 18.2, 20.8];
    expect(andersonDarlingLognormal(x)).toEqual(andersonDarlingNormal(x.map(Math.log)));
    expect(andersonDarlingWeibull(x).p).toBeNull();
    expect(andersonDarlingWeibull(x).significance).toBeGreaterThan(0.25);
    expect(normalLevel(0.787)).toBeCloseTo(0.05, 2); // Lawless 1982, p. 455
  });

  it('p is that of the published points, and falls without a step from nearly 1', () => {
    // D'Agostino and Stephens, Goodness-of-Fit Techniques, 1986, table 4.7, case 3: points of A^2 (1 + 0.75/n + 2.25/n^2)
    // (recalled). Twenty normal scores with heavier tails the larger c is, so that every point is met.
    const scores = Array.from({ length: 20 }, (_, i) => normalQuantile((i + 0.625) / 20.25));
    const at = (c: number) => {
      const { a2, p } = andersonDarlingNormal(scores.map((z) => z + c * z ** 3));
      return { scaled: a2 * (1 + 0.75 / 20 + 2.25 / 400), p: p as number };
    };
    const pAt = (scaled: number): number => at(findRoot((c) => at(c).scaled - scaled, 0, 3, 1e-12)).p;
    for (const [point, p] of [[0.341, 0.5], [0.47, 0.25], [0.561, 0.15], [0.631, 0.1], [0.752, 0.05], [0.873, 0.025], [1.035, 0.01]] as const) near(pAt(point), p, 0.02);
    // The first of the four pieces (the same book, table 4.9), by hand at 0.15.
    near(pAt(0.15), 1 - Math.exp(-13.436 + 101.14 * 0.15 - 223.73 * 0.15 ** 2), 1e-7);
    for (const edge of [0.2, 0.34, 0.6]) expect(Math.abs(pAt(edge - 1e-6) - pAt(edge + 1e-6))).toBeLessThan(0.004);
    const low = at(0);
    expect(low.scaled).toBeLessThan(0.1);
    expect(low.p).toBeGreaterThan(0.99);
    expect(low.p).toBeLessThanOrEqual(1);
    for (let scaled = 0.11; scaled < 1.2; scaled += 0.02) {
      // It falls all the way.
      expect(pAt(scaled + 0.02)).toBeLessThan(pAt(scaled));
    }
  });

  it('from eight pulls on there is a p, for Weibull the level alone, and below none of them', () => {
    const eight = [21.3, 20.1, 22.4, 19.8, 21.9, 23.5, 18.2, 20.8];
    for (const test of [andersonDarlingNormal, andersonDarlingWeibull]) {
      expect(test(eight).significance).not.toBeNull();
      expect(test(eight.slice(1))).toMatchObject({ n: 7, p: null, significance: null });
    }
    expect(andersonDarlingNormal(eight).p).not.toBeNull();
    expect(() => andersonDarlingWeibull([20, 20, 20])).toThrow('forces must not all be equal.');
  });

  it('p and level stay shares for pulls that are nowhere near normal', () => {
    const far = andersonDarlingNormal([...Array.from({ length: 40 }, (_, i) => i * 1e-6), 1e6]);
    expect(far.p).toBeGreaterThan(0);
    expect(far.p).toBeLessThan(1e-15);
    expect(far.significance).toBeLessThan(1e-15);
  });

  simulated('rejects normal pulls of ten in 5 of 100 series at p below 0.05 (2,000 simulated, fixed seed)', () => {
    const draw = normals(seeded(23));
    let anderson = 0;
    let shapiro = 0;
    for (let i = 0; i < 2000; i++) {
      const x = Array.from({ length: 10 }, draw);
      if ((andersonDarlingNormal(x).p as number) < 0.05) anderson++;
      if (shapiroWilk(x).p < 0.05) shapiro++;
    }
    const allowed = 4 * Math.sqrt((0.05 * 0.95) / 2000);
    expect(Math.abs(anderson / 2000 - 0.05)).toBeLessThan(allowed);
    expect(Math.abs(shapiro / 2000 - 0.05)).toBeLessThan(allowed);
  });
});

describe('outliers are named and stay in', () => {
  it('each end of a series', () => {
    const x = Object.freeze([20, 21, 20.5, 21.5, 12]);
    const low = grubbs(x, 'lowest');
    expect(low).toMatchObject({ index: 4, value: 12, beyond: true });
    expect(grubbs(x, 'highest')).toMatchObject({ index: 3, value: 21.5, beyond: false });
    expect(grubbs(x, 'either').index).toBe(4);
    expect(grubbs(x, 'either').critical).toBe(grubbsCritical(5, 0.05, 'either'));
  });

  it('the end that is asked for, though the other is farther off; of equally far ones the first; without a word the farther', () => {
    expect(grubbs([5, 1, 5.2, 5.1, 20], 'lowest')).toMatchObject({ index: 1, value: 1, end: 'lowest' });
    expect(grubbs([5, -30, 5.2, 5.1, 20], 'highest')).toMatchObject({ index: 4, value: 20, end: 'highest' });
    expect(grubbs([1, 20, 20.1, 20.2])).toMatchObject({ index: 0, end: 'either' });
    expect(grubbs([0, 4, 2, 2], 'either').index).toBe(0);
    expect(grubbs([1, 2, 4, 4], 'highest').index).toBe(2);
  });

  it('p is 0 at the largest distance there can be, and small for the handbook\'s uranium data', () => {
    // All others equal: the largest possible distance, chance 0.
    expect(grubbs([1, 1, 1, 5]).p).toBe(0);
    // NIST/SEMATECH 1.3.5.17.1 prints G 2.4687 against 2.032: far beyond.
    expect(grubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 'highest').p).toBeLessThan(0.001);
  });

  simulated('Grubbs alarms in 5 of 100 series, Dixon in 5 of 100 two-tailed (3,000 simulated series of 6, fixed seed)', () => {
    const draw = normals(seeded(29));
    let g = 0;
    let q = 0;
    for (let i = 0; i < 3000; i++) {
      const x = Array.from({ length: 6 }, draw);
      if (grubbs(x, 'either').beyond) g++;
      if (dixon(x, 0.05)[0].beyond) q++;
    }
    const allowed = 4 * Math.sqrt((0.05 * 0.95) / 3000);
    expect(Math.abs(g / 3000 - 0.05)).toBeLessThan(allowed);
    expect(Math.abs(q / 3000 - 0.05)).toBeLessThan(allowed);
  });

  it('Dixon by hand: a gap of 4 in a range of 5', () => {
    const [first, second] = dixon([10, 14, 15]);
    expect(first).toMatchObject({ end: 'lowest', value: 10, q: 0.8, beyond: false });
    expect(second).toMatchObject({ end: 'highest', value: 15, q: 0.2 });
    expect(dixon([1, 2, 9])[0].end).toBe('highest');
    // The critical value of three is 0.970: a gap of 98 in 100 is beyond it, one of 7 in 8 is not.
    expect(dixon([1, 2, 9])[0].beyond).toBe(false);
    expect(dixon([0, 2, 100])[0]).toMatchObject({ end: 'highest', q: 0.98, beyond: true });
    expect(dixon([0, 98, 100])[0]).toMatchObject({ end: 'lowest', q: 0.98, beyond: true });
  });

  it('refuse by name', () => {
    expect(() => dixon(new Array(11).fill(0).map((_, i) => i))).toThrow('n must be from 3 to 10 and alpha 0.1, 0.05 or 0.01 (got 11 and 0.05).');
    expect(() => dixonCritical(2, 0.05)).toThrow('n must be from 3 to 10');
    expect(() => dixonCritical(5, 0.2 as never)).toThrow('alpha 0.1, 0.05 or 0.01 (got 5 and 0.2).');
    // Q of 97 in 100 is the critical value itself: not beyond it.
    for (const three of [[0, 3, 100], [0, 97, 100]]) expect(dixon(three)[0]).toMatchObject({ q: 0.97, critical: 0.97, beyond: false });
    expect(() => grubbs([1, 2])).toThrow('values must hold at least 3 (got 2).');
    expect(() => grubbs([2, 2, 2])).toThrow('values must not all be equal.');
  });
});
