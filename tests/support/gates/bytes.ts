/** Byte budgets of a first visit, compressed, by kind of page. */
import { gzipSync } from 'node:zlib';
import { type Fault, type Gate, type Page, resolveAddress, type Site } from './site.ts';

/** Limits in bytes after gzip (1 kB = 1,000 bytes). `onDemand` bounds all script a page can load, first load included. */
export interface Budget {
  kind: string;
  htmlAndCss: number;
  script: number;
  onDemand: number;
  /** Everything a page shows at once and lazily: markup, style, script, pictures. */
  whole: number;
  /** A reading page is one response: no style of its own to fetch. */
  oneResponse: boolean;
  /** Script that works beside the page, such as statistics; apart, since it starts on a question and keeps nobody waiting. */
  worker: number;
}

/** Parts that only a link with something special in it loads: the id of the element that they fill, and what each may add. */
const PARTS: readonly { of: string; fills: string; limit: number }[] = [
  { of: 'comparator', fills: 'own-root', limit: 9_000 },
  { of: 'comparator', fills: 'then-root', limit: 3_000 },
];

const kB = 1000;
const COMPARATOR: Budget = { kind: 'comparator', htmlAndCss: 18 * kB, script: 20 * kB, onDemand: 36 * kB, whole: 100 * kB, oneResponse: false, worker: 0 };
const INTERACTIVE: Budget = { kind: 'interactive page', htmlAndCss: 16 * kB, script: 24 * kB, onDemand: 36 * kB, whole: 100 * kB, oneResponse: false, worker: 24 * kB };
const FACET: Budget = { kind: 'page of over 100 rows', htmlAndCss: 20 * kB, script: 0.4 * kB, onDemand: 0.4 * kB, whole: 60 * kB, oneResponse: true, worker: 0 };
const READING: Budget = { kind: 'reading page', htmlAndCss: 14 * kB, script: 0.4 * kB, onDemand: 0.4 * kB, whole: 60 * kB, oneResponse: true, worker: 0 };
/** The comparator's evidence, a hashed JSON of its own. */
export const EVIDENCE_LIMIT = 12 * kB;
/** All that search fetches beside its script. */
export const SEARCH_LIMIT = 150 * kB;

const INTERACTIVE_PATHS = /^\/(?:retire|rack|falls|breaks\/analyse|breaks\/plan|replace\/cost|replace\/form|offline|search|send|materials\/knots-and-bearings)\//;
const ROWS_OF_A_FACET = 100;

/** Which budget a page has. */
export function budgetOf(page: Page): Budget {
  if (/^\/compare\//.test(page.path)) return COMPARATOR;
  if (INTERACTIVE_PATHS.test(page.path)) return INTERACTIVE;
  return page.document.querySelectorAll('tbody > tr, main li').length > ROWS_OF_A_FACET ? FACET : READING;
}

export const bytes: Gate = {
  name: 'bytes',
  holds: 'every page within its byte budget',
  check: (site) => [...site.pages.flatMap((page) => checkPage(site, page)), ...checkEvidence(site), ...checkSearch(site)],
};

const sizes = new WeakMap<Site, Map<string, number>>();

/** Size of a built file as a host would send it. */
export function gzipped(site: Site, path: string): number {
  const known = sizes.get(site) ?? new Map<string, number>();
  sizes.set(site, known);
  const size = known.get(path) ?? gzipSync(site.read(path)).length;
  known.set(path, size);
  return size;
}

function checkPage(site: Site, page: Page): Fault[] {
  const budget = budgetOf(page);
  const weight = weigh(site, page);
  const over = (what: string, is: number, limit: number) =>
    is > limit ? [{ page: page.path, message: `${what}: ${is} bytes, ${is - limit} over the ${limit} of a ${budget.kind}.` }] : [];
  return [
    ...over('HTML and CSS', weight.htmlAndCss, budget.htmlAndCss),
    ...over('script of the first load', weight.script, budget.script),
    ...over('all script', weight.onDemand, budget.onDemand),
    ...over('script of its worker', weight.worker, budget.worker),
    ...weight.parts.flatMap(({ fills, size }) => over(`script that fills #${fills}`, size, PARTS.find((part) => part.fills === fills)?.limit ?? 0)),
    ...over('whole page', weight.htmlAndCss + weight.onDemand + weight.pictures, budget.whole),
    ...(budget.oneResponse && weight.stylesheets.length > 0
      ? [{ page: page.path, message: `fetches ${weight.stylesheets.join(', ')}: a ${budget.kind} is one response. Inline the style.` }]
      : []),
  ];
}

/** What a page weighs, in bytes after gzip. */
export interface Weight {
  htmlAndCss: number;
  stylesheets: string[];
  script: number;
  onDemand: number;
  pictures: number;
  worker: number;
  /** What each special part adds to all that the page can load otherwise. */
  parts: { fills: string; size: number }[];
}

/** Weighs one page: its HTML, its styles, the scripts it starts with all they import, and its pictures. */
export function weigh(site: Site, page: Page): Weight {
  const local = (address: string): string | null => {
    const target = resolveAddress(site, page, address);
    return target?.inside && site.files.has(target.path) ? target.path : null;
  };
  const addresses = (selector: string, attribute: string): string[] =>
    page.document.querySelectorAll(selector).flatMap((element) => local(element.getAttribute(attribute) ?? '') ?? []);

  const stylesheets = addresses('link[rel="stylesheet"]', 'href');
  const entries = [
    ...addresses('script[src]', 'src'),
    ...addresses('link[rel="modulepreload"]', 'href'),
    ...['component-url', 'renderer-url', 'before-hydration-url'].flatMap((name) => addresses(`astro-island[${name}]`, name)),
  ];
  // A script inside the page counts as script: the page would weigh the same if it stood in a file.
  const inline = page.document
    .querySelectorAll('script:not([src])')
    .filter((script) => !/json/.test(script.getAttribute('type') ?? ''))
    .map((script) => script.innerHTML)
    .join('\n');
  const sum = (paths: Iterable<string>) => [...paths].reduce((total, path) => total + gzipped(site, path), 0);
  const inlineSize = inline === '' ? 0 : gzipSync(inline).length;
  const special = PARTS.filter(({ fills }) => page.document.querySelector(`#${fills}`));
  const isPart = (path: string, { fills }: (typeof PARTS)[number]): boolean => site.read(path).toString('utf8').includes(fills);
  const isSpecial = (path: string): boolean => special.some((part) => isPart(path, part));
  const first = reach(site, entries, false);
  const all = reach(site, entries, true, isSpecial);
  const parts = special.map((part) => {
    const more = [...reach(site, entries, true, (path) => isSpecial(path) && !isPart(path, part))].filter((path) => !all.has(path));
    return { fills: part.fills, size: sum(more) };
  });
  const workers = [...all].flatMap((path) => [...site.read(path).toString('utf8').matchAll(/["'`]([^"'`]*-worker-[\w-]+\.js)["'`]/g)].map(([, address = '']) => new URL(address, `https://site.invalid${path}`).pathname));
  const pictures = new Set([...addresses('img[src]', 'src'), ...addresses('source[src]', 'src'), ...addresses('image[href]', 'href')]);
  return {
    htmlAndCss: gzipSync(page.html).length + sum(stylesheets),
    stylesheets,
    script: sum(first) + inlineSize,
    onDemand: sum(all) + inlineSize,
    pictures: sum(pictures),
    worker: sum(reach(site, [...new Set(workers)].filter((path) => site.files.has(path)), true)),
    parts,
  };
}

/** Script files that a page can come to load, on demand too. */
export const scriptsOf = (site: Site, entries: readonly string[]): ReadonlySet<string> => reach(site, entries, true);

/** Script files reached from some others by imports; `dynamic` follows those on demand too, but for what is left out. */
function reach(site: Site, entries: readonly string[], dynamic: boolean, isLeftOut: (path: string) => boolean = () => false): Set<string> {
  const reached = new Set<string>();
  const queue = [...entries];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path) || !/\.m?js$/.test(path) || (dynamic && !entries.includes(path) && isLeftOut(path))) continue;
    reached.add(path);
    const code = site.read(path).toString('utf8');
    const statics = code.matchAll(/(?:\bfrom|\bimport)\s*["']([^"']+\.m?js)["']/g);
    const onDemand = dynamic ? code.matchAll(/\bimport\(\s*["'`]([^"'`]+\.m?js)["'`]/g) : [];
    for (const [, address = ''] of [...statics, ...onDemand]) {
      const target = new URL(address, `https://site.invalid${path}`).pathname;
      if (site.files.has(target)) queue.push(target);
    }
  }
  return reached;
}

/** The evidence of the comparator is one JSON whose name changes with its content. */
function checkEvidence(site: Site): Fault[] {
  const comparator = site.page('/compare/');
  if (!comparator) return [{ page: '/compare/', message: 'was not built.' }];
  const named = [...site.files].filter((path) => /(?:^|[/._-])evidence[^/]*\.json$/.test(path) && comparator.html.includes(path.slice(1)));
  if (named.length === 0) return [{ page: '/compare/', message: 'names no evidence JSON. Link it from the page, so that it can load early and be cached for good.' }];
  return named.flatMap((path) => {
    const faults: Fault[] = [];
    const size = gzipped(site, path);
    if (size > EVIDENCE_LIMIT) faults.push({ page: path, message: `evidence: ${size} bytes, ${size - EVIDENCE_LIMIT} over the ${EVIDENCE_LIMIT} of its budget.` });
    if (!/[._-][A-Za-z0-9_-]{8,}\.json$/.test(path)) faults.push({ page: path, message: 'has no hash of its content in its name, so an old copy could be taken for the new one.' });
    return faults;
  });
}

/** What search fetches: hashed files that no page asks for before the reader does. */
function checkSearch(site: Site): Fault[] {
  const search = site.page('/search/');
  if (!search) return [];
  const files = [...site.files].filter((path) => /\/search\/[^/]+\.json$/.test(path));
  const size = files.reduce((sum, path) => sum + gzipped(site, path), 0);
  const early = files.filter((path) => search.document.querySelectorAll('link[href]').some((link) => (link.getAttribute('href') ?? '').endsWith(path)));
  return [
    ...(size > SEARCH_LIMIT ? [{ page: search.path, message: `index of search: ${size} bytes, ${size - SEARCH_LIMIT} over the ${SEARCH_LIMIT} of its budget.` }] : []),
    ...files.filter((path) => !/[._-][A-Za-z0-9_-]{8,}\.json$/.test(path)).map((path) => ({ page: path, message: 'has no hash of its content in its name, so an old copy could be taken for the new one.' })),
    ...files.filter((path) => !search.html.includes(path)).map((path) => ({ page: path, message: 'is named nowhere on the page of search.' })),
    ...early.map((path) => ({ page: search.path, message: `asks for ${path} with the page. Fetch it on first use.` })),
  ];
}
