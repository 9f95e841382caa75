/** The set of files that a reader keeps for a place without a network, and the caches that it lies in. Pure. */

/** What one build offers to keep. Paths begin with a slash and stand under the folder that the site is served from. */
export interface KeptSet {
  /** Name of the build: a hash over all its files, so that two builds with one name are the same. */
  build: string;
  /** Version of the evidence, `<date>.<n>`. */
  evidence: string;
  /** Slings whose comparisons are built as pages. */
  slings: readonly string[];
  /** Content hash of each file, by its path. A page's path is its address: `/compare/`. */
  files: Readonly<Record<string, string>>;
}

/** The file of the worker, under the folder that the site is served from. */
export const WORKER_FILE = '/offline-worker.js';
/** Page that answers where nothing is kept. */
export const NOT_KEPT_PAGE = '/offline/not-kept/';
/** Written last into a set: a set without it is half there, and nothing reads from it. */
export const COMPLETE = '/offline/complete';
/** Response header with the content hash of what is kept. */
export const HASH_HEADER = 'x-content-hash';
/** Response header with the title of a visited page, as `encodeURIComponent` writes it. */
export const TITLE_HEADER = 'x-title';

/**
 * How many pages are kept because the reader opened them: some 60 kB each where they lie, so 4 MB in all, which a phone
 * that is nearly full still has. An evening of looking around fits in.
 */
export const MOST_VISITED_PAGES = 60;
/** Drawings and scripts of those pages: two a page. */
export const MOST_VISITED_FILES = 120;

const OURS = 'second-sling-offline';

/** Names of the caches of one build. @param base folder of the site, with a slash at both ends: two sites on one host keep apart */
export function cacheNames(base: string, build: string): { set: string; pages: string; files: string } {
  const of = (what: string): string => `${OURS} ${base} ${what}`;
  return { set: of(`set ${build}`), pages: of('pages'), files: of('files') };
}

/** Which caches belong to this site. @param names all caches of the host */
export const ownCaches = (names: readonly string[], base: string): string[] => names.filter((name) => name.startsWith(`${OURS} ${base} `));

/** Which of them hold a set. */
export const setCaches = (names: readonly string[], base: string): string[] => names.filter((name) => name.startsWith(`${OURS} ${base} set `));

/** Which caches go once a build has taken over: sets of other builds, whole or half there. What was visited stays. */
export const staleCaches = (names: readonly string[], base: string, build: string): string[] => setCaches(names, base).filter((name) => name !== cacheNames(base, build).set);

/** What goes from a cache with room for so many. @param keys what is in it, the oldest first */
export const surplus = <Key>(keys: readonly Key[], most: number): Key[] => keys.slice(0, Math.max(0, keys.length - most));

/** Where a file of a set comes from: it is there, another cache has the same content, or the network. */
export interface FillPlan { there: string[]; copied: { path: string; from: Held }[]; fetched: string[] }
/** A kept response: the cache, the path, and the hash of its content. */
export interface Held { cache: string; path: string; hash: string }

/**
 * What is still to do until a set is whole. Unchanged files are never fetched again, also where they moved or an earlier try broke off.
 * @param held everything with a hash in the caches of this site
 * @param own name of the cache that is filled
 */
export function fillPlan(set: KeptSet, held: readonly Held[], own: string): FillPlan {
  const plan: FillPlan = { there: [], copied: [], fetched: [] };
  const byHash = new Map(held.map((one) => [one.hash, one]));
  const there = new Set(held.filter(({ cache }) => cache === own).map(({ path, hash }) => `${hash} ${path}`));
  for (const [path, hash] of Object.entries(set.files)) {
    const from = byHash.get(hash);
    if (there.has(`${hash} ${path}`)) plan.there.push(path);
    else if (from) plan.copied.push({ path, from });
    else plan.fetched.push(path);
  }
  return plan;
}
