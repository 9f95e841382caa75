/**
 * The service worker: answers pages of the site where the network does not. It runs only for readers who asked for it at `/offline/`.
 *
 * A new build's worker waits until no page of the site is open; it never takes over on its own. The build writes the
 * set in front of this code (`src/build/steps/offline-set.ts`). Without a set it ends itself: caches go, and the browser forgets it.
 */
import { asKept, fillSet } from './fill.ts';
import { COMPLETE, cacheNames, type KeptSet, MOST_VISITED_FILES, MOST_VISITED_PAGES, NOT_KEPT_PAGE, ownCaches, staleCaches, surplus, TITLE_HEADER } from './kept-set.ts';
import { isKeptOnVisit, isWorthTheWait, PATIENCE_MS, type Route, routeOf, standIns } from './routing.ts';
import { dayOfHost, evidenceOf, LAST_WORD, titleOf, type Visited, withSavedLine, withVisited } from './saved-page.ts';
import { channelOf, type CompleteNote, FILL_AGAIN, type Told } from './told.ts';
import type { AskedEvent, WorkerScope } from './worker-scope.ts';

declare const KEPT_SET: KeptSet | null;

const scope = globalThis as unknown as WorkerScope;
/** Address of the site's folder, with its closing slash. */
const root = new URL('./', scope.location.href).href;
const { origin, pathname: base } = new URL(root);
const addressOf = (path: string): string => root + path.slice(1);
const html = (text: string, status = 200): Response => new Response(text, { status, headers: { 'content-type': 'text/html; charset=utf-8' } });

/** Deletes all that was kept, and asks the browser to forget this worker. A register of a rack lies elsewhere and stays. */
async function end(): Promise<void> {
  await Promise.all(ownCaches(await caches.keys(), base).map((name) => caches.delete(name)));
  // Not waited for: the browser forgets a worker only once its install is over.
  scope.registration.unregister().catch(() => {});
}

if (KEPT_SET === null) {
  for (const type of ['install', 'activate'] as const) scope.addEventListener(type, (event) => event.waitUntil(end()));
} else {
  serve(KEPT_SET);
}

function serve(set: KeptSet): void {
  const names = cacheNames(base, set.build);
  const channel = new BroadcastChannel(channelOf(base));
  const tell = (told: Told): void => channel.postMessage(told);
  /** When a page last failed to come in time, ms since the worker started: no clock that anybody can set. */
  let missedMs: number | null = null;
  /** Pages that were answered from here: their drawings are not waited for either. */
  const answeredHere = new Set<string>();

  scope.addEventListener('install', (event) => event.waitUntil(fillSet(set, root, tell)));
  scope.addEventListener('activate', (event) => event.waitUntil(caches.keys().then((all) => Promise.all(staleCaches(all, base, set.build).map((name) => caches.delete(name))))));
  scope.addEventListener('message', (event) => {
    if (event.data === FILL_AGAIN) event.waitUntil(fillSet(set, root, tell).catch(() => {}));
  });
  scope.addEventListener('fetch', (event) => {
    const { method, url, mode, headers } = event.request;
    const route = routeOf({ method, url, isPage: mode === 'navigate', isPart: headers.has('range') }, { origin, base }, set);
    if (route.is !== 'leave') event.respondWith(route.is === 'page' ? answerPage(event, route) : answerFile(event, route));
  });

  const kept = (cacheName: string, path: string): Promise<Response | undefined> => caches.match(addressOf(path), { cacheName });

  /** The note of a whole set; null where there is none, because the browser deleted it or never had it. */
  async function note(): Promise<CompleteNote | null> {
    return (await (await kept(names.set, COMPLETE))?.json()) ?? null;
  }

  /** The response of the network, read to its end; null where it did not come. */
  async function fromNetwork(request: Request): Promise<Response | null> {
    try {
      const response = await fetch(request);
      // A redirect is the browser's to follow, and has nothing to read.
      if (response.type !== 'basic') return response;
      const { status, statusText, headers } = response;
      const body = await response.arrayBuffer();
      return new Response(body.byteLength > 0 ? body : null, { status, statusText, headers });
    } catch {
      return null;
    }
  }

  /** What comes within the patience of a reader, or null. */
  const inTime = <Came>(coming: Promise<Came | null>): Promise<Came | null> => Promise.race([coming, new Promise<null>((done) => setTimeout(done, PATIENCE_MS, null))]);

  async function answerPage(event: AskedEvent, { path, query }: Extract<Route, { is: 'page' }>): Promise<Response> {
    const askedMs = performance.now();
    const isWaited = isWorthTheWait(askedMs, missedMs);
    const coming = fromNetwork(event.request);
    // Begun before anybody reads the response, and before the event is over.
    event.waitUntil(coming.then((response) => {
      if (response && performance.now() - askedMs < PATIENCE_MS) missedMs = null;
      return response && keepVisited(path, response.clone());
    }));
    const came = isWaited ? await inTime(coming) : null;
    if (came && came.status < 500) return came;
    if (isWaited && !came) missedMs = performance.now();
    for (const { is, ...where } of standIns(path, query, set)) {
      if ('to' in where) {
        if (await note()) return Response.redirect(addressOf(where.to), 302);
        continue;
      }
      const saved = is === 'kept' ? await keptPage(where.path) : await visitedPage(where.path);
      if (saved) {
        answeredHere.add(event.resultingClientId);
        return saved;
      }
    }
    return came ?? (await coming) ?? notKept();
  }

  async function keptPage(path: string): Promise<Response | null> {
    const [whole, page] = [await note(), await kept(names.set, path)];
    return whole && page ? asKept(withSavedLine(await page.text(), whole.evidence, whole.on), page, {}) : null;
  }

  async function visitedPage(path: string): Promise<Response | null> {
    const page = await kept(names.pages, path);
    if (!page) return null;
    const text = await page.text();
    return asKept(withSavedLine(text, evidenceOf(text), dayOfHost(page.headers.get('date'))), page, {});
  }

  async function notKept(): Promise<Response> {
    const page = (await note()) ? await kept(names.set, NOT_KEPT_PAGE) : undefined;
    if (!page) return html(LAST_WORD, 503);
    const pages = await caches.open(names.pages);
    const visited: Visited[] = [];
    for (const request of [...(await pages.keys())].reverse()) {
      visited.push({ address: request.url, title: decodeURIComponent((await pages.match(request))?.headers.get(TITLE_HEADER) ?? '') });
    }
    return html(withVisited(await page.text(), visited), 503);
  }

  async function answerFile(event: AskedEvent, { is, path }: Extract<Route, { path: string }>): Promise<Response> {
    const isHere = is === 'hashed' || answeredHere.has(event.clientId);
    const here = async (): Promise<Response | undefined> => ((await note()) ? await kept(names.set, path) : undefined) ?? kept(names.files, path);
    const found = isHere ? await here() : undefined;
    if (found) return found;
    const coming = fromNetwork(event.request);
    event.waitUntil(coming.then((response) => response && keepFile(path, response.clone())));
    const came = isHere ? await coming : await inTime(coming);
    return came ?? (isHere ? undefined : await here()) ?? (await coming) ?? Response.error();
  }

  /** Keeps a page that the reader opened. Without a whole set nothing is kept: the reader has had it removed. */
  async function keepVisited(path: string, response: Response): Promise<void> {
    if (!isKeptOnVisit(path, set) || response.status !== 200 || !response.headers.get('content-type')?.startsWith('text/html')) return;
    const text = await response.text();
    await keep(names.pages, path, asKept(text, response, { [TITLE_HEADER]: encodeURIComponent(titleOf(text)) }), MOST_VISITED_PAGES);
  }

  async function keepFile(path: string, response: Response): Promise<void> {
    if (response.status === 200 && !(path in set.files)) await keep(names.files, path, asKept(await response.arrayBuffer(), response, {}), MOST_VISITED_FILES);
  }

  /** Puts something into a cache with so much room; the oldest goes. Where there is no room at all, it is not kept. */
  async function keep(name: string, path: string, response: Response, most: number): Promise<void> {
    if (!(await note())) return;
    try {
      const cache = await caches.open(name);
      await cache.put(addressOf(path), response);
      for (const old of surplus(await cache.keys(), most)) await cache.delete(old);
    } catch {
      // A full device keeps what it has.
    }
  }
}
