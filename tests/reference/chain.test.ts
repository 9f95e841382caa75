import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkReference, reportLines } from '../../src/commands/reference.ts';

// tests/reference/chain-vectors.json: 40-digit quadrature (independent cases), Gauss-Hermite with 120 nodes a factor
// (shared factors), both checked against simulation; made outside this code. Single cases name published examples.
const file = JSON.parse(readFileSync(new URL('./chain-vectors.json', import.meta.url), 'utf8'));

describe('chains agree with the reference vectors', () => {
  for (const entry of file.cases) {
    it(`${entry.id} (${entry.type})`, () => {
      const tally = checkReference({ cases: [entry] });
      expect(tally.failures).toEqual([]);
      expect(tally.skipped.size).toBe(0);
      expect(tally.passed).toBeGreaterThan(2);
    });
  }

  it('a changed expectation is reported with what, both numbers and the distance', () => {
    const entry = structuredClone(file.cases.find((one: { id: string }) => one.id === 'SF2-one-factor'));
    entry.expected.mean_min += 0.001;
    const lines = reportLines(checkReference({ cases: [entry] }));
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(
      /^SF2-one-factor: mean_min got 14\.913\d+, expected 14\.914\d+, off by 1\.00e-3 \(allowed 1\.49e-5\)$/,
    );
    expect(lines[1]).toMatch(/^\d+ passed, 1 failed$/);
  });

  it('a case type that is not built is listed as skipped, and a broken case is one failure', () => {
    const tally = checkReference({
      cases: [
        { id: 'a', type: 'other', expected: {} },
        { id: 'b', type: 'minimum', elements: [{ dist: 'gumbel' }], expected: { mean_min: 1 } },
        { id: 'c', type: 'minimum', elements: [{ dist: 'normal', mu: 1, sigma: 1 }], expected: {} },
      ],
    });
    expect(reportLines(tally)).toEqual([
      'b: distribution gumbel is not known: normal, lognormal or weibull.',
      'c: nothing in it could be compared.',
      'skipped: type other (1): a',
      '1 skipped',
      '0 passed, 2 failed',
    ]);
  });

  it('a case that is no case is one failure named by its index, and the others are still checked', () => {
    const good = file.cases.find((one: { id: string }) => one.id === 'SF2-one-factor');
    const alone = checkReference({ cases: [good] });
    const lines = reportLines(checkReference({ cases: [null, good, 'text', { type: 'minimum' }] }));
    expect(lines).toEqual(['case 0: is no object.', 'case 2: is no object.', 'case 3: has no id.', `${alone.passed} passed, 3 failed`]);
    expect(reportLines(checkReference({ cases: [null] }))).toEqual(['case 0: is no object.', '0 passed, 1 failed']);
  });

  it('the same goes for a list of published checks and for rows of a grid', () => {
    expect(reportLines(checkReference([null, { inputs: {} }, { id: 'none-1' }]))).toEqual([
      'entry 0: is no object.', 'entry 1: has no id.', 'skipped: none (1): none-1', '1 skipped', '0 passed, 2 failed',
    ]);
    // Phi(0) = 1/2 by symmetry.
    expect(reportLines(checkReference({ normal_cdf: [[0, 0.5], null, [1]], t_q: 'rows', other: [[1, 2]] }))).toEqual([
      'normal_cdf row 1: is no list of two numbers or more.', 'normal_cdf row 2: is no list of two numbers or more.', 't_q: is no list of rows.',
      'skipped: other (1): row 0', '1 skipped', '1 passed, 3 failed',
    ]);
  });
});
