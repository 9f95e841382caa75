/**
 * The address of a plan of breaks: what the reader wrote, word for word. Total: any string gives words, and each piece that
 * was not understood is listed as it stands. What the words mean is read elsewhere.
 *
 * `v` meaning of the keys; `want` what is to be learnt: `bound`, `difference` or `share`; `pair` which share of pieces lies
 * above the bound, and how sure, as `90~95`, `95~95`, `99~95` or `own`; `own` such a pair as written, share ~ sureness;
 * `cv` guessed scatter in per cent of the mean; `short` how far the bound may fall short, in per cent of the mean; `diff`
 * the difference that is not to be missed, likewise; `power` in how many of a hundred such trials it is found; `share` in
 * how many of a hundred rigs the part breaks first, by guess; `width` of its interval, in points of a hundred.
 */
import { type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readEach } from './read-each.ts';

/** The newest meaning of keys. */
export const PLAN_MEANING = 1;
export const WANTS = ['bound', 'difference', 'share'] as const;
export type Want = (typeof WANTS)[number];
/** The pairs that are asked for most, and the reader's own. */
export const PAIRS = ['90~95', '95~95', '99~95', 'own'] as const;
export type PairWord = (typeof PAIRS)[number];
/** What is written as a number, in the order of a link. */
export const PLAN_NUMBERS = ['cv', 'short', 'diff', 'power', 'share', 'width'] as const;
export type PlanNumber = (typeof PLAN_NUMBERS)[number];

/** Everything as it was written; empty: not said. `own` is a share and a sureness. */
export interface PlanWords { want: Want; pair: PairWord; own: readonly [string, string]; numbers: Readonly<Record<PlanNumber, string>> }

export interface PlanLink { words: PlanWords; notUnderstood: NotUnderstood[] }

const BETWEEN = '~';
/** A word in a link: longer ones are no answers. */
const LONGEST = 60;

/** Nothing written: the first question, and the pair in the middle. */
export const nothingPlanned = (): PlanWords => ({ want: 'bound', pair: '95~95', own: ['', ''], numbers: { cv: '', short: '', diff: '', power: '', share: '', width: '' } });

/** Reads a query string. The same key twice with different values is not used. */
export function parsePlanLink(query: string): PlanLink {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  let words = nothingPlanned();

  const read = (key: string, value: string): string | null => {
    if (value === UNDECODED) return UNDECODED_WHY;
    if (key === 'v') return value === String(PLAN_MEANING) ? null : `not a meaning of links that we know; read with meaning ${PLAN_MEANING}`;
    if (key === 'want') {
      const want = oneOf(WANTS, value);
      if (want) words = { ...words, want };
      return want ? null : `what to learn is ${WANTS.join(', ')}; not used`;
    }
    if (key === 'pair') {
      const pair = oneOf(PAIRS, value);
      if (pair) words = { ...words, pair };
      return pair ? null : `a pair is ${PAIRS.join(', ')}; not used`;
    }
    const parts = value.split(BETWEEN).map((part) => part.trim());
    if (parts.some((part) => part.length > LONGEST)) return 'longer than anything that is asked; not used';
    if (key === 'own') {
      const [share, sure = ''] = parts as [string, string?];
      if (parts.length > 2) return 'more than a share and how sure; not used';
      words = { ...words, own: [share, sure] };
      return null;
    }
    const number = oneOf(PLAN_NUMBERS, key);
    if (!number) return `no question is called ${JSON.stringify(key)}`;
    words = { ...words, numbers: { ...words.numbers, [number]: value } };
    return null;
  };
  notUnderstood.push(...readEach(pieces, read));
  return { words, notUnderstood };
}

/** The query of a plan, without the question mark: everything that was written, also for the other questions. */
export function serialisePlan({ want, pair, own, numbers }: PlanWords): string {
  const pieces: [string, string][] = [
    ['v', String(PLAN_MEANING)], ['want', want], ['pair', pair],
    ['own', own.map((word) => word.trim().replaceAll(BETWEEN, '-')).join(BETWEEN).replace(/~$/, '')],
    ...PLAN_NUMBERS.map((key): [string, string] => [key, numbers[key].trim()]),
  ];
  return pieces.filter(([, value]) => value !== '').map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}
