/**
 * The address of a verdict: the answers, and the day on which they were judged. Total: any string gives answers, and each
 * piece that was not understood is listed word for word. What the words of an answer mean is read elsewhere.
 */
import type { HistoryWords } from '../retirement/read-history.ts';
import { EVIDENCE_VERSION, type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readEach } from './read-each.ts';

/** The newest meaning of keys of a verdict's link. */
export const VERDICT_MEANING = 1;

/** Words that the rules of retirement define. */
export interface VerdictVocabulary {
  /** Keys of questions that are answered in words. */
  keys: readonly string[];
  /** Ids of questions that are answered by yes or no. */
  questions: readonly string[];
}

export interface VerdictLink {
  /** Null where the link holds no answer. */
  asked: HistoryWords | null;
  /** Day on which the answers were judged, or null. */
  on: string | null;
  /** Evidence version that they were judged with, or null. */
  d: string | null;
  notUnderstood: NotUnderstood[];
}

/** Stands for "not known" and for an empty list. */
const UNKNOWN = 'unknown';
const NONE = 'none';
const DAY = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
/** A word in a link: longer ones are no answers. */
const LONGEST = 200;

/** Ids of a list, `light.edge-nick`; `none` for an empty one. */
const idsOf = (value: string): string[] => (value === NONE || value === '' ? [] : value.split('.'));

/**
 * Reads a query string. An absent question is not known. The same key twice with different values is not used, and a
 * question that is answered both yes and no is not known.
 */
export function parseVerdictLink(query: string, { keys, questions }: VerdictVocabulary): VerdictLink {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  const words = Object.fromEntries(keys.map((key) => [key, '']));
  const answers = Object.fromEntries(questions.map((key) => [key, UNKNOWN]));
  let on: string | null = null;
  let d: string | null = null;
  let isAsked = false;

  /** Sets one answer to each id of a list; gives the reason where an id is none. */
  const setAll = (value: string, answer: 'yes' | 'no'): string | null => {
    const ids = idsOf(value);
    const strange = ids.filter((id) => !questions.includes(id));
    for (const id of ids) if (!strange.includes(id)) answers[id] = answers[id] === UNKNOWN || answers[id] === answer ? answer : 'both';
    return strange.length === 0 ? null : `no question is called ${strange.join(', ')}; it counts as not known`;
  };
  const read = (key: string, value: string): string | null => {
    if (value === UNDECODED) return UNDECODED_WHY;
    if (key === 'v') return value === String(VERDICT_MEANING) ? null : `not a meaning of links that we know; read with meaning ${VERDICT_MEANING}`;
    if (key === 'on') {
      if (!DAY.test(value)) return 'not a day like 2026-11-24';
      on = value;
      return null;
    }
    if (key === 'd') {
      if (!EVIDENCE_VERSION.test(value)) return 'not an evidence version';
      d = value;
      return null;
    }
    if (key === 'yes' || key === 'no') {
      isAsked = true;
      return setAll(value, key);
    }
    const word = oneOf(keys, key);
    if (!word) return `no question is called ${JSON.stringify(key)}`;
    isAsked = true;
    if (value.length > LONGEST) return 'longer than any answer; it counts as not known';
    words[word] = value === UNKNOWN ? '' : value;
    return null;
  };
  notUnderstood.push(...readEach(pieces, read));
  const both = questions.filter((id) => answers[id] === 'both');
  for (const id of both) answers[id] = UNKNOWN;
  if (both.length > 0) {
    const said = pieces.filter(({ key }) => key === 'yes' || key === 'no');
    notUnderstood.push(...said.map(({ piece }) => ({ piece, why: `both yes and no for ${both.join(', ')}; it counts as not known` })));
  }
  return { asked: isAsked ? ({ words, answers } as unknown as HistoryWords) : null, on, d, notUnderstood };
}

/**
 * The query of a verdict, without the question mark: every question, also where nothing is known.
 * @param on day on which the answers are judged
 * @param d evidence version, where the link is to say it
 */
export function serialiseVerdict({ words, answers }: HistoryWords, on: string, d?: string): string {
  const listed = (answer: string): string => Object.entries(answers).filter(([, one]) => one === answer).map(([id]) => id).join('.') || NONE;
  const pieces: [string, string][] = [
    ['v', String(VERDICT_MEANING)],
    ...Object.entries(words).map(([key, text]): [string, string] => [key, text.trim() || UNKNOWN]),
    ['yes', listed('yes')], ['no', listed('no')], ['on', on],
  ];
  if (d !== undefined) pieces.push(['d', d]);
  return pieces.map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}
