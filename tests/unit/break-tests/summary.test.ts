import { describe, expect, it } from 'vitest';
import { cvInterval, meanInterval, nextPull, sdInterval } from '../../../src/break-tests/intervals.ts';
import { summarise } from '../../../src/break-tests/summary.ts';
import { promiseOfMeanLess } from '../../../src/break-tests/three-sigma.ts';
import { binomialAtLeast, binomialCdf, binomialPmf } from '../../../src/numerics/binomial.ts';
import { noncentralTCdf, noncentralTDelta } from '../../../src/numerics/noncentral-t.ts';
import { toleranceConfidence, toleranceCoverage } from '../../../src/numerics/tolerance-factor.ts';
import { near, normals, seeded, simulated } from './near.ts';

describe('summary of a handful of breaks', () => {
  it('three pulls of 20, 21 and 22 kN, by hand', () => {
    const found = summarise(Object.freeze([21, 20, 22]));
    expect(found.n).toBe(3);
    expect(found.mean).toBe(21);
    expect(found.minimum).toBe(20);
    expect(found.maximum).toBe(22);
    expect(found.spread?.sd).toBe(1);
    expect(found.spread?.meanLessThreeSd).toBe(18);
    expect(summarise([20, 22, 24]).spread?.meanLessThreeSd).toBe(16);
    // t of two degrees of freedom at 97.5 %: 4.302652729749464; interval 21 -+ t / sqrt(3).
    near(found.spread?.meanInterval.low as number, 21 - 4.302652729749464 / Math.sqrt(3), 1e-12);
    // c4(3) = sqrt(pi) / 2, by definition.
    near(found.spread?.c4 as number, Math.sqrt(Math.PI) / 2, 1e-14);
    near(found.spread?.sdUnbiased as number, 2 / Math.sqrt(Math.PI), 1e-14);
    // Chi-square with two degrees of freedom is exponential: quantiles -2 ln(1 - p).
    near(found.spread?.sdInterval.low as number, Math.sqrt(2 / (-2 * Math.log(0.025))), 1e-11);
    near(found.spread?.sdInterval.high as number, Math.sqrt(2 / (-2 * Math.log(0.975))), 1e-11);
  });

  it('one pull has no scatter, and equal pulls have none to show', () => {
    expect(summarise([20])).toEqual({ n: 1, mean: 20, minimum: 20, maximum: 20, level: 0.95, spread: null, noSpread: 'one-pull' });
    expect(summarise([20, 20, 20]).noSpread).toBe('all-equal');
  });

  it('refuses by name', () => {
    expect(() => summarise([])).toThrow('forces must hold at least 1 (got 0).');
    expect(() => summarise([20, Number.NaN])).toThrow('forces[1] must be finite (got NaN).');
    expect(() => summarise([20, 0])).toThrow('forces[1] must be positive (got 0).');
    expect(() => summarise([20, 21], 1)).toThrow('level must lie strictly between 0 and 1 (got 1).');
    expect(() => meanInterval(1, 0, 3)).toThrow('sd must be positive and finite (got 0).');
    expect(() => sdInterval(1, 1)).toThrow('n must be a whole number from 2 upwards (got 1).');
  });
});

describe('interval of the coefficient of variation', () => {
  // SciPy 1.17.1: scipy.stats.nct.cdf (reference page "scipy.stats.nct") solved for nc with scipy.optimize.brentq.
  it.each([
    [0.05, 5, 0.95, 0.02993479580706587, 0.1444269311438342],
    [0.1, 3, 0.9, 0.05761646472968731, 0.4550588317640113],
    [0.08, 10, 0.95, 0.054935336212789086, 0.14687559249248838],
    [0.2, 20, 0.99, 0.13896140995856365, 0.34357743106021216],
  ])('cv %d of %d pulls at %d', (cv, n, level, low, high) => {
    const found = cvInterval(cv, n, level);
    near(found.low, low, 1e-8);
    near(found.high, high, 1e-8);
  });

  it('is close to the approximation of Vangel (The American Statistician 50, 1996) for small cv', () => {
    // Vangel: u = chi-square quantile; cv / sqrt(((u + 2) / n - 1) cv^2 + u / (n - 1)). Quantiles of 9 df: 19.0228, 2.70039.
    const [cv, n] = [0.08, 10];
    const vangel = (u: number): number => cv / Math.sqrt(((u + 2) / n - 1) * cv * cv + u / (n - 1));
    near(cvInterval(cv, n).low, vangel(19.02276779864163), 2e-3);
    near(cvInterval(cv, n).high, vangel(2.700389499980357), 2e-3);
  });

  it('has no upper end where two pulls scatter so much that a mean of 0 is not ruled out', () => {
    expect(cvInterval(0.9, 2).high).toBe(Infinity);
  });

  simulated('contains the true cv in 95 of 100 series (2,000 simulated series of 4, fixed seed)', () => {
    const draw = normals(seeded(11));
    let inside = 0;
    for (let i = 0; i < 2000; i++) {
      const x = [0, 0, 0, 0].map(() => 20 * (1 + 0.1 * draw()));
      const interval = summarise(x).spread?.cvInterval;
      if (interval && interval.low <= 0.1 && interval.high >= 0.1) inside++;
    }
    // Three standard errors of a share of 0.95 in 2,000.
    expect(Math.abs(inside / 2000 - 0.95)).toBeLessThan(3 * Math.sqrt((0.95 * 0.05) / 2000));
  });
});

describe('mean - 3 sd', () => {
  // SciPy 1.17.1: scipy.stats.nct and scipy.stats.t.
  it.each([
    [3, 0.95, 0.6708722783298038],
    [5, 0.95, 0.8623712273270806],
    [10, 0.95, 0.9556481864760659],
    [30, 0.9, 0.992330042469112],
  ])('of %d pulls promises, with confidence %d, a share %d', (n, confidence, coverage) => {
    near(promiseOfMeanLess(n, { confidence }).coverage, coverage, 1e-9);
  });

  it('its confidences and the next pull', () => {
    near(promiseOfMeanLess(3).confidenceOfWanted, 0.5512425040137041, 1e-9);
    near(promiseOfMeanLess(5, { wantedCoverage: 0.95 }).confidenceOfWanted, 0.853990645848637, 1e-9);
    near(promiseOfMeanLess(10).confidenceOfNominal, 0.44506940947764717, 1e-9);
    near(promiseOfMeanLess(3).nominal, 0.9986501019683699, 1e-12);
    near(promiseOfMeanLess(3).nextPullAbove, 0.9391550328268399, 1e-11);
    near(promiseOfMeanLess(5).nextPullAbove, 0.974010152899037, 1e-11);
  });

  simulated('in 4,000 simulated series of three pulls is passed by the next pull as often as it says (fixed seed)', () => {
    const draw = normals(seeded(3));
    let above = 0;
    for (let i = 0; i < 4000; i++) {
      const [a, b, c, next] = [draw(), draw(), draw(), draw()];
      const mean = (a + b + c) / 3;
      const sd = Math.sqrt(((a - mean) ** 2 + (b - mean) ** 2 + (c - mean) ** 2) / 2);
      if (next > mean - 3 * sd) above++;
    }
    const expected = promiseOfMeanLess(3).nextPullAbove;
    expect(Math.abs(above / 4000 - expected)).toBeLessThan(3.5 * Math.sqrt((expected * (1 - expected)) / 4000));
  });

  it('refuses by name', () => {
    expect(() => promiseOfMeanLess(1)).toThrow('n must be a whole number from 2 upwards (got 1).');
    expect(() => promiseOfMeanLess(3, { k: Number.NaN })).toThrow('k must be finite (got NaN).');
  });
});

describe('what stands behind them', () => {
  it('the next pull: two-sided and one-sided factors share one t', () => {
    const { low, high, oneSidedLow } = nextPull(20, 1, 5);
    near(high - 20, 20 - low, 1e-14);
    near(nextPull(20, 1, 5, 0.9).low, oneSidedLow, 1e-12);
    // Twice the scatter is twice as far. t of 95 % with four degrees of freedom is 2.776 two-sided, 2.132 one-sided (any table).
    const wide = nextPull(20, 2, 5);
    near(wide.high - 20, 2.776445 * 2 * Math.sqrt(1.2), 1e-6);
    near(20 - wide.oneSidedLow, 2.131847 * 2 * Math.sqrt(1.2), 1e-6);
  });

  it('coverage and confidence of a factor undo each other', () => {
    for (const n of [2, 3, 5, 20]) for (const k of [0.5, 2, 3.4]) {
      near(toleranceConfidence(n, k, toleranceCoverage(n, k, 0.9)), 0.9, 1e-10);
    }
  });

  it('delta of the noncentral t undoes its distribution function', () => {
    for (const df of [1, 2, 9, 40]) for (const t of [-3, 0, 0.7, 12, 90]) for (const p of [0.025, 0.5, 0.975]) {
      near(noncentralTCdf(t, df, noncentralTDelta(p, t, df)), p, 1e-9);
    }
  });

  // SciPy 1.17.1: scipy.stats.binom.
  it.each([
    [0, 5, 0.3, 0.16807, 0.16807, 1],
    [2, 7, 0.4, 0.2612736, 0.419904, 0.8413696],
    [10, 10, 0.9, 0.3486784401, 1, 0.3486784401],
    [37, 100, 0.3, 0.026834456506805795, 0.9469544142130749, 0.0798800422937311],
  ])('binomial: %d of %d at %d', (k, n, chance, exactly, atMost, atLeast) => {
    near(binomialPmf(k, n, chance), exactly, 1e-11);
    near(binomialCdf(k, n, chance), atMost, 1e-11);
    near(binomialAtLeast(k, n, chance), atLeast, 1e-11);
  });

  it('binomial edges and refusals', () => {
    expect(binomialPmf(0, 3, 0)).toBe(1);
    expect(binomialPmf(3, 3, 1)).toBe(1);
    expect(binomialPmf(4, 3, 0.5)).toBe(0);
    expect(binomialCdf(-1, 3, 0.5)).toBe(0);
    expect(binomialAtLeast(4, 3, 0.5)).toBe(0);
    expect(() => binomialPmf(1, 0, 0.5)).toThrow('n must be a whole number from 1 upwards (got 0).');
    expect(() => binomialPmf(1, 2, 1.5)).toThrow('chance must lie between 0 and 1 (got 1.5).');
  });
});
