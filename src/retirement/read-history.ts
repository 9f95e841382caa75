/** Between the words of a form or a link and the history of a sling. What cannot be used counts as not known, and says why. */
import type { Exposure, Material, OldUse, SlingEvent, SlingFinding } from '../records/schema.ts';
import { MAKER_YEARS, SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS, SLING_MATERIALS, SLING_USES, WIDTH_RANGE_MM } from './answers.ts';
import { earliestDay, isSurelyBefore } from './days.ts';
import { readLabel } from './read-label.ts';
import type { Answer, SlingHistory } from './verdict.ts';

/** Questions that are answered in words, in the order in which a link writes them. An empty text: not known. */
export const WORD_KEYS = ['material', 'width', 'made', 'first', 'inspected', 'use', 'makerdate', 'makermade', 'makerused'] as const;
export type WordKey = (typeof WORD_KEYS)[number];
/** Questions that are answered by yes or no. No two groups share an id. */
export const QUESTIONS = [...SLING_EXPOSURES, ...SLING_EVENTS, ...SLING_FINDINGS] as const;
export type Question = Exposure | SlingEvent | SlingFinding;

export interface HistoryWords { words: Readonly<Record<WordKey, string>>; answers: Readonly<Record<Question, Answer>> }
export type HistoryFaults = Partial<Record<WordKey, string>>;

const PLAIN = /^\d{1,6}(?:[.,]\d{1,6})?$/;

/** Nothing is known. */
export const nothingKnown = (): HistoryWords => ({
  words: Object.fromEntries(WORD_KEYS.map((key) => [key, ''])) as Record<WordKey, string>,
  answers: Object.fromEntries(QUESTIONS.map((key) => [key, 'unknown'])) as Record<Question, Answer>,
});

/**
 * Reads the answers. Decimal commas are read; nothing is clamped; a date that another one or the day of asking contradicts
 * is refused.
 * @param on day of asking, `2026-11-24`
 */
export function readHistory({ words, answers }: HistoryWords, on: string): { history: SlingHistory; faults: HistoryFaults } {
  const faults: HistoryFaults = {};
  /** Null with its fault, where a text is there and cannot be used. */
  function read<T extends string | number>(key: WordKey, reader: (text: string) => T | { why: string }): T | null {
    const text = words[key].trim();
    if (text === '') return null;
    const value = reader(text);
    if (typeof value !== 'object') return value;
    faults[key] = value.why;
    return null;
  }
  const oneOf = <T extends string>(known: readonly T[]) => (text: string): T | { why: string } =>
    known.find((one) => one === text) ?? { why: `not one of ${known.join(', ')}` };
  const number = ({ low, high }: { low: number; high: number }, unit: string) => (text: string): number | { why: string } => {
    const value = Number(text.replace(',', '.'));
    if (!PLAIN.test(text)) return { why: `no plain number; write one from ${low} to ${high} ${unit}` };
    return value < low || value > high ? { why: `outside ${low} to ${high} ${unit}` } : value;
  };
  const label = (text: string): string | { why: string } => {
    const got = readLabel(text);
    return got.ok ? got.label : got;
  };
  const past = (text: string): string | { why: string } => {
    const got = label(text);
    return typeof got === 'string' && earliestDay(got) > on ? { why: `still to come on ${on}` } : got;
  };
  const written = read('made', past);
  const used = read('first', past);
  // Two dates that contradict each other: neither is believed.
  const isContradicted = written !== null && used !== null && isSurelyBefore(used, written);
  if (isContradicted) {
    faults.first = `before the sling was made (${written}); look at both`;
    faults.made = `after its first use (${used}); look at both`;
  }
  const made = isContradicted ? null : written;
  const afterMade = (text: string): string | { why: string } => {
    const got = past(text);
    return typeof got === 'string' && made !== null && isSurelyBefore(got, made) ? { why: `before the sling was made (${made}); look at both` } : got;
  };
  const years = number(MAKER_YEARS, 'years');
  const retireBy = read('makerdate', label);
  const yearsFromMade = read('makermade', years);
  const yearsFromFirstUse = read('makerused', years);
  const pick = <K extends Question>(keys: readonly K[]): Record<K, Answer> => Object.fromEntries(keys.map((key) => [key, answers[key]])) as Record<K, Answer>;
  const history: SlingHistory = {
    material: read<Material>('material', oneOf(SLING_MATERIALS)),
    widthMm: read('width', number(WIDTH_RANGE_MM, 'mm')),
    made,
    firstUse: isContradicted ? null : used,
    inspected: read('inspected', afterMade),
    use: read<OldUse>('use', oneOf(SLING_USES)),
    exposures: pick(SLING_EXPOSURES), events: pick(SLING_EVENTS), findings: pick(SLING_FINDINGS),
    maker: {
      ...(retireBy === null ? {} : { retireBy }), ...(yearsFromMade === null ? {} : { yearsFromMade }), ...(yearsFromFirstUse === null ? {} : { yearsFromFirstUse }),
    },
  };
  return { history, faults };
}
