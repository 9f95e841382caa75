/** Over the project's own rules: a worse answer, or none, never gives a milder verdict. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EVENTS, EXPOSURES, FINDINGS, MATERIALS, OLD_USES } from '../../../src/records/schema.ts';
import { addMonths } from '../../../src/retirement/days.ts';
import { type Answer, compareHeadlines, type Field, MAKER_RULES, type SlingHistory, verdictOn } from '../../../src/retirement/verdict.ts';
import { ON, RULES, withAnswers } from './history.ts';

const WORSE: readonly Answer[] = ['no', 'unknown', 'yes'];
/** Mostly no, so that one answer can still move the verdict. */
const answers = <K extends string>(keys: readonly K[]): fc.Arbitrary<Record<K, Answer>> =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: fc.tuple(fc.constantFrom(...keys), fc.constantFrom(...WORSE)) })
    .map((one) => Object.fromEntries(keys.map((key) => [key, one?.[0] === key ? one[1] : 'no'])) as Record<K, Answer>);
/** Months before the day of asking: made, then first used; the label is a day, a month or a year. */
const label = fc.constantFrom(4, 7, 10);
const BEGIN = '2011-02-24';
const MONTHS = 189;
const day = (monthsBefore: number): string => addMonths(BEGIN, MONTHS - monthsBefore);
const dates = fc.tuple(fc.nat(MONTHS), fc.nat(MONTHS), fc.nat(30), label, label, label, fc.nat(9)).map(([a, b, seen, x, y, z, hide]) => ({
  made: hide === 1 ? null : day(Math.max(a, b)).slice(0, x), firstUse: hide === 2 ? null : day(Math.min(a, b)).slice(0, y), inspected: hide === 3 ? null : day(seen).slice(0, z),
})).filter(({ made, firstUse }) => made === null || firstUse === null || firstUse.slice(0, made.length) >= made.slice(0, firstUse.length));
const years = fc.option(fc.integer({ min: 1, max: 40 }).map((halves) => halves / 2), { nil: undefined });
const history: fc.Arbitrary<SlingHistory> = fc.record({
  dates, material: fc.option(fc.constantFrom(...MATERIALS)), widthMm: fc.option(fc.integer({ min: 4, max: 30 })), use: fc.option(fc.constantFrom(...OLD_USES)),
  exposures: answers(EXPOSURES), events: answers(EVENTS), findings: answers(FINDINGS),
  maker: fc.record({ yearsFromMade: years, yearsFromFirstUse: years, retireBy: fc.option(fc.nat(MONTHS).map((n) => addMonths('2020-01-01', n)), { nil: undefined }) })
    .map((limits) => Object.fromEntries(Object.entries(limits).filter(([, limit]) => limit !== undefined)) as SlingHistory['maker']),
}).map(({ dates: { made, firstUse, inspected }, ...rest }) => ({ ...rest, made, firstUse, inspected }));

const strictest = (one: SlingHistory) => verdictOn(RULES, one, ON).strictest;
/** Fails where the second history gets a milder verdict than the first. */
function neverMilder(from: SlingHistory, worse: SlingHistory): void {
  expect(compareHeadlines(strictest(worse), strictest(from))).toBeLessThanOrEqual(0);
}
const groups = [...EXPOSURES.map((one) => `exposures.${one}`), ...EVENTS.map((one) => `events.${one}`), ...FINDINGS.map((one) => `findings.${one}`)] as Field[];

test('no, then not known, then yes: each at least as strict as the one before', () => {
  fc.assert(fc.property(history, fc.constantFrom(...groups), (one, field) => {
    const [no, unknown, yes] = WORSE.map((answer) => withAnswers(one, { [field]: answer })) as [SlingHistory, SlingHistory, SlingHistory];
    neverMilder(no, unknown);
    neverMilder(unknown, yes);
  }), { numRuns: 500 });
});

test('not knowing the material, width, use or a date is at least as strict as any answer', () => {
  fc.assert(fc.property(history, fc.constantFrom('material', 'widthMm', 'use', 'made', 'firstUse', 'inspected'), (one, field) => {
    neverMilder(one, { ...one, [field]: null });
  }), { numRuns: 500 });
});

test('harder use is at least as strict', () => {
  fc.assert(fc.property(history, fc.nat(OLD_USES.length - 2), (one, i) => {
    neverMilder({ ...one, use: OLD_USES[i] ?? null }, { ...one, use: OLD_USES[i + 1] ?? null });
  }), { numRuns: 300 });
});

test('made, first used or inspected earlier is at least as strict, and so is a label that says less', () => {
  fc.assert(fc.property(history, fc.constantFrom('made', 'firstUse', 'inspected'), fc.integer({ min: 1, max: 60 }), (one, field, months) => {
    const was = one[field];
    if (was === null) return;
    const [year, ...rest] = was.split('-') as [string, ...string[]];
    const earlier = [String(Number(year) - Math.ceil(months / 12)), ...rest].join('-').replace(/-02-29$/, '-02-28');
    if (field !== 'firstUse' || one.made === null || earlier.slice(0, one.made.length) >= one.made.slice(0, earlier.length)) neverMilder(one, { ...one, [field]: earlier });
    neverMilder(one, { ...one, [field]: was.slice(0, 7) });
    neverMilder(one, { ...one, [field]: was.slice(0, 4) });
  }), { numRuns: 500 });
});

test("a maker's limit that is added, or that is shorter, is at least as strict", () => {
  fc.assert(fc.property(history, fc.constantFrom('yearsFromMade', 'yearsFromFirstUse'), fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }), (one, field, a, b) => {
    const { [field]: _was, ...without } = one.maker;
    const given = (halves: number): SlingHistory => ({ ...one, maker: { ...without, [field]: halves / 2 } });
    neverMilder({ ...one, maker: without }, given(Math.max(a, b)));
    neverMilder(given(Math.max(a, b)), given(Math.min(a, b)));
  }), { numRuns: 300 });
});

test('the strictest is the first reason, no reason is stricter than the one before, and each names a rule', () => {
  fc.assert(fc.property(history, (one) => {
    const { strictest: first, reasons } = verdictOn(RULES, one, ON);
    expect(reasons[0]?.asks).toEqual(first);
    reasons.slice(1).forEach((reason, i) => { expect(compareHeadlines((reasons[i] as typeof reason).asks, reason.asks)).toBeLessThanOrEqual(0); });
    expect(reasons.map(({ rule }) => rule).filter((id) => !(id in RULES) && !(MAKER_RULES as readonly string[]).includes(id))).toEqual([]);
    expect(reasons.filter(({ asks }) => 'day' in asks && asks.day < ON)).toEqual([]);
    expect(reasons.filter(({ why, unknown }) => (why === 'met') !== (unknown.length === 0))).toEqual([]);
  }), { numRuns: 300 });
});

test('what answers can bring is milder than the verdict, needs an answer, and one answer alone never brings more', () => {
  fc.assert(fc.property(history, fc.constantFrom(...groups), (one, field) => {
    const open = withAnswers(one, { [field]: 'unknown' });
    const { strictest: now, milder } = verdictOn(RULES, open, ON);
    const answered = strictest(withAnswers(one, { [field]: 'no' }));
    if (compareHeadlines(answered, now) > 0) expect(milder).not.toBeNull();
    if (milder) {
      expect(milder.fields.length).toBeGreaterThan(0);
      expect(compareHeadlines(milder.verdict, now)).toBeGreaterThan(0);
      expect(compareHeadlines(milder.verdict, answered)).toBeGreaterThanOrEqual(0);
    }
  }), { numRuns: 300 });
});
