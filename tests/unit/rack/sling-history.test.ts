/** What an item is for the rules. Expected verdicts follow from the order of verdicts in the design, never from a number of ours. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PartDay } from '../../../src/rack/part-day.ts';
import { writePartDay } from '../../../src/rack/part-day.ts';
import { addInspection, addItems, changeItem, emptyRegister } from '../../../src/rack/register.ts';
import { itemReasons, itemVerdict, slingHistory } from '../../../src/rack/sling-history.ts';
import type { Item, ItemDraft } from '../../../src/rack/types.ts';
import { verdictRules } from '../../../src/build/retirement-rules.ts';
import { readAll } from '../../../src/records/read.ts';
import { earliestDay, isSurelyBefore } from '../../../src/retirement/days.ts';
import { compareHeadlines } from '../../../src/retirement/verdict.ts';
import { ROOT } from '../../support/step.ts';
import { register } from './arbitrary-register.ts';
import { by } from './histories.ts';

const ON = '2026-11-25';
const rules = verdictRules(readAll(ROOT));
const itemOf = (draft: ItemDraft): Item => addItems(emptyRegister(), by('copya'), [draft]).items[0]!;
const looked = (item: Item, day: string, findings: Item['inspections'][number]['findings'] = []): Item => {
  const one = { format: 'second-sling-rack', version: 1, invented: null, seen: { copya: 9 }, items: [item] } as const;
  return addInspection(one, by('copya'), item.id, { day, findings, by: '', note: '' }).items[0]!;
};
const items = register.filter((one) => one.items.length > 0).map((one) => one.items[0]!);

describe('an item becomes a history', () => {
  test('a list says what is so and what is not; no list says that nobody knows', () => {
    const known = slingHistory(itemOf({ sling: { exposures: ['salt'], events: [{ kind: 'edge', when: null }] } }), ON).history;
    expect(known.exposures).toEqual({ light: 'no', wet: 'no', salt: 'yes', chemicals: 'no', heat: 'no' });
    expect(known.events).toEqual({ 'big-fall': 'no', edge: 'yes', 'bare-wire': 'no', 'test-pull': 'no' });
    const open = slingHistory(itemOf({}), ON).history;
    expect(new Set([...Object.values(open.exposures), ...Object.values(open.events), ...Object.values(open.findings)])).toEqual(new Set(['unknown']));
    expect([open.inspected, open.maker]).toEqual([null, {}]);
  });

  test('the newest inspection counts, and says also what was not found', () => {
    const item = looked(looked(itemOf({}), '2025-05-01', ['cut']), '2026-05-01', ['fuzz']);
    const { inspected, findings } = slingHistory(item, ON).history;
    expect([inspected, findings.fuzz, findings.cut]).toEqual(['2026-05-01', 'yes', 'no']);
  });

  test('an inspection on a day to come counts for what was found and not for what was not', () => {
    const { history, faults } = slingHistory(looked(itemOf({}), '2062-05-01', ['cut']), ON);
    expect([history.inspected, history.findings.cut, history.findings.fuzz]).toEqual([null, 'yes', 'unknown']);
    expect(faults).toEqual([{ field: 'inspected', why: 'to-come' }]);
  });

  test('an inspection before the sling was made was of another sling', () => {
    const { history, faults } = slingHistory(looked(itemOf({ sling: { made: { year: 2026, month: 6 } } }), '2026-05-01', ['cut']), ON);
    expect([history.inspected, history.findings.cut]).toEqual([null, 'unknown']);
    expect(faults).toEqual([{ field: 'inspected', why: 'of-earlier-sling' }]);
  });

  test('of two dates that contradict each other none is used, and one to come is not known', () => {
    const wrong = slingHistory(itemOf({ sling: { made: { year: 2020 }, firstUse: { year: 2018 } } }), ON);
    expect([wrong.history.made, wrong.history.firstUse, wrong.faults]).toEqual([null, null, [{ field: 'firstUse', why: 'before-made' }]]);
    const tocome = slingHistory(itemOf({ sling: { made: { year: 2027 } } }), ON);
    expect([tocome.history.made, tocome.faults]).toEqual([null, [{ field: 'made', why: 'to-come' }]]);
  });

  test('the limits of the maker come along, each as it is printed', () => {
    const { maker } = slingHistory(itemOf({ sling: { maker: { retireBy: { year: 2030, month: 4 }, yearsFromMade: 7.5 } } }), ON).history;
    expect(maker).toEqual({ retireBy: '2030-04', yearsFromMade: 7.5 });
  });
});

describe('the verdict', () => {
  test('comes for every item that the register takes, and the list gives the same reasons', () => {
    fc.assert(fc.property(items, (item) => {
      const { reasons, strictest } = itemVerdict(rules, item, ON);
      expect(itemReasons(rules, item, ON)).toEqual(reasons);
      expect(reasons[0]!.asks).toEqual(strictest);
    }), { numRuns: 300 });
  });

  const CAN_BE_OPEN = ['material', 'widthMm', 'made', 'firstUse', 'use', 'exposures', 'events'] as const;
  const label = (day: PartDay | null) => day && writePartDay(day);
  /** Whether the dates can be those of one sling that is there on the day of asking. */
  const agrees = ({ sling }: Item): boolean => {
    const [made, first] = [label(sling.made), label(sling.firstUse)];
    return [made, first].every((one) => one === null || earliestDay(one) <= ON) && !(made && first && isSurelyBefore(first, made));
  };
  // Dates of the register reach to 2199; these are of the past, so that most of them can be used.
  const past = fc.record({ year: fc.integer({ min: 2005, max: 2025 }), month: fc.integer({ min: 1, max: 12 }) });
  const dated = fc.tuple(items, fc.option(past, { nil: null }), fc.option(past, { nil: null })).map(([item, made, firstUse]): Item => ({ ...item, sling: { ...item.sling, made, firstUse } }));

  test('is never milder for what is not known than for any answer', () => {
    let stricter = 0;
    // Half of them with nothing against them but time: of the others most are retired whatever else is known.
    const spoken = dated.map((item): Item => ({ ...looked(item, ON), sling: { ...item.sling, exposures: [], events: [] } }));
    fc.assert(fc.property(fc.oneof(dated, spoken).filter(agrees), fc.constantFrom(...CAN_BE_OPEN), (item, field) => {
      // Made opens what inspections belong to this sling; the register keeps those of the past alone here.
      const known = { ...item, inspections: item.inspections.filter(({ day }) => day > '2020-01-01') };
      if (field === 'made' && known.sling.made && known.inspections.some(({ day }) => isSurelyBefore(day, label(known.sling.made)!))) return;
      const open = { ...known, sling: { ...known.sling, [field]: null } };
      const difference = compareHeadlines(itemVerdict(rules, open, ON).strictest, itemVerdict(rules, known, ON).strictest);
      expect(difference).toBeLessThanOrEqual(0);
      stricter += Number(difference < 0);
    }), { numRuns: 1500 });
    expect(stricter).toBeGreaterThan(0);
  });

  test('is never milder where nobody has looked than where somebody looked today and found nothing', () => {
    fc.assert(fc.property(dated.filter(agrees), (item) => {
      const never = { ...item, inspections: [] };
      expect(compareHeadlines(itemVerdict(rules, never, ON).strictest, itemVerdict(rules, looked(never, ON), ON).strictest)).toBeLessThanOrEqual(0);
    }), { numRuns: 500 });
  });

  test('of several alike is that of one', () => {
    fc.assert(fc.property(items, fc.integer({ min: 1, max: 999 }), (item, count) => {
      expect(itemVerdict(rules, { ...item, count }, ON)).toEqual(itemVerdict(rules, { ...item, count: 1 }, ON));
    }), { numRuns: 100 });
  });

  test('follows the maker where the maker is stricter, and our rules where they are', () => {
    const sound = looked(itemOf({
      ratingKn: 12, eye: 'sleeved-wire',
      sling: { material: 'nylon', widthMm: 16, made: { year: 2026, month: 1 }, firstUse: { year: 2026, month: 2 }, use: 'seldom', exposures: [], events: [] },
    }), '2026-11-20');
    const one = { format: 'second-sling-rack', version: 1, invented: null, seen: { copya: 9 }, items: [sound] } as const;
    const limited = (maker: NonNullable<ItemDraft['sling']>['maker']) => changeItem(one, by('copya'), sound.id, { sling: { maker: maker ?? {} } }).items[0]!;
    expect(itemVerdict(rules, limited({ retireBy: { year: 2026, month: 11 } }), ON).strictest).toEqual({ kind: 'retire-now' });
    expect(itemVerdict(rules, limited({ retireBy: { year: 2026, month: 12 } }), ON).strictest).toEqual({ kind: 'retire-by', day: '2026-12-01' });
    expect(itemVerdict(rules, limited({ yearsFromMade: 50 }), ON).strictest).toEqual(itemVerdict(rules, sound, ON).strictest);
  });
});
