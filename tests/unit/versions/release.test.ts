/** What stands against a release, in its exact words; and the command itself on a small project in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { changesBetween } from '../../../src/build/versions/changes.ts';
import { MODEL } from '../../../src/build/evidence.ts';
import { nextVersion, refusal, type Release } from '../../../src/build/versions/release.ts';
import { hashOf, listText, listedVersions, type FrozenVersion, type VersionEntry } from '../../../src/build/versions/versions.ts';
import { SOUND } from '../../records/project.ts';

const index = (...versions: string[]): VersionEntry[] => versions.map((version) => ({ version, model: 1, sha256: '' }));

describe('the name of a version', () => {
  test.each<[string, VersionEntry[], string]>([
    ['2026-12-01', [], '2026-12-01.1'],
    ['2026-12-01', index('2026-11-25.1', '2026-11-25.2'), '2026-12-01.1'],
    ['2026-11-25', index('2026-11-25.1', '2026-11-25.2'), '2026-11-25.3'],
    ['2028-02-29', index('2026-11-25.1'), '2028-02-29.1'],
  ])('is its day %s and a count', (day, versions, expected) => {
    expect(nextVersion(day, versions)).toBe(expected);
  });

  const SAY = 'say the day of the version as yyyy-mm-dd, for example: npm run release -- 2026-11-25';
  test.each<[string | undefined, string]>([
    [undefined, SAY],
    ['', SAY],
    ['tomorrow', `${SAY} (got tomorrow)`],
    ['2026-02-29', `${SAY} (got 2026-02-29)`],
    ['2026-12-1', `${SAY} (got 2026-12-1)`],
    ['2026-11-24', '2026-11-24 is before the newest version 2026-11-25.1. Give that day or a later one.'],
  ])('%s is refused', (day, message) => {
    expect(() => nextVersion(day, index('2026-11-25.1'))).toThrow(new RangeError(message));
  });
});

describe('a release', () => {
  const frozen = (version: string, model: number, slings: object): FrozenVersion =>
    ({ evidence: { version, model, figures: {}, factors: {}, classes: {}, methods: {}, slings, gaps: {}, rules: {} }, answers: {} }) as unknown as FrozenVersion;
  const against = (was: number | null, now: number, { slings = { hmpe: {} }, ...more }: Partial<Release> & { slings?: object } = {}) => refusal({
    changes: changesBetween(was === null ? null : frozen('2026-11-25.1', was, {}), frozen('2026-12-01.1', now, slings)),
    words: null, answersReplay: true, ...more,
  });
  const FILE = 'data/changes/2026-12-01.1.yaml';

  test.each<[string, string | null]>([
    ['the first', against(null, 1)],
    ['one with changes of the same model', against(1, 1)],
    ['one with reasons', against(1, 1, { words: { says: ['A new edition.'] } })],
    ['a raised model that says why', against(1, 2, { words: { model: 'Legs share unevenly.', says: [] }, answersReplay: false })],
    ['a raised model alone', against(1, 2, { words: { model: 'Legs share unevenly.', says: [] }, slings: {} })],
  ])('of %s is not refused', (_what, refused) => {
    expect(refused).toBeNull();
  });

  test.each<[string, string | null, string]>([
    ['a raised model without a word', against(1, 2), `the model number goes from 1 to 2, and nobody says why. Write ${FILE} with model: what is computed otherwise, and why.`],
    ['a raised model with other words', against(1, 2, { words: { says: ['A new edition.'] } }), `the model number goes from 1 to 2, and nobody says why. Write ${FILE} with model: what is computed otherwise, and why.`],
    ['words of another model without one', against(1, 1, { words: { model: 'Legs share unevenly.', says: [] } }), `${FILE} speaks of another model, and the model number is 1 as before. Raise MODEL in src/build/evidence.ts, or take the line out.`],
    ['words of another model in the first version', against(null, 1, { words: { model: 'Legs share unevenly.', says: [] } }), `${FILE} speaks of another model, and the model number is 1, the first. Raise MODEL in src/build/evidence.ts, or take the line out.`],
    ['a model that goes back', against(3, 2), 'the model number goes back from 3 to 2. It only ever goes up.'],
    ['other answers from the same evidence', against(1, 1, { answersReplay: false }), `the evidence of 2026-11-25.1 gives other answers today than were frozen with it, and the model number is still 1. If that is meant, raise MODEL in src/build/evidence.ts and say why in ${FILE}; otherwise the code is wrong.`],
    ['nothing new', against(1, 1, { slings: {} }), 'nothing has changed since 2026-11-25.1, so there is nothing to release.'],
  ])('of %s is refused', (_what, refused, message) => {
    expect(refused).toBe(message);
  });
});

describe('the command', () => {
  const COMMAND = fileURLToPath(new URL('../../../src/commands/release.ts', import.meta.url));
  const STRAIGHT = 'data/figures/lab-a/straight.yaml';
  let root = '';
  const write = (file: string, text: string) => {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  };
  const read = (file: string) => readFileSync(join(root, file), 'utf8');
  const run = (...words: string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...words], { cwd: root, encoding: 'utf8' });
    return { status, out: stdout, err: stderr };
  };
  const edit = (file: string, from: string, to: string) => {
    expect(read(file).split(from)).toHaveLength(2);
    write(file, read(file).replace(from, to));
  };
  /** A version as another program would have frozen it: its file, and the hash that the index keeps of it. */
  const refreeze = (file: string, text: string) => {
    const hash = hashOf(read(file));
    write(file, text);
    edit('data/versions/index.json', hash, hashOf(text));
  };
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'release-'));
    for (const [file, text] of Object.entries(SOUND)) write(file, text);
  });
  afterEach(() => { rmSync(root, { recursive: true, force: true }); });

  test('freezes the first version, then a changed one with a list that the frozen files give again', () => {
    // Three figures feed the sound project's factors, one is a floor and one stands behind its rule; ten ratings on two eyes for its one sling.
    expect(run('2026-12-01')).toEqual({ status: 0, out: 'Frozen 2026-12-01.1: 5 figures, 20 prebuilt comparisons.\nWhat changed is in data/changes/2026-12-01.1.json. Reasons may be added in data/changes/2026-12-01.1.yaml.\n', err: '' });
    const first = read('data/versions/2026-12-01.1.json');
    expect(JSON.parse(read('data/versions/index.json'))).toEqual([{ version: '2026-12-01.1', model: MODEL, sha256: hashOf(first) }]);

    expect(run('2026-12-01')).toEqual({ status: 1, out: '', err: 'release: nothing has changed since 2026-12-01.1, so there is nothing to release.\n' });

    edit(STRAIGHT, '24.1', '25.1');
    write('CITATION.cff', 'title: Slings\nversion: "2026-12-01.1"\ndate-released: "2026-12-01"\n');
    write('data/figures/lab-a/old.yaml', 'kind: withdrawn\non: "2026-12-01"\nwhy: The load cell was out of order.\nwas: strength of a knot\n');
    write('data/changes/2026-12-01.2.yaml', 'says: [A pull was read again.]\n');
    expect(run('2026-12-01')).toEqual({ status: 0, out: 'Frozen 2026-12-01.2: 5 figures, 20 prebuilt comparisons.\nWhat changed is in data/changes/2026-12-01.2.json. The reasons are in data/changes/2026-12-01.2.yaml.\n', err: '' });
    expect(read('data/versions/2026-12-01.1.json')).toBe(first);
    expect(JSON.parse(read('data/versions/index.json'))).toHaveLength(2);
    expect(read('CITATION.cff')).toBe('title: Slings\nversion: "2026-12-01.2"\ndate-released: "2026-12-01"\n');

    const listed = listedVersions(root);
    expect(listed.map(({ version, words }) => [version, words])).toEqual([['2026-12-01.2', { says: ['A pull was read again.'] }], ['2026-12-01.1', null]]);
    for (const { version, changes } of listed) expect(read(`data/changes/${version}.json`)).toBe(listText(changes));
    const [{ changes }] = listed as [typeof listed[number]];
    expect(changes.withdrawn).toEqual([{ id: 'lab-a/old', on: '2026-12-01', why: 'The load cell was out of order.', was: 'strength of a knot', read: [] }]);
    expect(changes.records.figures.changed[0]).toMatchObject({ id: 'lab-a/straight', fields: [{ field: 'seen' }, { field: 'value', was: { tests: [22.5, 23.5, 24.1] }, now: { tests: [22.5, 23.5, 25.1] } }] });

    write('data/changes/2026-12-01.1.json', '{}');
    expect(run('lists')).toEqual({ status: 0, out: 'Written from the frozen files: 2 lists in data/changes/.\n', err: '' });
    for (const { version, changes: again } of listed) expect(read(`data/changes/${version}.json`)).toBe(listText(again));
  });

  test('freezes nothing while the records have faults', () => {
    edit(STRAIGHT, 'locator: table 1\n', '');
    const { status, out, err } = run('2026-12-01');
    expect([status, out]).toEqual([1, '']);
    expect(err).toMatch(/^release: the records have faults, and a frozen file is never changed again\.\n\nstanding-has-locator \(1 fault\)\n/);
    expect(existsSync(join(root, 'data/versions'))).toBe(false);
  });

  test('freezes no raised model of which nobody speaks', () => {
    run('2026-12-01');
    // The frozen version is made to be of the model before.
    const text = read('data/versions/2026-12-01.1.json').replace(`"model":${MODEL}`, `"model":${MODEL - 1}`);
    refreeze('data/versions/2026-12-01.1.json', text);
    expect(run('2026-12-02')).toEqual({ status: 1, out: '', err: `release: the model number goes from ${MODEL - 1} to ${MODEL}, and nobody says why. Write data/changes/2026-12-02.1.yaml with model: what is computed otherwise, and why.\n` });
    write('data/changes/2026-12-02.1.yaml', 'model: Legs share unevenly.\n');
    expect(run('2026-12-02').status).toBe(0);
    expect(listedVersions(root)[0]?.changes).toMatchObject({ model: MODEL, since: { version: '2026-12-01.1', model: MODEL - 1 } });
  });

  test('freezes nothing where the code gives other answers and the model is the same', () => {
    run('2026-12-01');
    const text = read('data/versions/2026-12-01.1.json');
    const at = text.indexOf('"attachment":["') + '"attachment":["'.length;
    refreeze('data/versions/2026-12-01.1.json', `${text.slice(0, at)}9${text.slice(at)}`);
    const { status, err } = run('2026-12-02');
    expect(status).toBe(1);
    expect(err).toMatch(/^release: the evidence of 2026-12-01\.1 gives other answers today than were frozen with it, and the model number is still \d+\./);
  });
});
