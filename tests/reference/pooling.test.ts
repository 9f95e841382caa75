import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkPublished } from '../../src/commands/reference/published-checks.ts';

// tests/reference/published-checks.json: each entry names its source, how it was read and its tolerance.
const file: { id: string }[] = JSON.parse(readFileSync(new URL('./published-checks.json', import.meta.url), 'utf8'));
const familyOf = (id: string): string => id.split('-')[0] ?? id;

describe('pooling and effect sizes agree with published results to the digits printed', () => {
  for (const entry of file.filter(({ id }) => ['es', 'ma'].includes(familyOf(id)) && id !== 'ma-formulas')) {
    it(entry.id, () => {
      const tally = checkPublished([entry], { toPrintedDigits: true });
      expect(tally.failures).toEqual([]);
      expect(tally.passed).toBeGreaterThan(7);
    });
  }
});

describe('other published checks that are built agree within their tolerance', () => {
  const built = ['strd', 'ss', 'lognormal', 'clark', 'order', 'weibull', 'tol', 'c4', 'units'];
  for (const family of built) {
    it(family, () => {
      const tally = checkPublished(file.filter(({ id }) => familyOf(id) === family));
      expect(tally.failures).toEqual([]);
      expect(tally.passed).toBeGreaterThan(0);
    });
  }

  it('a changed pooled mean is caught', () => {
    const entry = structuredClone(file.find(({ id }) => id === 'ma-kacker')) as unknown as {
      expected: { PM: { mu: number } };
    };
    entry.expected.PM.mu += 1e-4;
    expect(checkPublished([entry]).failures).toHaveLength(1);
  });
});
