import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkChains } from '../../src/commands/reference/chain-checks.ts';
import { checkPublished } from '../../src/commands/reference/published-checks.ts';

// tests/reference/published-checks.json: each entry names its source, how it was read and its tolerance. The one row of
// the military table that is probably misprinted (factor 0.6) keeps the wider tolerance that its entry gives it.
interface Entry { id: string; topic: string; inputs: unknown; expected: unknown }
const file: Entry[] = JSON.parse(readFileSync(new URL('./published-checks.json', import.meta.url), 'utf8'));
const ofFalls = file.filter(({ topic }) => /^[678e] /.test(topic));

describe('every published check of falls, friction, sling angles, units and break-even is met', () => {
  it('there are 18 of them', () => {
    expect(ofFalls).toHaveLength(18);
  });

  for (const entry of ofFalls) {
    it(entry.id, () => {
      const tally = checkPublished([entry]);
      expect(tally.failures).toEqual([]);
      expect([...tally.skipped]).toEqual([]);
      expect(tally.passed).toBeGreaterThan(0);
    });
  }
});

describe('a changed number is caught', () => {
  /** Paths to the numbers of an entry's expectations that are compared; limits of the standard and context are not computed. */
  function numbers(value: unknown, path: (string | number)[] = []): (string | number)[][] {
    if (typeof value === 'number') return [path];
    if (value === null || typeof value !== 'object') return [];
    return Object.entries(value).flatMap(([key, each]) => numbers(each, [...path, Array.isArray(value) ? Number(key) : key]));
  }
  const told = /^(?:F0_kN|f0|mass_|limit_|min_drops|single$|half$|twin_pair|static_|dynamic_|orifice_|rope_out|of_which|recommended|multi_pitch|single_pitch|top_rope|munter|rigid|live_|anchor_system|cost_at|soft_to_hard_lead_fall_lbf)/;

  for (const entry of ofFalls.filter(({ id }) => !['wexler', 'units'].includes(id))) {
    it(entry.id, () => {
      const paths = numbers(entry.expected).filter((path) => !path.some((key) => typeof key === 'string' && told.test(key)));
      const missed = paths.filter((path) => {
        const changed = structuredClone(entry);
        let at = changed.expected as Record<string | number, unknown>;
        for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
        const key = path.at(-1) as string | number;
        at[key] = (at[key] as number) * 1.05 + 0.05;
        return checkPublished([changed]).failures.length === 0;
      });
      expect(paths.length).toBeGreaterThan(0);
      expect(missed).toEqual([]);
    });
  }
});

it('a load that exceeds a strength is caught from the side of the load, too', () => {
  const { cases } = JSON.parse(readFileSync(new URL('./chain-vectors.json', import.meta.url), 'utf8')) as { cases: { type: string; expected: { p_fail?: number } }[] };
  const loads = cases.filter(({ type }) => type === 'random_load');
  expect(loads.length).toBeGreaterThan(0);
  expect(checkChains({ cases: loads }).failures).toEqual([]);
  for (const one of loads) {
    const changed = structuredClone(one);
    changed.expected.p_fail = (changed.expected.p_fail as number) + 2e-6;
    expect(checkChains({ cases: [changed] }).failures.some((line) => line.includes('demand of falls'))).toBe(true);
  }
});
