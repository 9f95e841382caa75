/** The house of DESIGN: which room of `src/` may use which, and what the engines never touch. Arrows run one way. */
import { expect, test } from 'vitest';
import { freeNamesOf, importsOf, parseSource } from '../../support/imports.ts';
import { filesUnder } from '../../support/tree.ts';

/** Rooms whose code and types a room may use; rooms of which it may use types only; packages it may use. */
interface Room {
  uses: readonly string[];
  types: readonly string[];
  packages: readonly (string | RegExp)[];
}

const NODE = /^node:/;
const ENGINE_ROOMS = ['evidence', 'strength', 'break-tests', 'retirement', 'falls', 'replacement'] as const;
/** Joins several engines in the exercises of lessons. */
const TEACHING = 'teaching';
const DRAWN = ['charts', 'drawings'] as const;
const ALL_BUT_PAGES = ['records', 'numerics', ...ENGINE_ROOMS, 'rack', 'links', 'citing', 'search', 'offline', TEACHING, ...DRAWN, 'build'];
const ALL = [...ALL_BUT_PAGES, 'islands', 'components', 'layouts', 'styles'];

const ROOMS: Readonly<Record<string, Room>> = {
  records: { uses: [], types: [], packages: ['zod', 'yaml', 'satteri', '@astrojs/compiler-rs', 'typescript', NODE] },
  numerics: { uses: [], types: [], packages: [] },
  evidence: { uses: ['numerics'], types: ['records', 'strength'], packages: [] },
  strength: { uses: ['evidence', 'numerics'], types: ['records'], packages: [] },
  'break-tests': { uses: ['evidence', 'numerics'], types: ['records'], packages: [] },
  retirement: { uses: ['evidence', 'numerics'], types: ['records'], packages: [] },
  falls: { uses: ['evidence', 'numerics'], types: ['records', 'strength'], packages: [] },
  replacement: { uses: ['evidence', 'numerics'], types: ['records'], packages: [] },
  rack: { uses: ['retirement'], types: ['records'], packages: [] },
  teaching: { uses: ['numerics', ...ENGINE_ROOMS], types: ['records'], packages: [] },
  links: { uses: [], types: ['records', 'strength', 'retirement', 'replacement', 'falls'], packages: [] },
  citing: { uses: [], types: ['records', 'strength'], packages: [] },
  search: { uses: [], types: [], packages: ['minisearch'] },
  charts: { uses: [], types: ['records', 'strength'], packages: ['d3-scale', /^preact(?:\/|$)/] },
  drawings: { uses: [], types: ['records', 'strength'], packages: [/^preact(?:\/|$)/] },
  // Thin: state in, engine call, markup out. The markup is a component, the same at build and in the browser.
  islands: { uses: ['numerics', ...ENGINE_ROOMS, 'rack', 'links', 'citing', 'search', 'offline', ...DRAWN, 'components'], types: ['records', 'build'], packages: ['uqr', /^preact(?:\/|$)/] },
  offline: { uses: ['links'], types: [], packages: [] },
  build: { uses: ALL_BUT_PAGES, types: [...ALL_BUT_PAGES, 'components'], packages: [NODE, 'yaml', 'zod', 'd3-scale', 'fflate', 'satori', 'sharp', 'vite', /^astro(?::|\/|$)/, /^preact/] },
  commands: { uses: [...ALL_BUT_PAGES, 'commands'], types: ALL, packages: [NODE, 'yaml', 'zod', '@playwright/test', '@sparticuz/chromium', 'lighthouse'] },
  components: { uses: ALL, types: ALL, packages: ['temml', /^astro(?::|\/|$)/, /^preact/] },
  layouts: { uses: ALL, types: ALL, packages: [/^astro(?::|\/|$)/] },
  pages: { uses: ALL, types: ALL, packages: [/^astro(?::|\/|$)/, /^preact/, NODE] },
};

/** Rooms that give the same answer on every machine, on every day. */
const PURE = ['numerics', ...ENGINE_ROOMS, TEACHING, 'rack', 'links', 'citing', 'search'];

/** What would make an answer depend on the page, the machine, the day or luck. */
const IMPURE = [
  /^(?:document|window|navigator|location|history|screen|self|globalThis)(?:\.|$)/,
  /^(?:localStorage|sessionStorage|indexedDB|caches|customElements)(?:\.|$)/,
  /^(?:fetch|XMLHttpRequest|WebSocket|EventSource|Worker)(?:\.|$)/,
  /^(?:setTimeout|setInterval|requestAnimationFrame|queueMicrotask|performance)(?:\.|$)/,
  /^(?:process|require|console|Deno|Bun)(?:\.|$)/,
  /^(?:Math\.random|Date\.now|new Date\(\)|crypto)(?:\.|$)/,
  /^Astro(?:\.|$)/,
  /^Intl(?:\.|$)/,
];

const sources = filesUnder('src').filter((path) => /\.(?:ts|tsx|mjs|astro)$/.test(path) && !path.endsWith('.d.ts'));
const roomOf = (path: string) => path.split('/')[1] ?? '';
const inRooms = sources.filter((path) => path.split('/').length > 2);

function allowed(packages: Room['packages'], name: string): boolean {
  return packages.some((pattern) => (typeof pattern === 'string' ? pattern === name : pattern.test(name)));
}

/** Each import that runs against the arrows, as a line that says what to do. */
function crossings(path: string, text?: string): string[] {
  const room = roomOf(path);
  const rule = ROOMS[room];
  if (!rule) return [`${path}: the house has no room "${room}". Put the file in one of ${Object.keys(ROOMS).join(', ')}.`];
  return importsOf(parseSource(path, text)).flatMap(({ from, path: target, typeOnly, line }) => {
    const at = `${path}:${line}`;
    if (target === null) {
      return typeOnly || allowed(rule.packages, from) ? [] : [`${at}: ${room}/ may not use the package "${from}".`];
    }
    if (!target.startsWith('src/')) return /^(?:data|content)\//.test(target) && room === 'build' ? [] : [`${at}: "${from}" leaves src/.`];
    const other = roomOf(target);
    if (other === room || rule.uses.includes(other) || (typeOnly && rule.types.includes(other))) return [];
    const asType = rule.types.includes(other) ? ' except by `import type`' : '';
    return [`${at}: ${room}/ may not use ${other}/${asType}.`];
  });
}

/** Each global of the page, machine, clock or luck that a pure room reaches for. */
function impurities(path: string, text?: string): string[] {
  const source = parseSource(path, text);
  const names = freeNamesOf(source).filter(({ name }) => IMPURE.some((pattern) => pattern.test(name)));
  return names.map(({ name, line }) => `${path}:${line}: ${roomOf(path)}/ may not use ${name}; take what it gives as an argument.`);
}

test('there are sources to look at in every room that an answer needs', () => {
  for (const room of ['records', 'numerics', 'evidence', 'strength', 'links']) {
    expect(inRooms.some((path) => roomOf(path) === room), room).toBe(true);
  }
});

test('imports between the rooms of the house run along its arrows', () => {
  expect(inRooms.flatMap((path) => crossings(path))).toEqual([]);
});

test('engines, links and citing touch no page, machine, clock, network or luck', () => {
  expect(inRooms.filter((path) => PURE.includes(roomOf(path))).flatMap((path) => impurities(path))).toEqual([]);
});

test('of the worker, only its shell touches the browser; and none of it, nor the page that asks for it, reads the clock', () => {
  const shell = ['offline-worker', 'fill', 'worker-scope'].map((name) => `src/offline/${name}.ts`);
  const room = inRooms.filter((path) => roomOf(path) === 'offline');
  expect(room).toEqual(expect.arrayContaining(shell));
  expect(room.filter((path) => !shell.includes(path)).flatMap((path) => impurities(path))).toEqual([]);
  expect([...room, 'src/islands/keep-site.ts'].flatMap((path) => impurities(path)).filter((line) => /Date/.test(line))).toEqual([]);
});

test('imports between files form no circle when the code runs', () => {
  const edges = new Map(inRooms.map((path) => [path, importsOf(parseSource(path)).flatMap((one) => (one.path !== null && !one.typeOnly ? [one.path] : []))]));
  const circles: string[] = [];
  const done = new Set<string>();
  const follow = (path: string, trail: readonly string[]): void => {
    const again = trail.indexOf(path);
    if (again >= 0) circles.push([...trail.slice(again), path].join(' -> '));
    if (again >= 0 || done.has(path)) return;
    for (const next of edges.get(path) ?? []) follow(next, [...trail, path]);
    done.add(path);
  };
  for (const path of edges.keys()) follow(path, []);
  expect(circles).toEqual([]);
});

test('what the browser runs reads no record from a disk: nothing that an island reaches is of build/ or records/', () => {
  const reached = new Map<string, string>();
  const queue = sources.filter((path) => path.startsWith('src/islands/')).map((path) => [path, path] as const);
  expect(queue.length).toBeGreaterThan(0);
  for (let next = queue.pop(); next; next = queue.pop()) {
    const [path, trail] = next;
    if (reached.has(path)) continue;
    reached.set(path, trail);
    if (!sources.includes(path)) continue;
    for (const one of importsOf(parseSource(path))) if (one.path !== null && !one.typeOnly) queue.push([one.path, `${trail} -> ${one.path}`]);
  }
  expect([...reached].filter(([path]) => ['build', 'records', 'commands'].includes(roomOf(path)) || path.endsWith('.astro')).map(([, trail]) => trail)).toEqual([]);
});

test('every package that the project imports is declared in package.json, not borrowed from another package', async () => {
  const { dependencies, devDependencies } = (await import('../../../package.json', { with: { type: 'json' } })).default;
  const declared = new Set([...Object.keys(dependencies), ...Object.keys(devDependencies)]);
  const nameOf = (from: string) => from.split('/').slice(0, from.startsWith('@') ? 2 : 1).join('/');
  const files = [...sources, ...filesUnder('tests').filter((path) => /\.tsx?$/.test(path))];
  const borrowed = files.flatMap((path) =>
    importsOf(parseSource(path))
      .filter((one) => one.path === null && !/^(?:node:|astro:)/.test(one.from) && !declared.has(nameOf(one.from)))
      .map((one) => `${path}:${one.line}: "${nameOf(one.from)}" is not in package.json. Add it with its exact version.`),
  );
  expect(borrowed).toEqual([]);
});

test.each([
  ['src/numerics/a.ts', "import { b } from '../evidence/b.ts';", 'src/numerics/a.ts:1: numerics/ may not use evidence/.'],
  ['src/evidence/a.ts', "\nimport { b } from '../records/schema.ts';", 'src/evidence/a.ts:2: evidence/ may not use records/ except by `import type`.'],
  ['src/evidence/a.ts', "export { c, type B } from '../strength/b.ts';", 'src/evidence/a.ts:1: evidence/ may not use strength/ except by `import type`.'],
  ['src/strength/a.ts', "import { readFileSync } from 'node:fs';", 'src/strength/a.ts:1: strength/ may not use the package "node:fs".'],
  ['src/links/a.ts', "const b = await import('../build/b.ts');", 'src/links/a.ts:1: links/ may not use build/.'],
  ['src/islands/a.tsx', "import { records } from '../build/records.ts';", 'src/islands/a.tsx:1: islands/ may not use build/ except by `import type`.'],
  ['src/records/a.ts', "import type { Row } from '../strength/types.ts';", 'src/records/a.ts:1: records/ may not use strength/.'],
  ['src/layouts/A.astro', "---\nimport x from '../commands/x.ts';\n---\n<p>x</p>", 'src/layouts/A.astro:2: layouts/ may not use commands/.'],
  ['src/tools/a.ts', '', `src/tools/a.ts: the house has no room "tools". Put the file in one of ${Object.keys(ROOMS).join(', ')}.`],
])('an import against the arrows is found: %s', (path, text, message) => {
  expect(crossings(path, text)).toEqual([message]);
});

test.each([
  ['src/evidence/a.ts', "import type { Value } from '../records/schema.ts';"],
  ['src/evidence/a.ts', "import { type Value, type Unit } from '../records/schema.ts';"],
  ['src/strength/a.ts', "import { pool } from '../evidence/pool.ts';\nimport { b } from './b.ts';"],
])('an import along the arrows passes: %s', (path, text) => {
  expect(crossings(path, text)).toEqual([]);
});

test.each([
  ['const now = Date.now();', 'Date.now'],
  ['const today = new Date();', 'new Date()'],
  ['export const draw = () => Math.random();', 'Math.random'],
  ["document.querySelector('a');", 'document.querySelector'],
  ['if (typeof window !== "undefined") {}', 'window'],
  ["const r = await fetch('/x');", 'fetch'],
  ['const h = { at: location.href };', 'location.href'],
  ['export const zone = process.env.TZ;', 'process.env'],
])('a reach outside is found in an engine: %s', (text, name) => {
  expect(impurities('src/strength/a.ts', text)).toEqual([`src/strength/a.ts:1: strength/ may not use ${name}; take what it gives as an argument.`]);
});

test.each([
  ['export function on(date: string): Date { return new Date(date); }'],
  ['export interface Fault { location: string; window: number } export const f = (x: Fault) => x.window;'],
  ['const location = 3; export const place = { document: location };'],
])('a name that only looks like one passes: %s', (text) => {
  expect(impurities('src/strength/a.ts', text)).toEqual([]);
});
