/**
 * The address of a told fall: what the reader wrote, word for word. Total: any string gives words, and each piece that was
 * not understood is listed as it stands. What the words mean is read elsewhere.
 *
 * `v` meaning of the keys; `kg` the climber's weight; `onto` what stops the fall, `piece` or `belay`; `up` metres above it;
 * `slack` and `out` metres of loose rope, and of all rope from belayer to climber; `rope` its kind; `kn` the impact force on
 * its sheet; `belay`, `route` and `state` how it is held, how it runs, what it went through. `rig` is the query of the
 * comparison that the reader came from, for the way back. `d` is the evidence version.
 */
import type { FallWords } from '../falls/read-fall.ts';
import { EVIDENCE_VERSION, type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readEach } from './read-each.ts';

/** The newest meaning of keys. */
export const FALL_MEANING = 1;

/** Keys that the form of falls defines, in the order of a link; for chosen ones their words, the first where nothing is said. */
export interface FallVocabulary { fields: readonly string[]; choices: Readonly<Record<string, readonly string[]>> }

export interface FallLink {
  /** Null where the link says nothing of a fall. */
  words: FallWords | null;
  /** Query of the comparison that the reader came from, without the question mark, or null. The comparator reads it, not we. */
  rig: string | null;
  /** Evidence version that it was worked out with, or null. */
  d: string | null;
  notUnderstood: NotUnderstood[];
}

/** A word in a link: longer ones are no answers. */
const LONGEST = 40;
/** The query of a comparison: as long as one can be with the reader's own tests in it. */
const RIG = /^v=\d[^#\s]{0,2000}$/;

/** Reads a query string. The same key twice with different values is not used. */
export function parseFallLink(query: string, { fields, choices }: FallVocabulary): FallLink {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  const words: Record<string, string> = Object.fromEntries(fields.map((field) => [field, '']));
  let d: string | null = null;
  let rig: string | null = null;
  let isSaid = false;

  const read = (key: string, value: string): string | null => {
    if (value === UNDECODED) return UNDECODED_WHY;
    if (key === 'v') return value === String(FALL_MEANING) ? null : `not a meaning of links that we know; read with meaning ${FALL_MEANING}`;
    if (key === 'd') {
      if (!EVIDENCE_VERSION.test(value)) return 'not an evidence version';
      d = value;
      return null;
    }
    if (key === 'rig') {
      if (!RIG.test(value)) return 'not a link of the comparator; there is no way back to it';
      rig = value;
      return null;
    }
    const field = oneOf(fields, key);
    if (!field) return `no question is called ${JSON.stringify(key)}`;
    if (value.length > LONGEST) return 'longer than any answer; not used';
    const list = Object.hasOwn(choices, field) ? choices[field] : undefined;
    if (list && value !== '' && oneOf(list, value) === undefined) return `none of ${list.join(', ')}; not used`;
    isSaid = true;
    words[field] = value;
    return null;
  };
  notUnderstood.push(...readEach(pieces, read));
  return { words: isSaid ? (words as FallWords) : null, rig, d, notUnderstood };
}

/**
 * The query of a told fall, without the question mark: every number that was written, and every choice, also where it is
 * the first.
 * @param stamp evidence version, and query of the comparison that the reader came from, where the link is to say them
 */
export function serialiseFall(words: FallWords, { fields, choices }: FallVocabulary, { d, rig }: { d?: string; rig?: string | null } = {}): string {
  const said = words as Readonly<Record<string, string>>;
  const pieces: [string, string][] = [
    ['v', String(FALL_MEANING)],
    ...fields.map((field): [string, string] => [field, (said[field] as string).trim() || (choices[field]?.[0] ?? '')]),
  ];
  if (d !== undefined) pieces.push(['d', d]);
  if (rig) pieces.push(['rig', rig]);
  return pieces.filter(([, value]) => value !== '').map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}

/** Pieces of a rig's query that stay, without those of some keys; what it was worked out with, and an earlier fall, no longer count. */
const keptOf = (rig: string | null, also?: string): string[] =>
  (rig ?? 'v=1').split('&').filter((piece) => !['d', 'm', 'f', also].includes(piece.split('=')[0]));

/**
 * Query of the comparison with this load as what the rig must survive.
 * @param rig query of the comparison that the reader came from, or null
 * @param loadKn kN
 */
export const rigWithLoad = (rig: string | null, loadKn: number): string => [...keptOf(rig, 'demand'), `demand=${Number(loadKn.toFixed(1))}`].join('&');

/** Query of the comparison with a fall beside it. @param beside value of `f` */
export const rigWithFall = (rig: string | null, beside: string): string => [...keptOf(rig), `f=${encodeURIComponent(beside)}`].join('&');

/** What an address of the comparator asks, as a query and without a fall beside it; null where it asks nothing, or is another page. */
export function rigOfAddress(pathname: string, search: string): string | null {
  const path = /\/compare\/(?:([\w-]+)\/([\w-]+)\/([\w-]+)\/)?$/.exec(pathname);
  if (!path) return null;
  const pieces = search.slice(1).split('&').filter((piece) => piece !== '' && !piece.startsWith('f='));
  // A page that is built says three inputs in its path; what its query says of them wins.
  if (path[1]) {
    const isSaid = (key: string): boolean => pieces.some((piece) => piece.startsWith(`${key}=`));
    const built = ['rating', 'eye', 'sling'].flatMap((key, at) => (isSaid(key) ? [] : [`${key}=${path[at + 1]}`]));
    return [pieces.find((piece) => piece.startsWith('v=')) ?? 'v=1', ...built, ...pieces.filter((piece) => !piece.startsWith('v='))].join('&');
  }
  const query = pieces.join('&');
  return RIG.test(query) ? query : null;
}
