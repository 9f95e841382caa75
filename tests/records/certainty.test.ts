/** Certainty: the words and steps of DESIGN, counted by hand. */
import { expect, test } from 'vitest';
import { certaintyOf, certaintyWord } from '../../src/records/certainty.ts';
import type { Lowered } from '../../src/records/schema.ts';

const step = (steps: 1 | 2): Lowered => ({ by: 'few', steps, why: 'as told' });

test.each<[string, Lowered[], string | undefined, string]>([
  ['nothing lowered', [], 'page 1', 'high'],
  ['one step', [step(1)], 'page 1', 'moderate'],
  ['one double step', [step(2)], 'page 1', 'low'],
  ['two steps', [step(1), step(1)], 'page 1', 'low'],
  ['three steps', [step(1), step(2)], 'page 1', 'very low'],
  ['more steps than words', [step(2), step(2), step(2)], 'page 1', 'very low'],
  ['a page that was not recorded', [], 'not-recorded', 'moderate'],
  ['both', [step(1)], 'not-recorded', 'low'],
])('%s', (_title, lowered, locator, word) => {
  expect(certaintyOf({ kind: 'measured', lowered, locator })).toBe(word);
});

test('only what is measured has a certainty', () => {
  for (const kind of ['required', 'rule', 'constant', 'assumed']) expect(certaintyOf({ kind })).toBeNull();
});

test('a count of steps that is none is refused', () => {
  for (const steps of [-1, 0.5, Number.NaN]) expect(() => certaintyWord(steps)).toThrow(RangeError);
});
