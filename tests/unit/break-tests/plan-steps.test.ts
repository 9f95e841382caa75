/** What the planner shows, against published tables and computing by hand. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { countsShown, MOST, planBound, planDifference, planShare } from '../../../src/break-tests/plan-steps.ts';
import { near } from './near.ts';

interface Check { id: string; inputs: { n: number[] }; expected: { k_published: number[] } }
const published = JSON.parse(readFileSync(join(import.meta.dirname, '../../reference/published-checks.json'), 'utf8')) as Check[] | { checks: Check[] };
const checkOf = (id: string): Check => (Array.isArray(published) ? published : published.checks).find((one) => one.id === id) as Check;
/** Unbiasing constants c4 at three to six pulls, NIST/SEMATECH Engineering Statistics Handbook 6.3.2. */
const C4 = new Map([[3, 0.8862], [4, 0.9213], [5, 0.94], [6, 0.9515]]);

describe('a bound', () => {
  // CMH-17-1G, factors kB (90/95) and kA (99/95); the printed ones lie up to 0.002 off the exact ones (published-checks.json).
  it.each([['tol-cmh17-B', 0.9], ['tol-cmh17-A', 0.99]])('has the published factors in its steps (%s)', (id, coverage) => {
    const { inputs, expected } = checkOf(id);
    const { steps } = planBound({ coverage, confidence: 0.95 }, 0.1, null);
    const compared = steps.filter(({ n }) => inputs.n.includes(n));
    expect(compared.map(({ n }) => n)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 25, 30]);
    for (const { n, k } of compared) expect(Math.abs(k - (expected.k_published[inputs.n.indexOf(n)] as number))).toBeLessThan(0.0025);
  });

  it('by hand at a scatter of 8 %: mean less k c4 times it, and what each pull bought', () => {
    const { steps } = planBound({ coverage: 0.95, confidence: 0.95 }, 0.08, null);
    // 95/95 factors, Krishnamoorthy and Mathew, Table B1.
    const bounds = [[3, 7.656], [4, 5.144], [5, 4.203], [6, 3.708]].map(([n, k]) => 1 - (k as number) * (C4.get(n as number) as number) * 0.08);
    for (const [i, bound] of bounds.entries()) {
      expect(Math.abs((steps[i]?.bound ?? 0) - bound)).toBeLessThan(2e-4);
      if (i > 0) expect(Math.abs((steps[i]?.bought ?? 0) - (bound - (bounds[i - 1] as number)))).toBeLessThan(3e-4);
    }
  });

  it('names the pulls of which the weakest alone would do: 29, 59 and 299', () => {
    // CMH-17-1G Table 8.5.13 for 90/95 and 99/95; ln 0.05 / ln 0.95 for 95/95.
    expect([0.9, 0.95, 0.99].map((coverage) => planBound({ coverage, confidence: 0.95 }, 0.1, null).withoutShape)).toEqual([29, 59, 299]);
  });

  it('marks the first count that is enough: the one before is not, and a wider scatter needs more', () => {
    const { needed, steps, ifWider } = planBound({ coverage: 0.95, confidence: 0.95 }, 0.093, 0.08);
    // By hand with the same table: k 2.566 and 2.524 at 15 and 16 pulls, c4 0.9823 and 0.9835, z 1.6449.
    expect((2.566 * 0.9823 - 1.6449) * 0.093).toBeGreaterThan(0.08);
    expect((2.524 * 0.9835 - 1.6449) * 0.093).toBeLessThan(0.08);
    expect(needed).toBe(16);
    expect(steps.map(({ n }) => n)).toContain(16);
    // Half as large again.
    expect(ifWider).toBe(planBound({ coverage: 0.95, confidence: 0.95 }, 0.1395, 0.08).needed);
    expect(ifWider as number).toBeGreaterThan(16);
  });

  it('never plans fewer than three, nor more than it can show', () => {
    expect(planBound({ coverage: 0.5, confidence: 0.5 }, 0.01, 0.5).needed).toBe(3);
    expect(planBound({ coverage: 0.99, confidence: 0.99 }, 0.6, 0.005).needed).toBe(Infinity);
  });
});

describe('a difference', () => {
  // R 4.2.2, power.t.test, two samples at 0.05 two-sided (published-checks.json, n-power-t): 22.02, 16.71 and 6.39, rounded up.
  it.each([[0.1, 0.1, 0.9, 23], [0.1, 0.1, 0.8, 17], [0.2, 0.1, 0.9, 7]])('of %d at a scatter of %d, found in %d of all, needs %d of each', (difference, cv, power, pulls) => {
    expect(planDifference(difference, cv, power).needed).toBe(pulls);
  });

  it('has in its steps the chance that R gives for twenty of each', () => {
    near(planDifference(0.1, 0.1, null).steps.find(({ n }) => n === 20)?.power ?? 0, 0.8689528017, 1e-6);
  });

  it('says what the last pull of each added, and how many a scatter half as large again needs', () => {
    const { steps, ifWider } = planDifference(0.1, 0.1, 0.8);
    for (const [i, { power, bought }] of steps.slice(0, 10).entries()) if (i > 0) near(bought, power - (steps[i - 1]?.power ?? 0), 1e-9);
    expect(ifWider).toBe(planDifference(0.1, 0.15, 0.8).needed);
    expect(ifWider as number).toBeGreaterThan(30);
  });

  it('that is ten times the scatter needs no more than three', () => {
    expect(planDifference(1, 0.1, 0.9).needed).toBe(3);
  });

  it('says so where no bench is large enough', () => {
    expect(planDifference(0.01, 0.6, 0.99).needed).toBe(Infinity);
    expect(() => planDifference(0.1, 0.1, 0.04)).toThrow('power must be above 0.05 (got 0.04).');
  });
});

describe('a share', () => {
  it('needs the pulls that SciPy finds one by one, and one half needs the most', () => {
    // SciPy 1.17.1, as in planning.test.ts.
    expect(planShare(0.5, 0.4).needed).toBe(26);
    expect(planShare(0.2, 0.3).needed).toBe(31);
    expect(planShare(0.2, 0.4).atHalf).toBe(26);
  });

  it('says what stays possible where the part never broke first: 1 - 0.025^(1/n), by hand', () => {
    const { steps } = planShare(0.3, null);
    for (const n of [3, 10, 30]) near(steps.find((step) => step.n === n)?.never ?? 0, 1 - 0.025 ** (1 / n), 1e-9);
    const [three, four] = steps;
    near(four?.bought ?? 0, (three?.width ?? 0) - (four?.width ?? 0), 1e-12);
  });
});

describe('the counts of a table', () => {
  it('rise from three, hold the count that is enough, and go one step beyond it', () => {
    for (const needed of [null, 3, 12, 13, 29, 30, 31, 999, MOST]) {
      const counts = countsShown(needed);
      expect(counts[0]).toBe(3);
      expect(counts.every((n, i) => i === 0 || n > (counts[i - 1] as number))).toBe(true);
      if (needed !== null) expect(counts).toContain(needed);
    }
    expect(countsShown(29).slice(-2)).toEqual([29, 30]);
    expect(countsShown(30).slice(-2)).toEqual([30, 40]);
    expect(countsShown(31).slice(-2)).toEqual([31, 40]);
    expect(countsShown(Infinity).at(-1)).toBe(MOST);
    expect(() => countsShown(2)).toThrow('needed must be a whole number from 3 upwards (got 2).');
  });
});
