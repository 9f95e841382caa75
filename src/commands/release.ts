/**
 * `npm run release -- <date>`: freezes the evidence as `data/versions/<date>.<n>.json`, adds its hash to the index, and
 * writes what changed since the version before to `data/changes/<date>.<n>.json`. The date is an input (yyyy-mm-dd):
 * nothing here reads the clock. A frozen file is never changed again.
 * `CITATION.cff` then names that version and its day.
 * `npm run release -- lists` writes all lists of changes again from the frozen files.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { changesBetween } from '../build/versions/changes.ts';
import { citationFile } from '../build/downloads/citation.ts';
import { ROOT, loadEvidence } from '../build/evidence.ts';
import { JOINED_RULES } from '../build/record-rules/joined-rules.ts';
import { nextVersion, refusal } from '../build/versions/release.ts';
import {
  dayOf, type FrozenVersion, frozenVersion, goneFigures, hashOf, listedVersions, listFile, listText, prebuiltAnswers, readVersion, readVersionWords,
  versionIndex, wordsFile,
} from '../build/versions/versions.ts';
import { checkProject } from '../records/check-project.ts';
import { formatReport } from '../records/fault.ts';
import { readAll } from '../records/read.ts';

try {
  if (process.argv[2] === 'lists') writeLists();
  else release(process.argv[2]);
} catch (error) {
  if (!(error instanceof RangeError)) throw error;
  console.error(`release: ${error.message}`);
  process.exitCode = 1;
}

function release(day: string | undefined): void {
  const index = versionIndex();
  const version = nextVersion(day, index);
  const faults = checkProject(ROOT, JOINED_RULES);
  if (faults.some((fault) => !fault.warning)) throw new RangeError(`the records have faults, and a frozen file is never changed again.\n\n${formatReport(faults)}`);
  const newest = index.at(-1);
  const older = newest ? readVersion(newest.version) : null;
  const newer = frozenVersion({ ...loadEvidence(), version }, goneFigures(readAll(ROOT)));
  const changes = changesBetween(older, newer);
  const words = readVersionWords(version);
  const against = refusal({ changes, words, answersReplay: replays(older) });
  if (against) throw new RangeError(against);

  const text = `${JSON.stringify(newer)}\n`;
  for (const folder of ['data/versions', 'data/changes']) mkdirSync(join(ROOT, folder), { recursive: true });
  writeFileSync(join(ROOT, 'data/versions', `${version}.json`), text, { flag: 'wx' });
  writeFileSync(join(ROOT, listFile(version)), listText(changes), { flag: 'wx' });
  writeFileSync(join(ROOT, 'data/versions/index.json'), `${JSON.stringify([...index, { version, model: newer.evidence.model, sha256: hashOf(text) }], null, 2)}\n`);
  const cff = join(ROOT, 'CITATION.cff');
  if (existsSync(cff)) writeFileSync(cff, citationFile(readFileSync(cff, 'utf8'), { version, day: dayOf(version) }));
  console.log(`Frozen ${version}: ${Object.keys(newer.evidence.figures).length} figures, ${Object.keys(newer.answers).length} prebuilt comparisons.`);
  console.log(`What changed is in ${listFile(version)}. ${words ? `The reasons are in ${wordsFile(version)}.` : `Reasons may be added in ${wordsFile(version)}.`}`);
}

/** Whether today's engine gives a frozen evidence its frozen answers. An evidence that it cannot read gets none. */
function replays(frozen: FrozenVersion | null): boolean {
  if (!frozen) return true;
  try {
    return JSON.stringify(prebuiltAnswers(frozen.evidence)) === JSON.stringify(frozen.answers);
  } catch {
    return false;
  }
}

function writeLists(): void {
  mkdirSync(join(ROOT, 'data/changes'), { recursive: true });
  const listed = listedVersions();
  for (const { version, changes } of listed) writeFileSync(join(ROOT, listFile(version)), listText(changes));
  console.log(`Written from the frozen files: ${listed.length} lists in data/changes/.`);
}
