/** What decides a verdict, on made-up rules that stand for no source. Each expectation follows by hand from the rules beside it. */
import { describe, expect, test } from 'vitest';
import type { Material, VerdictRule } from '../../../src/records/schema.ts';
import { type Field, type SlingHistory, verdictOn } from '../../../src/retirement/verdict.ts';
import { KNOWN, ON, UNKNOWN } from './history.ts';

const rule = (more: Partial<VerdictRule> = {}): VerdictRule => ({ order: 1, verdict: 'retire', what: 'made up', when: {}, due: null, says: 'A made-up rule.', figures: [], ...more }) as VerdictRule;
/** Speaks of every sling: to inspect within a hundred years of the last inspection. */
const LAST = rule({ order: 99, verdict: 'inspect', due: { months: 1200, from: 'inspection' } });
const ask = (rules: Record<string, VerdictRule>, history: Partial<SlingHistory> = {}) => verdictOn({ ...rules, last: LAST }, { ...KNOWN, ...history }, ON);
const now = { kind: 'retire-now' };

describe('a condition', () => {
  const asks = rule({ when: { materials: ['nylon'], uses: ['daily'], widthMm: [8, 12] } });
  const met: Partial<SlingHistory> = { material: 'nylon', use: 'daily', widthMm: 10 };
  test('that is met, or not known, counts; what is not known is named', () => {
    expect(ask({ asks }, met).reasons[0]).toMatchObject({ rule: 'asks', asks: now, why: 'met', unknown: [] });
    expect(ask({ asks }, { material: null, use: null, widthMm: null }).reasons[0]).toMatchObject({ rule: 'asks', why: 'counted-unknown', unknown: ['material', 'use', 'widthMm'] });
    for (const field of ['material', 'use', 'widthMm'] as const) expect(ask({ asks }, { ...met, [field]: null }).reasons[0]).toMatchObject({ why: 'counted-unknown', unknown: [field] });
  });
  test('that is known not to be met ends it; both ends of a width belong to it', () => {
    for (const widthMm of [8, 12]) expect(ask({ asks }, { ...met, widthMm }).strictest).toEqual(now);
    for (const change of [{ widthMm: 7.99 }, { widthMm: 12.01 }, { material: 'hmpe' }, { use: 'weekly' }] as const) expect(ask({ asks }, { ...met, ...change }).reasons.map((one) => one.rule)).toEqual(['last']);
  });
  test('to count from a day that is not known is counted as reached, and the day is named', () => {
    const due = (from: 'made' | 'first-use' | 'inspection') => ask({ asks: rule({ due: { months: 12, from } }) }, { made: null, firstUse: null, inspected: null }).reasons.find((one) => one.rule === 'asks');
    expect(due('made')).toMatchObject({ asks: now, day: null, unknown: ['made'] });
    expect(due('first-use')).toMatchObject({ asks: now, unknown: ['firstUse', 'made'] });
    expect(due('inspection')).toMatchObject({ asks: now, unknown: ['inspected'] });
  });
});

describe('order', () => {
  const names = (rules: Record<string, VerdictRule>, history: Partial<SlingHistory> = {}) => ask(rules, history).reasons.map((one) => one.rule).filter((id) => id !== 'last');
  test('of what asks for the same day: met before counted as unknown, then the order of the rules, then their names', () => {
    const open = rule({ order: 0, when: { materials: ['nylon'] } });
    expect(names({ open, met: rule({ order: 5 }) }, { material: null })).toEqual(['met', 'open']);
    expect(names({ met: rule({ order: 5 }), open }, { material: null })).toEqual(['met', 'open']);
    expect(names({ b: rule(), c: rule(), a: rule(), z: rule({ order: 0 }) })).toEqual(['z', 'a', 'b', 'c']);
    expect(names({ a: rule(), b: rule(), c: rule() })).toEqual(['a', 'b', 'c']);
  });
});

describe('a day of asking', () => {
  test.each(['x2026-11-24', '2026-11-24x', '2026', '', '2026-11'])('%o is refused', (on) => {
    expect(() => verdictOn({ last: LAST }, UNKNOWN, on)).toThrow(`on must be a day like 2019-05-31 (got ${on})`);
  });
  test('that is in no calendar is refused, also where no rule counts from it', () => {
    for (const [rules, history] of [[{ last: LAST }, UNKNOWN], [{ one: rule() }, KNOWN]] as const) expect(() => verdictOn(rules, history, '2026-11-31')).toThrow('(got 2026-11-31)');
  });
});

describe('the mildest verdict that answers can bring', () => {
  const milder = (rules: Record<string, VerdictRule>, history: Partial<SlingHistory>) => {
    const found = ask(rules, { ...history }).milder;
    return found && { kind: found.verdict.kind, fields: found.fields };
  };
  const of = (...fields: Field[]) => ({ kind: 'inspect-by', fields });

  test('never changes what is known', () => {
    expect(milder({ one: rule({ when: { materials: ['nylon'] } }) }, { material: 'nylon', inspected: null })).toBeNull();
    expect(milder({ one: rule({ when: { widthMm: [8, 12] } }) }, { widthMm: 10, inspected: null })).toBeNull();
    expect(milder({ one: rule({ when: { uses: ['stored', 'seldom', 'monthly', 'weekly', 'daily'] } }) }, { use: null })).toBeNull();
  });
  test('tries each material that the rules tell apart, wherever it stands among them', () => {
    const all: Material[] = ['hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon', 'hmpe-aramid', 'lcp', 'polypropylene'];
    for (const spared of all) {
      const rules = { one: rule({ when: { materials: all.filter((material) => material !== spared) } }), two: rule({ when: { materials: all.filter((material) => material !== spared).slice(2) } }) };
      expect(milder(rules, { material: null }), spared).toEqual(of('material'));
    }
    expect(milder({ one: rule({ when: { materials: all } }) }, { material: null })).toBeNull();
  });
  test('tries widths just beside each limit, none of nothing or less', () => {
    const spans = (...all: [number, number][]) => Object.fromEntries(all.map((widthMm, i) => [`at-${i}`, rule({ when: { widthMm } })]));
    expect(milder(spans([0.005, 10]), { widthMm: null })).toEqual(of('widthMm'));
    expect(milder(spans([0.5, Infinity]), { widthMm: null })).toEqual(of('widthMm'));
    for (const from of [0.005, 0.01]) expect(milder(spans([from, Infinity]), { widthMm: null })).toBeNull();
    // At a limit itself: each of two rules ends where the other begins, and only that one width is between.
    expect(milder(spans([0.001, 4], [5, Infinity]), { widthMm: null })).toEqual(of('widthMm'));
  });
  test('names each question that it needs, and no other', () => {
    expect(milder({ one: rule({ due: { months: 12, from: 'first-use' } }) }, { firstUse: null, made: '2010', use: null })).toMatchObject({ kind: 'retire-by', fields: ['firstUse'] });
    expect(milder({ one: rule({ when: { uses: ['daily'] } }) }, { firstUse: null, use: null })).toEqual(of('use'));
    expect(milder({}, { inspected: null })).toEqual(of('inspected'));
  });
  test('looks past slings of which no rule speaks', () => {
    const only = { nylon: rule({ when: { materials: ['nylon'] } }) };
    expect(verdictOn(only, { ...KNOWN, material: null }, ON)).toMatchObject({ strictest: now, milder: null });
    const two = { ...only, polyester: rule({ when: { materials: ['polyester'] }, due: { months: 1200, from: 'made' } }) };
    expect(verdictOn(two, { ...KNOWN, material: null }, ON)).toMatchObject({ strictest: now, milder: { verdict: { kind: 'retire-by' }, fields: ['material'] } });
  });
});
