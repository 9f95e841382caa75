/**
 * The address of an analysis of breaks: the pulls themselves, so that a link gives the same page again. Total: any string
 * gives words, and each piece that was not understood is listed as it stands.
 *
 * `v` meaning of the keys; `unit` of all forces; `p` forces of the pulls, parted by `~`, with `>` before one that did not
 * break the part; `m` how each broke and `l` which part, in the same order; `q` forces of a second series to compare with;
 * `name` and `other` what the two are called; `own` a share and how sure, as `99~90`.
 */
import { type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readEach } from './read-each.ts';

/** The newest meaning of keys. */
export const ANALYSIS_MEANING = 1;
/** More pulls than that make no link that travels; the page says so. */
export const MOST_PULLS_IN_LINK = 120;

/** One pull in a link. */
export interface LinkedPull { readonly force: number; readonly atLeast: boolean; readonly mode: string; readonly link: string }

/** What an analysis is asked; a series is empty where nothing was said of it. */
export interface AnalysisWords {
  unit: string;
  pulls: readonly LinkedPull[];
  others: readonly LinkedPull[];
  name: string;
  other: string;
  /** Share of pieces above the bound and how sure, in per cent, as written; empty: not asked. */
  own: readonly [string, string];
}
export interface AnalysisLink { /** Null where the link says nothing. */ words: AnalysisWords | null; notUnderstood: NotUnderstood[] }

const BETWEEN = '~';
const LONGEST = 80;
const FORCE = /^\d{1,7}(?:\.\d{1,9})?$/;
/** Words for each pull, in the order of the pulls. */
const LISTS = { m: 'mode', l: 'link' } as const;

/** Nothing said. */
export const nothingAnalysed = (unit: string): AnalysisWords => ({ unit, pulls: [], others: [], name: '', other: '', own: ['', ''] });

/** Forces of a list; null where one is none. */
function readForces(value: string): LinkedPull[] | null {
  const pulls: LinkedPull[] = [];
  for (const part of value.split(BETWEEN)) {
    const text = part.trim();
    const digits = text.replace(/^>/, '');
    if (!FORCE.test(digits) || Number(digits) === 0) return null;
    pulls.push({ force: Number(digits), atLeast: text.startsWith('>'), mode: '', link: '' });
  }
  return pulls;
}

/** Reads a query string. The same key twice with different values is not used. @param units signs that a unit may have, the first being the default */
export function parseAnalysisLink(query: string, units: readonly string[]): AnalysisLink {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  const words = nothingAnalysed(units[0] as string);
  const lists: { m?: string[]; l?: string[] } = {};
  let isSaid = false;

  const read = (key: string, value: string): string | null => {
    if (value === UNDECODED) return UNDECODED_WHY;
    if (key === 'v') return value === String(ANALYSIS_MEANING) ? null : `not a meaning of links that we know; read with meaning ${ANALYSIS_MEANING}`;
    if (key === 'unit') {
      const unit = oneOf(units, value);
      if (unit) words.unit = unit;
      return unit ? null : `a unit is ${units.join(', ')}; not used`;
    }
    if (key === 'p' || key === 'q') {
      const pulls = readForces(value);
      if (!pulls) return 'a force is digits with a point, or > before them; none is used';
      if (pulls.length > MOST_PULLS_IN_LINK) return `more than ${MOST_PULLS_IN_LINK} pulls; none is used`;
      words[key === 'p' ? 'pulls' : 'others'] = pulls;
      isSaid = true;
      return null;
    }
    const parts = value.split(BETWEEN).map((part) => part.trim());
    if (parts.some((part) => part.length > LONGEST)) return 'longer than anything that is asked; not used';
    if (key === 'm' || key === 'l') lists[key] = parts;
    else if (key === 'name' || key === 'other') words[key] = value;
    else if (key === 'own') {
      const [share, sure = ''] = parts as [string, string?];
      if (parts.length > 2) return 'more than a share and how sure; not used';
      words.own = [share, sure];
    } else return `no question is called ${JSON.stringify(key)}`;
    return null;
  };
  notUnderstood.push(...readEach(pieces, read));
  // Words of pulls that are not there belong to none: a list of another length would name the wrong break.
  for (const [key, list] of Object.entries(lists) as [keyof typeof LISTS, string[]][]) {
    if (list.length === words.pulls.length) words.pulls = words.pulls.map((pull, i) => ({ ...pull, [LISTS[key]]: list[i] as string }));
    else notUnderstood.push(...pieces.filter((one) => one.key === key).map(({ piece }) => ({ piece, why: 'as many words as pulls are needed; not used' })));
  }
  return { words: isSaid ? words : null, notUnderstood };
}

/** A word as long as a link takes; no half of a sign that is written as two. */
const cut = (word: string): string => word.trim().slice(0, LONGEST).replace(/[\uD800-\uDBFF]$/, '');
/** A list whose words hold no sign between two; empty where all its words are. */
const listed = (words: readonly string[]): string => words.map((word) => cut(word).replaceAll(BETWEEN, '-')).join(BETWEEN).replace(/^~+$/, '');
const forces = (pulls: readonly LinkedPull[]): string => pulls.map(({ force, atLeast }) => `${atLeast ? '>' : ''}${writeForce(force)}`).join(BETWEEN);
/** Digits of a force, never with an exponent. */
const writeForce = (force: number): string => force.toFixed(9).replace(/\.?0+$/, '');

/** The query of an analysis, without the question mark; null where there are no pulls or more than travel in a link. */
export function serialiseAnalysis({ unit, pulls, others, name, other, own }: AnalysisWords): string | null {
  if (pulls.length === 0 || pulls.length > MOST_PULLS_IN_LINK || others.length > MOST_PULLS_IN_LINK) return null;
  const pieces: [string, string][] = [
    ['v', String(ANALYSIS_MEANING)], ['unit', unit], ['p', forces(pulls)],
    ['m', listed(pulls.map(({ mode }) => mode))], ['l', listed(pulls.map(({ link }) => link))],
    ['q', forces(others)], ['name', cut(name)], ['other', cut(other)], ['own', listed(own)],
  ];
  return pieces.filter(([, value]) => value !== '').map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}
