import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkPublished } from '../../src/commands/reference/published-checks.ts';

// tests/reference/published-checks.json: each entry names its source, how it was read and its tolerance. Misprints of the
// sources (a limit printed with the wrong sd, B factors up to 0.002 high) are told in the entry's notes and never matched.
interface Entry { id: string; topic: string; inputs: unknown; expected: Record<string, unknown> }
const file: Entry[] = JSON.parse(readFileSync(new URL('./published-checks.json', import.meta.url), 'utf8'));
const ofBreaks = file.filter(({ topic }) => /^[123] |^competing/.test(topic));

describe('every published check of tolerance, descriptive statistics, intervals, tests and competing modes is met', () => {
  it('there are 48 of them', () => {
    expect(ofBreaks).toHaveLength(48);
  });

  for (const entry of ofBreaks) {
    it(entry.id, () => {
      const tally = checkPublished([entry]);
      expect(tally.failures).toEqual([]);
      expect([...tally.skipped]).toEqual([]);
      expect(tally.passed).toBeGreaterThan(0);
    });
  }
});

// It asks the checker, not the engines: left out where those are changed to see what notices.
describe.skipIf('MUTATED_ROOM' in process.env)('a changed number is caught', () => {
  /** Every number of an entry's expectations, as the path to it. */
  function numbers(value: unknown, path: (string | number)[] = []): (string | number)[][] {
    if (typeof value === 'number') return [path];
    if (value === null || typeof value !== 'object') return [];
    return Object.entries(value).flatMap(([key, each]) => numbers(each, [...path, Array.isArray(value) ? Number(key) : key]));
  }

  for (const id of ['grubbs-nist', 'dixon-q', 'welch-sleep', 'mw-permeability', 'sw-n4', 'ad-stat17', 'binom-set', 'n-power-t', 'weibull-nist', 'competing-bond-wire', 'tol-nonparam', 'tol-two-sided-95', 'basis-stat17', 'ci-sd-gear', 'pi-multipliers']) {
    it(id, () => {
      const entry = file.find((each) => each.id === id) as Entry;
      const paths = numbers(entry.expected).filter((path) => !['x', 'n', 'conf', 'pooled_t', 'pooled_p', 'weibull_B', 'weibull_A'].includes(String(path.at(-1))));
      let caught = 0;
      // Two-sided factors are slow to compute: every fifth number of that long table.
      const tried = id === 'tol-two-sided-95' ? paths.filter((_, i) => i % 5 === 0) : paths;
      for (const path of tried) {
        const changed = structuredClone(entry);
        let at: Record<string | number, unknown> = changed.expected;
        for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
        const key = path.at(-1) as string | number;
        at[key] = (at[key] as number) * 1.05 + 0.05;
        if (checkPublished([changed]).failures.length > 0) caught++;
      }
      expect(caught, `${caught} of ${tried.length}`).toBe(tried.length);
    });
  }
});
