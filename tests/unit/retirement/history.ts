/** A sling of which everything is known and nothing speaks but the limits of age and the next inspection; invented. */
import { join } from 'node:path';
import { verdictRules } from '../../../src/build/retirement-rules.ts';
import { readAll } from '../../../src/records/read.ts';
import { EVENTS, EXPOSURES, FINDINGS } from '../../../src/records/schema.ts';
import type { Answer, Field, SlingHistory } from '../../../src/retirement/verdict.ts';

export const RECORDS = readAll(join(import.meta.dirname, '../../..'));
/** The real rules, as the engine reads them. */
export const RULES = verdictRules(RECORDS);
/** Day of asking in all tests. */
export const ON = '2026-11-24';

/** The same answer to each question of a list. */
export const all = <K extends string>(keys: readonly K[], answer: Answer): Record<K, Answer> => Object.fromEntries(keys.map((key) => [key, answer])) as Record<K, Answer>;

export const KNOWN: SlingHistory = Object.freeze({
  material: 'polyester', widthMm: 16, made: '2024-03-10', firstUse: '2024-06-01', inspected: ON, use: 'seldom',
  exposures: all(EXPOSURES, 'no'), events: all(EVENTS, 'no'), findings: all(FINDINGS, 'no'), maker: {},
});

/** Nothing is known of it. */
export const UNKNOWN: SlingHistory = Object.freeze({
  material: null, widthMm: null, made: null, firstUse: null, inspected: null, use: null,
  exposures: all(EXPOSURES, 'unknown'), events: all(EVENTS, 'unknown'), findings: all(FINDINGS, 'unknown'), maker: {},
});

/** The history with some answers changed, each by its path. */
export function withAnswers(history: SlingHistory, answers: Partial<Record<Field, unknown>>): SlingHistory {
  const changed = structuredClone(history) as unknown as Record<string, unknown>;
  for (const [field, answer] of Object.entries(answers)) {
    const [group, key] = field.split('.') as [string, string?];
    if (key === undefined) changed[group] = answer;
    else (changed[group] as Record<string, unknown>)[key] = answer;
  }
  return changed as unknown as SlingHistory;
}
