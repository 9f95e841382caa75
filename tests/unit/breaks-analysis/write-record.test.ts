/** A record made on the page passes the project's own check, read back from its three files; what is missing is named. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { JOINED_RULES } from '../../../src/build/record-rules/joined-rules.ts';
import { copyProject } from '../../../src/commands/bench-copy.ts';
import { type RecordWords, writeRecord } from '../../../src/components/breaks-analysis/write-record.ts';
import { checkProject } from '../../../src/records/check-project.ts';
import { ROOT } from '../../support/step.ts';

/** Invented: the outing club of a fictional university. */
const WORDS: RecordWords = {
  id: 'club-girth-wire', what: 'Girth hitch on a wire, by the outing club', called: 'the girth hitch', part: 'the sling', authors: 'Outing club; Gear room', title: 'Pulls: "first" evening', day: '2026-10-14',
  method: 'girth-hitch', form: 'sewn-loop', material: 'hmpe', widthMm: '10', diameterMm: '', bearing: 'bare-wire', bearingMm: '3,8', legs: '2', state: 'new', pull: 'slow', machine: 'Hand pump: ram',
  rateMmPerMin: '', capacityKn: '50', calibrated: '', samplesPerSecond: '', conditioning: '', oneLot: 'yes', rigs: 'one for each pull', note: '',
};
const PULLS = [{ force: 11.2, atLeast: false, mode: 'broke at the wire', link: 'sling' }, { force: 12, atLeast: true, mode: 'pulled out', link: 'eye' }];
const folder = mkdtempSync(join(tmpdir(), 'record-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('with every field said nothing is missing, and the whole project with it has no fault', () => {
  const { files, missing } = writeRecord(WORDS, PULLS, 'kN', ['', 'see: photograph'], '2026-11-25');
  expect(missing).toEqual([]);
  copyProject(ROOT, folder);
  for (const { path, text } of files) writeFileSync(join(folder, path), text);
  const faults = checkProject(folder, JOINED_RULES);
  expect(faults.map(({ subject, problem, got }) => `${subject}: ${problem} (${got})`)).toEqual([]);
});

test('what is missing or unreadable is named by its field, with what to write', () => {
  const { missing } = writeRecord({ ...WORDS, id: 'Club One', day: '14.10.2026', legs: '2,5', machine: '', bearingMm: 'thin' }, PULLS, 'kN', [], '2026-11-25');
  expect(missing).toEqual([
    { field: 'machine', why: 'not said yet' },
    { field: 'id', why: 'small letters, digits and hyphens, such as club-girth-wire' },
    { field: 'day', why: 'a day such as 2026-10-14' },
    { field: 'bearingMm', why: 'a plain number above nothing' },
    { field: 'legs', why: 'a whole number of strands' },
  ]);
});
