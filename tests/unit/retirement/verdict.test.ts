/** The verdict on one sling. Days are counted by hand; the rules are the project's own unless they are said to be invented. */
import { describe, expect, test } from 'vitest';
import { EVENTS, EXPOSURES, FINDINGS, type VerdictRule } from '../../../src/records/schema.ts';
import { CANNOT_SEE } from '../../../src/retirement/cannot-see.ts';
import { type Headline, compareHeadlines, type SlingHistory, verdictOn } from '../../../src/retirement/verdict.ts';
import { all, KNOWN, ON, RECORDS, RULES, UNKNOWN, withAnswers } from './history.ts';

const invented = (more: Partial<VerdictRule> = {}): VerdictRule => Object.freeze({ what: 'An invented rule', order: 1, verdict: 'retire', when: {}, says: 'An invented rule.', figures: ['demo/rule'], due: null, ...more });
const on = (history: SlingHistory) => verdictOn(RULES, history, ON);

describe('a verdict', () => {
  test('on a sling that is known and sound is a day to inspect it again, and a day to retire it', () => {
    const { strictest, reasons, milder } = on(KNOWN);
    expect(strictest).toEqual({ kind: 'inspect-by', day: '2027-11-24' });
    expect(reasons.map(({ rule, asks }) => [rule, asks])).toEqual([
      ['inspect-all', { kind: 'inspect-by', day: '2027-11-24' }], ['age', { kind: 'retire-by', day: '2034-03-10' }],
    ]);
    expect(milder).toBeNull();
  });

  test('on a sling of which nothing is known is to retire it now, and every reason says what was counted against it', () => {
    const { strictest, reasons, milder } = on(UNKNOWN);
    expect(strictest).toEqual({ kind: 'retire-now' });
    expect(reasons.map(({ rule }) => rule).sort()).toEqual(Object.keys(RULES).sort());
    expect(reasons.every(({ why, unknown }) => why === 'counted-unknown' && unknown.length > 0)).toBe(true);
    // Made today, looked over today: a year to the next inspection.
    expect(milder?.verdict).toEqual({ kind: 'inspect-by', day: '2027-11-24' });
    // What another answer settles need not be asked: with a material that is not nylon the wet does not count; a width and a day of first use matter with HMPE or daily use alone.
    expect(milder?.fields).toEqual(['material', 'made', 'inspected', 'use', ...EXPOSURES.filter((one) => one !== 'wet').map((one) => `exposures.${one}`), ...EVENTS.map((one) => `events.${one}`), ...FINDINGS.map((one) => `findings.${one}`)]);
  });

  test('on a sling that nobody has looked at is to inspect it now, not to retire it', () => {
    const { strictest, milder } = on({ ...KNOWN, inspected: null, findings: all(FINDINGS, 'unknown') });
    expect(strictest).toEqual({ kind: 'inspect-by', day: ON });
    expect(milder).toEqual({ verdict: { kind: 'inspect-by', day: '2027-11-24' }, fields: ['inspected', ...FINDINGS.map((one) => `findings.${one}`)] });
  });

  test('counts an unknown event against the sling', () => {
    expect(on(withAnswers(KNOWN, { 'events.big-fall': 'unknown' }))).toMatchObject({
      strictest: { kind: 'retire-now' }, milder: { verdict: { kind: 'inspect-by', day: '2027-11-24' }, fields: ['events.big-fall'] },
    });
  });

  test('is made no milder by answers where something that is known is as strict', () => {
    expect(on(withAnswers(KNOWN, { 'events.big-fall': 'yes', 'exposures.chemicals': 'unknown' }))).toMatchObject({ strictest: { kind: 'retire-now' }, milder: null });
  });

  test('puts the reasons that are met before those that are counted as unknown', () => {
    const { reasons } = on(withAnswers(KNOWN, { 'events.big-fall': 'unknown', 'exposures.chemicals': 'yes', 'findings.cut': 'yes' }));
    expect(reasons.slice(0, 3).map(({ rule, why }) => [rule, why])).toEqual([['chemicals', 'met'], ['cut', 'met'], ['big-fall', 'counted-unknown']]);
  });

  test('counts on no day of manufacture after the first use', () => {
    // Ten years from a first use on 1 June 2024: made that day at the latest.
    const { milder } = verdictOn({ age: invented({ due: { months: 120, from: 'made' } }) }, { ...KNOWN, made: null }, ON);
    expect(milder).toEqual({ verdict: { kind: 'retire-by', day: '2034-06-01' }, fields: ['made'] });
  });

  test.each<[string, Partial<SlingHistory>, VerdictRule['when'], string]>([
    ['a width', { widthMm: null }, { widthMm: [1, 10] }, 'widthMm'],
    ['a material', { material: null }, { materials: ['hmpe', 'nylon', 'polyester'] }, 'material'],
  ])('is made milder by %s that a rule does not speak of', (_what, answers, when, field) => {
    const rules = { a: invented({ when }), z: invented({ verdict: 'inspect' }) };
    expect(verdictOn(rules, { ...KNOWN, ...answers }, ON)).toMatchObject({ strictest: { kind: 'retire-now' }, milder: { verdict: { kind: 'inspect-by', day: ON }, fields: [field] } });
  });

  test('dates what is overdue on the day of asking, and keeps the day of the limit', () => {
    const reason = on({ ...KNOWN, inspected: '2025-02' }).reasons[0];
    expect(reason).toMatchObject({ rule: 'inspect-all', asks: { kind: 'inspect-by', day: ON }, day: '2026-02-01' });
  });

  test('says what it cannot see, and every figure behind that exists', () => {
    expect(on(KNOWN).cannotSee).toBe(CANNOT_SEE);
    expect(CANNOT_SEE.flatMap(({ figures }) => figures)).toContain('common-practice/device-clock');
    expect(CANNOT_SEE.flatMap(({ figures }) => figures).filter((id) => !RECORDS.cells.has(id))).toEqual([]);
    expect(CANNOT_SEE.filter(({ says }) => /\d/.test(says))).toEqual([]);
  });
});

describe('dates', () => {
  test.each([['2017', '2027-01-01'], ['2017-05', '2027-05-01'], ['2017-05-31', '2027-05-31']])('made %s: retired by %s, from the earliest day that the label can mean', (made, day) => {
    expect(on({ ...KNOWN, made }).reasons.find(({ rule }) => rule === 'age')?.asks).toEqual({ kind: 'retire-by', day });
  });

  test('a first use that is not known counts from manufacture', () => {
    expect(on({ ...KNOWN, use: 'daily', made: '2026-05-01', firstUse: null }).reasons.find(({ rule }) => rule === 'daily-use-life'))
      .toMatchObject({ asks: { kind: 'retire-by', day: '2027-05-01' }, why: 'counted-unknown', unknown: ['firstUse'] });
  });

  test('a year of first use that begins before the month of manufacture counts from that', () => {
    expect(on({ ...KNOWN, use: 'daily', made: '2026-05', firstUse: '2026' }).reasons.find(({ rule }) => rule === 'daily-use-life')?.day).toBe('2027-05-01');
  });

  test.each<[string, Partial<SlingHistory>, string]>([
    ['made after the day of asking', { made: '2026-12' }, 'made must not be after 2026-11-24 (got 2026-12)'],
    ['used after the day of asking', { firstUse: '2027' }, 'firstUse must not be after 2026-11-24 (got 2027)'],
    ['inspected after the day of asking', { inspected: '2026-11-25' }, 'inspected must not be after 2026-11-24 (got 2026-11-25)'],
    ['used before it was made', { firstUse: '2023' }, 'firstUse must not be before made (got 2023 and 2024-03-10)'],
    ['a date that is none', { made: 'spring' }, 'label must be a year, month or day like 2019, 2019-05 or 2019-05-31 (got spring)'],
    ['a maker who retires by no day', { maker: { retireBy: 'soon' } }, 'label must be a year, month or day like 2019, 2019-05 or 2019-05-31 (got soon)'],
    ['no width', { widthMm: 0 }, 'widthMm must be above 0 (got 0)'],
    ['a maker who gives no years', { maker: { yearsFromMade: -1 } }, 'yearsFromMade must be above 0 (got -1)'],
    ['a maker who gives endless years', { maker: { yearsFromFirstUse: Infinity } }, 'yearsFromFirstUse must be above 0 (got Infinity)'],
  ])('%s: refused by name', (_what, answers, message) => {
    expect(() => on({ ...KNOWN, ...answers })).toThrow(RangeError);
    expect(() => on({ ...KNOWN, ...answers })).toThrow(message);
  });

  test.each(['2026', '2026-11', '2026-02-30', 'today'])('"%s" is no day of asking', (day) => {
    expect(() => verdictOn(RULES, KNOWN, day)).toThrow(RangeError);
  });
});

describe("the maker's limits", () => {
  test.each<[string, SlingHistory['maker'], string, Headline]>([
    ['five years from manufacture', { yearsFromMade: 5 }, 'maker#years-from-made', { kind: 'retire-by', day: '2029-03-10' }],
    ['two and a half years from first use, which are thirty months', { yearsFromFirstUse: 2.5 }, 'maker#years-from-first-use', { kind: 'retire-by', day: '2026-12-01' }],
    ['two years from first use, which are over', { yearsFromFirstUse: 2 }, 'maker#years-from-first-use', { kind: 'retire-now' }],
    ['a month', { retireBy: '2027-05' }, 'maker#retire-by', { kind: 'retire-by', day: '2027-05-01' }],
    ['a month that has begun', { retireBy: '2026-11' }, 'maker#retire-by', { kind: 'retire-now' }],
  ])('%s', (_what, maker, rule, asks) => {
    expect(on({ ...KNOWN, maker }).reasons.find((one) => one.rule === rule)).toMatchObject({ asks, why: 'met' });
  });

  test('win where they are stricter, and nowhere else', () => {
    const retiring = (maker: SlingHistory['maker']) => on({ ...KNOWN, maker }).reasons.filter(({ asks }) => asks.kind === 'retire-by').map(({ rule }) => rule);
    expect(retiring({ yearsFromMade: 5 })).toEqual(['maker#years-from-made', 'age']);
    expect(retiring({ yearsFromMade: 15 })).toEqual(['age', 'maker#years-from-made']);
  });
});

describe('the order of verdicts', () => {
  test('is to retire now, then the earlier day, then to retire before to inspect', () => {
    const sorted: Headline[] = [
      { kind: 'retire-now' }, { kind: 'inspect-by', day: '2026-11-24' }, { kind: 'retire-by', day: '2026-12-01' }, { kind: 'inspect-by', day: '2026-12-01' }, { kind: 'retire-by', day: '2030-01-01' },
    ];
    expect([...sorted].reverse().sort(compareHeadlines)).toEqual(sorted);
  });

  test('is that of the rules where they ask for the same', () => {
    const rules = { c: invented({ order: 2 }), b: invented({ order: 2 }), a: invented({ order: 3 }) };
    expect(verdictOn(rules, KNOWN, ON).reasons.map(({ rule }) => rule)).toEqual(['b', 'c', 'a']);
  });
});

describe('a condition', () => {
  test('of several words is met by any one; one that is known to be met leaves no question open', () => {
    const rules = { a: invented({ when: { exposures: ['salt', 'wet'] } }), z: invented({ verdict: 'inspect' }) };
    const one = (answers: Parameters<typeof withAnswers>[1]) => verdictOn(rules, withAnswers(KNOWN, answers), ON).reasons.find(({ rule }) => rule === 'a');
    expect(one({ 'exposures.wet': 'yes', 'exposures.salt': 'unknown' })).toMatchObject({ why: 'met', unknown: [] });
    expect(one({ 'exposures.wet': 'unknown' })).toMatchObject({ why: 'counted-unknown', unknown: ['exposures.wet'] });
    expect(one({})).toBeUndefined();
  });

  test('of several kinds must be met in all', () => {
    const rules = { a: invented({ when: { materials: ['polyester'], events: ['edge'], findings: ['cut'] } }), z: invented({ verdict: 'inspect' }) };
    const asks = (answers: Parameters<typeof withAnswers>[1]) => verdictOn(rules, withAnswers(KNOWN, answers), ON).reasons.find(({ rule }) => rule === 'a')?.asks.kind;
    expect(asks({ 'events.edge': 'yes', 'findings.cut': 'yes' })).toBe('retire-now');
    expect(asks({ 'events.edge': 'yes', 'findings.cut': 'unknown' })).toBe('inspect-by');
    expect(asks({ 'events.edge': 'yes' })).toBeUndefined();
    expect(asks({ material: 'nylon', 'events.edge': 'yes', 'findings.cut': 'yes' })).toBeUndefined();
  });

  test('that no rule makes of the sling is no verdict', () => {
    expect(() => verdictOn({}, KNOWN, ON)).toThrow('rules must speak of every sling (none speaks of this one)');
  });
});
