/** Whatever an argument may not be is refused by its name: below, at and above the ends of its range, and NaN. */
import { describe, expect, it } from 'vitest';
import { betaCdf, betaQuantile } from '../../../src/numerics/beta.ts';
import { binomialAtLeast, binomialCdf, binomialPmf } from '../../../src/numerics/binomial.ts';
import { autocorrelation, meanOfValues, sampleVariance } from '../../../src/numerics/descriptive.ts';
import { chiSquareQuantile, chiSquareSurvival, gammaCdf, gammaPdf, gammaQuantile, gammaSurvival } from '../../../src/numerics/gamma.ts';
import { incompleteBeta } from '../../../src/numerics/incomplete-beta.ts';
import { lowerGamma, upperGamma } from '../../../src/numerics/incomplete-gamma.ts';
import { invertTails } from '../../../src/numerics/invert.ts';
import { logGamma } from '../../../src/numerics/log-gamma.ts';
import { lognormalCdf, lognormalPdf, lognormalQuantile, lognormalSurvival, sigmaLogFromCv } from '../../../src/numerics/lognormal.ts';
import { MAX_VARIABLES, orthant } from '../../../src/numerics/multinormal.ts';
import { natrellaFactor } from '../../../src/numerics/natrella-factor.ts';
import { noncentralTCdf, noncentralTDelta, noncentralTQuantile, noncentralTSurvival } from '../../../src/numerics/noncentral-t.ts';
import { normalQuantile } from '../../../src/numerics/normal.ts';
import { gaussLegendre } from '../../../src/numerics/quadrature.ts';
import { rangeDivisor } from '../../../src/numerics/range-divisor.ts';
import { tCdf, tPdf, tQuantile, tSurvival } from '../../../src/numerics/student-t.ts';
import { tQuantile95 } from '../../../src/numerics/t-95.ts';
import { oneSidedToleranceFactor, toleranceConfidence, toleranceCoverage } from '../../../src/numerics/tolerance-factor.ts';
import { howeFactor, twoSidedToleranceFactor, waldWolfowitzFactor } from '../../../src/numerics/two-sided-tolerance-factor.ts';
import { unbiasingConstant } from '../../../src/numerics/unbiasing.ts';
import { weibullCdf, weibullPdf, weibullQuantile } from '../../../src/numerics/weibull.ts';

const positive = [0, -1, Infinity, Number.NaN];
const share = [0, -0.1, 1, 1.1, Number.NaN];
const closedShare = [-0.1, 1.1, Number.NaN];
const notWhole = [1.5, Number.NaN, Infinity];
const pulls = [1, 0, 2.5, Infinity, Number.NaN];
const notFinite = [Infinity, -Infinity, Number.NaN];

type Numbers = (...values: number[]) => unknown;

/** Function, arguments that it takes, and for each argument by name what it does not take. */
const RANGES: readonly (readonly [Numbers, readonly number[], Readonly<Record<string, readonly number[]>>])[] = [
  [betaCdf as Numbers, [0.5, 2, 3], { '': [], a: positive, b: positive }],
  [betaQuantile as Numbers, [0.5, 2, 3], { p: share, a: positive, b: positive }],
  [incompleteBeta as Numbers, [0.5, 2, 3], { x: closedShare, a: positive, b: positive }],
  [binomialPmf as Numbers, [1, 3, 0.5], { k: notWhole, n: [0, -1, ...notWhole], chance: closedShare }],
  [binomialCdf as Numbers, [1, 3, 0.5], { k: notWhole, n: [0, -1, ...notWhole], chance: closedShare }],
  [binomialAtLeast as Numbers, [1, 3, 0.5], { k: notWhole, n: [0, -1, ...notWhole], chance: closedShare }],
  [gammaPdf as Numbers, [1, 2, 3], { '': [], shape: positive, scale: positive }],
  [gammaCdf as Numbers, [1, 2, 3], { '': [], shape: positive, scale: positive }],
  [gammaSurvival as Numbers, [1, 2, 3], { '': [], shape: positive, scale: positive }],
  [gammaQuantile as Numbers, [0.5, 2, 3], { p: share, shape: positive, scale: positive }],
  [chiSquareSurvival as Numbers, [1, 2], { '': [], df: positive }],
  [chiSquareQuantile as Numbers, [0.5, 2], { p: share, df: positive }],
  [lowerGamma as Numbers, [2, 1], { a: positive, x: [-0.1, Number.NaN] }],
  [upperGamma as Numbers, [2, 1], { a: positive, x: [-0.1, Number.NaN] }],
  [logGamma as Numbers, [2.5], { x: positive }],
  [lognormalPdf as Numbers, [1, 0, 1], { '': [], ' ': [], sigmaLog: positive }],
  [lognormalCdf as Numbers, [1, 0, 1], { '': [], ' ': [], sigmaLog: positive }],
  [lognormalSurvival as Numbers, [1, 0, 1], { '': [], ' ': [], sigmaLog: positive }],
  [lognormalQuantile as Numbers, [0.5, 0, 1], { p: share, ' ': [], sigmaLog: positive }],
  [sigmaLogFromCv as Numbers, [0.1], { cv: [-0.1, Infinity, Number.NaN] }],
  [natrellaFactor as Numbers, [43, 0.9, 0.99], { n: pulls, p: [] }],
  [noncentralTCdf as Numbers, [1, 4, 0.5], { t: [Number.NaN], df: positive, delta: notFinite }],
  [noncentralTSurvival as Numbers, [1, 4, 0.5], { t: [Number.NaN], df: positive, delta: notFinite }],
  [noncentralTQuantile as Numbers, [0.4, 4, 0.5], { p: share, df: positive, delta: notFinite }],
  [noncentralTDelta as Numbers, [0.4, 1, 4], { p: share, t: notFinite, df: positive }],
  [normalQuantile as Numbers, [0.5], { p: share }],
  [gaussLegendre as Numbers, [6], { count: [0, 257, 2.5, Number.NaN] }],
  [rangeDivisor as Numbers, [3], { count: [1, 0, 2.5, Infinity, Number.NaN] }],
  [tPdf as Numbers, [1, 3], { '': [], df: positive }],
  [tCdf as Numbers, [1, 3], { '': [], df: positive }],
  [tSurvival as Numbers, [1, 3], { '': [], df: positive }],
  [tQuantile as Numbers, [0.3, 3], { p: share, df: positive }],
  [tQuantile95 as Numbers, [3], { df: [2.9, Number.NaN] }],
  [oneSidedToleranceFactor as Numbers, [5, 0.9, 0.95], { n: pulls, p: [] }],
  [toleranceConfidence as Numbers, [5, 2, 0.9], { n: pulls, k: notFinite }],
  [toleranceCoverage as Numbers, [5, 2, 0.9], { n: pulls, k: notFinite, p: share }],
  [howeFactor as Numbers, [5, 0.9, 0.95], { n: pulls, coverage: share, confidence: share }],
  [waldWolfowitzFactor as Numbers, [5, 0.9, 0.95], { n: pulls, coverage: share, confidence: share }],
  [twoSidedToleranceFactor as Numbers, [5, 0.9, 0.95], { n: pulls, coverage: share, confidence: share }],
  [unbiasingConstant as Numbers, [5], { n: pulls }],
  [weibullPdf as Numbers, [1, 2, 3], { '': [], shape: positive, scale: positive }],
  [weibullCdf as Numbers, [1, 2, 3], { '': [], shape: positive, scale: positive }],
  [weibullQuantile as Numbers, [0.5, 2, 3], { p: share, shape: positive, scale: positive }],
];

describe('arguments out of range are refused by name, and those at its ends are taken', () => {
  it.each(RANGES.map((range) => [range[0].name, range] as const))('%s', (_, [compute, taken, refused]) => {
    expect(() => compute(...taken)).not.toThrow();
    Object.entries(refused).forEach(([name, values], place) => {
      for (const value of values) {
        const call = (): unknown => compute(...taken.map((each, i) => (i === place ? value : each)));
        expect(call, `${name} = ${value}`).toThrow(RangeError);
        expect(call, `${name} = ${value}`).toThrow(new RegExp(`^${name} must .*\\(got ${value}\\)`));
      }
    });
  });

  it('the fewest that can be counted is taken: two pulls, one value, one try, one node', () => {
    expect(oneSidedToleranceFactor(2, 0.9, 0.95)).toBeGreaterThan(0);
    expect(waldWolfowitzFactor(2, 0.9, 0.95)).toBeGreaterThan(0);
    expect(unbiasingConstant(2)).toBeGreaterThan(0);
    expect(meanOfValues([7])).toBe(7);
    expect(sampleVariance([7, 7])).toBe(0);
    expect(binomialPmf(1, 1, 0.25)).toBeCloseTo(0.25, 15);
    expect([...gaussLegendre(1).weights]).toEqual([2]);
    expect(gaussLegendre(256).nodes).toHaveLength(256);
    expect(sigmaLogFromCv(0)).toBe(0);
  });

  it('too few values, too many variables, and too few pulls for an approximation', () => {
    expect(() => sampleVariance([3])).toThrow('values must hold at least 2 (got 1).');
    expect(() => autocorrelation([3])).toThrow('values must hold at least 2 (got 1).');
    expect(() => orthant(MAX_VARIABLES + 1, [], [])).toThrow('count must be at most 8 (got 9).');
    // a = 1 - z^2 / (2 (n - 1)) with z 2.326 is negative below n = 3.7.
    expect(() => natrellaFactor(3, 0.9, 0.99)).toThrow('n is too small for this approximation (got 3).');
    expect(natrellaFactor(4, 0.9, 0.99).a).toBeGreaterThan(0);
    // With z 1.2816 two are enough: a = 1 - 1.6424 / 2.
    expect(natrellaFactor(2, 0.9, 0.9).a).toBeCloseTo(0.1788, 4);
    expect(() => invertTails((v) => v, (v) => 1 - v, 1, 0, 1)).toThrow('p must lie strictly between 0 and 1 (got 1).');
  });
});
