import { describe, expect, it } from 'vitest';
import { jeffreysInterval, modeShares, shareInterval, wilsonInterval } from '../../../src/break-tests/mode-shares.ts';
import { expectedBound, pullsForBound, whatFurtherPullsBuy } from '../../../src/break-tests/plan-bound.ts';
import { powerOfDifference, pullsByNormalFormula, pullsByStudentFormula, pullsForDifference } from '../../../src/break-tests/plan-difference.ts';
import { expectedShareWidth, pullsForShare } from '../../../src/break-tests/plan-share.ts';
import { lowerToleranceBound } from '../../../src/break-tests/tolerance-bound.ts';
import { near, normals, seeded, simulated } from './near.ts';

const pair = { coverage: 0.95, confidence: 0.95 };

describe('pulls for a bound', () => {
  it('by hand at five pulls and a cv of 0.08: k 4.203 (table), c4 0.9400 (table), z 1.645', () => {
    const found = expectedBound(5, pair, 0.08);
    expect(Math.abs(found.bound - (1 - 4.203 * 0.94 * 0.08))).toBeLessThan(1e-4);
    expect(Math.abs(found.known - (1 - 1.645 * 0.08))).toBeLessThan(1e-4);
    expect(Math.abs(found.shortfall - (4.203 * 0.94 - 1.645) * 0.08)).toBeLessThan(1e-4);
    expect(Math.abs(found.scatter - 0.08 * Math.sqrt(0.2 + 4.203 ** 2 * (1 - 0.94 ** 2)))).toBeLessThan(1e-4);
  });

  simulated('is what simulated series of four give on average (4,000, fixed seed)', () => {
    const draw = normals(seeded(31));
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < 4000; i++) {
      const { bound } = lowerToleranceBound([0, 0, 0, 0].map(() => 1 + 0.05 * draw()), pair);
      sum += bound;
      squares += bound * bound;
    }
    const expected = expectedBound(4, pair, 0.05);
    const sd = Math.sqrt(squares / 4000 - (sum / 4000) ** 2);
    expect(Math.abs(sum / 4000 - expected.bound)).toBeLessThan((4 * expected.scatter) / Math.sqrt(4000));
    expect(Math.abs(sd / expected.scatter - 1)).toBeLessThan(4 / Math.sqrt(2 * 4000));
  });

  it('finds the fewest: one fewer falls short by more', () => {
    const plan = pullsForBound(pair, 0.08, 0.05);
    expect(plan.shortfall).toBeLessThanOrEqual(0.05);
    expect(expectedBound(plan.n - 1, pair, 0.08).shortfall).toBeGreaterThan(0.05);
    expect(pullsForBound(pair, 0.001, 0.5).n).toBe(2);
    expect(() => pullsForBound(pair, 0.1, 1e-9)).toThrow('shortfall asks for more than 100000 pulls (got 1e-9).');
  });

  it('each further pull buys less: published factors at 3 to 6 pulls', () => {
    const rows = whatFurtherPullsBuy(3, 3, pair, 0.1);
    for (const [i, k] of [7.656, 5.144, 4.203, 3.708].entries()) expect(rows[i]!.k).toBeCloseTo(k, 3); // 95/95, Table B1
    const gains = rows.slice(1).map((row, i) => row.bound - rows[i]!.bound);
    expect(gains[0]).toBeGreaterThan(gains[1]!);
    expect(gains[1]).toBeGreaterThan(gains[2]!);
  });

  it('refuses by name', () => {
    expect(() => expectedBound(1, pair, 0.1)).toThrow('n must be a whole number from 2 upwards (got 1).');
    expect(() => expectedBound(3, pair, 0)).toThrow('cv must be positive and finite (got 0).');
  });
});

describe('pulls for a difference', () => {
  // SciPy 1.17.1: scipy.stats.nct, both tails.
  it.each([
    [3, 2, 0.05, 0.462640811891307],
    [5, 1.5, 0.1, 0.6985500196349141],
    [12, 1, 0.05, 0.6486425507266541],
  ])('%d pulls a series, %d sd apart, at alpha %d', (n, difference, alpha, power) => {
    near(powerOfDifference(n, { difference, sd: 1, alpha }), power, 1e-9);
  });

  it('whole pulls reach the power, one fewer does not', () => {
    const plan = { difference: 2, sd: 1.2 };
    const { pulls, power } = pullsForDifference(0.8, plan);
    expect(power).toBeGreaterThanOrEqual(0.8);
    expect(powerOfDifference(pulls - 1, plan)).toBeLessThan(0.8);
    expect(pullsForDifference(0.5, { difference: 100, sd: 1 }).pulls).toBe(2);
    expect(pullsByStudentFormula(0.9, { difference: 1, sd: 1 })).toBeLessThanOrEqual(pullsForDifference(0.9, { difference: 1, sd: 1, series: 1 }).pulls);
  });

  it('no difference is found as often as alpha says, one-sided and two-sided, one series and two', () => {
    for (const sided of [1, 2] as const) for (const series of [1, 2] as const) {
      near(powerOfDifference(5, { difference: 1e-9, sd: 1, alpha: 0.05, sided, series }), 0.05, 1e-6);
    }
  });

  it('by the formula with normal quantiles: (1.959964 + 1.281552)^2 times (1/2)^2, by hand from any normal table', () => {
    near(pullsByNormalFormula(0.9, { difference: 2, sd: 1 }), 10.507426 / 4, 1e-6);
    near(pullsByNormalFormula(0.9, { difference: 1, sd: 2 }), 10.507426 * 4, 1e-6);
  });

  it('refuses by name', () => {
    expect(() => powerOfDifference(1, { difference: 1, sd: 1 })).toThrow('n must be above 1 (got 1).');
    expect(() => pullsForDifference(0.04, { difference: 1, sd: 1 })).toThrow('power must be above alpha (got 0.04).');
    expect(() => pullsForDifference(0.9, { difference: 0, sd: 1 })).toThrow('difference must be positive and finite (got 0).');
    expect(() => pullsForDifference(0.9, { difference: 1e-6, sd: 1 })).toThrow('difference is too small to plan for (got 0.000001).');
  });
});

describe('shares of modes and their plans', () => {
  it('three modes, the most frequent first', () => {
    const found = modeShares(['sling', 'wire', 'sling', 'knot', 'sling']);
    expect(found.map(({ mode, count, share }) => [mode, count, share])).toEqual([['sling', 3, 0.6], ['wire', 1, 0.2], ['knot', 1, 0.2]]);
    expect(found[0]?.exact).toEqual(shareInterval(3, 5));
    expect(modeShares(['knot', 'wire', 'wire', 'sling', 'sling', 'sling']).map(({ mode }) => mode)).toEqual(['sling', 'wire', 'knot']);
    expect(() => modeShares([])).toThrow('modes.length must be a whole number from 1 upwards (got 0).');
    expect(() => shareInterval(4, 3)).toThrow('count must not exceed n (got 4 of 3).');
  });

  it('none of three: up to 1 - 0.025^(1/3), by hand', () => {
    near(shareInterval(0, 3).high, 1 - 0.025 ** (1 / 3), 1e-12);
  });

  it('none has its lower end at 0, and all its upper end at 1 (Brown, Cai and DasGupta, Statistical Science 16, 2001)', () => {
    for (const interval of [shareInterval, wilsonInterval, jeffreysInterval]) for (let n = 1; n <= 40; n++) {
      expect(interval(0, n).low).toBe(0);
      expect(interval(n, n).high).toBe(1);
    }
  });

  // SciPy 1.17.1: sum over scipy.stats.binom.pmf of widths from scipy.stats.beta.ppf.
  it.each([[5, 0.5, 0.7553051320117614], [10, 0.3, 0.5589611751986338], [40, 0.5, 0.32025520345216657]])(
    'width expected of %d pulls at a share of %d',
    (n, share, width) => near(expectedShareWidth(n, share), width, 1e-7),
  );

  it('fewest pulls for a width (searched one by one with SciPy)', () => {
    expect(pullsForShare(0.5, 0.4).pulls).toBe(26);
    expect(pullsForShare(0.2, 0.3).pulls).toBe(31);
    expect(() => pullsForShare(0.5, 0.001)).toThrow('width asks for more than 5000 pulls (got 0.001).');
  });
});
