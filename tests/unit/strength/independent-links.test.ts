/** Distributions of strengths and loads, and chains of independent links, against an independent library and closed forms. */
import normal from '@stdlib/stats-base-dists-normal';
import weibull from '@stdlib/stats-base-dists-weibull';
import { describe, expect, it } from 'vitest';
import { assertDistribution, cdfOf, density, type Distribution, meanOf, quantileOf, sdOf, survivalOf } from '../../../src/strength/distribution.ts';
import { minimum, minimumCdf, minimumQuantile, minimumSurvival, underLoad } from '../../../src/strength/independent-chain.ts';
import { interference, survival } from '../../../src/strength/chain.ts';
import { near } from '../break-tests/near.ts';

const bell: Distribution = { dist: 'normal', mu: 20, sigma: 3 };
const skewed: Distribution = { dist: 'lognormal', muLog: 3, sigmaLog: 0.2 };
const weakest: Distribution = { dist: 'weibull', shape: 8, scale: 22 };

describe('one strength', () => {
  it('normal and Weibull as @stdlib has them; lognormal as the normal of its logarithm', () => {
    for (const x of [5, 14.5, 20, 23, 31]) {
      near(density(bell, x), normal.pdf(x, 20, 3), 1e-12);
      near(cdfOf(bell, x), normal.cdf(x, 20, 3), 1e-10);
      near(survivalOf(bell, x), 1 - normal.cdf(x, 20, 3), 1e-10);
      near(density(weakest, x), weibull.pdf(x, 8, 22), 1e-12);
      near(cdfOf(weakest, x), weibull.cdf(x, 8, 22), 1e-12);
      near(survivalOf(weakest, x), 1 - weibull.cdf(x, 8, 22), 1e-10);
      near(density(skewed, x), normal.pdf(Math.log(x), 3, 0.2) / x, 1e-12);
      near(cdfOf(skewed, x), normal.cdf(Math.log(x), 3, 0.2), 1e-10);
      near(survivalOf(skewed, x), normal.cdf(-Math.log(x), -3, 0.2), 1e-10);
    }
    for (const p of [0.001, 0.3, 0.5, 0.99]) {
      near(quantileOf(bell, p), normal.quantile(p, 20, 3), 1e-12);
      near(quantileOf(weakest, p), weibull.quantile(p, 8, 22), 1e-12);
      near(quantileOf(skewed, p), Math.exp(normal.quantile(p, 3, 0.2)), 1e-12);
    }
    near(meanOf(weakest), weibull.mean(8, 22), 1e-12);
    near(sdOf(weakest), weibull.stdev(8, 22), 1e-10);
    expect([meanOf(bell), sdOf(bell)]).toEqual([20, 3]);
    // exp(mu + s^2 / 2) and that times sqrt(exp(s^2) - 1).
    near(meanOf(skewed), Math.exp(3.02), 1e-13);
    near(sdOf(skewed), Math.exp(3.02) * Math.sqrt(Math.exp(0.04) - 1), 1e-12);
  });

  it('lognormal and Weibull strengths are above 0; a normal one need not be', () => {
    for (const d of [skewed, { dist: 'weibull', shape: 1, scale: 2 } as const]) for (const x of [-1, 0]) {
      expect([density(d, x), cdfOf(d, x), survivalOf(d, x)]).toEqual([0, 0, 1]);
    }
    expect(density({ dist: 'normal', mu: 0, sigma: 1 }, -1)).toBeGreaterThan(0.2);
  });

  it('refuses parameters that are no such distribution, by name', () => {
    for (const bad of [0, -1, Infinity, Number.NaN]) {
      for (const d of [{ ...bell, sigma: bad }, { ...skewed, sigmaLog: bad }, { ...weakest, shape: bad }, { ...weakest, scale: bad }] as Distribution[]) {
        expect(() => assertDistribution(d, 'load')).toThrow('load must have finite parameters and a positive spread');
      }
    }
    for (const bad of [Infinity, Number.NaN]) {
      expect(() => assertDistribution({ ...bell, mu: bad } as Distribution, 'load')).toThrow(RangeError);
      expect(() => assertDistribution({ ...skewed, muLog: bad } as Distribution, 'load')).toThrow(RangeError);
    }
    for (const good of [bell, skewed, weakest, { dist: 'normal', mu: -3, sigma: 1e-9 } as const]) expect(() => assertDistribution(good, 'load')).not.toThrow();
  });
});

describe('independent links', () => {
  it('of one Weibull shape are Weibull again: scale over the n-th root, shares as scale^-shape (weakest-link theory, Weibull 1939)', () => {
    const links: Distribution[] = [{ dist: 'weibull', shape: 8, scale: 22 }, { dist: 'weibull', shape: 8, scale: 25 }, { dist: 'weibull', shape: 8, scale: 30 }];
    const rates = [22, 25, 30].map((scale) => scale ** -8);
    const total = rates.reduce((a, b) => a + b, 0);
    const scale = total ** (-1 / 8);
    const found = minimum(links);
    near(found.mean, weibull.mean(8, scale), 1e-11);
    near(found.sd, weibull.stdev(8, scale), 1e-9);
    for (const [i, share] of found.firstShares.entries()) near(share, (rates[i] as number) / total, 1e-11);
    for (const x of [3, 12, 20, 27]) {
      near(minimumSurvival(links, x), Math.exp(-((x / scale) ** 8)), 1e-12);
      near(minimumCdf(links, x), -Math.expm1(-((x / scale) ** 8)), 1e-12);
    }
    for (const p of [1e-9, 0.05, 0.5, 0.999]) near(minimumQuantile(links, p), scale * (-Math.log1p(-p)) ** (1 / 8), 1e-12);
  });

  it('of two standard normals have mean -1 / sqrt(pi) and sd sqrt(1 - 1 / pi) (exact)', () => {
    const found = minimum([{ dist: 'normal', mu: 0, sigma: 1 }, { dist: 'normal', mu: 0, sigma: 1 }]);
    near(found.mean, -1 / Math.sqrt(Math.PI), 1e-11);
    near(found.sd, Math.sqrt(1 - 1 / Math.PI), 1e-11);
    near(found.firstShares[0] as number, 0.5, 1e-12);
  });

  it('a single link is itself', () => {
    for (const d of [bell, skewed, weakest]) {
      const { mean, sd, firstShares } = minimum([d]);
      near(mean, meanOf(d), 1e-11);
      near(sd, sdOf(d), 1e-10);
      near(firstShares[0] as number, 1, 1e-12);
      expect(minimumQuantile([d], 0.2)).toBe(quantileOf(d, 0.2));
    }
  });

  it('a normal link under a normal load fails with chance Phi(-(a - b) / sqrt(sa^2 + sb^2)) (closed form)', () => {
    const { failure, reliability, attributed } = underLoad([bell], { dist: 'normal', mu: 12, sigma: 4 });
    near(failure, normal.cdf(-8 / 5, 0, 1), 1e-10);
    near(reliability, normal.cdf(8 / 5, 0, 1), 1e-11);
    expect(attributed).toEqual([failure]);
    // Another like it takes half of the failures, one twenty times as strong takes none.
    const both = underLoad([bell, bell], { dist: 'normal', mu: 12, sigma: 4 });
    near(both.attributed[0] as number, both.attributed[1] as number, 1e-12);
    near((both.attributed[0] as number) + (both.attributed[1] as number) + both.reliability, 1, 1e-11);
    near(underLoad([bell, { dist: 'normal', mu: 400, sigma: 3 }], { dist: 'normal', mu: 12, sigma: 4 }).attributed[0] as number, failure, 1e-11);
  });

  it('refuses an empty chain, a share of 0 or 1 and a bad link or load, by name', () => {
    for (const call of [() => minimum([]), () => minimumCdf([], 1), () => minimumSurvival([], 1), () => minimumQuantile([], 0.5), () => underLoad([], bell)]) {
      expect(call).toThrow('elements must hold at least one link.');
    }
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(() => minimumQuantile([bell], p)).toThrow(`p must lie strictly between 0 and 1 (got ${p}).`);
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(() => minimumQuantile([weakest, weakest], p)).toThrow(`p must lie strictly between 0 and 1 (got ${p}).`);
    expect(() => minimum([bell, { ...weakest, shape: 0 }])).toThrow('elements[1] must have finite parameters');
    expect(() => underLoad([bell], { ...bell, sigma: 0 })).toThrow('load must have finite parameters');
  });
});

describe('one lognormal link of the shared-factor chain under loads', () => {
  const link = { muLog: 3, shared: [0.12, 0.05], own: 0.15 };
  const spread = Math.sqrt(0.12 ** 2 + 0.05 ** 2 + 0.15 ** 2);

  it('under a lognormal load is a normal difference of logarithms; under any other what the independent chain says', () => {
    near(interference([link], { dist: 'lognormal', muLog: 2.5, sigmaLog: 0.3 }), normal.cdf(-0.5, 0, Math.sqrt(spread ** 2 + 0.09)), 1e-10);
    for (const load of [{ dist: 'normal', mu: 13, sigma: 2 }, { dist: 'weibull', shape: 3, scale: 12 }] as const) {
      near(interference([link], load), underLoad([{ dist: 'lognormal', muLog: 3, sigmaLog: spread }], load).failure, 1e-9);
    }
  });

  it('breaks above nothing surely, and above no bound never', () => {
    expect([survival([link], 0), survival([link], -2), survival([link], Infinity)]).toEqual([1, 1, 0]);
    near(survival([link], Math.exp(3.1)), 1 - normal.cdf(0.1, 0, spread), 1e-10);
    expect(() => survival([link], Number.NaN)).toThrow('x must be a number (got NaN).');
  });
});
