/** The short addresses `/compare/<rating>/<eye>/<sling>/` of comparisons that are built as pages. */
import type { Rig } from '../strength/types.ts';
import { parseLink, type Vocabulary } from './parse-link.ts';
import { type NotUnderstood, piecesOf } from './pieces.ts';
import { CURRENT_MEANING, EXAMPLE_RIG } from './rig-keys.ts';
import { serialiseLink, type Stamp } from './serialise-link.ts';

/** Ratings, eyes and slings that are built as pages. All slings of the records are. */
export const PREBUILT_RATINGS_KN = [5, 6, 7, 8, 9, 10, 11, 12, 13, 14] as const;
export const PREBUILT_EYES = ['bare-wire', 'sleeved-wire'] as const;

/** Inputs that such an address names in its path, in their order there. */
const IN_PATH = /&(?:rating|eye|sling)=[^&]*/g;

/**
 * Address of a comparison to hand on, from `compare/` on: below the page that is built for its rating, eye and sling,
 * so that what shows a picture of a link shows that page's. All other inputs stand in the query. Where no page is
 * built, all of them do.
 * @param rig its sling is one of the records, as in every rig that was read from a link
 * @param stamp what the answer was made with
 */
export function sharedAddress(rig: Readonly<Rig>, stamp?: Stamp): string {
  const { ratingKn, eye, sling } = rig;
  const query = serialiseLink(rig, stamp);
  const isBuilt = sling && PREBUILT_EYES.some((id) => id === eye) && PREBUILT_RATINGS_KN.some((kn) => kn === ratingKn);
  return isBuilt ? `compare/${ratingKn}/${eye}/${sling}/?${query.replace(IN_PATH, '')}` : `compare/?${query}`;
}

/** The rig that a path names, and the segments that were not understood. */
export interface ParsedPath { rig: Rig; notUnderstood: NotUnderstood[] }

/**
 * Reads the part of a path after `/compare/`. Total, like `parseLink`: a
 * segment that is not understood is listed and its input counts as not known.
 * @param path for example `12/bare-wire/hmpe-8/`, with or without the part up to `/compare/`
 */
export function parsePath(path: string, vocabulary: Vocabulary): ParsedPath {
  const after = path.replace(/^.*\/compare\//, '');
  const segments = after.split('/').filter((segment) => segment !== '');
  const keys = ['rating', 'eye', 'sling'];
  // The segments are read by the same words as a query, so that both forms can never drift apart.
  const query = segments.slice(0, keys.length)
    .map((segment, i) => `${keys[i]}=${segment.replaceAll('&', '%26').replaceAll('+', '%2B')}`).join('&');
  const parsed = parseLink(query, vocabulary, EXAMPLE_RIG);
  const listed = parsed.notUnderstood.map(({ piece, why }) => ({ piece: segments[keys.findIndex((key) => piece.startsWith(key))] as string, why }));
  const extra = segments.slice(keys.length).map((piece) => ({ piece, why: 'more parts than rating, eye and sling' }));
  return { rig: parsed.rig, notUnderstood: [...listed, ...extra] };
}

/**
 * Path of the page that is built for exactly this rig, from `compare/` on, or null where none is.
 * The other inputs must be at their defaults, because a prebuilt page answers for those.
 */
export function prebuiltPath(rig: Readonly<Rig>, vocabulary: Vocabulary): string | null {
  const { ratingKn, eye, sling } = rig;
  const isBuilt = PREBUILT_RATINGS_KN.some((kn) => kn === ratingKn) && PREBUILT_EYES.some((id) => id === eye) && vocabulary.slings.some((id) => id === sling);
  return isBuilt && serialiseLink(rig) === serialiseLink({ ...EXAMPLE_RIG, ratingKn, eye, sling }) ? `compare/${ratingKn}/${eye}/${sling}/` : null;
}

/**
 * The query with which the comparator shows what a prebuilt page shows, or null where no such page is built.
 * What the page's own query says stays word for word, and counts before the path, as it does on the page.
 * @param path under the folder of the site, for example `/compare/12/bare-wire/hmpe-8/`
 */
export function queryOfPrebuilt(path: string, query: string, vocabulary: Vocabulary): string | null {
  const { rig } = parsePath(path, vocabulary);
  const page = prebuiltPath(rig, vocabulary);
  if (page === null || path !== `/${page}`) return null;
  const said = piecesOf(query).pieces.map(({ key }) => key);
  const own = [['v', CURRENT_MEANING], ['rating', rig.ratingKn], ['eye', rig.eye], ['sling', rig.sling]] as const;
  return [...own.filter(([key]) => !said.includes(key)).map((piece) => piece.join('=')), ...query.replace(/^\?/, '').split('&').filter((piece) => piece !== '')].join('&');
}
