import normal from '@stdlib/stats-base-dists-normal';
import { describe, expect, it } from 'vitest';
import { linkStrengths, type ModePull, petersonBounds, petersonQuantile, seenByLink } from '../../../src/break-tests/competing-modes.ts';
import { fitLognormal, lognormalFitQuantile, lognormalQuantileInterval, sigmaLogInterval } from '../../../src/break-tests/fit-lognormal.ts';
import { fitNormal, normalQuantileInterval, normalSdInterval } from '../../../src/break-tests/fit-normal.ts';
import { fitWeibull, weibullFitQuantile, weibullQuantileInterval, weibullShapeInterval } from '../../../src/break-tests/fit-weibull.ts';
import { productLimit } from '../../../src/break-tests/product-limit.ts';
import { profileInterval, rootOfScore } from '../../../src/break-tests/profile.ts';
import { near, normals, seeded, simulated } from './near.ts';

// NIST/SEMATECH Handbook 8.4.1.3: ten failures, ten units running at 500 (`weibull-nist` of the published checks).
const nist = { broken: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386], atLeast: new Array<number>(10).fill(500) };
// Constructed: five breaks, two pulls that ended otherwise.
const small = { broken: [21.3, 20.1, 22.4, 19.8, 21.9], atLeast: [20.5, 22] };

// SciPy 1.17.1: scipy.optimize.minimize on logpdf and logsf of scipy.stats.weibull_min and norm; errors from differences
// of that likelihood; profile intervals by scipy.optimize.minimize_scalar and brentq (reference pages of these names).
const weibulls = [
  { name: 'handbook', pulls: nist, shape: 1.7207972608, scale: 606.527558004, top: -75.1346181645, se: [0.20594390, 0.29181276], correlation: -0.4514005, low: [107.952635, 28.0056114, 205.444844], shapeInterval: [0.90564536, 2.88573787] },
  { name: 'small', pulls: small, shape: 25.692688866806233, scale: 21.85965186125891, top: -8.699987937486306, se: [0.01742833, 0.3639428], correlation: 0.0503352, low: [19.4731749, 16.6249600, 20.7402571], shapeInterval: [11.0160968, 48.1938756] },
] as const;
const lognormals = [
  { name: 'handbook', pulls: nist, mu: 6.22601506856, sigma: 0.908914039433, top: -75.1962707789, se: [0.25043951, 0.24842193], correlation: 0.4402727, low: [113.407156, 41.5223026, 190.576692], sigmaInterval: [0.59426043, 1.60262309] },
  { name: 'small', pulls: small, mu: 3.063842380018692, sigma: 0.051997858051798004, top: -8.824906778212467, se: [0.02133455, 0.3189819], correlation: 0.1864518, low: [19.6546414, 17.6493173, 20.5657409], sigmaInterval: [0.03095658, 0.1140449] },
] as const;

describe('intervals from a likelihood', () => {
  // Any table: 1.959964 is where a normal likelihood has fallen by half the chi-square quantile of 95 %.
  it('of a normal one are the best value and 1.96 sd on each side, whatever the stride', () => {
    for (const stride of [3, 100, 2500]) {
      const { low, high } = profileInterval((v) => -0.5 * ((v - 7) / 2500) ** 2, 7, 0, stride, 0.95);
      near(high - 7, 1.959963984540054 * 2500, 1e-9);
      near(7 - low, 1.959963984540054 * 2500, 1e-9);
    }
  });

  it('have no end on a side where it never falls', () => {
    const falls = (sign: number) => (v: number): number => (sign * v > 0 ? 0 : -0.5 * v * v);
    expect(profileInterval(falls(1), 0, 0, 0.5, 0.95).high).toBe(Infinity);
    expect(profileInterval(falls(-1), 0, 0, 0.5, 0.95).low).toBe(-Infinity);
    near(profileInterval(falls(1), 0, 0, 0.5, 0.95).low, -1.959963984540054, 1e-9);
  });

  it('a score that never crosses 0 is refused, either way', () => {
    expect(() => rootOfScore(() => 1, 2)).toThrow('broken scatters too little for a fit.');
    expect(() => rootOfScore(() => -1, 2)).toThrow('broken scatters too much for a fit.');
    near(rootOfScore((x) => 5 - x, 2), 5, 1e-12);
    near(rootOfScore((x) => 5 - x, 50), 5, 1e-12);
    near(rootOfScore((x) => 5 - x, 5), 5, 1e-12);
  });
});

describe('maximum likelihood with censored pulls', () => {
  it.each(weibulls)('Weibull, $name', ({ pulls, shape, scale, top, se, correlation, low, shapeInterval }) => {
    const fit = fitWeibull(pulls);
    expect([fit.broken, fit.atLeast]).toEqual([pulls.broken.length, pulls.atLeast.length]);
    near(fit.shape, shape, 2e-6);
    near(fit.scale, scale, 2e-7);
    near(fit.logLikelihood, top, 1e-9);
    near(fit.seLogScale, se[0], 1e-4);
    near(fit.seLogShape, se[1], 1e-4);
    near(fit.correlation, correlation, 1e-3);
    near(weibullFitQuantile(fit, 0.05), low[0], 1e-6);
    const quantile = weibullQuantileInterval(pulls, 0.05);
    near(quantile.best, low[0], 1e-6);
    near(quantile.low, low[1], 1e-5);
    near(quantile.high, low[2], 1e-5);
    const ends = weibullShapeInterval(pulls);
    near(ends.low, shapeInterval[0], 1e-5);
    near(ends.high, shapeInterval[1], 1e-5);
  });

  it.each(lognormals)('lognormal, $name', ({ pulls, mu, sigma, top, se, correlation, low, sigmaInterval }) => {
    const fit = fitLognormal(pulls);
    expect([fit.broken, fit.atLeast]).toEqual([pulls.broken.length, pulls.atLeast.length]);
    near(fit.muLog, mu, 1e-7);
    near(fit.sigmaLog, sigma, 1e-6);
    near(fit.logLikelihood, top, 1e-9);
    near(fit.seMuLog, se[0], 1e-4);
    near(fit.seLogSigma, se[1], 1e-4);
    near(fit.correlation, correlation, 1e-3);
    near(lognormalFitQuantile(fit, 0.05), low[0], 1e-6);
    const quantile = lognormalQuantileInterval(pulls, 0.05);
    near(quantile.low, low[1], 1e-5);
    near(quantile.high, low[2], 1e-5);
    const ends = sigmaLogInterval(pulls);
    near(ends.low, sigmaInterval[0], 1e-5);
    near(ends.high, sigmaInterval[1], 1e-5);
  });

  it('without censoring the normal fit is mean and sd with denominator n, its errors sd / sqrt(n) and 1 / sqrt(2n)', () => {
    const x = [3, 5, 7, 9];
    const fit = fitNormal({ broken: x });
    near(fit.mean, 6, 1e-14);
    near(fit.sd, Math.sqrt(5), 1e-14);
    near(fit.seMean, Math.sqrt(5) / 2, 1e-12);
    near(fit.seLogSd, 1 / Math.sqrt(8), 1e-12);
    expect(Math.abs(fit.correlation)).toBeLessThan(1e-12);
  });

  it('keeps its digits far from 0 and with nearly all pulls censored', () => {
    const far = fitNormal({ broken: [1e6 + 1, 1e6 + 2, 1e6 + 4], atLeast: [1e6 + 3] });
    const near0 = fitNormal({ broken: [1, 2, 4], atLeast: [3] });
    near(far.mean - 1e6, near0.mean, 1e-9);
    near(far.sd, near0.sd, 1e-9);
    const censored = fitLognormal({ broken: [10, 11], atLeast: new Array<number>(60).fill(11.5) });
    expect(censored.muLog).toBeGreaterThan(Math.log(11.5));
    expect(Number.isFinite(censored.seMuLog)).toBe(true);
  });

  // Few breaks among many pulls that ended otherwise, far from 0, far apart, and "at least" that says next to nothing.
  const hard = [
    { broken: [10, 11], atLeast: new Array<number>(60).fill(11.5) },
    { broken: [1, 2, 50], atLeast: [100, 200] },
    { broken: [20, 20.1, 20.3], atLeast: [5, 6, 7] },
    { broken: [1000.1, 1000.2, 1000.4], atLeast: [1000.3, 1000.45, 1000.5] },
    { broken: [3, 9, 4, 8, 5], atLeast: [] },
  ];
  /** Log-likelihood by @stdlib; far tails of the normal by their first term. */
  const likelihood = ({ broken, atLeast }: { broken: number[]; atLeast: number[] }, mean: number, sd: number): number => {
    const tail = (z: number): number => (z > 6 ? -0.5 * z * z - Math.log(z * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6) : Math.log(normal.cdf(-z, 0, 1)));
    return broken.reduce((sum, x) => sum + normal.logpdf(x, mean, sd), 0) + atLeast.reduce((sum, x) => sum + tail((x - mean) / sd), 0);
  };
  /** Largest value of a function with one top, by golden section. */
  const top = (f: (x: number) => number, from: number, to: number): number => {
    let [low, high] = [from, to];
    for (let i = 0; i < 50; i++) {
      const [a, b] = [high - 0.6180339887498949 * (high - low), low + 0.6180339887498949 * (high - low)];
      if (f(a) < f(b)) low = a;
      else high = b;
    }
    return f(0.5 * (low + high));
  };

  it.each(hard.map((pulls) => [JSON.stringify(pulls).slice(0, 60), pulls] as const))('normal, hard: no step off it is better, and its errors are those of the curvature: %s', (_, pulls) => {
    const { mean, sd, logLikelihood, seMean, seLogSd, correlation } = fitNormal(pulls);
    const at = (a: number, b: number): number => likelihood(pulls, mean + a * sd, sd * Math.exp(b));
    near(logLikelihood, at(0, 0), 1e-9);
    for (const [a, b] of [[1e-3, 0], [-1e-3, 0], [0, 1e-3], [0, -1e-3], [7e-4, 7e-4], [7e-4, -7e-4]] as const) expect(at(a, b)).toBeLessThan(at(0, 0));
    // Slopes are 0 to where differences of so large sums can tell.
    expect(Math.abs(at(1e-4, 0) - at(-1e-4, 0))).toBeLessThan(2e-9);
    expect(Math.abs(at(0, 1e-4) - at(0, -1e-4))).toBeLessThan(2e-9);
    const h = 1e-3;
    const mm = -(at(h, 0) - 2 * at(0, 0) + at(-h, 0)) / h ** 2 / sd ** 2;
    const ll = -(at(0, h) - 2 * at(0, 0) + at(0, -h)) / h ** 2;
    const ml = -(at(h, h) - at(h, -h) - at(-h, h) + at(-h, -h)) / (4 * h ** 2) / sd;
    near(seMean, Math.sqrt(ll / (mm * ll - ml * ml)), 1e-3);
    near(seLogSd, Math.sqrt(mm / (mm * ll - ml * ml)), 1e-3);
    expect(Math.abs(correlation + ml / Math.sqrt(mm * ll))).toBeLessThan(1e-3);
  });

  it.each(hard.map((pulls) => [JSON.stringify(pulls).slice(0, 60), pulls] as const))('at both ends of a profile interval the best likelihood has fallen by half the chi-square point, 1.9207: %s', (_, pulls) => {
    const { mean, sd, logLikelihood } = fitNormal(pulls);
    const ends = normalSdInterval(pulls);
    for (const end of [ends.low, ends.high]) {
      const best = top((m) => likelihood(pulls, m, end), mean - 30 * end, mean + 30 * end);
      expect(Math.abs(logLikelihood - best - 1.9207294)).toBeLessThan(1e-5);
    }
    for (const p of [0.05, 0.5]) {
      const z = normal.quantile(p, 0, 1);
      const quantile = normalQuantileInterval(pulls, p);
      near(quantile.best, mean + z * sd, 1e-9);
      for (const end of [quantile.low, quantile.high]) {
        if (!Number.isFinite(end)) continue;
        const best = top((u) => likelihood(pulls, end - z * Math.exp(u), Math.exp(u)), Math.log(sd) - 8, Math.log(sd) + 8);
        expect(Math.abs(logLikelihood - best - 1.9207294)).toBeLessThan(1e-5);
      }
    }
  });

  it('refuses by name', () => {
    expect(() => fitWeibull({ broken: [20] })).toThrow('broken must hold at least 2 (got 1).');
    expect(() => fitWeibull({ broken: [20, 20], atLeast: [21] })).toThrow('broken must hold two different values at least.');
    expect(() => fitLognormal({ broken: [20, -1] })).toThrow('broken[1] must be positive (got -1).');
    expect(() => fitLognormal({ broken: [20, 21], atLeast: [Number.NaN] })).toThrow('atLeast[0] must be finite (got NaN).');
    expect(() => weibullFitQuantile({ shape: 2, scale: 1 }, 1)).toThrow('p must lie strictly between 0 and 1 (got 1).');
  });

  simulated('the 95 % profile interval of the 1-in-20 point contains it in about 95 of 100 series of 20 (400 simulated, fixed seed)', () => {
    const draw = normals(seeded(41));
    const truth = Math.exp(3 - 1.6448536269514722 * 0.08);
    let inside = 0;
    for (let i = 0; i < 400; i++) {
      const x = Array.from({ length: 20 }, () => Math.exp(3 + 0.08 * draw()));
      const found = lognormalQuantileInterval({ broken: x.filter((v) => v < 21.5), atLeast: x.filter((v) => v >= 21.5).map(() => 21.5) }, 0.05);
      if (found.low <= truth && truth <= found.high) inside++;
    }
    // Approximate for few pulls: within four standard errors of 0.95, and a little low is known of the method.
    expect(inside / 400).toBeGreaterThan(0.95 - 0.01 - 4 * Math.sqrt((0.95 * 0.05) / 400));
  });
});

describe('the product limit', () => {
  it('by hand: 4 pulls, one censored between', () => {
    expect(productLimit({ broken: [10, 12, 14], atLeast: [11] })).toEqual([
      { force: 10, above: 0.75, breaks: 1, atRisk: 4 },
      { force: 12, above: 0.375, breaks: 1, atRisk: 2 },
      { force: 14, above: 0, breaks: 1, atRisk: 1 },
    ]);
    expect(productLimit({ broken: [10, 10], atLeast: [10] })).toEqual([{ force: 10, above: 1 / 3, breaks: 2, atRisk: 3 }]);
  });
});

describe('competing modes', () => {
  /** Pulls of rigs whose two links are independent, or share a part of their scatter. */
  function pulls(count: number, shared: number, seed: number): ModePull[] {
    const draw = normals(seeded(seed));
    return Array.from({ length: count }, () => {
      const both = draw();
      const mix = (own: number): number => shared * both + Math.sqrt(1 - shared * shared) * own;
      const sling = Math.exp(3 + 0.1 * mix(draw()));
      const wire = Math.exp(3.05 + 0.06 * mix(draw()));
      return { force: Math.min(sling, wire), mode: sling < wire ? 'sling' : 'wire' };
    });
  }

  simulated('finds the truth of simulated independent links (2,000 rigs, fixed seed)', () => {
    const links = linkStrengths(pulls(2000, 0, 5));
    const sling = links.find((link) => link.mode === 'sling')!.lognormal!;
    const wire = links.find((link) => link.mode === 'wire')!.lognormal!;
    expect(Math.abs(sling.muLog - 3)).toBeLessThan(4 * sling.seMuLog);
    expect(Math.abs(Math.log(sling.sigmaLog / 0.1))).toBeLessThan(4 * sling.seLogSigma);
    expect(Math.abs(wire.muLog - 3.05)).toBeLessThan(4 * wire.seMuLog);
    expect(Math.abs(Math.log(wire.sigmaLog / 0.06))).toBeLessThan(4 * wire.seLogSigma);
    // Counted as if only its own breaks were seen, the sling would come out too weak.
    const alone = fitLognormal({ broken: links.find((link) => link.mode === 'sling')!.pulls.broken });
    expect(alone.muLog).toBeLessThan(3 - 4 * sling.seMuLog);
  });

  simulated.each([[0], [0.9], [-0.9]])('Peterson\'s bounds contain the truth when the links share %d of their scatter', (shared) => {
    // A negative share is made by turning one link's scatter round.
    const draw = normals(seeded(77));
    const list: ModePull[] = Array.from({ length: 3000 }, () => {
      const a = draw();
      const b = shared * a + Math.sqrt(1 - shared * shared) * draw();
      const sling = Math.exp(3 + 0.1 * a);
      const wire = Math.exp(3.05 + 0.06 * b);
      return { force: Math.min(sling, wire), mode: sling < wire ? 'sling' : 'wire' };
    });
    const { low, high } = petersonQuantile(list, 'sling', 0.25);
    const truth = Math.exp(3 - 0.1 * 0.6744897501960817); // lower quartile of the normal
    // One part in fifty for the noise of 3,000 rigs.
    expect(truth).toBeGreaterThan(low * 0.995);
    expect(truth).toBeLessThan(high * 1.005);
  });

  it('bounds by hand: four pulls', () => {
    const four = [{ force: 10, mode: 'a' }, { force: 11, mode: 'b' }, { force: 12, mode: 'a' }, { force: 13, mode: 'b' }];
    const bounds = petersonBounds(four, 'a');
    expect(bounds.map(({ share }) => [share.low, share.high])).toEqual([[0.25, 0.25], [0.25, 0.5], [0.5, 0.75], [0.5, 1]]);
    expect(petersonQuantile(four, 'a', 0.5)).toEqual({ low: 11, high: 12 });
    expect(petersonQuantile(four, 'a', 0.75)).toEqual({ low: 12, high: Infinity });
    // Clopper-Pearson of 1 in 4 at 95 %: 0.0063 to 0.8059 (Hollander and Wolfe's tables; recalled).
    expect(bounds[0]!.widened.low).toBeCloseTo(0.0063, 4);
    expect(bounds[0]!.widened.high).toBeCloseTo(0.8059, 4);
    expect(() => petersonBounds([{ force: 10, mode: null }], 'a')).toThrow('pulls.mode must name what broke in every pull');
  });

  it('a pull that ended with no break censors every link; one break alone has no fit', () => {
    const list = [{ force: 10, mode: 'a' }, { force: 12, mode: null }, { force: 11, mode: 'a' }, { force: 13, mode: 'b' }];
    expect(seenByLink(list, 'a')).toEqual({ broken: [10, 11], atLeast: [12, 13] });
    const [a, b] = linkStrengths(list);
    expect(a?.lognormal?.atLeast).toBe(2);
    expect(b).toMatchObject({ mode: 'b', lognormal: null, weibull: null, normal: null });
    expect(() => linkStrengths([])).toThrow('pulls.force must hold at least 1 (got 0).');
  });
});
