/** The page's short way to one point of Student's t, against the printed table and the whole distribution. */
import { expect, test } from 'vitest';
import { tQuantile } from '../../../src/numerics/student-t.ts';
import { tQuantile95 } from '../../../src/numerics/t-95.ts';
import { poolStudies } from '../../../src/evidence/pool.ts';
import { pauleMandel, pool, predictionInterval } from '../../../src/evidence/random-effects.ts';

// NIST/SEMATECH Engineering Statistics Handbook 1.3.6.7.2, upper critical values of Student's t, 0.95 (values recalled).
test.each([[3, 2.353], [4, 2.132], [5, 2.015], [8, 1.860], [10, 1.812], [20, 1.725], [30, 1.697], [100, 1.660]])('at %d degrees of freedom it is %d', (df, printed) => {
  expect(Math.abs(tQuantile95(df) - printed)).toBeLessThan(0.0015);
  expect(Math.abs(tQuantile95(df) / tQuantile(0.95, df) - 1)).toBeLessThan(5e-4);
});

test('what the expansion leaves out falls with the fifth power of the degrees of freedom, as its first four terms are there', () => {
  const error = (df: number): number => Math.abs(tQuantile95(df) - tQuantile(0.95, df));
  for (const df of [10, 20]) expect(Math.abs(Math.log2(error(df) / error(2 * df)) - 5)).toBeLessThan(0.3);
});

test('it refuses what it cannot give', () => expect(() => tQuantile95(2)).toThrow('df must be 3 or more (got 2)'));

test('five studies: the 5 % point of the t prediction interval sets the knowledge spread', () => {
  const effects = [2.1, 2.3, 2.2, 2.6, 2.45].map((value, i) => ({ value, variance: 0.002 + 0.001 * i }));
  const { mu, knowledge2 } = poolStudies(effects.map(({ value, variance }, i) => ({ study: `s${i}`, figures: [], mean: value, variance, scatter2: 0.01 })), 0.9);
  const exact = predictionInterval(pool(effects, pauleMandel(effects)), 'floored-t-2', 0.9);
  expect(Math.abs(mu - 1.6448536 * Math.sqrt(knowledge2) - exact.low)).toBeLessThan(5e-4);
});
