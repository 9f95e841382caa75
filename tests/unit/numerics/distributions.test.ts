/** Distributions at their edges and where a formula is exact; the middle is tests/reference/distributions.test.ts. */
import { describe, expect, it } from 'vitest';
import { betaCdf, betaPdf, betaSurvival } from '../../../src/numerics/beta.ts';
import { binomialAtLeast, binomialCdf, binomialPmf } from '../../../src/numerics/binomial.ts';
import { autocorrelation } from '../../../src/numerics/descriptive.ts';
import { chiSquareQuantile, chiSquareSurvival, gammaCdf, gammaPdf, gammaSurvival } from '../../../src/numerics/gamma.ts';
import { incompleteBeta } from '../../../src/numerics/incomplete-beta.ts';
import { lowerGamma, upperGamma } from '../../../src/numerics/incomplete-gamma.ts';
import { gammaFunction, logGamma, stirlingError } from '../../../src/numerics/log-gamma.ts';
import { lognormalCdf, lognormalPdf, lognormalSurvival } from '../../../src/numerics/lognormal.ts';
import { noncentralTCdf, noncentralTDelta, noncentralTQuantile, noncentralTSurvival } from '../../../src/numerics/noncentral-t.ts';
import { normalCdf, normalQuantile, scaledTail, truncatedSurvival } from '../../../src/numerics/normal.ts';
import { tCdf, tQuantile, tSurvival } from '../../../src/numerics/student-t.ts';
import { toleranceConfidence, toleranceCoverage } from '../../../src/numerics/tolerance-factor.ts';
import { weibullCdf, weibullPdf } from '../../../src/numerics/weibull.ts';

const relative = (got: number, expected: number): number => Math.abs(got / expected - 1);

describe('below, at and above the ends of their range', () => {
  it('densities are 0, also at 0 itself, where some formulas would give more', () => {
    for (const x of [-1, 0]) {
      expect(gammaPdf(x, 1, 2)).toBe(0);
      expect(weibullPdf(x, 1, 2)).toBe(0);
      expect(lognormalPdf(x, 0, 1)).toBe(0);
      expect(betaPdf(x, 1, 3)).toBe(0);
    }
    for (const x of [1, 2]) expect(betaPdf(x, 3, 1)).toBe(0);
    // The density of the square root's distribution is unbounded at 0; inside it is what it is: x^(-1/2) / 2.
    expect(betaPdf(0.25, 0.5, 1)).toBeCloseTo(1, 14);
  });

  it('nothing lies below 0, and everything above', () => {
    for (const x of [-3, 0]) {
      expect([gammaCdf(x, 2, 3), weibullCdf(x, 2, 3), lognormalCdf(x, 0, 1), betaCdf(x, 2, 3)]).toEqual([0, 0, 0, 0]);
      expect([gammaSurvival(x, 2, 3), lognormalSurvival(x, 0, 1), betaSurvival(x, 2, 3)]).toEqual([1, 1, 1]);
    }
    expect([betaCdf(1, 2, 3), betaCdf(7, 2, 3), betaSurvival(1, 2, 3), betaSurvival(7, 2, 3)]).toEqual([1, 1, 0, 0]);
    expect([lowerGamma(2, 0), upperGamma(2, 0), lowerGamma(2, Infinity), upperGamma(2, Infinity)]).toEqual([0, 1, 1, 0]);
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
    expect([tCdf(Infinity, 3), tCdf(-Infinity, 3), tSurvival(Infinity, 3)]).toEqual([1, 0, 0]);
    expect([normalCdf(39), normalCdf(-39), normalCdf(Infinity), normalCdf(-Infinity)]).toEqual([1, 0, 1, 0]);
    // Down to the smallest number that there is: P(Z < -38.4) = 4.3e-323 (first term of Abramowitz and Stegun 26.2.12).
    expect(normalCdf(-38.4)).toBeGreaterThan(0);
  });

  it('at the middle the quantile is 0 itself', () => {
    for (const df of [1, 2, 3, 7.5]) expect(tQuantile(0.5, df)).toBe(0);
    expect(() => tQuantile(0.5, -1)).toThrow('df must be positive and finite (got -1).');
    expect(normalQuantile(0.5)).toBe(0);
  });
});

describe('far tails', () => {
  it('of chi-square with two degrees of freedom are exp(-x / 2), and the quantile undoes it (by definition)', () => {
    for (const x of [0.1, 3, 40, 300]) {
      expect(relative(chiSquareSurvival(x, 2), Math.exp(-x / 2))).toBeLessThan(1e-13);
      if (x < 30) expect(relative(chiSquareQuantile(-Math.expm1(-x / 2), 2), x)).toBeLessThan(1e-9);
    }
  });

  it('of the gamma distribution with shape 3 are exp(-x)(1 + x + x^2 / 2), on both sides of the mean', () => {
    for (const x of [0.5, 3.9, 4, 4.1, 30, 200]) {
      expect(relative(upperGamma(3, x), Math.exp(-x) * (1 + x + (x * x) / 2))).toBeLessThan(1e-13);
    }
    // Below 1e-3 the series alone keeps the digits: x^3 / 6 (1 - 3x/4 + 3x^2/10 - ...).
    expect(relative(lowerGamma(3, 1e-4), (1e-12 / 6) * (1 - 0.75e-4 + 0.3e-8))).toBeLessThan(1e-12);
  });

  it('of Student with one and two degrees of freedom are those of their closed forms', () => {
    for (const p of [1e-12, 1e-6, 0.01, 0.3]) {
      expect(relative(tQuantile(p, 1), -1 / Math.tan(Math.PI * p))).toBeLessThan(1e-15);
      expect(tQuantile(1 - p, 1)).toBe(-tQuantile(1 - (1 - p), 1));
    }
    // P(T < -t) with two degrees of freedom is (1 - t / sqrt(2 + t^2)) / 2.
    for (const t of [0.4, 3, 200]) {
      expect(relative(tCdf(-t, 2), 1 / (Math.sqrt(2 + t * t) * (Math.sqrt(2 + t * t) + t)))).toBeLessThan(1e-13);
      expect(relative(tQuantile(tCdf(-t, 2), 2), -t)).toBeLessThan(1e-9);
    }
  });

  it('of the normal distribution agree on both sides of where one formula takes over from another', () => {
    // Mills ratio by its continued fraction 1 / (z + 1 / (z + 2 / (z + ...))), Abramowitz and Stegun 26.2.14.
    for (const z of [2.9, 2.999999, 3, 3.000001, 4, 5.6568, 5.657, 6, 12, 37]) {
      let fraction = 0;
      for (let k = 400; k >= 1; k--) fraction = k / (z + fraction);
      expect(relative(scaledTail(z) * Math.sqrt(2 * Math.PI), 1 / (z + fraction)), String(z)).toBeLessThan(2e-14);
    }
    expect(truncatedSurvival(1, 0)).toBeCloseTo(2 * normalCdf(-1), 15);
    for (const [x, floor] of [[4, 1], [1.5, 0.5], [3, -1]] as const) expect(relative(truncatedSurvival(x, floor), normalCdf(-x) / normalCdf(-floor))).toBeLessThan(1e-13);
    for (const p of [1e-300, 1e-20, 0.07, 0.0749999, 0.075, 0.93]) {
      expect(relative(normalCdf(normalQuantile(p)), p)).toBeLessThan(2e-13);
    }
  });
});

describe('the binomial distribution', () => {
  it('is Pascal\'s triangle over 2^n at one half, and its sums are the tails', () => {
    let row = [1];
    for (let n = 1; n <= 12; n++) {
      row = [1, ...row.slice(1).map((x, i) => x + (row[i] as number)), 1];
      let below = 0;
      row.forEach((ways, k) => {
        expect(relative(binomialPmf(k, n, 0.5), ways / 2 ** n)).toBeLessThan(1e-13);
        expect(binomialAtLeast(k, n, 0.5)).toBeCloseTo(1 - below, 13);
        below += ways / 2 ** n;
        expect(binomialCdf(k, n, 0.5)).toBeCloseTo(below, 13);
      });
    }
  });

  it('at other chances: 3 of 5 at 0.2 is 10 x 0.008 x 0.64 = 0.0512, at most 1 is 0.73728, at least 4 is 0.00672 (by hand)', () => {
    expect(binomialPmf(3, 5, 0.2)).toBeCloseTo(0.0512, 15);
    expect(binomialCdf(1, 5, 0.2)).toBeCloseTo(0.73728, 14);
    expect(binomialAtLeast(4, 5, 0.2)).toBeCloseTo(0.00672, 15);
  });

  it('knows what is certain', () => {
    expect([0, 1, 3].map((k) => binomialPmf(k, 3, 0))).toEqual([1, 0, 0]);
    expect([0, 2, 3].map((k) => binomialPmf(k, 3, 1))).toEqual([0, 0, 1]);
    expect([-1, 4].map((k) => binomialPmf(k, 3, 0.5))).toEqual([0, 0]);
    expect([-1, 3, 4].map((k) => binomialCdf(k, 3, 0.5))).toEqual([0, 1, 1]);
    expect([-1, 0, 4].map((k) => binomialAtLeast(k, 3, 0.5))).toEqual([1, 1, 0]);
    expect([0, 2].map((k) => binomialCdf(k, 3, 0))).toEqual([1, 1]);
    expect([1, 3].map((k) => binomialAtLeast(k, 3, 1))).toEqual([1, 1]);
  });
});

describe('gamma and beta functions', () => {
  it('recurrence and reflection hold: Gamma(x + 1) = x Gamma(x), Gamma(x) Gamma(1 - x) = pi / sin(pi x)', () => {
    for (const x of [0.1, 0.7, 1.5, 3.3, 8.9, 9.99, 10, 25.5, 120.25]) {
      expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThan(1e-13 * Math.max(1, logGamma(x + 1)));
    }
    for (const x of [0.1, 0.25, 0.4]) {
      expect(relative(gammaFunction(x) * gammaFunction(1 - x), Math.PI / Math.sin(Math.PI * x))).toBeLessThan(1e-13);
    }
  });

  it('are exact at whole numbers: 1, 1, 2, ... and 20! = 2432902008176640000; 25! within the last figures', () => {
    expect([1, 2, 3, 4, 5].map(gammaFunction)).toEqual([1, 1, 2, 6, 24]);
    expect([logGamma(1), logGamma(2)]).toEqual([0, 0]);
    expect(gammaFunction(21)).toBe(2432902008176640000);
    expect(relative(gammaFunction(26), 1.5511210043330986e25)).toBeLessThan(1e-13);
  });

  it('the error of Stirling\'s formula: Robbins (American Mathematical Monthly 62, 1955) puts it between 1 / (12n + 1) and 1 / 12n', () => {
    for (const n of [8, 10, 15, 100]) {
      // Robbins bounds n! = Gamma(n + 1); the error of Gamma(n) about n is the same.
      expect(stirlingError(n)).toBeGreaterThan(1 / (12 * n + 1));
      expect(stirlingError(n)).toBeLessThan(1 / (12 * n));
    }
  });

  it('incomplete beta: I_x(a, b) = 1 - I_(1-x)(b, a), and a complement known better than the subtraction is used', () => {
    for (const [x, a, b] of [[0.3, 0.5, 4], [0.6, 12, 7], [0.02, 3, 90]] as const) {
      expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a)).toBeCloseTo(1, 14);
    }
    // I_x(2, 3) at 1 - x = 1e-12: 1 - 4 (1 - x)^3 + 3 (1 - x)^4.
    expect(relative(incompleteBeta(1e-20, 3, 2), 4e-60)).toBeLessThan(1e-13);
    expect(incompleteBeta(1, 2, 3, 1e-20)).toBe(1);
  });
});

describe('the noncentral t distribution', () => {
  it('at 0 is Phi(-delta), at the ends 0 and 1, and its two tails sum to 1', () => {
    for (const delta of [-2, 0, 0.7]) {
      expect(noncentralTCdf(0, 4, delta)).toBe(normalCdf(-delta));
      expect(noncentralTSurvival(0, 4, delta)).toBe(normalCdf(delta));
      expect([noncentralTCdf(Infinity, 4, delta), noncentralTCdf(-Infinity, 4, delta)]).toEqual([1, 0]);
      expect([noncentralTSurvival(Infinity, 4, delta), noncentralTSurvival(-Infinity, 4, delta)]).toEqual([0, 1]);
      for (const t of [-3, -0.2, 1, 5]) {
        expect(noncentralTCdf(t, 4, delta) + noncentralTSurvival(t, 4, delta)).toBeCloseTo(1, 13);
      }
    }
  });

  it('with delta 0 is Student\'s, in both tails and for one degree of freedom as for two hundred', () => {
    for (const df of [1, 2, 7, 60, 200]) {
      for (const t of [-6, -1, 0.3, 2, 9]) {
        expect(noncentralTCdf(t, df, 0)).toBeCloseTo(tCdf(t, df), 12);
        expect(noncentralTSurvival(t, df, 0)).toBeCloseTo(tSurvival(t, df), 12);
      }
      for (const p of [0.01, 0.2, 0.5, 0.9, 0.999]) expect(noncentralTQuantile(p, df, 0)).toBeCloseTo(tQuantile(p, df), 8);
    }
  });

  it('is turned round with the sign of delta: P(T <= t; delta) = P(T > -t; -delta)', () => {
    for (const [t, df, delta] of [[2, 3, 1.5], [0.5, 9, -2], [6, 2, 4], [25, 4, 12]] as const) {
      expect(noncentralTCdf(t, df, delta)).toBeCloseTo(noncentralTSurvival(-t, df, -delta), 13);
    }
  });

  it('quantile and delta undo it, on both sides of the middle', () => {
    for (const df of [2, 5, 29]) {
      for (const delta of [-1.2, 0.4, 6]) {
        for (const p of [0.02, 0.5, 0.51, 0.95]) {
          const t = noncentralTQuantile(p, df, delta);
          expect(noncentralTCdf(t, df, delta)).toBeCloseTo(p, 12);
          expect(noncentralTDelta(p, t, df)).toBeCloseTo(delta, 8);
        }
      }
    }
  });

  it('keeps the digits of far tails on both sides: the quantile of a tail of 1e-10 has it', () => {
    for (const [df, delta] of [[5, 0], [9, 2], [40, -1]] as const) {
      const p = 1 - 1e-10;
      expect(relative(noncentralTSurvival(noncentralTQuantile(p, df, delta), df, delta), 1 - p)).toBeLessThan(1e-9);
      expect(relative(noncentralTCdf(noncentralTQuantile(1e-10, df, delta), df, delta), 1e-10)).toBeLessThan(1e-9);
      expect(relative(noncentralTSurvival(3, df, noncentralTDelta(p, 3, df)), 1 - p)).toBeLessThan(1e-9);
      expect(relative(noncentralTCdf(3, df, noncentralTDelta(1e-10, 3, df)), 1e-10)).toBeLessThan(1e-9);
    }
  });

  it('gives confidence and coverage of a tolerance factor: k of 90/95 for five pulls is 3.407 (CMH-17, table of factors)', () => {
    expect(toleranceConfidence(5, 3.407, 0.9)).toBeCloseTo(0.95, 4);
    expect(toleranceCoverage(5, 3.407, 0.95)).toBeCloseTo(0.9, 4);
  });
});

describe('autocorrelation', () => {
  it('of 1, 2, 3 is 0, of 1, 2, 1, 2 is -3/4, of 0, 0, 1, 1 is 1/4 (by hand)', () => {
    expect(autocorrelation([1, 2, 3])).toBe(0);
    expect(autocorrelation([1, 2, 1, 2])).toBe(-0.75);
    expect(autocorrelation([0, 0, 1, 1])).toBe(0.25);
  });
});
