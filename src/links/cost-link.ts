/**
 * The address of a calculation of costs: what the reader wrote, word for word. Total: any string gives words, and each
 * piece that was not understood is listed as it stands. What the words mean is read elsewhere.
 *
 * `v` meaning of the keys; `cur` currency; `week` what a week without a device costs; `metal` years that the metal has
 * left; `rate` yearly interest in per cent; `retire` when the sling has to go, `now` or a day. Lists with one entry for each
 * kind of device, parted by `~`: `kinds` counts, `names`, `fresh` price of a new one, `refused` by whom (`m`, `w`, `mw`).
 * `m` `w` `n` `h`: the offers of maker, workshop, a new one and home, as price ~ there ~ back ~ weeks ~ life ~ least ~
 * from ~ lower ~ from2 ~ lower2; what is empty at the end is left out.
 */
import type { CostWords, KindWords } from '../replacement/read-words.ts';
import { type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readEach } from './read-each.ts';

/** The newest meaning of keys. */
export const COST_MEANING = 1;

/** Keys that the calculator defines, in the order of a link. */
export interface CostVocabulary { general: readonly string[]; offers: readonly string[]; ways: readonly string[]; mostKinds: number }

export interface CostLink { /** Null where the link says nothing. */ words: CostWords | null; notUnderstood: NotUnderstood[] }

const BETWEEN = '~';
/** A word in a link: longer ones are no answers. */
const LONGEST = 60;
const LISTS = { kinds: 'count', names: 'name', fresh: 'fresh', refused: 'refused' } as const satisfies Record<string, keyof KindWords>;
const REFUSED = ['', 'm', 'w', 'mw'] as const;

const blankKind = (): KindWords => ({ count: '', name: '', fresh: '', refused: '' });

/** First letter of a way, its key in a link. */
const keyOf = (way: string): string => way.slice(0, 1);

/** Reads a query string. The same key twice with different values is not used. */
export function parseCostLink(query: string, { general, offers, ways, mostKinds }: CostVocabulary): CostLink {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  const blank = (keys: readonly string[]): Record<string, string> => Object.fromEntries(keys.map((key) => [key, '']));
  const said = { general: blank(general), kinds: [] as KindWords[], offers: Object.fromEntries(ways.map((way) => [way, blank(offers)])) };
  let isSaid = false;

  const read = (key: string, value: string): string | null => {
    if (value === UNDECODED) return UNDECODED_WHY;
    if (key === 'v') return value === String(COST_MEANING) ? null : `not a meaning of links that we know; read with meaning ${COST_MEANING}`;
    const parts = value.split(BETWEEN).map((part) => part.trim());
    if (parts.some((part) => part.length > LONGEST)) return 'longer than anything that is asked; not used';
    const word = oneOf(general, key);
    if (word) {
      isSaid = true;
      said.general[word] = value;
      return null;
    }
    const list = oneOf(Object.keys(LISTS) as (keyof typeof LISTS)[], key);
    if (list) {
      isSaid = true;
      if (list === 'refused' && parts.some((part) => oneOf(REFUSED, part) === undefined)) return 'who refused is m, w or mw; not used';
      for (const [at, part] of parts.slice(0, mostKinds).entries()) {
        while (said.kinds.length <= at) said.kinds.push(blankKind());
        Object.assign(said.kinds[at] as KindWords, { [LISTS[list]]: part });
      }
      return parts.length > mostKinds ? `more than ${mostKinds} kinds of device; the rest is not used` : null;
    }
    const way = ways.find((one) => keyOf(one) === key);
    if (!way) return `no question is called ${JSON.stringify(key)}`;
    isSaid = true;
    if (parts.length > offers.length) return `more than the ${offers.length} entries of an offer; not used`;
    for (const [at, part] of parts.entries()) (said.offers[way] as Record<string, string>)[offers[at] as string] = part;
    return null;
  };
  notUnderstood.push(...readEach(pieces, read));
  if (said.kinds.length === 0) said.kinds.push(blankKind());
  return { words: isSaid ? (said as unknown as CostWords) : null, notUnderstood };
}

/** The list of a link; what is empty at its end is left out. A word cannot hold the sign between two. */
function listed(words: readonly string[]): string {
  return words.map((word) => word.trim().replaceAll(BETWEEN, '-')).join(BETWEEN).replace(/~+$/, '');
}

/** The query of a calculation, without the question mark: everything that was written. */
export function serialiseCost({ general, kinds, offers }: CostWords): string {
  const pieces: [string, string][] = [
    ['v', String(COST_MEANING)],
    ...Object.entries(general).map(([key, word]): [string, string] => [key, word.trim()]),
    ...Object.entries(LISTS).map(([key, field]): [string, string] => [key, listed(kinds.map((kind) => kind[field]))]),
    ...Object.entries(offers).map(([way, of]): [string, string] => [keyOf(way), listed(Object.values(of))]),
  ];
  return pieces.filter(([, value]) => value !== '').map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}
