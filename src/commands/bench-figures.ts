/**
 * The record check and the build of a site with thousands of figures more and a thousand comparisons, in a copy of the
 * project: time and memory.
 *
 * Every synthetic figure takes one of the measured figures as its pattern: its conditions, its form of value, its unit.
 * Its numbers are a little smaller. It stands in the lists of the factors in which its pattern stands. So a site that has
 * grown to this size is measured with as large a share of figures that feed the model as today. Nothing of it is kept.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseDocument, stringify, type YAMLSeq } from 'yaml';
import { type Records, readAll, type ResolvedFigure } from '../records/read.ts';
import type { Value } from '../records/schema.ts';
import { EYE_IDS } from '../links/rig-keys.ts';
import { copyProject } from './bench-copy.ts';

const SOURCES = 500;
const FIGURES_OF_A_SOURCE = 10;
/** With five kinds of eye and twelve slings, a thousand comparisons. */
const COMPARED_RATINGS = 17;
/** Budgets of the design for a site of 5,000 figures, the record check included; and for every site, by page. */
const MOST_MILLISECONDS = 60_000;
const MOST_MEGABYTES = 2000;
const MOST_MS_A_PAGE = 30;

/** A measured time or memory, and the most that the design allows it. */
export type FiguresLine = { what: string; budget?: number } & ({ milliseconds: number } | { megabytes: number });

/** What a command took. Memory and processor time are those of all its processes together. */
interface Taken { milliseconds: number; processorMs: number; megabytes: number }

/** The check and the build of a copy with synthetic figures. Throws an Error with what was printed when one of them fails. */
export async function benchFigures(root: string): Promise<FiguresLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'second-sling-figures-'));
  try {
    const copy = join(folder, 'copy');
    mkdirSync(copy);
    copyProject(root, copy);
    const { written, feeding } = addFigures(copy);
    const comparisons = addComparisons(copy);
    const check = await take(copy, folder, ['src/commands/check.ts']);
    const build = await take(copy, folder, ['node_modules/astro/bin/astro.mjs', 'build', '--force']);
    const pages = readdirSync(join(copy, 'dist'), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html')).length;
    const more = written.toLocaleString('en');
    return [
      { what: `record check, ${more} figures more, of which ${feeding} feed the model`, milliseconds: check.milliseconds },
      { what: 'the same, processor time', milliseconds: check.processorMs },
      { what: 'the same, memory at most', megabytes: check.megabytes, budget: MOST_MEGABYTES },
      { what: `build of ${pages} pages, of which ${comparisons} comparisons, cold, its own record check included`, milliseconds: build.milliseconds },
      { what: 'the same, processor time', milliseconds: build.processorMs },
      { what: 'the same, memory at most', megabytes: build.megabytes, budget: MOST_MEGABYTES },
      { what: 'the same, by page', milliseconds: build.milliseconds / pages, budget: MOST_MS_A_PAGE },
      { what: `check and build, ${more} figures more`, milliseconds: check.milliseconds + build.milliseconds, budget: MOST_MILLISECONDS },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Has pages built in the copy for every kind of eye and for more ratings. Gives how many comparisons there are then. */
function addComparisons(copy: string): number {
  const path = join(copy, 'src/links/prebuilt-path.ts');
  const source = readFileSync(path, 'utf8');
  const ratings = Array.from({ length: COMPARED_RATINGS }, (_, at) => 4 + at);
  const grown = source.replace(/(PREBUILT_RATINGS_KN = )\[.*?\]/, `$1[${ratings.join(', ')}]`).replace(/(PREBUILT_EYES = )\[.*?\]/, `$1[${EYE_IDS.map((eye) => `'${eye}'`).join(', ')}]`);
  if (grown === source) throw new Error(`${path}: the lists of what is built were not found`);
  writeFileSync(path, grown);
  return ratings.length * EYE_IDS.length * readAll(copy).slings.size;
}

/** Every number of a value times `by`, to four digits; counts stay. */
function scaled(value: Value, by: number): Value {
  const turn = (x: number): number => Number((x * by).toPrecision(4));
  if (typeof value === 'number') return turn(value);
  if ('tests' in value) return { tests: value.tests.map(turn), ...(value.censored ? { censored: value.censored.map(turn) } : {}) };
  if ('mean' in value) return { ...value, mean: turn(value.mean), ...(value.sd === undefined ? {} : { sd: turn(value.sd) }) };
  if ('low' in value) return { ...value, low: turn(value.low), high: turn(value.high) };
  if ('atLeast' in value) return { ...value, atLeast: turn(value.atLeast) };
  if ('atMost' in value) return { ...value, atMost: turn(value.atMost) };
  return value;
}

/** Texts in quotes, so that a day stays a text. */
const asYaml = (record: object): string => stringify(record, { defaultStringType: 'QUOTE_DOUBLE', defaultKeyType: 'PLAIN', aliasDuplicateObjects: false });

/** A record of one value after a pattern. `run` counts from nought and decides how much smaller its numbers are. */
function figureAfter(pattern: ResolvedFigure, run: number): object {
  const { what, kind, of, rig, note, lowered } = pattern;
  const value = scaled(pattern.value as Value, 1 - ((run * 37) % 101) / 1010);
  const isInWords = typeof value === 'object' && 'statement' in value;
  return {
    what, kind, value, unit: isInWords ? undefined : pattern.unit, of, rig,
    standing: 'read', locator: `synthetic page ${run % FIGURES_OF_A_SOURCE + 1}`, checked: '2026-11-24', lowered, note,
  };
}

/** Writes synthetic sources and figures into the copy, and lists them in the factors. Gives how many, and how many of them feed. */
function addFigures(copy: string): { written: number; feeding: number } {
  const records = readAll(copy);
  const patterns = [...records.cells.values()].map(({ figure }) => figure).filter(({ kind, value }) => kind === 'measured' && value !== undefined);
  if (patterns.length === 0) throw new RangeError('records: none is measured, so there is no pattern');
  const copies = new Map<string, string[]>();
  for (let source = 1; source <= SOURCES; source += 1) {
    const name = `synthetic-source-${source}`;
    const record = { type: 'report', title: `Synthetic source ${source}`, authors: ['Synthetic laboratory'], issued: '2026', language: 'en', free: true, checked: '2026-11-24' };
    writeFileSync(join(copy, 'data/sources', `${name}.yaml`), asYaml(record));
    mkdirSync(join(copy, 'data/figures', name));
    for (let result = 0; result < FIGURES_OF_A_SOURCE; result += 1) {
      const run = (source - 1) * FIGURES_OF_A_SOURCE + result;
      const pattern = patterns[run % patterns.length] as ResolvedFigure;
      writeFileSync(join(copy, 'data/figures', name, `result-${result + 1}.yaml`), asYaml(figureAfter(pattern, run)));
      copies.set(pattern.id, [...(copies.get(pattern.id) ?? []), `${name}/result-${result + 1}`]);
    }
  }
  return { written: SOURCES * FIGURES_OF_A_SOURCE, feeding: listInFactors(copy, records, copies) };
}

/** Adds the copies of every figure that a factor lists to the same list; those that it reads something into are left out. */
function listInFactors(copy: string, { factors }: Records, copies: ReadonlyMap<string, readonly string[]>): number {
  const feeding = new Set<string>();
  for (const { file, data } of factors.values()) {
    const path = join(copy, file);
    const document = parseDocument(readFileSync(path, 'utf8'));
    const readInto = new Set(data.taken.map(({ figure }) => figure));
    const fed = data.from.filter((each) => !readInto.has(each)).flatMap((each) => copies.get(each) ?? []);
    const refused = [...readInto, ...data.leftOut.map(({ figure }) => figure)].flatMap((each) => copies.get(each) ?? []);
    for (const each of fed) {
      (document.get('from') as YAMLSeq).add(each);
      feeding.add(each);
    }
    if (refused.length > 0 && !document.has('leftOut')) document.set('leftOut', document.createNode([]));
    for (const figure of refused) (document.get('leftOut') as YAMLSeq).add(document.createNode({ figure, why: 'as its pattern' }));
    writeFileSync(path, document.toString());
  }
  return feeding.size;
}

/** A module that each process of a command loads first: at its end the process writes down what it used. */
const WITNESS = `import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeFileSync(new URL('used-' + process.pid + '.json', import.meta.url), JSON.stringify([maxRSS, userCPUTime + systemCPUTime]));
});
`;

/**
 * Runs a script of the copy. Its processes' largest memories are added up, though they need not have been reached at one
 * moment: the sum is never too small. A helper that is no Node process is not counted.
 */
async function take(copy: string, folder: string, script: readonly string[]): Promise<Taken> {
  const notes = mkdtempSync(join(folder, 'used-'));
  const witness = join(notes, 'witness.mjs');
  writeFileSync(witness, WITNESS);
  const from = performance.now();
  const child = spawn(process.execPath, [...script], {
    cwd: copy,
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', NODE_OPTIONS: `${process.env['NODE_OPTIONS'] ?? ''} --import=${pathToFileURL(witness).href}`.trim() },
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text: string) => { output += text; });
  const status = await new Promise<number | null>((ended, failed) => child.once('error', failed).once('close', ended));
  const milliseconds = performance.now() - from;
  if (status !== 0) throw new Error(`node ${script.join(' ')} failed:\n${output.slice(0, 20_000)}`);
  const used = readdirSync(notes).filter((name) => name.startsWith('used-')).map((name) => JSON.parse(readFileSync(join(notes, name), 'utf8')) as [number, number]);
  // Kilobytes of 1,024 bytes, and microseconds.
  const sum = (at: 0 | 1): number => used.reduce((total, each) => total + each[at], 0);
  return { milliseconds, processorMs: sum(1) / 1000, megabytes: (sum(0) * 1024) / 1e6 };
}
