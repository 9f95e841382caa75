/** Which requests the worker answers, how, and what stands in where the network does not answer. Pure, and total: any address gets a decision. */
import { queryOfPrebuilt } from '../links/prebuilt-path.ts';
import { type KeptSet, NOT_KEPT_PAGE, WORKER_FILE } from './kept-set.ts';

/** What of a request is looked at. */
export interface Asked {
  method: string;
  /** The whole address. */
  url: string;
  /** Whether the browser goes to it as a page. */
  isPage: boolean;
  /** Whether only a part of a file is asked for. */
  isPart: boolean;
}

/** How a request is answered. `leave`: as if there were no worker. */
export type Route =
  | { is: 'leave' }
  /** Its name changes with its content: what is kept is right. */
  | { is: 'hashed'; path: string }
  /** A file whose name stays: network first. */
  | { is: 'file'; path: string }
  /** A page: network first, then `standIns`. */
  | { is: 'page'; path: string; query: string };

/** What may stand in for a page, in this order. `elsewhere`: the reader is led to another address, which is kept. */
export type StandIn = { is: 'kept' | 'visited'; path: string } | { is: 'elsewhere'; to: string };

/** Wait for a page that is kept, ms. Longer feels broken on the wall; a page of 14 kB needs a second on a slow mobile network. */
export const PATIENCE_MS = 3000;
/** After a page that did not come in time the next is not waited for, ms: one that leads elsewhere would cost the wait twice. */
export const REST_MS = 10_000;

const LEAVE: Route = { is: 'leave' };
const HASHED = /^\/(?:_astro\/[^/]+|compare\/(?:evidence|then)-[^/]*\.[0-9a-f]{12}\.json|rack\/rules-[0-9a-f]{12}\.json|search\/index-[a-z]+-[0-9a-f]{12}\.json)$/;
const DRAWING = /^\/drawings\/.+\.svg$/;
const TERM = /^\/terms\/([a-z0-9-]+)\/$/;
const COMPARISON = /^\/compare\/.+/;

/** Path under the folder of the site, decoded as a host does; null outside it or where it does not decode. */
function pathUnder(base: string, pathname: string): string | null {
  if (!pathname.startsWith(base)) return null;
  try {
    return decodeURI(pathname.slice(base.length - 1));
  } catch {
    return null;
  }
}

/** Address of a page as its file is named: closing slash, without `index.html`. Null for a file that is no page. */
function pageOf(path: string): string | null {
  if (path.endsWith('/')) return path;
  if (path.endsWith('/index.html')) return path.slice(0, -'index.html'.length);
  return /\.[^/]*$/.test(path) ? null : `${path}/`;
}

/** @param site origin of the site, and its folder with a slash at both ends */
export function routeOf({ method, url, isPage, isPart }: Asked, site: { origin: string; base: string }, set: KeptSet): Route {
  if (method !== 'GET' || isPart || !URL.canParse(url)) return LEAVE;
  const { origin, pathname, search } = new URL(url);
  const path = origin === site.origin ? pathUnder(site.base, pathname) : null;
  // Frames in pages of others are never kept: what they show there should be today's.
  if (path === null || path === WORKER_FILE || path.startsWith('/embed/')) return LEAVE;
  const page = isPage ? pageOf(path) : null;
  if (page !== null) return { is: 'page', path: page, query: search };
  if (HASHED.test(path)) return { is: 'hashed', path };
  return path in set.files || DRAWING.test(path) ? { is: 'file', path } : LEAVE;
}

/**
 * What stands in for a page that the network did not bring. The query never matters for which page it is: pages read it themselves.
 * Empty where only the page that says so is left.
 */
export function standIns(path: string, query: string, set: KeptSet): StandIn[] {
  if (path in set.files) return [{ is: 'kept', path }];
  // A comparison that is built as a page is one rig of the comparator: it is led there with that rig, and never shown another.
  const rig = COMPARISON.test(path) ? queryOfPrebuilt(path, query, { slings: set.slings }) : null;
  if (rig !== null) return [{ is: 'elsewhere', to: `/compare/?${rig}` }];
  const [, term] = TERM.exec(path) ?? [];
  return [{ is: 'visited', path }, ...(term ? [{ is: 'elsewhere' as const, to: `/terms/#${term}` }] : [])];
}

/** Whether a page stays once the reader has opened it: where nothing else stands in for it but the list of terms. */
export const isKeptOnVisit = (path: string, set: KeptSet): boolean => path !== NOT_KEPT_PAGE && standIns(path, '', set)[0]?.is === 'visited';

/** Whether the network is waited for. @param nowMs time since the worker started @param missedMs when a page last failed to come, or null */
export const isWorthTheWait = (nowMs: number, missedMs: number | null): boolean => missedMs === null || nowMs - missedMs >= REST_MS;
