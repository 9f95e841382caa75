/** What is said of verdicts and of what they cannot see: words by hand. */
import { expect, test } from 'vitest';
import type { RetirementRule } from '../../../src/records/schema.ts';
import { CANNOT_SEE } from '../../../src/retirement/cannot-see.ts';
import type { JudgedSling } from '../../../src/retirement/judge.ts';
import { countedUnknown, verdictWords } from '../../../src/retirement/verdict-words.ts';
import { RECORDS } from './history.ts';

test('a verdict says now, or by how many years, to a hundredth', () => {
  const words = (due: boolean, yearsLeft: number | null, after?: string) => verdictWords({ rule: 'a', verdict: 'inspect', due, yearsLeft }, after);
  expect([words(true, null), words(true, 3), words(false, 0), words(false, null), words(false, 0.004)]).toEqual(new Array(5).fill('inspect now'));
  expect([words(false, 1), words(false, 2, ' from now'), words(false, 10 - 9.9), words(false, 1.005)]).toEqual(['inspect by 1 year', 'inspect by 2 years from now', 'inspect by 0.1 years', 'inspect by 1 year']);
});

test('what is not known and counted against a sling is named, only where the rule asks for it', () => {
  const rule = (when: RetirementRule['when'], years: number | null): RetirementRule => ({ order: 1, verdict: 'retire', when, says: 'Made up.', figures: [], years });
  const all = rule({ materials: ['nylon'], uses: ['daily'], exposures: ['light'] }, 5);
  const unknown: JudgedSling = { material: null, ageYears: null, use: null, light: null };
  const known: JudgedSling = { material: 'nylon', ageYears: 0, use: 'daily', light: 'sun' };
  expect(countedUnknown(all, unknown)).toBe('its material and age and use and light are not known');
  expect(countedUnknown(all, known)).toBeNull();
  expect(countedUnknown(rule({}, null), unknown)).toBeNull();
  for (const [field, word] of [['material', 'material'], ['ageYears', 'age'], ['use', 'use'], ['light', 'light']] as const) expect(countedUnknown(all, { ...known, [field]: null })).toBe(`its ${word} is not known`);
});

test('what no verdict can see: the device itself, loss without a mark, what a cover hides, the force, a recall, what was forgotten', () => {
  const SUBJECTS = [/device/, /no mark/, /cover/, /force/, /recall/, /remember/];
  expect(CANNOT_SEE).toHaveLength(SUBJECTS.length);
  CANNOT_SEE.forEach(({ says, figures }, at) => {
    expect(says).toMatch(SUBJECTS[at] as RegExp);
    expect(says).toMatch(/^[A-Z].+\.$/);
    // All but the last rest on something that is written down.
    expect(figures.length > 0).toBe(at < SUBJECTS.length - 1);
    for (const id of figures) expect(RECORDS.cells.has(id), id).toBe(true);
  });
});
