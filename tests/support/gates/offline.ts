/** The set that readers keep: whole, true to what was built, small; and offered on one page alone. */
import { createHash } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import { gzipped, scriptsOf } from './bytes.ts';
import { type Fault, type Gate, type Page, resolveAddress, type Site } from './site.ts';

const WORKER = '/offline-worker.js';
/** DESIGN, "Budgets": the offline set, compressed. */
export const SET_LIMIT = 600_000;
/** The worker with its list: one response, and asked for again on each visit of a reader who keeps the site. */
export const WORKER_LIMIT = 14_000;
/** Pages that a reader at the crag needs (DESIGN, "Budgets"). */
const NEEDED = /^\/(?:(?:compare|methods|retire|rack|replace|replace\/cost|falls|terms|caution|offline|offline\/not-kept)\/|methods\/[^/]+\/)?$/;

/** What is read of the list in front of the worker. */
interface Listed { evidence: string; slings: readonly string[]; files: Readonly<Record<string, string>> }

export const offline: Gate = {
  name: 'offline',
  holds: 'the set that readers keep is whole, true to the build and within its budget',
  check: (site) => [...checkSet(site), ...site.pages.flatMap((page) => checkOffer(site, page))],
  says: (site) => {
    const files = Object.keys(listOf(site)?.files ?? {});
    return [`${files.length} files, ${sizeOf(site, files)} bytes of ${SET_LIMIT}; the worker ${site.files.has(WORKER) ? gzipped(site, WORKER) : 0}`];
  },
};

const fileOf = (path: string): string => (path.endsWith('/') ? `${path}index.html` : path);
const contentOf = (site: Site, path: string): string | Buffer => site.page(path)?.html ?? site.read(path);
const sizeOf = (site: Site, paths: readonly string[]): number => paths.reduce((sum, path) => sum + gzipSync(contentOf(site, path)).length, 0);

/** The list of the worker; null where it ends itself or cannot be read. */
function listOf(site: Site): Listed | null {
  const [, json] = /^const KEPT_SET = (\{.*\});\n/.exec(site.files.has(WORKER) ? site.read(WORKER).toString('utf8') : '') ?? [];
  return json ? (JSON.parse(json) as Listed) : null;
}

function checkSet(site: Site): Fault[] {
  const faults: Fault[] = [];
  const fault = (page: string, message: string): void => { faults.push({ page, message }); };
  if (!site.files.has(WORKER)) return [{ page: WORKER, message: 'was not built. A worker that is only missing stays with its readers for good: build with OFFLINE=off to end it.' }];
  const list = listOf(site);
  if (!list) return [];
  const { files } = list;
  for (const [path, hash] of Object.entries(files)) {
    if (!site.files.has(fileOf(path))) fault(path, 'is listed by the worker and was not built. No reader could keep the site.');
    else if (!createHash('sha256').update(contentOf(site, path)).digest('hex').startsWith(hash)) fault(path, 'has another hash than the worker lists. It was changed after the list was made; no reader could keep the site.');
  }
  for (const { path } of site.pages) if (NEEDED.test(path) && !(path in files)) fault(path, 'is not in the set that readers keep.');
  for (const page of site.pages.filter(({ path }) => path in files)) {
    for (const path of fetchedBy(site, page)) if (!(path in files)) fault(page.path, `fetches ${path}, which is not in the set: the page would be broken without a network.`);
  }
  const built = new Set(site.pages.flatMap(({ path }) => /^\/compare\/[^/]+\/[^/]+\/([^/]+)\/$/.exec(path)?.[1] ?? []));
  for (const sling of built) if (!list.slings.includes(sling)) fault(WORKER, `does not know the sling ${sling}, which has built comparisons.`);
  const present = Object.keys(files).filter((path) => site.files.has(fileOf(path)));
  const size = sizeOf(site, present);
  if (size > SET_LIMIT) fault(WORKER, `the set has ${size} bytes, ${size - SET_LIMIT} over its ${SET_LIMIT}.`);
  const own = gzipped(site, WORKER);
  if (own > WORKER_LIMIT) fault(WORKER, `has ${own} bytes, ${own - WORKER_LIMIT} over its ${WORKER_LIMIT}.`);
  return faults;
}

/** Files that a page fetches: at once, lazily, or on demand. */
function fetchedBy(site: Site, page: Page): string[] {
  const local = (selector: string, attribute: string): string[] => page.document.querySelectorAll(selector).flatMap((element) => {
    const target = resolveAddress(site, page, element.getAttribute(attribute) ?? '');
    return target?.inside && site.files.has(target.path) ? [target.path] : [];
  });
  const scripts = scriptsOf(site, [...local('script[src]', 'src'), ...local('link[rel="modulepreload"]', 'href')]);
  const more = ['stylesheet', 'prefetch', 'icon', 'manifest'].flatMap((rel) => local(`link[rel="${rel}"]`, 'href'));
  return [...scripts, ...more, ...local('img[src]', 'src'), ...local('source[src]', 'src'), ...local('image[href]', 'href')];
}

/** Only the page that offers it may ask for a worker: nobody keeps the site without wanting to. */
function checkOffer(site: Site, page: Page): Fault[] {
  if (page.path === '/offline/') return [];
  const scripts = page.document.querySelectorAll('script').map((script) => {
    const target = resolveAddress(site, page, script.getAttribute('src') ?? '');
    return script.getAttribute('src') && target?.inside && site.files.has(target.path) ? target.path : null;
  }).filter((path) => path !== null);
  const code = [...scriptsOf(site, scripts)].map((path) => site.read(path).toString('utf8')).join('\n') + page.document.querySelectorAll('script:not([src])').map((script) => script.innerHTML).join('\n');
  return code.includes('serviceWorker') ? [{ page: page.path, message: 'asks for a worker. Only /offline/ may: a reader wants it first.' }] : [];
}
