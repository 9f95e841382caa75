/**
 * The mutation tool's way to our tests. A first run with the tool's counters finds which test reaches which change, a
 * second without them how long each test takes. A change is then tried against the tests that reach it, quick ones
 * first, and the first failure ends the try.
 */
import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { SLOW, TESTS } from './tests-of-rooms.ts';
import type { Answer, Ask, Setting } from './try.ts';

/** Processor time that one test may take before it counts as endless: so many seconds, and times what it took unchanged. */
const PATIENCE_S = 1;
const PATIENCE_TIMES = 5;
/** The same of loading a file of tests. */
const PATIENCE_LOADING_S = 10;
/** After so many tries the thread starts anew, as loaded code is never freed. */
const TRIES_A_THREAD = 300;

interface Position {
  readonly line: number;
  readonly column: number;
}

interface Mutant {
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement: string;
  readonly location: { readonly start: Position; readonly end: Position };
}

/** Where a place of a text begins; lines and columns count from 0. */
const offset = (lines: readonly string[], { line, column }: Position): number =>
  lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + column;

/** The text with the change made. In brackets where it is an expression, so that its neighbours bind as before. */
export function changedText(source: string, { replacement, mutatorName, location }: Omit<Mutant, 'fileName'>): string {
  const lines = source.split('\n');
  const plain = mutatorName === 'BlockStatement' || replacement === ';' || /^(?:case|default)\b/.test(replacement);
  return source.slice(0, offset(lines, location.start)) + (plain ? replacement : `(${replacement})`) + source.slice(offset(lines, location.end));
}

interface Coverage {
  readonly static: Readonly<Record<string, number>>;
  readonly perTest: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const fileOf = (id: string): string => id.slice(0, id.indexOf('#'));

/** A test may rest on what an earlier one of its file has worked out and kept: what one reaches counts for all of its file. */
function byFile({ static: always, perTest }: Coverage, ids: readonly string[]): Coverage {
  const ofFile = new Map<string, Record<string, number>>();
  for (const [id, reached] of Object.entries(perTest)) ofFile.set(fileOf(id), { ...ofFile.get(fileOf(id)), ...reached });
  return { static: always, perTest: Object.fromEntries(ids.map((id) => [id, ofFile.get(fileOf(id)) ?? {}])) };
}

class Runner {
  readonly room = process.env['MUTATED_ROOM'] ?? '';
  readonly file = process.env['MUTATED_FILE'] ?? '';
  readonly testFiles: string[] = (TESTS[this.room] ?? []).flatMap((name) => globSync(`tests/${name}.test.ts`))
    .filter((path) => !('MUTATED_QUICKLY' in process.env && SLOW.some((name) => path.endsWith(`/${name}.test.ts`))))
    .sort();
  readonly ms = new Map<string, number>();
  /** What the thread tells: how many tests of a try are done; and a count that is odd while it loads a file. */
  readonly done = new Int32Array(new SharedArrayBuffer(8));
  thread: Worker | undefined;
  tries = 0;

  capabilities(): { reloadEnvironment: boolean } {
    return { reloadEnvironment: true };
  }

  /** The thread's answer, or undefined where a test ran without end. */
  ask(ask: Ask, patienceS: (id: string | undefined) => number): Promise<Answer | undefined> {
    if (this.tries++ % TRIES_A_THREAD === 0) this.end();
    const setting: Setting = { root: process.cwd(), file: this.file, testFiles: this.testFiles, done: this.done.buffer };
    this.done.fill(0);
    const thread = this.thread ?? new Worker(new URL('./try.ts', import.meta.url), { workerData: setting });
    this.thread = thread;
    return new Promise((resolve, reject) => {
      let before = process.cpuUsage();
      let at = 0;
      let loaded = 0;
      const done = (then: () => void): void => {
        clearInterval(watch);
        thread.off('message', answered);
        thread.off('error', failed);
        then();
      };
      const answered = (answer: Answer): void => done(() => resolve(answer));
      const failed = (error: Error): void => {
        this.thread = undefined;
        done(() => reject(error));
      };
      const watch = setInterval(() => {
        const now = Atomics.load(this.done, 0);
        const loads = Atomics.load(this.done, 1);
        if (now !== at || loads !== loaded) before = process.cpuUsage();
        at = now;
        loaded = loads;
        const { user, system } = process.cpuUsage(before);
        if (user + system < 1e6 * Math.max(patienceS(ask.tests?.[at]), loaded === 0 || loaded % 2 === 1 ? PATIENCE_LOADING_S : 0)) return;
        this.end();
        done(() => resolve(undefined));
      }, 200);
      thread.on('message', answered);
      thread.on('error', failed);
      thread.postMessage(ask);
    });
  }

  end(): void {
    void this.thread?.terminate();
    this.thread = undefined;
  }

  async dryRun(): Promise<unknown> {
    const counted = await this.ask({ text: readFileSync(this.file, 'utf8'), counting: true }, () => 600);
    const timed = await this.ask({ text: this.original(), counting: false }, () => 600);
    const broken = !counted || !timed ? 'the tests take more than ten minutes' : (counted.broken ?? timed.broken);
    if (!counted || !timed || broken) return { status: 'error', errorMessage: broken };
    for (const { id, ms } of timed.outcomes) this.ms.set(id, ms);
    writeFileSync(Runner.TIMES, JSON.stringify([...this.ms]));
    return {
      status: 'complete',
      mutantCoverage: byFile((counted.coverage ?? { static: {}, perTest: {} }) as Coverage, timed.outcomes.map(({ id }) => id)),
      tests: [...counted.outcomes.filter(({ failure }) => failure !== undefined), ...timed.outcomes].map(({ id, failure }) => ({
        id, name: id, timeSpentMs: 0, fileName: join(process.cwd(), fileOf(id)),
        ...(failure === undefined ? { status: 0 } : { status: 1, failureMessage: failure }),
      })),
    };
  }

  original(): string {
    return readFileSync(new URL(`../../${this.file}`, import.meta.url), 'utf8');
  }

  /** How long each test takes unchanged, for the tool's second process, which has no first run of its own. */
  static readonly TIMES = 'times-of-tests.json';

  async mutantRun({ testFilter, activeMutant }: { testFilter?: string[]; activeMutant: Mutant }): Promise<unknown> {
    if (this.ms.size === 0) for (const [id, ms] of JSON.parse(readFileSync(Runner.TIMES, 'utf8')) as [string, number][]) this.ms.set(id, ms);
    const took = (id: string): number => this.ms.get(id) ?? 0;
    // Files as a whole, since each has to be loaded: the one with the quickest tests first.
    const byFile = Map.groupBy(testFilter ?? [...this.ms.keys()], fileOf);
    const sum = (ids: readonly string[]): number => ids.reduce((total, id) => total + took(id), 0);
    const tests = [...byFile.values()].sort((a, b) => sum(a) - sum(b)).flatMap((ids) => ids.toSorted((a, b) => took(a) - took(b)));
    const answer = await this.ask({ text: changedText(this.original(), activeMutant), tests, counting: false }, (id) => PATIENCE_S + (PATIENCE_TIMES * took(id ?? '')) / 1000);
    if (!answer) return { status: 'timeout' };
    if (answer.broken) return { status: 'error', errorMessage: answer.broken };
    const failed = answer.outcomes.find(({ failure }) => failure !== undefined);
    return failed
      ? { status: 'killed', killedBy: failed.id === 'loading' ? tests.slice(0, 1) : [failed.id], failureMessage: failed.failure, nrOfTests: answer.outcomes.length }
      : { status: 'survived', nrOfTests: answer.outcomes.length };
  }

  async dispose(): Promise<void> {
    this.end();
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'threads', injectableClass: Runner }];
