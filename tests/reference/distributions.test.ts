import { readFileSync } from 'node:fs';
import beta from '@stdlib/stats-base-dists-beta';
import gamma from '@stdlib/stats-base-dists-gamma';
import normal from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';
import weibull from '@stdlib/stats-base-dists-weibull';
import { describe, expect, it } from 'vitest';
import { checkDistributions } from '../../src/commands/reference/distribution-checks.ts';
import { betaCdf, betaPdf, betaQuantile, betaSurvival } from '../../src/numerics/beta.ts';
import { gammaCdf, gammaPdf, gammaQuantile, gammaSurvival } from '../../src/numerics/gamma.ts';
import { noncentralTCdf, noncentralTSurvival } from '../../src/numerics/noncentral-t.ts';
import { normalCdf, normalPdf, normalQuantile } from '../../src/numerics/normal.ts';
import { tCdf, tPdf, tQuantile, tSurvival } from '../../src/numerics/student-t.ts';
import { weibullCdf, weibullPdf, weibullQuantile } from '../../src/numerics/weibull.ts';

// tests/reference/distribution-grid.json: 30-digit arithmetic, made outside this code.
const grid: Record<string, number[][]> = JSON.parse(
  readFileSync(new URL('./distribution-grid.json', import.meta.url), 'utf8'),
);

/** Where the code is changed to see what notices, it runs slowly: of a long table every seventh row is enough there. */
const some = (rows: number[][]): number[][] => ('MUTATED_ROOM' in process.env && rows.length > 200 ? rows.filter((_, i) => i % 7 === 0) : rows);

describe('distributions agree with the 30-digit grid to 1e-10 between 0.001 and 0.999', () => {
  for (const [family, rows] of Object.entries(grid)) {
    it(family, () => {
      const tally = checkDistributions({ [family]: some(rows) });
      expect(tally.failures).toEqual([]);
      expect(tally.passed).toBeGreaterThan(10);
    });
  }

  it('a changed value is caught', () => {
    expect(checkDistributions({ t_cdf: [[1, 1, 0.7500001]] }).failures).toHaveLength(1);
  });
});

// Second oracle: @stdlib/stats-base-dists-*, an independent implementation (gamma there takes a rate).
const shares = [0.001, 0.01, 0.05, 0.2, 0.5, 0.8, 0.95, 0.99, 0.999];
const close = (got: number, expected: number): void => {
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-10 * Math.max(Math.abs(expected), 1e-6));
};

describe('distributions agree with @stdlib', () => {
  it('normal', () => {
    for (const p of shares) {
      const x = normal.quantile(p, 0, 1);
      close(normalQuantile(p), x);
      close(normalCdf(x), normal.cdf(x, 0, 1));
      close(normalPdf(x), normal.pdf(x, 0, 1));
    }
  });

  it('t', () => {
    for (const df of [1, 1.5, 2, 3, 4.7, 10, 30, 200]) {
      for (const p of shares) {
        const x = t.quantile(p, df);
        close(tQuantile(p, df), x);
        close(tCdf(x, df), t.cdf(x, df));
        close(tSurvival(x, df), 1 - t.cdf(x, df));
        close(tPdf(x, df), t.pdf(x, df));
      }
    }
  });

  it('beta', () => {
    for (const [a, b] of [
      [0.5, 0.5],
      [1, 3],
      [2, 5],
      [20, 1.5],
      [80, 120],
    ] as const) {
      for (const p of shares) {
        const x = beta.quantile(p, a, b);
        close(betaQuantile(p, a, b), x);
        close(betaCdf(x, a, b), beta.cdf(x, a, b));
        close(betaSurvival(x, a, b), 1 - beta.cdf(x, a, b));
        close(betaPdf(x, a, b), beta.pdf(x, a, b));
      }
    }
  });

  it('gamma', () => {
    for (const [shape, scale] of [
      [0.5, 2],
      [1, 1],
      [4.5, 2],
      [40, 0.3],
    ] as const) {
      for (const p of shares) {
        const x = gamma.quantile(p, shape, 1 / scale);
        close(gammaQuantile(p, shape, scale), x);
        close(gammaCdf(x, shape, scale), gamma.cdf(x, shape, 1 / scale));
        close(gammaSurvival(x, shape, scale), 1 - gamma.cdf(x, shape, 1 / scale));
        close(gammaPdf(x, shape, scale), gamma.pdf(x, shape, 1 / scale));
      }
    }
  });

  it('weibull', () => {
    for (const [shape, scale] of [
      [0.7, 3],
      [1, 2],
      [12, 20],
      [35, 22],
    ] as const) {
      for (const p of shares) {
        const x = weibull.quantile(p, shape, scale);
        close(weibullQuantile(p, shape, scale), x);
        close(weibullCdf(x, shape, scale), weibull.cdf(x, shape, scale));
        close(weibullPdf(x, shape, scale), weibull.pdf(x, shape, scale));
      }
    }
  });
});

describe('noncentral t', () => {
  it('keeps its accuracy at two degrees of freedom, where panels that ignore the step are wrong by 3e-7', () => {
    const rows = (grid['nct_cdf'] as number[][]).filter(([, df]) => df === 2);
    expect(rows.length).toBeGreaterThan(20);
    for (const [x, df, delta, expected] of rows as [number, number, number, number][]) {
      expect(Math.abs(noncentralTCdf(x, df, delta) - expected)).toBeLessThan(1e-12);
      expect(Math.abs(noncentralTSurvival(x, df, delta) - (1 - expected))).toBeLessThan(1e-12);
    }
  });
});
