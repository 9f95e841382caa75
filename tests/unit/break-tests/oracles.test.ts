/** @stdlib/stats-base-dists-* as a second oracle: the exact intervals written out with its quantiles. */
import beta from '@stdlib/stats-base-dists-beta';
import gamma from '@stdlib/stats-base-dists-gamma';
import normal from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';
import weibull from '@stdlib/stats-base-dists-weibull';
import { describe, expect, it } from 'vitest';
import { fitWeibull, weibullFitQuantile } from '../../../src/break-tests/fit-weibull.ts';
import { grubbs, grubbsCritical } from '../../../src/break-tests/grubbs.ts';
import { meanInterval, nextPullFactor, sdInterval } from '../../../src/break-tests/intervals.ts';
import { jeffreysInterval, shareInterval, wilsonInterval } from '../../../src/break-tests/mode-shares.ts';
import { fitNormal } from '../../../src/break-tests/fit-normal.ts';
import { orderConfidence } from '../../../src/break-tests/order-bound.ts';
import { welch } from '../../../src/break-tests/welch.ts';
import { near } from './near.ts';

const levels = [0.5, 0.9, 0.95, 0.99];

describe('against @stdlib', () => {
  it('intervals of mean and sd, and the next pull', () => {
    for (const n of [2, 3, 5, 10, 40]) for (const level of levels) {
      const q = t.quantile(0.5 * (1 + level), n - 1);
      near(meanInterval(20, 1, n, level).high, 20 + q / Math.sqrt(n), 1e-10);
      near(nextPullFactor(n, level, 'two'), q * Math.sqrt(1 + 1 / n), 1e-9);
      // Chi-square is a gamma of shape df / 2 and rate 1 / 2.
      const chi = (p: number): number => gamma.quantile(p, 0.5 * (n - 1), 0.5);
      near(sdInterval(2, n, level).low, 2 * Math.sqrt((n - 1) / chi(0.5 * (1 + level))), 1e-9);
      near(sdInterval(2, n, level).high, 2 * Math.sqrt((n - 1) / chi(0.5 * (1 - level))), 1e-9);
    }
  });

  it('shares', () => {
    for (const [count, n] of [[1, 4], [3, 5], [7, 20], [50, 200]] as const) for (const level of levels) {
      const out = 0.5 * (1 - level);
      near(shareInterval(count, n, level).low, beta.quantile(out, count, n - count + 1), 1e-9);
      near(shareInterval(count, n, level).high, beta.quantile(1 - out, count + 1, n - count), 1e-9);
      near(jeffreysInterval(count, n, level).low, beta.quantile(out, count + 0.5, n - count + 0.5), 1e-9);
      // Wilson's ends solve |count / n - x| = z sqrt(x (1 - x) / n).
      const z = normal.quantile(1 - out, 0, 1);
      for (const x of Object.values(wilsonInterval(count, n, level))) near(Math.abs(count / n - x), z * Math.sqrt((x * (1 - x)) / n), 1e-9);
      near(orderConfidence(n, count, 0.9), beta.cdf(0.1, count, n - count + 1), 1e-9);
    }
  });

  it('Welch and Grubbs', () => {
    const found = welch([21.3, 20.1, 22.4], [18.2, 19.9, 17.5, 18.8]);
    near(found.p, 2 * (1 - t.cdf(Math.abs(found.t), found.df)), 1e-9);
    // By hand: 18 is 2.2 below the mean of 20.2; squares 0.04 + 0.64 + 0.09 + 1.69 + 4.84 = 7.3, sd sqrt(7.3 / 4).
    const x = [20, 21, 20.5, 21.5, 18];
    const g = 2.2 / Math.sqrt(7.3 / 4);
    const far = t.cdf(-g * Math.sqrt(3 / (16 / 5 - g * g)), 3);
    near(grubbs(x, 'lowest').g, g, 1e-12);
    near(grubbs(x, 'lowest').p, 5 * far, 1e-9);
    near(grubbs(x, 'either').p, 10 * far, 1e-9);
    for (const alpha of [0.01, 0.05, 0.1, 0.2, 0.4]) {
      expect(grubbs(x, 'lowest', alpha).beyond).toBe(5 * far < alpha);
      expect(grubbs(x, 'either', alpha).beyond).toBe(10 * far < alpha);
    }
    for (const n of [3, 7, 25]) {
      const q = t.quantile(1 - 0.05 / n, n - 2);
      near(grubbsCritical(n, 0.05, 'lowest'), ((n - 1) / Math.sqrt(n)) * Math.sqrt((q * q) / (n - 2 + q * q)), 1e-9);
    }
  });

  it('likelihoods at the fits, and quantiles of the Weibull fit', () => {
    const broken = [21.3, 20.1, 22.4, 19.8, 21.9];
    const atLeast = [20.5, 22];
    const w = fitWeibull({ broken, atLeast });
    const logs = broken.map((x) => weibull.logpdf(x, w.shape, w.scale)).concat(atLeast.map((x) => Math.log(1 - weibull.cdf(x, w.shape, w.scale))));
    near(w.logLikelihood, logs.reduce((sum, x) => sum + x, 0), 1e-9);
    near(weibullFitQuantile(w, 0.05), weibull.quantile(0.05, w.shape, w.scale), 1e-12);
    const f = fitNormal({ broken, atLeast });
    const sum = broken.reduce((s, x) => s + normal.logpdf(x, f.mean, f.sd), 0) + atLeast.reduce((s, x) => s + Math.log(1 - normal.cdf(x, f.mean, f.sd)), 0);
    near(f.logLikelihood, sum, 1e-9);
    expect(f.broken + f.atLeast).toBe(7);
  });
});
