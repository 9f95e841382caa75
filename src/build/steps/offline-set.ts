/**
 * The set of files that readers can keep: which pages, all that these fetch, and the worker with the list in front of it.
 * Made when every page is written, because it goes by the hashes of what was really built.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { AstroIntegration } from 'astro';
import { type KeptSet, NOT_KEPT_PAGE, WORKER_FILE } from '../../offline/kept-set.ts';
import { contentHash } from '../content-hash.ts';
import type { Door } from '../site.ts';

/** Whether this build takes the saved copies of readers away, and lets nobody make one: `OFFLINE=off`. */
export const OFFLINE_IS_OFF = process.env['OFFLINE'] === 'off';

/** What is kept, as readers are told it. */
export const KEPT_ROOMS: readonly (Door & { path: string })[] = [
  { name: 'Compare ways to attach a sling', path: '/compare/', says: 'for any rig, with links made long ago, own breaks and falls' },
  { name: 'Methods', path: '/methods/', says: 'each with its drawings' },
  { name: 'Has the sling to go?', path: '/retire/' },
  { name: 'The register of a rack', path: '/rack/' },
  { name: 'Who can replace a sling', path: '/replace/', says: 'with what it costs, and the form for the parcel' },
  { name: 'What a fall loads', path: '/falls/', says: 'with its examples' },
  { name: 'Terms', path: '/terms/', says: 'the list with all meanings' },
  { name: 'Send a page', path: '/send/', says: 'as a link or a code to scan' },
  { name: 'Caution', path: '/caution/' },
];

/** The pages of the set. A term’s own page is left out: the list says what each means, and seventy pages more would double the set. */
const PAGES = /^\/(?:compare\/|methods\/(?:[^/]+\/)?|retire\/|rack\/|replace\/(?:cost\/|form\/)?|falls\/(?:examples\/)?|terms\/|caution\/|send\/|offline\/(?:not-kept\/)?)?$/;
/** What their scripts fetch by names that no page has. */
const FETCHED = /^\/(?:compare\/(?:evidence|then)-[^/]+\.json|rack\/example\.json)$/;
/** Elements that the browser fetches something for, and links in the head that it follows by itself. */
const ELEMENTS = /<(?:script|img|source|image|section)\b[^>]*>|<link\b[^>]*\brel="(?:icon|manifest|modulepreload|prefetch|stylesheet)"[^>]*>/g;
const ATTRIBUTES = /\b(?:src|href|data-rules)="([^"]+)"/g;
const SCRIPTS = /["'`]([^"'`\s]+\.js)["'`]/g;
const PREBUILT = /^\/compare\/[^/]+\/[^/]+\/([^/]+)\/$/;

/** Stands in the page `/offline/` until the size is known. */
export const SIZE_MARK = 'SIZE-OF-THE-SET';

/** A built site: its files by path, pages by their address (`/compare/`). */
export interface BuiltSite { paths: ReadonlySet<string>; read(path: string): Uint8Array }

const fileOf = (path: string): string => (path.endsWith('/') ? `${path}index.html` : path);

/** Reads a built folder. */
export function builtSite(folder: string): BuiltSite {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map(({ parentPath, name }) => posix.join('/', parentPath.slice(folder.replace(/\/$/, '').length), name));
  return { paths: new Set(files.map((file) => file.replace(/\/index\.html$/, '/'))), read: (path) => readFileSync(join(folder, fileOf(path))) };
}

/** Paths of the set: its pages, and whatever they and their scripts fetch from the site. @param base folder that the site is served from */
export function pathsOfSet({ paths, read }: BuiltSite, base: string): string[] {
  const root = base.replace(/\/+$/, '');
  const text = (path: string): string => new TextDecoder().decode(read(path));
  const found = new Set<string>();
  const add = (address: string, from: string): void => {
    const { pathname } = new URL(address, `https://site.invalid${root}${from}`);
    const path = pathname.startsWith(`${root}/`) ? pathname.slice(root.length) : '';
    if (!paths.has(path) || path.endsWith('/') || found.has(path)) return;
    found.add(path);
    if (path.endsWith('.js')) for (const [, script] of text(path).matchAll(SCRIPTS)) add(script as string, path);
  };
  for (const page of [...paths].filter((path) => PAGES.test(path))) {
    found.add(page);
    for (const [element] of text(page).matchAll(ELEMENTS)) for (const [, address] of element.matchAll(ATTRIBUTES)) add(address as string, page);
  }
  for (const path of paths) if (FETCHED.test(path)) found.add(path);
  return [...found].sort();
}

/** The set of a built site. Throws RangeError where a page that it cannot do without was not built. */
export function keptSet(site: BuiltSite, base: string): KeptSet {
  for (const page of [...KEPT_ROOMS.map(({ path }) => path), NOT_KEPT_PAGE]) if (!site.paths.has(page)) throw new RangeError(`site: ${page} was not built, and readers are to keep it`);
  const files = Object.fromEntries(pathsOfSet(site, base).map((path) => [path, contentHash(site.read(path))]));
  const evidence = Object.keys(files).flatMap((path) => /^\/compare\/evidence-(.+)\.[0-9a-f]{12}\.json$/.exec(path)?.[1] ?? [])[0];
  if (!evidence) throw new RangeError('site: no evidence was built below /compare/');
  const slings = new Set([...site.paths].flatMap((path) => PREBUILT.exec(path)?.[1] ?? []));
  return { build: contentHash(JSON.stringify(files)), evidence, slings: [...slings].sort(), files };
}

/** Bytes of the set as a host sends it, compressed. */
export const sizeOfSet = (site: BuiltSite, paths: readonly string[]): number => paths.reduce((sum, path) => sum + gzipSync(site.read(path)).length, 0);

/** The worker of a set; without one, the worker that ends itself. @param code what was bundled, or a worker that this wrote */
export const workerText = (set: KeptSet | null, code: string): string => `const KEPT_SET = ${JSON.stringify(set)};\n${code.replace(/^const KEPT_SET = .*\n/, '')}`;

/**
 * Writes size and worker into a built folder.
 * @param code text of the worker without its set
 */
export function writeOffline(folder: string, base: string, code: string): void {
  const site = builtSite(folder);
  const page = join(folder, 'offline/index.html');
  const size = Math.ceil(sizeOfSet(site, pathsOfSet(site, base)) / 1000);
  if (existsSync(page)) writeFileSync(page, readFileSync(page, 'utf8').replace(SIZE_MARK, `${size} kB`));
  writeFileSync(join(folder, WORKER_FILE), workerText(OFFLINE_IS_OFF ? null : keptSet(site, base), code));
}

/** The worker as one script, without its list. A worker that imports would be one that not every browser runs. */
async function bundledWorker(): Promise<string> {
  const { build } = await import('vite');
  const bundled = await build({
    configFile: false, logLevel: 'warn',
    build: { write: false, minify: true, lib: { entry: join(process.cwd(), 'src/offline/offline-worker.ts'), formats: ['iife'], name: 'offline' } },
  });
  const [first] = Array.isArray(bundled) ? bundled : [bundled];
  const scripts = first && 'output' in first ? first.output : [];
  const [script] = scripts;
  if (scripts.length !== 1 || script?.type !== 'chunk') throw new Error(`expected the worker to be one script, and it became ${scripts.length} files`);
  return script.code;
}

/** The integration: the last to change a page. @param base folder that the site is served from */
export function offlineSet(base: string): AstroIntegration {
  return {
    name: 'offline-set',
    hooks: { 'astro:build:done': async ({ dir }) => writeOffline(fileURLToPath(dir), base, await bundledWorker()) },
  };
}
