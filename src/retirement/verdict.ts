/**
 * The verdict on one sling: retire now, retire by a day, or inspect again by a day; with every reason, what answer would
 * make it milder, and what no answer can tell. Pure: the day on which it is asked is an input.
 *
 * Not knowing counts against the sling. An open condition is met and an open date has reached every limit. Only what an
 * inspection would find is kept apart: where nobody has looked, the sling is inspected before its next use.
 */
import type { Exposure, Material, OldUse, SlingEvent, SlingFinding, VerdictRule } from '../records/schema.ts';
import { CANNOT_SEE, type Unseen } from './cannot-see.ts';
import { addMonths, earliestDay, isSurelyBefore } from './days.ts';

export type Answer = 'yes' | 'no' | 'unknown';

/** What the maker of the sling or of its device prints. Years may be halves; months are counted in whole, rounded down. */
export interface MakerLimits {
  /** A year, month or day. */
  retireBy?: string;
  yearsFromMade?: number;
  yearsFromFirstUse?: number;
}

/**
 * A sling as far as its owner knows it. Dates are labels: a year, a month or a day, each counted from its earliest day.
 * Null: not known. A first use that is not known, or still to come, counts from manufacture.
 */
export interface SlingHistory {
  material: Material | null;
  /** Width of tape or diameter of cord, in millimetres. */
  widthMm: number | null;
  made: string | null;
  firstUse: string | null;
  /** Day of the last thorough inspection. */
  inspected: string | null;
  use: OldUse | null;
  exposures: Readonly<Record<Exposure, Answer>>;
  events: Readonly<Record<SlingEvent, Answer>>;
  findings: Readonly<Record<SlingFinding, Answer>>;
  maker: MakerLimits;
}

/** One question, as a path in the history. */
export type Field =
  | 'material' | 'widthMm' | 'made' | 'firstUse' | 'inspected' | 'use'
  | `exposures.${Exposure}` | `events.${SlingEvent}` | `findings.${SlingFinding}`;

/** What has to be done. Days are never before the day of asking: what is overdue is due on it. */
export type Headline = { kind: 'retire-now' } | { kind: 'retire-by'; day: string } | { kind: 'inspect-by'; day: string };

export const MAKER_RULES = ['maker#retire-by', 'maker#years-from-made', 'maker#years-from-first-use'] as const;

/** One rule that speaks of the sling. */
export interface Reason {
  /** Id of the rule, or one of `MAKER_RULES`. */
  rule: string;
  asks: Headline;
  /** Day on which its limit falls or fell; null where it holds at once, or where the day to count from is not known. */
  day: string | null;
  why: 'met' | 'counted-unknown';
  /** Questions that are open and were counted against the sling under this rule. */
  unknown: Field[];
}

export interface Verdict {
  strictest: Headline;
  /** All that fire, strictest first; of equals those that are met before those counted as unknown. */
  reasons: Reason[];
  /** The mildest verdict that answers to open questions can bring, and a set of questions that is enough for it; null where none makes it milder. */
  milder: { verdict: Headline; fields: Field[] } | null;
  cannotSee: readonly Unseen[];
}

interface Asked extends Omit<VerdictRule, 'what' | 'due' | 'says' | 'figures'> { due: VerdictRule['due'] | { day: string } }

const EXACT_DAY = /^\d{4}-\d{2}-\d{2}$/;
const dayOf = (one: Headline): string => (one.kind === 'retire-now' ? '' : one.day);

/** Below 0 where the first is stricter: to retire now, then the earlier day, then to retire before to inspect. */
export function compareHeadlines(a: Headline, b: Headline): number {
  if (dayOf(a) !== dayOf(b)) return dayOf(a) < dayOf(b) ? -1 : 1;
  return Number(a.kind === 'inspect-by') - Number(b.kind === 'inspect-by');
}

/**
 * The verdict of all rules on one sling.
 * @param on day of asking, `2026-11-24`
 * @throws RangeError when a date is none, lies after `on` or against another; when a width or a maker's limit is no
 *   number above 0; or when no rule speaks of the sling
 */
export function verdictOn(rules: Readonly<Record<string, VerdictRule>>, history: SlingHistory, on: string): Verdict {
  assertHistory(history, on);
  const asked = [...Object.entries<Asked>(rules), ...makerRules(history.maker)];
  const reasons = reasonsFor(asked, history, on);
  const [first] = reasons;
  if (!first) throw new RangeError('rules must speak of every sling (none speaks of this one)');
  return { strictest: first.asks, reasons, milder: milderThan(first.asks, asked, history, on), cannotSee: CANNOT_SEE };
}

function assertHistory({ made, firstUse, inspected, widthMm, maker }: SlingHistory, on: string): void {
  if (!EXACT_DAY.test(on)) throw new RangeError(`on must be a day like 2019-05-31 (got ${on})`);
  earliestDay(on);
  for (const [name, label] of Object.entries({ made, firstUse, inspected })) {
    if (label !== null && earliestDay(label) > on) throw new RangeError(`${name} must not be after ${on} (got ${label})`);
  }
  if (made !== null && firstUse !== null && isSurelyBefore(firstUse, made)) throw new RangeError(`firstUse must not be before made (got ${firstUse} and ${made})`);
  const numbers = { widthMm, yearsFromMade: maker.yearsFromMade ?? null, yearsFromFirstUse: maker.yearsFromFirstUse ?? null };
  for (const [name, n] of Object.entries(numbers)) if (n !== null && !(n > 0 && n < Infinity)) throw new RangeError(`${name} must be above 0 (got ${n})`);
}

/** The maker's limits as rules. They take no rule's place: the stricter stands first. */
function makerRules({ retireBy, yearsFromMade, yearsFromFirstUse }: MakerLimits): [string, Asked][] {
  const [BY, MADE, USED] = MAKER_RULES;
  const retire = (due: Asked['due']): Asked => ({ order: 0, verdict: 'retire', when: {}, due });
  const after = (years: number, from: 'made' | 'first-use'): Asked => retire({ months: Math.floor(years * 12), from });
  return [
    ...(retireBy === undefined ? [] : [[BY, retire({ day: earliestDay(retireBy) })] satisfies [string, Asked]]),
    ...(yearsFromMade === undefined ? [] : [[MADE, after(yearsFromMade, 'made')] satisfies [string, Asked]]),
    ...(yearsFromFirstUse === undefined ? [] : [[USED, after(yearsFromFirstUse, 'first-use')] satisfies [string, Asked]]),
  ];
}

function reasonsFor(asked: readonly [string, Asked][], history: SlingHistory, on: string): Reason[] {
  const fired = asked.flatMap(([id, rule]) => {
    const reason = reasonOf(id, rule, history, on);
    return reason ? [{ reason, order: rule.order }] : [];
  });
  fired.sort((a, b) => compareHeadlines(a.reason.asks, b.reason.asks)
    || Number(a.reason.why !== 'met') - Number(b.reason.why !== 'met')
    || a.order - b.order || (a.reason.rule < b.reason.rule ? -1 : 1));
  return fired.map(({ reason }) => reason);
}

/** What one rule says of the sling, or null where one of its conditions is known not to be met. */
function reasonOf(id: string, { verdict, when, due }: Asked, history: SlingHistory, on: string): Reason | null {
  const unknown: Field[] = [];
  /** True where the answer is what the rule asks for, or is not known. */
  const isMet = (field: Field, value: unknown, fits: () => boolean): boolean => {
    if (value === null) unknown.push(field);
    return value === null || fits();
  };
  /** True where one of the questions has a yes; else the open ones count, where there are any. */
  const isAnswered = <K extends string>(wanted: readonly K[] | undefined, answers: Readonly<Record<K, Answer>>, field: (key: K) => Field): boolean => {
    if (!wanted || wanted.some((key) => answers[key] === 'yes')) return true;
    const open = wanted.filter((key) => answers[key] === 'unknown');
    unknown.push(...open.map(field));
    return open.length > 0;
  };
  const { material, widthMm, use } = history;
  if (when.materials && !isMet('material', material, () => when.materials?.includes(material as Material) ?? false)) return null;
  if (when.uses && !isMet('use', use, () => when.uses?.includes(use as OldUse) ?? false)) return null;
  if (when.widthMm) {
    const [from, to] = when.widthMm;
    if (!isMet('widthMm', widthMm, () => (widthMm as number) >= from && (widthMm as number) <= to)) return null;
  }
  if (!isAnswered(when.exposures, history.exposures, (key): Field => `exposures.${key}`)) return null;
  if (!isAnswered(when.events, history.events, (key): Field => `events.${key}`)) return null;
  const before = unknown.length;
  if (!isAnswered(when.findings, history.findings, (key): Field => `findings.${key}`)) return null;
  const isUnseen = unknown.length > before;
  const day = due ? dueDay(due, history, unknown) : null;
  const isReached = day === null || day <= on;
  const asks: Headline = verdict === 'inspect' || isUnseen ? { kind: 'inspect-by', day: isReached ? on : day }
    : isReached ? { kind: 'retire-now' } : { kind: 'retire-by', day };
  return { rule: id, asks, day, why: unknown.length > 0 ? 'counted-unknown' : 'met', unknown };
}

/** Day on which a limit falls; null where the day to count from is not known. Adds the open question to `unknown`. */
function dueDay(due: NonNullable<Asked['due']>, { made, firstUse, inspected }: SlingHistory, unknown: Field[]): string | null {
  if ('day' in due) return due.day;
  const after = (label: string | null): string | null => (label === null ? null : addMonths(earliestDay(label), due.months));
  if (due.from === 'inspection') {
    if (inspected === null) unknown.push('inspected');
    return after(inspected);
  }
  if (due.from === 'first-use' && firstUse !== null) {
    // A year of first use may begin before the month of manufacture; nothing is used before it is made.
    const counted = made !== null && earliestDay(made) > earliestDay(firstUse) ? made : firstUse;
    return after(counted);
  }
  if (due.from === 'first-use') unknown.push('firstUse');
  if (made === null) unknown.push('made');
  return after(made);
}

/** Open questions of a history. */
function openFields({ exposures, events, findings, ...rest }: SlingHistory): Field[] {
  const open = (name: string, answers: Readonly<Record<string, Answer>>): Field[] =>
    Object.entries(answers).filter(([, answer]) => answer === 'unknown').map(([key]) => `${name}.${key}` as Field);
  const plain = (['material', 'widthMm', 'made', 'firstUse', 'inspected', 'use'] as const).filter((field) => rest[field] === null);
  return [...plain, ...open('exposures', exposures), ...open('events', events), ...open('findings', findings)];
}

/** The mildest verdict that answers can bring, with as few questions as bring it: those that need not be answered are left open, the last ones first. */
function milderThan(strictest: Headline, asked: readonly [string, Asked][], history: SlingHistory, on: string): Verdict['milder'] {
  const open = openFields(history);
  const best = mildest(asked, history, on, new Set());
  if (compareHeadlines(strictest, best) >= 0) return null;
  const leftOpen = new Set<Field>();
  for (const field of open.toReversed()) {
    leftOpen.add(field);
    if (compareHeadlines(mildest(asked, history, on, leftOpen), best) < 0) leftOpen.delete(field);
  }
  return { verdict: best, fields: open.filter((field) => !leftOpen.has(field)) };
}

/** The mildest verdict where every open question but some has its best answer. */
function mildest(asked: readonly [string, Asked][], history: SlingHistory, on: string, but: ReadonlySet<Field>): Headline {
  const best = <K extends string>(name: string, answers: Readonly<Record<K, Answer>>): Record<K, Answer> =>
    Object.fromEntries(Object.entries<Answer>(answers).map(([key, answer]) => [key, answer === 'unknown' && !but.has(`${name}.${key}` as Field) ? 'no' : answer])) as Record<K, Answer>;
  const or = <T>(field: Field, value: T | null, answer: T): T | null => (value === null && !but.has(field) ? answer : value);
  const answered: SlingHistory = {
    ...history,
    made: or('made', history.made, history.firstUse ?? on),
    firstUse: or('firstUse', history.firstUse, on),
    inspected: or('inspected', history.inspected, on),
    use: or('use', history.use, 'stored'),
    exposures: best('exposures', history.exposures), events: best('events', history.events), findings: best('findings', history.findings),
  };
  // Which material or width is best depends on the rules: each that they tell apart is tried.
  const materials = history.material === null && !but.has('material') ? materialsToldApart(asked) : [history.material];
  const widths = history.widthMm === null && !but.has('widthMm') ? widthsToldApart(asked) : [history.widthMm];
  const headlines = materials.flatMap((material) => widths.flatMap((widthMm) => {
    const [first] = reasonsFor(asked, { ...answered, material, widthMm }, on);
    return first ? [first.asks] : [];
  }));
  return headlines.reduce((a, b) => (compareHeadlines(a, b) >= 0 ? a : b));
}

const TEXTILES = ['hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon', 'hmpe-aramid', 'lcp', 'polypropylene'] as const satisfies readonly Material[];

/** One textile for each set of rules that name it. */
function materialsToldApart(asked: readonly [string, Asked][]): Material[] {
  const byRules = new Map(TEXTILES.map((one) => [asked.map(([, { when }]) => Number(when.materials?.includes(one) ?? false)).join(''), one]));
  return [...byRules.values()];
}

/** How far beside a limit of a rule a width is tried, mm. */
const BESIDE_MM = 0.01;

/** Widths on either side of each limit that a rule names. */
function widthsToldApart(asked: readonly [string, Asked][]): number[] {
  const ends = asked.flatMap(([, { when }]) => when.widthMm ?? []);
  return [...new Set([1, ...ends.flatMap((end) => [end - BESIDE_MM, end, end + BESIDE_MM])])].filter((width) => width > 0);
}
