/** Checks the distributions against a file in the format of tests/reference/distribution-grid.json. */
import { betaCdf, betaQuantile } from '../../numerics/beta.ts';
import { gammaCdf, gammaQuantile } from '../../numerics/gamma.ts';
import { noncentralTCdf, noncentralTQuantile } from '../../numerics/noncentral-t.ts';
import { normalCdf, normalQuantile } from '../../numerics/normal.ts';
import { tCdf, tQuantile } from '../../numerics/student-t.ts';
import { weibullCdf, weibullQuantile } from '../../numerics/weibull.ts';
import { Tally } from './tally.ts';

type Row = readonly number[];

/** Rows are arguments then value; the gamma rows give shape and rate. */
const families: Record<string, (a: number, b: number, c: number) => number> = {
  normal_cdf: normalCdf,
  normal_q: normalQuantile,
  t_cdf: tCdf,
  t_q: tQuantile,
  beta_cdf: betaCdf,
  beta_q: betaQuantile,
  gamma_cdf: (x, shape, rate) => gammaCdf(x, shape, 1 / rate),
  gamma_q: (p, shape, rate) => gammaQuantile(p, shape, 1 / rate),
  weibull_cdf: weibullCdf,
  weibull_q: weibullQuantile,
  nct_cdf: noncentralTCdf,
  nct_q: noncentralTQuantile,
};

/** Probabilities in this range are compared. */
const LOWEST = 0.001;
const HIGHEST = 0.999;
/** Relative, and absolute where the value is below a millionth. */
const ALLOWED = 1e-10;

function isRow(row: unknown): row is Row {
  return Array.isArray(row) && row.length >= 2 && row.every((number) => typeof number === 'number' && Number.isFinite(number));
}

/** Runs every row of such a file whose probability lies between 0.001 and 0.999. */
export function checkDistributions(file: Readonly<Record<string, unknown>>): Tally {
  const tally = new Tally();
  for (const [family, rows] of Object.entries(file)) {
    const compute = families[family];
    if (!compute) {
      const count = Array.isArray(rows) ? rows.length : 1;
      for (let i = 0; i < count; i++) tally.skip(family, `row ${i}`);
      continue;
    }
    if (!Array.isArray(rows)) {
      tally.broken(family, 'is no list of rows.');
      continue;
    }
    for (const [i, raw] of rows.entries()) {
      if (!isRow(raw)) {
        tally.broken(`${family} row ${i}`, 'is no list of two numbers or more.');
        continue;
      }
      const row: Row = raw;
      const id = `${family} [${row.slice(0, -1).join(', ')}]`;
      const expected = row[row.length - 1] as number;
      const probability = family.endsWith('_q') ? (row[0] as number) : expected;
      if (probability < LOWEST || probability > HIGHEST) {
        tally.skip(`${family} outside 0.001 to 0.999`, `row ${i}`);
        continue;
      }
      try {
        const [a, b, c] = row as [number, number, number];
        const got = compute(a, b, c);
        tally.number(family, id, 'value', got, expected, ALLOWED * Math.max(Math.abs(expected), 1e-6));
      } catch (error) {
        tally.broken(id, error);
      }
    }
  }
  return tally;
}
