/**
 * The thread in which changed code meets its tests. It loads only what depends on the changed file anew for each try, so
 * that a try takes as long as the tests themselves. The code runs as it is written, with one place changed: the tool's
 * own switches would make it ten times as slow.
 */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { registerHooks, stripTypeScriptTypes } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parentPort, workerData } from 'node:worker_threads';
import { type Collected, collect } from './harness.ts';

/** What is asked of the thread. */
export interface Ask {
  /** The text of the changed file: the tool's, the original, or one with a change. */
  readonly text: string;
  /** Ids of the tests that are run, in this order; all where none are named. */
  readonly tests?: readonly string[] | undefined;
  /** Counts which changes each test reaches, and goes on after a failure. */
  readonly counting: boolean;
}

/** What became of one test. */
export interface Outcome {
  readonly id: string;
  readonly ms: number;
  /** Why it failed; undefined where it passed. */
  readonly failure?: string | undefined;
}

/** What the thread answers. */
export interface Answer {
  readonly outcomes: readonly Outcome[];
  /** Why the changed text is no code at all. */
  readonly broken?: string | undefined;
  readonly coverage?: unknown;
}

/** What the thread is given at its start: the copy of the project, the file that is changed, the test files. */
export interface Setting {
  readonly root: string;
  readonly file: string;
  readonly testFiles: readonly string[];
  /** Where the thread counts the tests that it has done, and beginnings and ends of loading a file: odd while it loads. */
  readonly done: SharedArrayBuffer;
}

const setting = workerData as Setting;
const root = realpathSync(setting.root);
const changed = join(root, setting.file);
const HARNESS = new URL('./harness.ts', import.meta.url).href;
const texts = new Map<string, string>();
const done = new Int32Array(setting.done);
let text = '';
let round = 0;

const stripped = (path: string): string => {
  const known = texts.get(path);
  if (known !== undefined) return known;
  const made = stripTypeScriptTypes(readFileSync(path, 'utf8'));
  texts.set(path, made);
  return made;
};

/** The files of ours that a file loads when it is run. */
const loadedBy = (path: string): string[] =>
  [...stripped(path).matchAll(/^(?:import|export)\b[^;]*?from '(\.[^']+)'|^import '(\.[^']+)'/gm)]
    .map(([, from, alone]) => join(dirname(path), (from ?? alone) as string))
    .filter((target) => target.endsWith('.ts') && existsSync(target));

const dependent = new Map<string, boolean>();
/** Whether a file loads the changed one, itself or through others. */
function depends(path: string): boolean {
  const known = dependent.get(path);
  if (known !== undefined) return known;
  // A ring of imports ends here; none of ours has one.
  dependent.set(path, path === changed);
  const found = path === changed || loadedBy(path).some(depends);
  dependent.set(path, found);
  return found;
}

registerHooks({
  resolve(specifier, context, next) {
    if (specifier === 'vitest' && context.parentURL?.startsWith(pathToFileURL(root).href)) return { url: HARNESS, shortCircuit: true };
    const found = next(specifier, context);
    if (!found.url.startsWith('file:') || found.url.includes('?')) return found;
    const path = fileURLToPath(found.url);
    // Each file of tests gets code of its own, as under vitest: what one has worked out and kept is not there for the next.
    const own = context.parentURL?.match(/\?round=.*$/)?.[0];
    return own && path.startsWith(root) && path.endsWith('.ts') && !path.includes('node_modules') && depends(path) ? { ...found, url: `${found.url}${own}` } : found;
  },
  load(url, context, next) {
    if (!url.includes('?round=')) return next(url, context);
    const path = fileURLToPath(url.slice(0, url.indexOf('?')));
    return { format: 'module', source: path === changed ? text : stripped(path), shortCircuit: true };
  },
});

/** The switches and counters that the tool writes into a changed file. */
const tool: { mutantCoverage?: unknown; currentTestId?: string | undefined } = {};
Object.assign(globalThis, { __stryker__: tool });

async function run({ text: given, tests, counting }: Ask): Promise<Answer> {
  round++;
  const outcomes: Outcome[] = [];
  try {
    text = stripTypeScriptTypes(given);
  } catch (error) {
    return { outcomes, broken: String(error) };
  }
  const collected = new Map<string, Map<string, Collected>>();
  const load = async (file: string): Promise<Map<string, Collected>> => {
    const known = collected.get(file);
    if (known) return known;
    const path = join(root, file);
    Atomics.add(done, 1, 1);
    const made = new Map((await collect(() => import(`${pathToFileURL(path).href}?round=${round}-${collected.size}`))).map((one) => [`${file}#${one.name}`, one]));
    collected.set(file, made);
    Atomics.add(done, 1, 1);
    return made;
  };
  try {
    // What does not load the changed file cannot notice it.
    if (!tests) for (const file of setting.testFiles) if (depends(join(root, file))) await load(file);
    for (const id of tests ?? [...collected.values()].flatMap((ofFile) => [...ofFile.keys()])) {
      const one = (await load(id.slice(0, id.indexOf('#')))).get(id);
      if (!one) continue;
      const begun = performance.now();
      let failure: string | undefined;
      if (counting) tool.currentTestId = id;
      try {
        await one.run();
      } catch (error) {
        failure = String((error as Error | undefined)?.message ?? error).slice(0, 500);
      }
      tool.currentTestId = undefined;
      Atomics.add(done, 0, 1);
      outcomes.push({ id, ms: performance.now() - begun, failure });
      if (failure !== undefined && !counting) break;
    }
  } catch (error) {
    // Code that cannot be loaded fails every test.
    outcomes.push({ id: 'loading', ms: 0, failure: String((error as Error | undefined)?.stack ?? error).slice(0, 800) });
  }
  return { outcomes, coverage: counting ? tool.mutantCoverage : undefined };
}

for (const name of ['log', 'info', 'warn', 'error'] as const) console[name] = () => undefined;
parentPort?.on('message', async (ask: Ask) => parentPort?.postMessage(await run(ask)));
