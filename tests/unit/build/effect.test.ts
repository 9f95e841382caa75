/** What a record changes in the answers is told. Expectations follow from the arithmetic of the change, not from its result. */
import { expect, test } from 'vitest';
import { effectReport, effects } from '../../../src/build/versions/effect.ts';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { feedOnly, IBARRA_GIRTH } from '../../support/feed-only.ts';

const evidence = loadEvidence();

test('the same evidence has no effect', () => {
  expect(effects(evidence, evidence)).toEqual([]);
  expect(effectReport('2026-01-01.1', [])).toBe('Effect: no answer differs from evidence 2026-01-01.1 on the rigs that are asked (rated 12 kN).');
});

test('a figure that is doubled doubles the middle of the method that it alone feeds, and moves none that it does not', () => {
  const alone = feedOnly('girth-hmpe', [IBARRA_GIRTH]);
  const changed = structuredClone(alone);
  const figure = changed.figures[IBARRA_GIRTH];
  if (!figure?.seen) throw new RangeError('the figure feeds nothing');
  figure.seen.logMean += Math.log(2);
  const found = effects(alone, changed);
  expect(found.length).toBeGreaterThan(0);
  for (const { method, sling, was, now } of found) {
    expect([method, sling]).toEqual(['girth-hitch', 'hmpe-10']);
    // The hitch governs; at twice its strength the sling at the connector begins to count, so a little less than twice.
    const [before, after] = [was, now].map(Number.parseFloat) as [number, number];
    expect(after / before).toBeGreaterThan(1.8);
    expect(after / before).toBeLessThan(2.05);
  }
  expect(effectReport('2026-01-01.1', found).split('\n')).toHaveLength(2 + found.length);
});

test('a sling or a method that is gone or new is told as such', () => {
  const fewer = structuredClone(evidence);
  delete fewer.slings['hmpe-10'];
  expect(effects(evidence, fewer).some(({ method, sling, now }) => method === 'girth-hitch' && sling === 'hmpe-10' && now === 'not there')).toBe(true);
});
