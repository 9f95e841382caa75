import { describe, expect, it } from 'vitest';
import { meanOfValues, sampleCv, sampleSd, sampleVariance } from '../../../src/numerics/descriptive.ts';
import { incompleteBeta } from '../../../src/numerics/incomplete-beta.ts';
import { lowerGamma, upperGamma } from '../../../src/numerics/incomplete-gamma.ts';
import { gammaFunction, logGamma } from '../../../src/numerics/log-gamma.ts';
import {
  lognormalCdf,
  lognormalMean,
  lognormalPdf,
  lognormalQuantile,
  lognormalSd,
  lognormalSurvival,
  sigmaLogFromCv,
} from '../../../src/numerics/lognormal.ts';
import { bivariateOrthant, orthant } from '../../../src/numerics/multinormal.ts';
import {
  logNormalSurvival,
  normalCdf,
  normalHazard,
  normalPdf,
  normalQuantile,
  normalSurvival,
  scaledTail,
  truncatedSurvival,
} from '../../../src/numerics/normal.ts';
import { gaussLegendre } from '../../../src/numerics/quadrature.ts';
import { rangeDivisor } from '../../../src/numerics/range-divisor.ts';
import { findRoot } from '../../../src/numerics/roots.ts';
import { gaussHermite } from '../../support/gauss-hermite.ts';

describe('gamma functions', () => {
  it('are factorials at whole numbers and sqrt(pi) at a half (by definition)', () => {
    expect(gammaFunction(6)).toBe(120);
    expect(Math.abs(gammaFunction(0.5) - Math.sqrt(Math.PI))).toBeLessThan(1e-14);
    expect(Math.abs(logGamma(101) - 363.73937555556347)).toBeLessThan(1e-12); // ln 100!, exact
  });

  it('incomplete: P(1, x) = 1 - exp(-x), and the two halves sum to 1', () => {
    for (const x of [0.1, 1, 3, 10]) expect(Math.abs(lowerGamma(1, x) + Math.expm1(-x))).toBeLessThan(1e-15);
    for (const x of [0.5, 4, 30]) expect(lowerGamma(4.5, x) + upperGamma(4.5, x)).toBeCloseTo(1, 14);
    expect(lowerGamma(2, 0)).toBe(0);
    expect(upperGamma(2, Infinity)).toBe(0);
  });

  it('incomplete beta: I_x(1, b) = 1 - (1 - x)^b, and I_x(2, 2) = 3x^2 - 2x^3 (by definition)', () => {
    for (const x of [0, 0.01, 0.4, 0.9, 1]) {
      expect(incompleteBeta(x, 1, 3)).toBeCloseTo(1 - (1 - x) ** 3, 14);
      expect(incompleteBeta(x, 2, 2)).toBeCloseTo(3 * x * x - 2 * x ** 3, 14);
    }
  });

  it('refuse arguments out of range by name', () => {
    expect(() => logGamma(0)).toThrow('x must be positive and finite (got 0).');
    expect(() => lowerGamma(-1, 2)).toThrow('a must be positive and finite (got -1).');
    expect(() => incompleteBeta(1.5, 1, 1)).toThrow('x must lie between 0 and 1 (got 1.5).');
  });
});

describe('the normal distribution', () => {
  it('far tails keep their ratio where the tails themselves underflow', () => {
    // Mills ratio: the tail is pdf(z) / z (1 - 1/z^2 + 3/z^4 - ...), Abramowitz and Stegun 26.2.12.
    const z = 60;
    const series = (0.3989422804014327 / z) * (1 - z ** -2 + 3 * z ** -4 - 15 * z ** -6);
    expect(Math.abs(scaledTail(z) / series - 1)).toBeLessThan(1e-11);
    expect(logNormalSurvival(z)).toBeCloseTo(-0.5 * z * z + Math.log(series), 9);
    // Just above a far floor the tail falls like exp(-z d).
    expect(truncatedSurvival(z + 0.01, z)).toBeCloseTo(Math.exp(-z * 0.01), 3);
    expect(truncatedSurvival(-1, -2)).toBeCloseTo(normalCdf(1) / normalCdf(2), 15);
    expect(normalSurvival(1.3)).toBe(normalCdf(-1.3));
    // The hazard is the density over the tail: z / (1 - 1/z^2 + 3/z^4 - ...) by the same series, 2 / sqrt(2 pi) at 0.
    expect(Math.abs(normalHazard(z) / (0.3989422804014327 / series) - 1)).toBeLessThan(1e-11);
    expect(normalHazard(0)).toBeCloseTo(Math.sqrt(2 / Math.PI), 15);
    for (const x of [-3, -0.5, 0.5, 2, 8]) {
      const slope = (logNormalSurvival(x + 1e-4) - logNormalSurvival(x - 1e-4)) / 2e-4;
      expect(normalHazard(x)).toBeCloseTo(-slope, 7);
    }
  });

  it('refuses a share of 0 or 1', () => {
    expect(() => normalQuantile(0)).toThrow('p must lie strictly between 0 and 1 (got 0).');
    expect(() => normalQuantile(1)).toThrow(RangeError);
  });
});

describe('the lognormal distribution', () => {
  it('has the moments of its definition, and its density is the slope of its cdf', () => {
    expect(lognormalMean(1, 0.5)).toBeCloseTo(Math.exp(1.125), 14);
    // sd / mean = cv gives back the sd of ln that the cv was turned into.
    const sigma = sigmaLogFromCv(0.12);
    expect(lognormalSd(3, sigma) / lognormalMean(3, sigma)).toBeCloseTo(0.12, 14);
    const slope = (lognormalCdf(2.001, 0.5, 0.3) - lognormalCdf(1.999, 0.5, 0.3)) / 0.002;
    expect(lognormalPdf(2, 0.5, 0.3)).toBeCloseTo(slope, 6);
    expect(lognormalQuantile(0.5, 0.7, 0.2)).toBeCloseTo(Math.exp(0.7), 14);
    // 1.644854 is the 95 % point of the normal (any table).
    expect(lognormalQuantile(0.95, 0.7, 0.2)).toBeCloseTo(Math.exp(0.7 + 0.2 * 1.6448536269514722), 13);
    for (const p of [0.01, 0.6]) expect(lognormalCdf(lognormalQuantile(p, -1, 0.4), -1, 0.4)).toBeCloseTo(p, 14);
    expect(lognormalSurvival(2, 0.5, 0.3) + lognormalCdf(2, 0.5, 0.3)).toBeCloseTo(1, 15);
    expect(lognormalSurvival(0, 0.5, 0.3)).toBe(1);
  });
});

describe('quadrature rules', () => {
  it('Gauss-Legendre with 2 and 3 nodes has the nodes of the textbook (Abramowitz and Stegun 25.4)', () => {
    expect(gaussLegendre(2).nodes[1]).toBeCloseTo(1 / Math.sqrt(3), 15);
    expect(gaussLegendre(3).nodes[2]).toBeCloseTo(Math.sqrt(0.6), 15);
    expect(gaussLegendre(3).weights[1]).toBeCloseTo(8 / 9, 15);
  });

  it('Gauss-Legendre with n nodes integrates every power up to 2n - 1, is mirrored, and is computed once (by definition)', () => {
    for (const count of [1, 2, 3, 4, 5, 8, 20, 33, 64]) {
      const { nodes, weights } = gaussLegendre(count);
      for (let power = 0; power < 2 * count; power++) {
        const sum = weights.reduce((total, w, i) => total + w * (nodes[i] as number) ** power, 0);
        expect(Math.abs(sum - (power % 2 === 0 ? 2 / (power + 1) : 0))).toBeLessThan(3e-14);
      }
      nodes.forEach((node, i) => {
        expect(node).toBe(0 - (nodes[count - 1 - i] as number));
        if (i > 0) expect(node).toBeGreaterThan(nodes[i - 1] as number);
      });
      expect(gaussLegendre(count)).toBe(gaussLegendre(count));
    }
    // One more power than it is made for is missed: x^2 by one node at 0.
    expect([...gaussLegendre(1).nodes]).toEqual([0]);
    // Five nodes: Abramowitz and Stegun 25.4.
    expect(gaussLegendre(5).nodes[4]).toBeCloseTo(0.906179845938664, 15);
    expect(gaussLegendre(5).weights[4]).toBeCloseTo(0.236926885056189, 15);
  });

  it('Gauss-Hermite, by which the tests check, integrates powers of a standard normal exactly: moments 1, 1, 3, 15, 105', () => {
    for (const count of [5, 12, 40, 101]) {
      const { nodes, weights } = gaussHermite(count);
      const moments = [0, 2, 4, 6, 8].map((power) =>
        weights.reduce((sum, w, i) => sum + w * (nodes[i] as number) ** power, 0),
      );
      [1, 1, 3, 15, 105].forEach((expected, i) => {
        expect(Math.abs((moments[i] as number) / expected - 1)).toBeLessThan(1e-13);
      });
    }
  });

  it('refuse a count that is none', () => {
    expect(() => gaussLegendre(0)).toThrow('count must be a whole number from 1 to 256 (got 0).');
    expect(() => gaussHermite(2.5)).toThrow(RangeError);
  });
});

describe('orthant probabilities', () => {
  it('at 0 are arcs: 1/4 + asin(rho) / 2 pi for two, 1/8 + sum of asin / 4 pi for three (Sheppard 1899)', () => {
    for (const rho of [-0.99, -0.95, -0.5, 0, 0.3, 0.92, 0.93, 0.9999]) {
      expect(bivariateOrthant(0, 0, rho)).toBeCloseTo(0.25 + Math.asin(rho) / (2 * Math.PI), 13);
    }
    for (const [a, b, c] of [
      [0.5, 0.5, 0.5],
      [0.9, 0.7, 0.6],
      [-0.3, 0.2, 0.8],
      [0.99, 0.6, 0.65],
    ] as const) {
      const expected = 0.125 + (Math.asin(a) + Math.asin(b) + Math.asin(c)) / (4 * Math.PI);
      expect(orthant(3, [0, 0, 0], [1, a, b, a, 1, c, b, c, 1])).toBeCloseTo(expected, 10);
    }
  });

  it('of n variables with correlation 1/2 at 0 are 1 / (n + 1): each of n + 1 like variables is smallest as often', () => {
    for (const n of [2, 3, 4, 5, 6]) {
      const matrix = Array.from({ length: n * n }, (_, i) => (i % (n + 1) === 0 ? 1 : 0.5));
      expect(Math.abs(orthant(n, new Array(n).fill(0), matrix) - 1 / (n + 1))).toBeLessThan(1e-10);
    }
  });

  it('of variables that are one and the same depend on the highest limit only', () => {
    expect(orthant(3, [0.2, 0.7, -1], [1, 1, 0, 1, 1, 0, 0, 0, 1])).toBeCloseTo(normalCdf(-0.7) * normalCdf(1), 14);
    expect(bivariateOrthant(0.2, 0.7, 1)).toBeCloseTo(normalCdf(-0.7), 14);
    expect(bivariateOrthant(-0.2, 0.1, -1)).toBeCloseTo(normalCdf(0.2) - normalCdf(0.1), 14);
  });

  it('agree with conditioning on one common factor, summed by 200 Hermite nodes', () => {
    const { nodes, weights } = gaussHermite(200);
    for (const n of [2, 3, 4, 5]) {
      const loading = [0.6, 0.3, -0.4, 0.5, 0.65].slice(0, n);
      const limits = [-0.7, 0.3, -1.1, 0.2, -0.4].slice(0, n);
      const matrix: number[] = [];
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) matrix.push(i === j ? 1 : (loading[i] as number) * (loading[j] as number));
      }
      let expected = 0;
      nodes.forEach((z, k) => {
        let product = weights[k] as number;
        loading.forEach((a, i) => {
          product *= normalCdf((a * z - (limits[i] as number)) / Math.sqrt(1 - a * a));
        });
        expected += product;
      });
      expect(Math.abs(orthant(n, limits, matrix) - expected)).toBeLessThan(1e-10);
    }
  });
});

describe('the root finder', () => {
  it('finds a root to the last figures, also where the function is flat or steep', () => {
    expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(findRoot((x) => x ** 9, -1, 1.5)).toBeCloseTo(0, 12);
    expect(findRoot((x) => Math.expm1(80 * (x - 0.3)), 0, 1)).toBeCloseTo(0.3, 13);
    expect(findRoot((x) => x - 1, 1, 5)).toBe(1);
  });

  it('says so when the ends enclose no change of sign', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow('low and high must enclose a change of sign');
  });
});

describe('descriptive statistics', () => {
  it('follow their definitions on a series worked by hand: 2, 4, 9', () => {
    expect(meanOfValues([2, 4, 9])).toBe(5);
    expect(sampleVariance([2, 4, 9])).toBe(13);
    expect(sampleSd([2, 4, 9])).toBe(Math.sqrt(13));
    expect(sampleCv([2, 4, 9])).toBe(Math.sqrt(13) / 5);
  });

  it('need enough values', () => {
    expect(() => meanOfValues([])).toThrow('values must hold at least 1 (got 0).');
    expect(() => sampleSd([3])).toThrow('values must hold at least 2 (got 1).');
  });
});

describe('the range divisor', () => {
  it('is the tabulated d2 of control charts to its three decimals (ASTM MNL 7 and Harter 1960; recalled)', () => {
    const tabulated = [
      [2, 1.128],
      [3, 1.693],
      [4, 2.059],
      [5, 2.326],
      [6, 2.534],
      [7, 2.704],
      [8, 2.847],
      [9, 2.97],
      [10, 3.078],
      [15, 3.472],
      [20, 3.735],
      [25, 3.931],
    ] as const;
    for (const [n, d2] of tabulated) expect(Math.abs(rangeDivisor(n) - d2)).toBeLessThanOrEqual(5.1e-4);
  });

  it('is 2 / sqrt(pi) for two and 3 / sqrt(pi) for three (exact)', () => {
    expect(rangeDivisor(2)).toBeCloseTo(2 / Math.sqrt(Math.PI), 13);
    expect(rangeDivisor(3)).toBeCloseTo(3 / Math.sqrt(Math.PI), 13);
    // Asked again it says the same.
    expect(rangeDivisor(3)).toBeCloseTo(3 / Math.sqrt(Math.PI), 13);
  });

  it('needs two values', () => {
    expect(() => rangeDivisor(1)).toThrow('count must be a whole number from 2 upwards (got 1).');
    expect(normalPdf(0)).toBeCloseTo(1 / Math.sqrt(2 * Math.PI), 15);
  });
});
