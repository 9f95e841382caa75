/** Rules of retirement applied to one sling. Every rule and every age here is invented, and stands for no source. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MATERIALS, OLD_LIGHTS, OLD_USES, type RetirementRule } from '../../../src/records/schema.ts';
import { type JudgedSling, judge } from '../../../src/retirement/judge.ts';

/** An invented rule: to retire at once, whatever the sling, unless it says otherwise. */
const invented = (more: Partial<RetirementRule> = {}): RetirementRule =>
  Object.freeze({ order: 1, verdict: 'retire', when: {}, says: 'An invented rule.', figures: ['demo/rule'], years: null, ...more });
const SLING: JudgedSling = Object.freeze({ material: 'hmpe', ageYears: 4, use: 'monthly', light: 'dark' });
const names = (rules: Record<string, RetirementRule>, sling: JudgedSling = SLING): string[] => judge(Object.freeze(rules), sling).map(({ rule }) => rule);

describe('a condition', () => {
  const ON: [keyof JudgedSling, RetirementRule['when'], Partial<JudgedSling>][] = [
    ['material', { materials: ['nylon', 'polyester'] }, { material: 'nylon' }],
    ['use', { uses: ['weekly', 'daily'] }, { use: 'daily' }],
    ['light', { exposures: ['light'] }, { light: 'sun' }],
  ];

  test.each(ON)('on the %s is met by what it names, and by what the reader does not know', (field, when, met) => {
    const rules = { a: invented({ when }) };
    expect(names(rules, { ...SLING, ...met })).toEqual(['a']);
    expect(names(rules, { ...SLING, [field]: null })).toEqual(['a']);
    expect(names(rules, SLING)).toEqual([]);
  });

  test('that is absent means any', () => {
    expect(names({ a: invented() })).toEqual(['a']);
    expect(names({ a: invented() }, { material: null, ageYears: null, use: null, light: null })).toEqual(['a']);
  });

  test('is one of several that must all be met', () => {
    const rules = { a: invented({ when: { materials: ['nylon'], uses: ['daily'], exposures: ['light'] } }) };
    expect(names(rules, { ...SLING, material: 'nylon', use: 'daily', light: 'sun' })).toEqual(['a']);
    expect(names(rules, { ...SLING, material: 'nylon', use: null, light: null })).toEqual(['a']);
    for (const spared of [{ material: 'hmpe' }, { use: 'monthly' }, { light: 'dark' }] as const) {
      expect(names(rules, { ...SLING, material: 'nylon', use: 'daily', light: 'sun', ...spared })).toEqual([]);
    }
  });

  test('that no rule makes gives no judgement', () => {
    expect(judge({}, SLING)).toEqual([]);
  });
});

describe('the age', () => {
  // Years left are the limit less the age, never below none (subtraction by hand).
  test.each<[number | null, number | null, boolean, number | null]>([
    [10, 4, false, 6],
    [10, 9.5, false, 0.5],
    [10, 10, true, 0],
    [10, 12, true, 0],
    [10, 0, false, 10],
    [10, null, true, null],
    [null, 0, true, null],
    [null, 12, true, null],
    [null, null, true, null],
  ])('limit %j, age %j: due %j, years left %j', (years, ageYears, due, yearsLeft) => {
    expect(judge({ a: invented({ years }) }, { ...SLING, ageYears })).toEqual([{ rule: 'a', verdict: 'retire', due, yearsLeft }]);
  });

  test.each([-1, -Number.MIN_VALUE, Number.NaN, Infinity, -Infinity])('of %d is no age: it is refused by name, whatever the rules', (ageYears) => {
    for (const rules of [{}, { a: invented() }, { a: invented({ years: 10 }) }]) {
      expect(() => judge(rules, { ...SLING, ageYears })).toThrow(RangeError);
      expect(() => judge(rules, { ...SLING, ageYears })).toThrow(`ageYears must be 0 or more (got ${ageYears})`);
    }
  });
});

describe('the order', () => {
  test('what is due first, then the least time left; of equals to retire before to inspect', () => {
    const rules = {
      'inspect-later': invented({ verdict: 'inspect', years: 5 }),
      'retire-much-later': invented({ years: 10 }),
      'inspect-now': invented({ verdict: 'inspect' }),
      'retire-later': invented({ years: 6 }),
      'retire-now': invented({ years: 3 }),
    };
    expect(names(rules)).toEqual(['retire-now', 'inspect-now', 'inspect-later', 'retire-later', 'retire-much-later']);
  });

  test("then the rules' own order, whether a limit is reached or the age is not known", () => {
    const rules = { c: invented({ order: 3 }), a: invented({ order: 1, years: 4 }), b: invented({ order: 2, years: 1 }) };
    expect(names(rules)).toEqual(['a', 'b', 'c']);
    expect(names(rules, { ...SLING, ageYears: null })).toEqual(['a', 'b', 'c']);
    expect(names({ b: invented({ order: 2, years: 9 }), a: invented({ order: 1, years: 9 }) })).toEqual(['a', 'b']);
  });

  test('with an unknown age a limit of many years stands before an inspection that is due', () => {
    const rules = { inspect: invented({ verdict: 'inspect' }), retire: invented({ years: 10 }) };
    expect(names(rules)).toEqual(['inspect', 'retire']);
    expect(names(rules, { ...SLING, ageYears: null })).toEqual(['retire', 'inspect']);
  });
});

const some = <T>(list: readonly T[]): fc.Arbitrary<T[] | undefined> => fc.option(fc.subarray([...list], { minLength: 1 }), { nil: undefined });
const anyRule: fc.Arbitrary<RetirementRule> = fc.record({
  order: fc.integer({ min: 1, max: 9 }), verdict: fc.constantFrom('retire' as const, 'inspect' as const), years: fc.option(fc.integer({ min: 1, max: 15 })),
  when: fc.record({ materials: some(MATERIALS), uses: some(OLD_USES), exposures: some(['light'] as const) }),
}).map(({ when, ...rest }) => invented({ ...rest, when: Object.fromEntries(Object.entries(when).filter(([, list]) => list)) }));
const anyRules = fc.array(anyRule, { maxLength: 6 }).map((list) => Object.fromEntries(list.map((rule, i) => [`r${i}`, rule])));
const anySling: fc.Arbitrary<JudgedSling> = fc.record({
  material: fc.constantFrom(...MATERIALS, null), use: fc.constantFrom(...OLD_USES, null), light: fc.constantFrom(...OLD_LIGHTS, null),
  ageYears: fc.option(fc.integer({ min: 0, max: 20 })),
});
const due = (rules: Record<string, RetirementRule>, sling: JudgedSling): string[] => judge(rules, sling).filter((one) => one.due).map(({ rule }) => rule);

test('not knowing never spares a sling: what spoke of it still does, and what was due still is', () => {
  fc.assert(fc.property(anyRules, anySling, fc.constantFrom('material', 'use', 'light', 'ageYears'), (rules, sling, field) => {
    const less = { ...sling, [field]: null };
    expect(names(rules, less)).toEqual(expect.arrayContaining(names(rules, sling)));
    expect(due(rules, less)).toEqual(expect.arrayContaining(due(rules, sling)));
  }));
});

test('a year more never spares a sling, and takes at most a year from what is left', () => {
  fc.assert(fc.property(anyRules, anySling, (rules, sling) => {
    if (sling.ageYears === null) return;
    const older = { ...sling, ageYears: sling.ageYears + 1 };
    expect(due(rules, older)).toEqual(expect.arrayContaining(due(rules, sling)));
    const left = new Map(judge(rules, older).map((one) => [one.rule, one.yearsLeft]));
    for (const { rule, yearsLeft } of judge(rules, sling)) expect(left.get(rule)).toBe(yearsLeft === null ? null : Math.max(0, yearsLeft - 1));
  }));
});

test('what is due at the same time: to retire comes before to inspect, then the order of the rules', () => {
  const inspect = { verdict: 'inspect' } as const;
  expect(names({ a: invented({ order: 1, ...inspect }), b: invented({ order: 3 }), c: invented({ order: 2 }), d: invented({ order: 0, ...inspect }), e: invented({ order: 9, years: 6 }), f: invented({ order: 0, years: 9 }) })).toEqual(['c', 'b', 'd', 'a', 'e', 'f']);
});
