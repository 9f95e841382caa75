import { describe, expect, it } from 'vitest';
import { chanceInterval, chanceOfBeating } from '../../../src/break-tests/chance-of-beating.ts';
import { mannWhitney } from '../../../src/break-tests/mann-whitney.ts';
import { fiellerRatio, ratioOfGeometricMeans } from '../../../src/break-tests/ratio-of-means.ts';
import { welch } from '../../../src/break-tests/welch.ts';
import { near, normals, seeded, simulated } from './near.ts';

const a = Object.freeze([21.3, 20.1, 22.4, 19.8, 21.9]);
const b = Object.freeze([15.2, 17.9, 16.4, 14.8]);

describe('ratio of means', () => {
  it('of geometric means: exp of Welch on logarithms', () => {
    // SciPy 1.17.1: scipy.stats.ttest_ind(log a, log b, equal_var=False).confidence_interval(0.95).
    const found = ratioOfGeometricMeans(a, b);
    near(found.ratio, 1.314728420752479, 1e-12);
    near(found.interval.low, 1.1576159719195052, 1e-10);
    near(found.interval.high, 1.4931642809559467, 1e-10);
    near(found.df, 4.820906083305372, 1e-11);
  });

  it('Fieller: the ends are where the difference from 0 is just significant', () => {
    // SciPy 1.17.1: scipy.optimize.brentq on |mean a - r mean b| / sqrt(va + r^2 vb) - scipy.stats.t.ppf.
    const found = fiellerRatio(a, b)!;
    near(found.ratio, 1.312597200622084, 1e-12);
    near(found.df, 4.762036816529514, 1e-11);
    near(found.interval.low, 1.1582038108698876, 1e-10);
    near(found.interval.high, 1.5010264780675322, 1e-10);
  });

  it('Fieller has no interval where the mean to divide by may be 0', () => {
    expect(fiellerRatio([20, 21], [1, 30])).toBeNull();
  });

  simulated('the geometric one contains the truth in 95 of 100 (2,000 simulated pairs of 4 and 5, fixed seed)', () => {
    const draw = normals(seeded(13));
    let inside = 0;
    for (let i = 0; i < 2000; i++) {
      const x = [0, 0, 0, 0].map(() => Math.exp(3 + 0.05 * draw()));
      const y = [0, 0, 0, 0, 0].map(() => Math.exp(2.8 + 0.12 * draw()));
      const { interval } = ratioOfGeometricMeans(x, y);
      if (interval.low <= Math.exp(0.2) && interval.high >= Math.exp(0.2)) inside++;
    }
    // Welch is approximate: within one in a hundred and three standard errors.
    expect(Math.abs(inside / 2000 - 0.95)).toBeLessThan(0.01 + 3 * Math.sqrt((0.95 * 0.05) / 2000));
  });

  it('refuse by name', () => {
    expect(() => welch([1], [1, 2])).toThrow('a must hold at least 2 (got 1).');
    expect(() => welch([1, 1], [2, 2])).toThrow('a and b must not both consist of equal values.');
    expect(() => ratioOfGeometricMeans([1, 2], [0, 2])).toThrow('b[0] must be positive (got 0).');
    expect(() => fiellerRatio([1, 1], [2, 2])).toThrow('a and b must not both consist of equal values.');
  });
});

describe('rank test', () => {
  /** Every way to deal the pulls into a first series of so many. */
  function* deals(all: readonly number[], count: number): Generator<{ a: number[]; b: number[] }> {
    for (let bits = 0; bits < 2 ** all.length; bits++) {
      const a = all.filter((_, i) => (bits >> i) & 1);
      if (a.length === count) yield { a, b: all.filter((_, i) => !((bits >> i) & 1)) };
    }
  }
  const pairsWon = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x) => sum + b.reduce((own, y) => own + (x > y ? 1 : x === y ? 0.5 : 0), 0), 0);

  it.each([
    [[21, 23.5, 22], [20, 20.5, 19, 22.5]], [[1, 2, 2, 3], [2, 4, 4]], [[5], [1, 2, 3, 4]], [[3, 1], [2, 4, 6, 5, 9]], [[1, 1, 2], [1, 2, 2]],
  ])('its p-values count all ways to deal the pulls, ties as they are: %j against %j', (a, b) => {
    const found = mannWhitney(a, b);
    const u = pairsWon(a, b);
    expect(found.u).toBe(u);
    expect(found.share).toBeCloseTo(u / (a.length * b.length), 14);
    expect(found.ties).toBe(new Set([...a, ...b]).size < a.length + b.length);
    const all = [...deals([...a, ...b], a.length)].map((deal) => pairsWon(deal.a, deal.b));
    const greater = all.filter((each) => each >= u).length / all.length;
    const less = all.filter((each) => each <= u).length / all.length;
    near(found.exact!.greater, greater, 1e-12);
    near(found.exact!.less, less, 1e-12);
    near(found.exact!.twoSided, Math.min(1, 2 * Math.min(greater, less)), 1e-12);
    near(found.smallestP, Math.min(1, 2 / all.length), 1e-12);
    // Shift: the median of all differences.
    const differences = a.flatMap((x) => b.map((y) => x - y)).sort((p, q) => p - q);
    const half = differences.length / 2;
    near(found.shift + 100, 100 + (differences.length % 2 === 1 ? differences[Math.floor(half)]! : (differences[half - 1]! + differences[half]!) / 2), 1e-12);
  });

  it('without ties the interval of the shift leaves out as many differences on each side as its level allows', () => {
    const [a, b] = [[21, 23.5, 22, 24.1, 25], [20, 20.6, 19, 22.7]];
    const differences = a.flatMap((x) => b.map((y) => x - y)).sort((p, q) => p - q);
    const all = [...deals([...a, ...b], a.length)].map((deal) => pairsWon(deal.a, deal.b));
    for (const level of [0.5, 0.8, 0.9, 0.95, 0.999]) {
      const found = mannWhitney(a, b, level).shiftInterval!;
      // Bauer's interval (JASA 67, 1972): q is the least number of pairs that is won at most as often as may be missed on a
      // side; one at least.
      let q = 0;
      while (all.filter((u) => u <= q).length / all.length < 0.5 * (1 - level)) q++;
      q = Math.max(1, q);
      const missed = all.filter((u) => u < q).length / all.length;
      expect(found.low).toBe(differences[q - 1]);
      expect(found.high).toBe(differences[differences.length - q]);
      near(found.attained, 1 - 2 * missed, 1e-12);
    }
    expect(mannWhitney([1, 2], [2, 3]).shiftInterval).toBeNull();
  });

  it('with ties: exact over all deals, and the corrected approximation', () => {
    const found = mannWhitney([1, 2, 2, 3, 5], [2, 3, 3, 4, 6, 7]);
    // Enumeration of all 462 deals (itertools.combinations over scipy.stats.rankdata); scipy.stats.mannwhitneyu(asymptotic).
    near(found.exact!.less, 0.08658008658008658, 1e-12);
    near(found.exact!.greater, 0.9393939393939394, 1e-12);
    near(found.exact!.twoSided, 0.17316017316017315, 1e-12);
    expect(found.u).toBe(7);
    near(found.approximate!.twoSided, 0.16304505585423734, 1e-11);
    expect(found.ties).toBe(true);
    expect(found.shiftInterval).toBeNull();
  });

  it('three against three can never go below one in ten', () => {
    const found = mannWhitney([1, 2, 3], [4, 5, 6]);
    expect(found.smallestP).toBeCloseTo(0.1, 15);
    near(found.exact!.twoSided, 0.1, 1e-12);
    // The widest interval there is attains 0.9 only.
    expect(found.shiftInterval).toEqual({ low: -5, high: -1, attained: expect.closeTo(0.9, 12) });
  });

  it('fifty against fifty stays exact: the distribution sums to one and is symmetric', () => {
    const random = seeded(19);
    const x = Array.from({ length: 50 }, () => random());
    const y = Array.from({ length: 50 }, () => random());
    const one = mannWhitney(x, y).exact!;
    const other = mannWhitney(y, x).exact!;
    near(one.less, other.greater, 1e-9);
    near(one.twoSided, mannWhitney(x, y).approximate!.twoSided, 0.02);
    expect(mannWhitney([...x, 2], y).exact).toBeNull();
    expect(mannWhitney(y, [...x, 2]).exact).toBeNull();
  });

  it('half of all pairs each way: no correction for continuity, and a chance of 1', () => {
    expect(mannWhitney([1, 4], [2, 3]).approximate).toEqual({ z: 0, twoSided: 1 });
  });

  it('all equal: no evidence at all', () => {
    const found = mannWhitney([2, 2], [2, 2, 2]);
    expect(found.exact!.twoSided).toBe(1);
    expect(found.approximate).toBeNull();
    expect(found.share).toBe(0.5);
    expect(mannWhitney([2], [1]).shift).toBe(1);
    expect(() => mannWhitney([], [1])).toThrow('a must hold at least 1 (got 0).');
  });
});

describe('chance that one pull of a breaks above one of b', () => {
  // Newcombe 2006, method 5, solved apart with scipy.optimize.brentq (SciPy 1.17.1).
  it.each([
    [0.8, 5, 6, 0.4447180478047379, 0.9474835696736165],
    [0.7, 10, 5, 0.3892777832682292, 0.8889645483073068],
  ])('share %d of %d by %d', (chance, n, m, low, high) => {
    const found = chanceInterval(chance, n, m);
    near(found.low, low, 1e-10);
    near(found.high, high, 1e-10);
  });

  it('counts pairs, a tie as one half', () => {
    expect(chanceOfBeating([2, 4], [1, 4]).chance).toBe((1 + 0 + 1 + 0.5) / 4);
    expect(chanceOfBeating([1, 2], [3, 4]).chance).toBe(0);
  });

  it('three above three says less than it seems: the interval reaches down to the other root', () => {
    const { chance, interval } = chanceOfBeating([7, 8, 9], [1, 2, 3]);
    expect(chance).toBe(1);
    expect(interval.high).toBe(1);
    // By hand: 1 - x = z sqrt(x (1 - x) (1 + 2 ((1 - x) / (2 - x) + x / (1 + x))) / 9), at its lower root.
    const x = interval.low;
    const square = (x * (1 - x) * (1 + 2 * ((1 - x) / (2 - x) + x / (1 + x)))) / 9;
    near(1 - x, 1.959963984540054 * Math.sqrt(square), 1e-10);
    expect(x).toBeLessThan(0.6);
    // One pull each: (1 - x)^2 = z^2 x (1 - x), so x = 1 / (1 + z^2).
    near(chanceOfBeating([2], [1]).interval.low, 1 / (1 + 1.959963984540054 ** 2), 1e-10);
    near(chanceOfBeating([1], [2]).interval.high, 1 - 1 / (1 + 1.959963984540054 ** 2), 1e-10);
  });

  it('refuses by name', () => {
    expect(() => chanceInterval(1.2, 3, 3)).toThrow('chance must lie between 0 and 1 (got 1.2).');
    expect(() => chanceOfBeating([], [1])).toThrow('a must hold at least 1 (got 0).');
  });
});
