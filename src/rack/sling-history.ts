/**
 * What the rules of retirement are asked about an item: its sling as far as the register knows it. A list names what is
 * known to be so; what is not in it is known not to be, and no list at all is not known. Several alike are judged as one.
 */
import type { Exposure, SlingEvent, SlingFinding, VerdictRule } from '../records/schema.ts';
import { SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS } from '../retirement/answers.ts';
import { earliestDay, isSurelyBefore } from '../retirement/days.ts';
import { type Answer, type Reason, type SlingHistory, type Verdict, verdictOn } from '../retirement/verdict.ts';
import { type PartDay, writePartDay } from './part-day.ts';
import type { Inspection, Item } from './types.ts';

/** A date that cannot be used, and why; it counts as not known. */
export interface DateFault { field: 'made' | 'firstUse' | 'inspected'; why: 'to-come' | 'before-made' | 'of-earlier-sling' }

const labelOf = (day: PartDay | null): string | null => day && writePartDay(day);

/** Answers to a group of questions. @param known ids that are so; null where nobody knows */
function answersOf<K extends string>(keys: readonly K[], known: readonly K[] | null): Record<K, Answer> {
  return Object.fromEntries(keys.map((key) => [key, known === null ? 'unknown' : known.includes(key) ? 'yes' : 'no'])) as Record<K, Answer>;
}

/**
 * Inspections that say something of the sling that is on now, the newest last: none before it was made.
 * A day that is still to come was written wrongly. What was found then counts, but not that nothing was.
 */
function looksAt({ inspections }: Item, made: string | null, on: string): { last: Inspection | null; later: readonly Inspection[] } {
  const ofThis = inspections.filter(({ day }) => made === null || !isSurelyBefore(day, made));
  return { last: ofThis.filter(({ day }) => day <= on).at(-1) ?? null, later: ofThis.filter(({ day }) => day > on) };
}

/**
 * The item's sling for the rules, with the dates that could not be used. Of two dates that contradict each other neither is
 * used: nobody knows which is wrong.
 * @param on day of asking, `2026-11-25`
 */
export function slingHistory(item: Item, on: string): { history: SlingHistory; faults: DateFault[] } {
  const { sling } = item;
  const faults: DateFault[] = [];
  const past = (field: 'made' | 'firstUse', label: string | null): string | null => {
    if (label === null || earliestDay(label) <= on) return label;
    faults.push({ field, why: 'to-come' });
    return null;
  };
  let made = past('made', labelOf(sling.made));
  let firstUse = past('firstUse', labelOf(sling.firstUse));
  if (made !== null && firstUse !== null && isSurelyBefore(firstUse, made)) {
    faults.push({ field: 'firstUse', why: 'before-made' });
    made = null;
    firstUse = null;
  }
  const { last, later } = looksAt(item, made, on);
  if (later.length > 0) faults.push({ field: 'inspected', why: 'to-come' });
  if (made !== null && item.inspections.some(({ day }) => isSurelyBefore(day, made))) faults.push({ field: 'inspected', why: 'of-earlier-sling' });
  const findings = answersOf<SlingFinding>(SLING_FINDINGS, last?.findings ?? null);
  for (const { findings: found } of later) for (const one of found) findings[one] = 'yes';
  const { retireBy, yearsFromMade, yearsFromFirstUse } = sling.maker;
  const history: SlingHistory = {
    material: sling.material, widthMm: sling.widthMm, made, firstUse, inspected: last?.day ?? null, use: sling.use,
    exposures: answersOf<Exposure>(SLING_EXPOSURES, sling.exposures),
    events: answersOf<SlingEvent>(SLING_EVENTS, sling.events?.map(({ kind }) => kind) ?? null),
    findings,
    maker: {
      ...(retireBy === null ? {} : { retireBy: writePartDay(retireBy) }),
      ...(yearsFromMade === null ? {} : { yearsFromMade }),
      ...(yearsFromFirstUse === null ? {} : { yearsFromFirstUse }),
    },
  };
  return { history, faults };
}

export type Rules = Readonly<Record<string, VerdictRule>>;

/** The whole verdict on an item. */
export const itemVerdict = (rules: Rules, item: Item, on: string): Verdict => verdictOn(rules, slingHistory(item, on).history, on);

const ALWAYS = 'always';
/** A rule that everything meets leaves no milder verdict to look for, and looking for one is nearly all of the work. */
const WITH_NOTHING_MILDER: Rules = { [ALWAYS]: { what: '', order: 0, verdict: 'retire', when: {}, due: null, says: '', figures: [] } };
const rulesOfList = new WeakMap<Rules, Rules>();

/** All reasons, strictest first, without what would make them milder: what a list of thousands needs. */
export function itemReasons(rules: Rules, item: Item, on: string): Reason[] {
  const all = rulesOfList.get(rules) ?? { ...rules, ...WITH_NOTHING_MILDER };
  rulesOfList.set(rules, all);
  return itemVerdict(all, item, on).reasons.filter(({ rule }) => rule !== ALWAYS);
}
