import { describe, expect, it } from 'vitest';
import { orderBound, orderConfidence, pullsForOrderBound } from '../../../src/break-tests/order-bound.ts';
import { lowerToleranceBound, STANDARD_PAIRS, toleranceInterval } from '../../../src/break-tests/tolerance-bound.ts';
import { natrellaFactor } from '../../../src/numerics/natrella-factor.ts';
import { twoSidedToleranceFactor } from '../../../src/numerics/two-sided-tolerance-factor.ts';
import { near, normals, seeded, simulated } from './near.ts';

const five = Object.freeze([21.3, 20.1, 22.4, 19.8, 21.9]);

describe('tolerance bounds', () => {
  it('of five pulls by hand: k of 90/95, 95/95 and 99/95 from the published table', () => {
    // CMH-17-1G for 90/95 and 99/95, Krishnamoorthy and Mathew Table B1 for 95/95 (recalled); mean 21.1, sd 1.1247.
    const mean = 21.1;
    const sd = Math.sqrt((0.2 ** 2 + 1 + 1.3 ** 2 + 1.3 ** 2 + 0.8 ** 2) / 4);
    for (const [i, k] of [3.408, 4.203, 5.741].entries()) {
      const found = lowerToleranceBound(five, STANDARD_PAIRS[i]!);
      expect(Math.abs(found.bound - (mean - k * sd))).toBeLessThan(0.002 * sd);
      expect(Math.abs(found.k - k)).toBeLessThan(0.002);
    }
  });

  it('lognormal is exp of the bound of the logarithms, and always above 0', () => {
    const pair = { coverage: 0.99, confidence: 0.95 };
    const wide = [5, 20, 30];
    expect(lowerToleranceBound(wide, pair).bound).toBeLessThan(0);
    const { bound } = lowerToleranceBound(wide, pair, 'lognormal');
    expect(bound).toBeGreaterThan(0);
    near(bound, Math.exp(lowerToleranceBound(wide.map((x) => Math.log(x)), pair).bound), 1e-12);
  });

  simulated('95/95 of four pulls lies below the 1-in-20 point in 95 of 100 series (4,000 simulated, fixed seed)', () => {
    const draw = normals(seeded(7));
    let below = 0;
    for (let i = 0; i < 4000; i++) {
      const x = [0, 0, 0, 0].map(() => 100 + draw());
      if (lowerToleranceBound(x, STANDARD_PAIRS[1]!).bound <= 100 - 1.6448536269514722) below++;
    }
    expect(Math.abs(below / 4000 - 0.95)).toBeLessThan(3 * Math.sqrt((0.95 * 0.05) / 4000));
  });

  it('two-sided contains half of the pieces with the confidence asked for: one value is P(chi-square) at known mean', () => {
    // For two pulls and large k the factor is near 1 / the lower chi quantile: published 99/95 at n 4 is 8.22 (Berthouex and Brown, Table 21.1).
    expect(Math.abs(twoSidedToleranceFactor(4, 0.99, 0.95) - 8.22)).toBeLessThan(0.0125);
    const { low, high, k } = toleranceInterval(five, { coverage: 0.95, confidence: 0.95 });
    near(k, 5.076874532, 1e-8); // tol-two-sided-95 of the published checks
    near((low + high) / 2, 21.1, 1e-12);
    // Twice k times the sd by hand above: sqrt(1.265).
    near(high - low, 2 * 5.076874532 * Math.sqrt(1.265), 1e-8);
    const ofLogs = toleranceInterval(five.map(Math.log), { coverage: 0.95, confidence: 0.95 });
    const lognormal = toleranceInterval(five, { coverage: 0.95, confidence: 0.95 }, 'lognormal');
    near(lognormal.low, Math.exp(ofLogs.low), 1e-12);
    near(lognormal.high, Math.exp(ofLogs.high), 1e-12);
  });

  it('refuses by name', () => {
    const pair = { coverage: 0.9, confidence: 0.95 };
    expect(() => lowerToleranceBound([20], pair)).toThrow('forces must hold at least 2 (got 1).');
    expect(() => lowerToleranceBound([20, 20], pair)).toThrow('forces must not all be equal.');
    expect(() => lowerToleranceBound(five, { coverage: 1, confidence: 0.95 })).toThrow('coverage must lie strictly between 0 and 1 (got 1).');
    expect(() => natrellaFactor(3, 0.9, 0.99)).toThrow('n is too small for this approximation (got 3).');
    expect(() => twoSidedToleranceFactor(1, 0.9, 0.9)).toThrow('n must be a whole number from 2 upwards (got 1).');
  });
});

describe('bounds from the smallest pulls alone', () => {
  it('five pulls are too few; the smallest attains 1 - 0.9^5', () => {
    const found = orderBound(five, { coverage: 0.9, confidence: 0.95 });
    expect(found.bound).toBeNull();
    expect(found.rank).toBeNull();
    near(found.attained, 1 - 0.9 ** 5, 1e-12);
    expect(found.pullsNeeded).toBe(29);
  });

  it('at 29 pulls the smallest does, at 46 the second (CMH-17-1G)', () => {
    const of = (n: number) => orderBound(Array.from({ length: n }, (_, i) => 50 - i * 0.5), { coverage: 0.9, confidence: 0.95 });
    expect(of(28).rank).toBeNull();
    expect(of(29)).toMatchObject({ rank: 1, bound: 36 });
    expect(of(46)).toMatchObject({ rank: 2, bound: 28 });
    near(of(29).attained, 1 - 0.9 ** 29, 1e-12);
  });

  it('where little is asked for, even the largest pull does: 0.5 of one, 0.7^3 of three', () => {
    expect(orderBound([20], { coverage: 0.5, confidence: 0.5 })).toMatchObject({ rank: 1, bound: 20, attained: 0.5, pullsNeeded: 1 });
    const three = orderBound([21, 19, 20], { coverage: 0.3, confidence: 0.1 });
    expect(three).toMatchObject({ rank: 3, bound: 21 });
    near(three.attained, 0.343, 1e-12);
  });

  it('confidence by hand: two of three below the median, 1/2', () => {
    near(orderConfidence(3, 2, 0.5), 0.5, 1e-14);
    expect(() => orderConfidence(3, 4, 0.5)).toThrow('rank must not exceed n (got 4 of 3).');
    expect(pullsForOrderBound(1, { coverage: 0.5, confidence: 0.5 })).toBe(1);
  });
});
