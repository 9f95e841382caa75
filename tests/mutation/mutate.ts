/**
 * `npm run mutate -- <room or file> [--changed]`: changes the engines in small ways, one at a time, and looks which
 * changes no test notices. Without a name it takes all rooms, one after another. `--changed` keeps what the last run
 * found for code and tests that are still the same.
 *
 * Prints for each file how many changes were made and how many were noticed. A change that nobody noticed and that
 * survivors.yaml does not list is printed with its place. Ends with 1 where there is one, or where a room falls below
 * the goal.
 */
import { readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { ROOT } from '../support/step.ts';
import { acceptedSurvivors, type Change, nameOfChange } from './survivors.ts';

const ROOMS = ['numerics', 'break-tests', 'strength'];
/** Share of changes that the tests must notice, in hundredths. */
const GOAL = 90;
/** Copies of the project and reports of a run; never committed. */
const FOLDER = '.mutation';

/** What became of the changes of one file. */
interface Score {
  made: number;
  noticed: number;
}

const percent = ({ made, noticed }: Score): string => (made === 0 ? '' : `${((100 * noticed) / made).toFixed(1)} %`);

const row = (name: string, score: Score): string =>
  `${name.padEnd(46)} ${String(score.made).padStart(6)} ${String(score.noticed).padStart(8)} ${percent(score).padStart(8)}`;

/** Changes one room, prints the table, and says whether it passes. */
async function mutateRoom(room: string, pattern: string, changedOnly: boolean): Promise<boolean> {
  process.env['MUTATED_ROOM'] = room;
  const results = await new Stryker({
    mutate: [pattern],
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
    plugins: ['@stryker-mutator/vitest-runner', './tests/mutation/messages.ts'],
    ignorers: ['messages'],
    coverageAnalysis: 'perTest',
    concurrency: 2,
    incremental: changedOnly,
    incrementalFile: `${FOLDER}/${room}.json`,
    tempDirName: `${FOLDER}/copies`,
    ignorePatterns: ['dist', '.astro', 'test-results', FOLDER, 'public', 'content'],
    reporters: [process.stdout.isTTY ? 'progress' : 'progress-append-only'],
    allowConsoleColors: false,
  }).runMutationTest();

  const accepted = new Map<string, number>();
  for (const { file, changes } of acceptedSurvivors()) {
    for (const change of changes) accepted.set(`${file}: ${change}`, (accepted.get(`${file}: ${change}`) ?? 0) + 1);
  }
  const scores = new Map<string, Score>();
  const unlisted: string[] = [];
  let listed = 0;
  for (const result of results) {
    const noticed = result.status === 'Killed' || result.status === 'Timeout';
    if (!noticed && result.status !== 'Survived' && result.status !== 'NoCoverage') continue;
    const file = relative(ROOT, result.fileName).split(sep).join('/');
    const score = scores.get(file) ?? { made: 0, noticed: 0 };
    scores.set(file, { made: score.made + 1, noticed: score.noticed + (noticed ? 1 : 0) });
    if (noticed) continue;
    const change = nameOfChange(readFileSync(join(ROOT, file), 'utf8'), result as Change);
    const left = accepted.get(`${file}: ${change}`) ?? 0;
    accepted.set(`${file}: ${change}`, left - 1);
    if (left > 0) listed++;
    else unlisted.push(`${file}:${result.location.start.line} ${result.mutatorName}${result.status === 'NoCoverage' ? ', no test comes here' : ''}\n  ${change}`);
  }

  console.log(`\n${'file'.padEnd(46)} ${'made'.padStart(6)} ${'noticed'.padStart(8)} ${'score'.padStart(8)}`);
  const total: Score = { made: 0, noticed: 0 };
  for (const [file, score] of [...scores].sort(([a], [b]) => (a < b ? -1 : 1))) {
    console.log(row(file, score));
    total.made += score.made;
    total.noticed += score.noticed;
  }
  console.log(row(room, total));
  console.log(`\n${listed} not noticed and listed in tests/mutation/survivors.yaml, ${unlisted.length} not listed`);
  for (const line of unlisted) console.log(line);
  for (const [change, left] of accepted) {
    const file = change.slice(0, change.indexOf(': '));
    if (left > 0 && scores.has(file)) console.log(`Listed, yet noticed or gone: ${change}. Take it out of survivors.yaml.`);
  }
  return unlisted.length === 0 && 100 * total.noticed >= GOAL * total.made;
}

const words = process.argv.slice(2);
const names = words.filter((word) => !word.startsWith('--'));
let passed = true;
for (const name of names.length > 0 ? names : ROOMS) {
  const [room = '', file] = name.split('/');
  if (!ROOMS.includes(room)) {
    console.error(`No room of this name is tried (got ${name}). Name one of ${ROOMS.join(', ')}, or a file in it: numerics/roots.`);
    process.exit(2);
  }
  const pattern = `src/${room}/${file ? file.replace(/\.ts$/, '') : '**/*'}.ts`;
  passed = (await mutateRoom(room, pattern, words.includes('--changed'))) && passed;
}
process.exitCode = passed ? 0 : 1;
