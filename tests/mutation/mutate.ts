/**
 * `npm run mutate -- <room, file or lines> ... [--quick]`: changes the engines in small ways, one at a time, and looks
 * which changes no test notices. Without a name it takes all rooms, one after another; `numerics/roots:10-40` takes these
 * lines of a file. `--quick` leaves the slow tests out, so that more changes seem to go unnoticed than do.
 *
 * Prints for each file how many changes were made and how many were noticed. A change that nobody noticed and that
 * survivors.yaml does not list is printed with its place. Ends with 1 where there is one, or where a room falls below
 * the goal.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { ROOT } from '../support/step.ts';
import { filesUnder } from '../support/tree.ts';
import { acceptedSurvivors, type Change, nameOfChange } from './survivors.ts';

const ROOMS = ['numerics', 'evidence', 'strength', 'break-tests', 'retirement', 'links'];
/** Share of changes that the tests must notice, in hundredths. */
const GOAL = 90;
/** Copies of the project; never committed. */
const FOLDER = '.mutation';

/** One change, as the tool tells it. */
interface MutantResult extends Change {
  readonly status: string;
}

/** What became of the changes of a file or a room. */
interface Score {
  made: number;
  noticed: number;
  /** Not noticed, and listed with a reason. */
  listed: number;
}

const row = (name: string, { made, noticed, listed }: Score): string => {
  const score = made === 0 ? '' : `${((100 * noticed) / made).toFixed(1)} %`;
  return `${name.padEnd(42)} ${String(made).padStart(6)} ${String(noticed).padStart(8)} ${score.padStart(8)} ${String(listed).padStart(7)}`;
};

/** Changes one file, or some of its lines (`10-40`). One at a time, since the tool's counters make what they count ten times as slow. */
async function mutateFile(file: string, room: string, lines: string | undefined): Promise<Score> {
  process.env['MUTATED_ROOM'] = room;
  process.env['MUTATED_FILE'] = file;
  const results = (await new Stryker({
    mutate: [lines ? `${file}:${lines}` : file],
    testRunner: 'threads',
    plugins: ['./tests/mutation/runner.ts', './tests/mutation/messages.ts'],
    ignorers: ['messages'],
    coverageAnalysis: 'perTest',
    concurrency: 2,
    // The runner has a limit of its own, in processor time.
    timeoutMS: 600_000,
    tempDirName: `${FOLDER}/copies`,
    ignorePatterns: ['dist', '.astro', 'test-results', FOLDER, 'public', 'content'],
    // On a terminal it shows how far it is.
    reporters: process.stdout.isTTY ? ['progress'] : [],
    // An enum of the tool's own.
    logLevel: 'error' as never,
    allowConsoleColors: false,
  }).runMutationTest()) as readonly MutantResult[];

  return tellFile(file, results, lines === undefined);
}

/** Prints the row of one file, and under it each change that nobody noticed and no list accepts; of a whole file also what is listed in vain. */
function tellFile(file: string, results: readonly MutantResult[], isWhole: boolean): Score {
  const left = new Map<string, number>();
  for (const { file: of, changes } of acceptedSurvivors()) {
    if (of === file) for (const change of changes) left.set(change, (left.get(change) ?? 0) + 1);
  }
  const score: Score = { made: 0, noticed: 0, listed: 0 };
  const source = readFileSync(join(ROOT, file), 'utf8');
  const lines: string[] = [];
  for (const { status, location, replacement } of results) {
    const noticed = status === 'Killed' || status === 'Timeout';
    if (!noticed && status !== 'Survived' && status !== 'NoCoverage') continue;
    score.made++;
    if (noticed) {
      score.noticed++;
      continue;
    }
    const change = nameOfChange(source, { location, replacement });
    const accepted = left.get(change) ?? 0;
    if (accepted > 0) {
      left.set(change, accepted - 1);
      score.listed++;
    } else {
      lines.push(`  ${file}:${location.start.line} ${status === 'NoCoverage' ? 'no test comes here' : 'not noticed'}: ${change}`);
    }
  }
  for (const [change, times] of left) {
    if (isWhole && times > 0) lines.push(`  ${file}: noticed or gone, take it out of survivors.yaml: ${change}`);
  }
  console.log([row(file, score), ...lines].join('\n'));
  return score;
}

const words = process.argv.slice(2);
const names = words.filter((word) => !word.startsWith('--'));
if (words.includes('--quick')) {
  process.env['MUTATED_QUICKLY'] = '';
  console.log('Without the slow tests: each score is the least that it can be.');
}
let passed = true;
console.log(`${'file'.padEnd(42)} ${'made'.padStart(6)} ${'noticed'.padStart(8)} ${'score'.padStart(8)} ${'listed'.padStart(7)}`);
for (const name of names.length > 0 ? names : ROOMS) {
  const [room = '', one, range] = name.split(/[/:]/);
  const files = ROOMS.includes(room) ? filesUnder(`src/${room}`).filter((file) => !one || file === `src/${room}/${one.replace(/\.ts$/, '')}.ts`) : [];
  if (files.length === 0) {
    console.error(`Nothing of this name is tried (got ${name}). Name one of ${ROOMS.join(', ')}, a file of it (numerics/roots), or lines of one (numerics/roots:10-40).`);
    process.exit(2);
  }
  const total: Score = { made: 0, noticed: 0, listed: 0 };
  for (const file of files) {
    const score = await mutateFile(file, room, range);
    for (const key of ['made', 'noticed', 'listed'] as const) total[key] += score[key];
  }
  console.log(`${row(name, total)}\n`);
  passed &&= total.noticed + total.listed === total.made && 100 * total.noticed >= GOAL * total.made;
}
process.exitCode = passed ? 0 : 1;
