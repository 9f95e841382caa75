/** The archive of each frozen version, opened by a reader that did not pack it and held against the frozen file on disk. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { frozenArchives } from '../../../src/build/downloads/frozen-archive.ts';
import { frozenSchema } from '../../../src/build/downloads/frozen-schema.ts';
import { ROOT } from '../../support/step.ts';
import { unzip } from '../../support/unzip.ts';

const index = JSON.parse(readFileSync(join(ROOT, 'data/versions/index.json'), 'utf8')) as { version: string; sha256: string }[];
const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const opened = frozenArchives().map((archive) => ({
  archive, version: archive.version,
  files: new Map(unzip(archive.bytes).map(({ path, bytes }) => [path.split('/').slice(1).join('/'), bytes])),
}));
const validate = new Ajv2020({ strict: false, allErrors: true }).compile(frozenSchema());

test('every version in the index has an archive, the newest first, under a path that lasts', () => {
  expect(opened.map(({ archive }) => archive.path)).toEqual(index.map(({ version }) => `/data/versions/second-sling-evidence-${version}.zip`).reverse());
});

describe.each(opened)('the archive of $version', ({ version, archive, files }) => {
  const text = (path: string): string => files.get(path)?.toString('utf8') ?? '';

  test('has the frozen file byte for byte, with the hash of the index', () => {
    expect(files.get(`${version}.json`)?.equals(readFileSync(join(ROOT, `data/versions/${version}.json`)))).toBe(true);
    expect(hash(files.get(`${version}.json`) as Buffer)).toBe(index.find((one) => one.version === version)?.sha256);
  });

  test('has a list of hashes as `sha256sum -c` reads it, of every other file', () => {
    const lines = text('SHA256SUMS').trimEnd().split('\n').map((line) => /^([0-9a-f]{64}) {2}(.+)$/.exec(line)?.slice(1) as [string, string]);
    expect(lines.map(([, path]) => path).sort()).toEqual([...files.keys()].filter((path) => path !== 'SHA256SUMS').sort());
    for (const [sum, path] of lines) expect(hash(files.get(path) as Buffer), path).toBe(sum);
    expect(hash(archive.bytes)).toBe(archive.sha256);
  });

  test('has a schema that takes the frozen file, and the list of changes that is kept beside the records', () => {
    expect(JSON.parse(text('schema.json'))).toEqual(frozenSchema());
    expect(validate(JSON.parse(text(`${version}.json`))), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    const kept = join(ROOT, `data/changes/${version}.json`);
    if (existsSync(kept)) expect(text('changes.json')).toBe(readFileSync(kept, 'utf8'));
    else expect(JSON.parse(text('changes.json'))).toMatchObject({ version, since: null });
  });

  test('says its version and day for citing, that the maker comes first, and what was not frozen', () => {
    expect(parse(text('CITATION.cff'))).toMatchObject({ version, 'date-released': version.slice(0, 10) });
    expect(text('citation.bib')).toContain(`version = {${version}}`);
    expect(text('README.md')).toContain("The maker's instruction and a professional replacement come first.");
    expect(text('README.md')).toContain('Only what the engine reads was frozen');
    const { evidence, gone } = JSON.parse(text(`${version}.json`)) as { evidence: object; gone?: object };
    expect(text('README.md').includes('has no rules of retirement')).toBe(!('rules' in evidence));
    expect(text('README.md').includes('has no list of figures that moved')).toBe(gone === undefined);
  });
});

type Frozen = { evidence: { version: string; figures: Record<string, Record<string, unknown>>; classes: Record<string, Record<string, unknown>> }; answers: Record<string, Record<string, unknown>[]>; more?: number };
test.each<[string, (frozen: Frozen) => void]>([
  ['a version without a day', (frozen) => { frozen.evidence.version = 'newest'; }],
  ['a figure without its standing', (frozen) => { delete Object.values(frozen.evidence.figures)[0]?.['standing']; }],
  ['a scatter below zero', (frozen) => { (Object.values(frozen.evidence.classes)[0] as Record<string, unknown>)['cv'] = -0.1; }],
  ['a force of two ends', (frozen) => { (Object.values(frozen.answers)[0]?.[0] as Record<string, unknown>)['rig'] = ['5.2', '7.3']; }],
  ['an answer at no path', (frozen) => { frozen.answers['somewhere'] = []; }],
  ['a part that nobody described', (frozen) => { frozen.more = 1; }],
])('the schema refuses %s', (_, spoil) => {
  const frozen = JSON.parse(readFileSync(join(ROOT, `data/versions/${index.at(-1)?.version}.json`), 'utf8')) as Frozen;
  spoil(frozen);
  expect(validate(frozen)).toBe(false);
});
