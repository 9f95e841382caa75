/**
 * Fills the cache of a set. Each file is checked against the hash of its build before it is put in, and the note that makes the
 * set whole comes last: whatever breaks off in between, no page is ever answered from files of two builds.
 */
import { COMPLETE, cacheNames, fillPlan, HASH_HEADER, type Held, type KeptSet, ownCaches } from './kept-set.ts';
import { dayOfHost } from './saved-page.ts';
import type { CompleteNote, FillFault, Told } from './told.ts';

/** Files fetched at a time: as many as browsers allow one host over one old connection. */
const AT_A_TIME = 6;
/** What a host says of a response on its way, and what would keep a copy from being found again. */
const OF_THE_WAY = ['content-encoding', 'content-length', 'transfer-encoding', 'vary', 'set-cookie'];

/** Keeping failed, with the reason and the file. */
export class FillError extends Error {
  readonly why: FillFault;
  readonly path: string;
  constructor(why: FillFault, path: string) {
    super(`${why}: ${path}`);
    this.why = why;
    this.path = path;
  }
}

/** First 12 hex digits of the SHA-256, as the build writes them. */
async function hashOf(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('').slice(0, 12);
}

/** A response to keep: its content, and what the host said of it, but for the way. */
export function asKept(content: BodyInit, from: Response, more: Readonly<Record<string, string>>): Response {
  const headers = new Headers(from.headers);
  for (const name of OF_THE_WAY) headers.delete(name);
  for (const [name, value] of Object.entries(more)) headers.set(name, value);
  return new Response(content, { headers });
}

/** Puts a response into a cache. @throws FillError where the browser has no room, or does not allow it */
async function put(cache: Cache, address: string, response: Response, path: string): Promise<void> {
  try {
    await cache.put(address, response);
  } catch (fault) {
    throw new FillError((fault as Error).name === 'QuotaExceededError' ? 'full' : 'refused', path);
  }
}

/** Everything with a hash in the caches of this site. */
async function heldOf(root: string, base: string): Promise<Held[]> {
  const held: Held[] = [];
  for (const name of ownCaches(await caches.keys(), base)) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const hash = (await cache.match(request))?.headers.get(HASH_HEADER);
      if (hash) held.push({ cache: name, path: request.url.slice(root.length - 1), hash });
    }
  }
  return held;
}

/**
 * Makes the set whole. What had arrived before an earlier try broke off is not fetched again.
 * @param root address of the site's folder, with its closing slash
 * @param tell is told of each file
 * @throws FillError; where there is no room, all that was put in is out again
 */
export async function fillSet(set: KeptSet, root: string, tell: (told: Told) => void): Promise<void> {
  const base = new URL(root).pathname;
  const name = cacheNames(base, set.build).set;
  const addressOf = (path: string): string => root + path.slice(1);
  try {
    const plan = fillPlan(set, await heldOf(root, base), name);
    const cache = await caches.open(name);
    const of = Object.keys(set.files).length;
    let done = plan.there.length;
    let on: string | null = null;
    const step = (): void => tell({ is: 'filling', done: ++done, of });
    for (const { path, from } of plan.copied) {
      const copy = await (await caches.open(from.cache)).match(addressOf(from.path));
      if (!copy) plan.fetched.push(path);
      else {
        await put(cache, addressOf(path), copy, path);
        step();
      }
    }
    const queue = [...plan.fetched];
    const work = async (): Promise<void> => {
      for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
        // Past the browser's own cache where that is old: a page keeps its address when it changes.
        const response = await fetch(addressOf(path), { cache: 'no-cache' }).catch(() => null);
        const bytes = response?.ok ? await response.arrayBuffer().catch(() => null) : null;
        if (!response || !bytes) throw new FillError('network', path);
        const hash = await hashOf(bytes);
        if (hash !== set.files[path]) throw new FillError('changed', path);
        await put(cache, addressOf(path), asKept(bytes, response, { [HASH_HEADER]: hash }), path);
        on ??= dayOfHost(response.headers.get('date'));
        step();
      }
    };
    await Promise.all(Array.from({ length: AT_A_TIME }, work)).finally(() => { queue.length = 0; });
    const note: CompleteNote = { on, evidence: set.evidence };
    // A set that was whole already keeps the day on which it was fetched.
    if (!(await cache.match(addressOf(COMPLETE)))) await put(cache, addressOf(COMPLETE), new Response(JSON.stringify(note)), COMPLETE);
    tell({ is: 'kept' });
  } catch (fault) {
    const { why, path } = fault instanceof FillError ? fault : new FillError('refused', '');
    if (why === 'full') await caches.delete(name);
    tell({ is: 'failed', why, path });
    throw fault;
  }
}
