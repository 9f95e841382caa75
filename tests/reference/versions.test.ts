/** Frozen versions never change, and the newest one says what the engine says today, to the last digit shown. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ROOT, loadEvidence } from '../../src/build/evidence.ts';
import { type FrozenVersion, hashOf, prebuiltAnswers, versionIndex, versionText } from '../../src/build/versions.ts';

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

test('the newest version\'s answers equal the engine to the last digit shown: otherwise the code is wrong, or the model number goes up', () => {
  const frozen = JSON.parse(versionText(index.at(-1)?.version ?? '')) as FrozenVersion;
  expect(prebuiltAnswers(frozen.evidence)).toEqual(frozen.answers);
});
