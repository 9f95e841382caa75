/** Frozen versions never change, and the newest one says what the engine says today, to the last digit shown. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MODEL, ROOT, loadEvidence } from '../../src/build/evidence.ts';
import { type FrozenVersion, hashOf, listedVersions, listFile, listText, prebuiltAnswers, versionIndex, versionText } from '../../src/build/versions/versions.ts';

const index = versionIndex();

test('every frozen file has the hash that the index gave it, and none is missing from the index', () => {
  expect(index.map(({ version }) => [version, hashOf(versionText(version))])).toEqual(index.map(({ version, sha256 }) => [version, sha256]));
  const files = readdirSync(`${ROOT}/data/versions`).filter((name) => name !== 'index.json').map((name) => name.replace(/\.json$/, ''));
  expect(files.sort()).toEqual(index.map((entry) => entry.version).sort());
});

test('one changed byte of a frozen file is noticed', () => {
  const { version, sha256 } = index.at(-1) as { version: string; sha256: string };
  const text = versionText(version);
  const at = text.length >> 1;
  expect(hashOf(`${text.slice(0, at)}${text[at] === '1' ? '2' : '1'}${text.slice(at + 1)}`)).not.toBe(sha256);
});

test('records that have changed since the newest version say so in the version that pages show', () => {
  const newest = index.at(-1)?.version ?? '';
  const frozen = JSON.parse(versionText(newest)) as FrozenVersion;
  const now = loadEvidence();
  const same = JSON.stringify({ ...now, version: newest }) === JSON.stringify(frozen.evidence);
  expect(now.version).toBe(same ? newest : `${newest}+`);
});

test('the model number never goes down', () => {
  expect(MODEL).toBeGreaterThanOrEqual(index.at(-1)?.model ?? 0);
});

test.each(index.filter(({ model }) => model === MODEL))('the answers of version $version equal the engine to the last digit shown: otherwise the code is wrong, or the model number goes up', ({ version }) => {
  const frozen = JSON.parse(versionText(version)) as FrozenVersion;
  expect(prebuiltAnswers(frozen.evidence)).toEqual(frozen.answers);
});

test('every list of changes says what the frozen files say: where the writer has changed, npm run release -- lists writes them again', () => {
  // The first version has nothing before it, and its list is written only on request.
  for (const [i, { version, changes }] of listedVersions().reverse().entries()) {
    if (i > 0 || existsSync(`${ROOT}/${listFile(version)}`)) expect(readFileSync(`${ROOT}/${listFile(version)}`, 'utf8'), version).toBe(listText(changes));
  }
});

test('every file about changes is of a version that is there, or of one that is to come', () => {
  const newest = index.at(-1)?.version ?? '';
  const names = existsSync(`${ROOT}/data/changes`) ? readdirSync(`${ROOT}/data/changes`) : [];
  const known = new Set(index.map(({ version }) => version));
  const stray = names.filter((name) => {
    const [, version, ending] = /^(\d{4}-\d{2}-\d{2}\.\d+)\.(yaml|json)$/.exec(name) ?? [];
    return version === undefined || !(known.has(version) || (ending === 'yaml' && isAfter(version, newest)));
  });
  expect(stray).toEqual([]);
});

test.each([['2026-11-25.2', '2026-11-25.1', true], ['2026-11-25.10', '2026-11-25.9', true], ['2026-11-26.1', '2026-11-25.9', true], ['2026-11-25.1', '2026-11-25.1', false], ['2026-11-24.2', '2026-11-25.1', false]])('%s comes after %s: %s', (version, other, after) => {
  expect(isAfter(version, other)).toBe(after);
});

test('a version that raised the model says why', () => {
  for (const { version, changes, words } of listedVersions()) {
    if (changes.since && changes.model > changes.since.model) expect(words?.model, version).toBeTruthy();
  }
});

function isAfter(version: string, other: string): boolean {
  const [day, count] = [version.slice(0, 10), Number(version.slice(11))];
  return day > other.slice(0, 10) || (day === other.slice(0, 10) && count > Number(other.slice(11)));
}
