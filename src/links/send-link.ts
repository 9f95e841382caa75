/** The address of the page that hands a page on: which page that is. Total: any string gives a page of this site, or the reason why not. */
import { parseLink, type Vocabulary } from './parse-link.ts';
import { type NotUnderstood, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { parsePath, sharedAddress } from './prebuilt-path.ts';
import type { Stamp } from './serialise-link.ts';
import type { Rig } from '../strength/types.ts';

/** Where the site stands. */
export interface Site {
  /** For example `https://example.org`. */
  origin: string;
  /** Folder that it is served from, with its closing slash. */
  base: string;
}

/** A page to hand on, or why there is none. */
export type Sent = { address: string } | { why: string };

const NOT_OURS = 'not a page of this site';

/**
 * A page of this site, as a full address.
 * @param words an address in full, or from the site's folder on; any string
 */
export function ownAddress(words: string, { origin, base }: Site): Sent {
  const asked = words.trim();
  if (asked === '') return { why: 'empty' };
  let url: URL;
  try {
    // An address that begins with two slashes or a name of its own is read as what it is: another site.
    url = new URL(asked, origin + base);
  } catch {
    return { why: NOT_OURS };
  }
  const isOurs = url.origin === origin && url.pathname.startsWith(base) && url.username === '' && url.password === '';
  return isOurs ? { address: url.href } : { why: NOT_OURS };
}

/** What a query asks to hand on: its `to`, as it was written, or null. Whatever else stands in it is listed. */
export function parseSendLink(query: string): { to: string | null; notUnderstood: NotUnderstood[] } {
  const { pieces, unreadable: notUnderstood } = piecesOf(query);
  let to: string | null = null;
  for (const { key, value, piece } of pieces) {
    const why = key !== 'to' ? `nothing is called ${JSON.stringify(key)}` : value === UNDECODED ? UNDECODED_WHY : to !== null && to !== value ? 'a second page; the first is used' : null;
    if (why) notUnderstood.push({ piece, why });
    else to ??= value;
  }
  return { to, notUnderstood };
}

/**
 * A comparison as it is handed on: below the page that has its picture, and with what its answer is made with today, unless
 * it says already what it was made with. Null where the address is no comparison, or not all of it is understood: it then
 * goes on as it is.
 */
export function comparisonToSend(address: string, { origin, base }: Site, vocabulary: Vocabulary, today: Stamp): { address: string; rig: Rig } | null {
  const { pathname, search, hash } = new URL(address);
  const folder = `${base}compare/`;
  if (!pathname.startsWith(folder)) return null;
  const inPath = pathname.slice(folder.length).split('/').filter((part) => part !== '');
  if (inPath.length !== 0 && inPath.length !== 3) return null;
  const page = parsePath(inPath.join('/'), vocabulary);
  const link = parseLink(search, vocabulary, page.rig);
  if (link.notUnderstood.length + page.notUnderstood.length > 0) return null;
  const stamp = link.d === null && link.m === null ? today : link.d !== null && link.m !== null ? { evidence: link.d, model: link.m } : undefined;
  // A link that says only half of what it was made with keeps that half, as it is.
  if (!stamp) return { address, rig: link.rig };
  const beside = link.understood.filter((piece) => /^(?:t|f|unit|sort)=/.test(piece)).map((piece) => `&${piece}`).join('');
  return { address: `${origin}${base}${sharedAddress(link.rig, stamp)}${beside}${hash}`, rig: link.rig };
}
