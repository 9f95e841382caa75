/** The comparison carries the rules that its own inputs decide, and no other. The inputs are read off its form: the old sling's material, age, use and light. */
import { expect, test } from 'vitest';
import { comparedRules } from '../../../src/build/retirement-rules.ts';
import type { VerdictRule } from '../../../src/records/schema.ts';
import { RULES } from './history.ts';

const compared = comparedRules(RULES);

test('it shows five rules', () => {
  // Age from manufacture, used HMPE, daily use twice, sun; their years are those of their figures. A first use that is not asked for counts from manufacture.
  expect(Object.entries(compared).map(([id, { verdict, years }]) => [id, verdict, years])).toEqual([
    ['age', 'retire', 10], ['daily-use', 'inspect', 1], ['daily-use-life', 'retire', 1], ['light', 'retire', null], ['used-hmpe', 'inspect', 3],
  ]);
});

const invented = (more: Partial<VerdictRule>): Record<string, VerdictRule> => ({ a: { what: 'An invented rule', order: 1, verdict: 'inspect', when: {}, says: 'An invented rule.', figures: ['demo/rule'], due: null, ...more } });

test.each<[string, Partial<VerdictRule>]>([
  ['any sling', {}],
  ['material, use and light, so long after manufacture', { when: { materials: ['nylon'], uses: ['daily'], exposures: ['light'] }, due: { months: 18, from: 'made' } }],
  ['first use', { due: { months: 12, from: 'first-use' } }],
])('it carries a rule on %s', (_what, more) => {
  expect(Object.keys(comparedRules(invented(more)))).toEqual(['a']);
});

test('it reads months as years', () => {
  expect(comparedRules(invented({ due: { months: 18, from: 'made' } })).a?.years).toBe(1.5);
});

test.each<[string, Partial<VerdictRule>]>([
  ['width', { when: { widthMm: [8, 10] } }],
  ['events', { when: { events: ['edge'] } }],
  ['findings', { when: { findings: ['cut'] } }],
  ['salt', { when: { exposures: ['salt'] } }],
  ['light or salt', { when: { exposures: ['light', 'salt'] } }],
  ['the last inspection', { due: { months: 12, from: 'inspection' } }],
])('it leaves out a rule on %s', (_what, more) => {
  expect(comparedRules(invented(more))).toEqual({});
});
