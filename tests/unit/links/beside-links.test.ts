/**
 * What a link of a comparison sets beside it keeps its meaning: own tests (`t`) and a fall (`f`). Expected values are written
 * by hand from the grammar at the head of each file; both lists only grow. So does the vocabulary: what a link could once name.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { readVersion, versionIndex } from '../../../src/build/versions/versions.ts';
import { type FallBeside, parseFallBeside } from '../../../src/links/fall-beside-link.ts';
import { type OwnTests, parseOwnTests } from '../../../src/links/own-tests-link.ts';
import { parseLink } from '../../../src/links/parse-link.ts';
import { besideOf } from '../../../src/links/serialise-link.ts';

const read = <List>(name: string): List => JSON.parse(readFileSync(join(import.meta.dirname, name), 'utf8')) as List;
const evidence = loadEvidence();
const words = { methods: Object.keys(evidence.methods), slings: Object.keys(evidence.slings) };

test.each(read<{ value: string; tests: OwnTests }[]>('own-tests-links.json'))('own tests of an old link still say what they said: $value', ({ value, tests }) => {
  expect(parseOwnTests(value, words)).toEqual({ tests });
});

test.each(read<{ value: string; fall: FallBeside }[]>('fall-beside-links.json'))('a fall of an old link still says what it said: $value', ({ value, fall }) => {
  expect(parseFallBeside(value)).toEqual({ fall });
});

test('both go along with every rig, as they stand in the address', () => {
  expect(besideOf('?v=1&rating=12&t=basket~hmpe-10~bare-wire~4~-~9&d=2026-11-25.1&f=6~19')).toBe('&t=basket~hmpe-10~bare-wire~4~-~9&f=6~19');
  expect(parseLink('?v=1&t=x&f=y', { slings: words.slings }).notUnderstood).toEqual([]);
});

describe('what links could name in a frozen version', () => {
  test.each(versionIndex())('is there today: slings, methods and the path of each comparison of version $version', ({ version }) => {
    const { evidence: was, answers } = readVersion(version);
    expect(words.slings).toEqual(expect.arrayContaining(Object.keys(was.slings)));
    expect(words.methods).toEqual(expect.arrayContaining(Object.keys(was.methods)));
    for (const path of Object.keys(answers)) {
      const [rating, eye, sling] = path.split('/');
      const link = parseLink(`?v=1&rating=${rating}&eye=${eye}&sling=${sling}&d=${version}&m=${was.model}`, words);
      expect([link.notUnderstood, link.d, link.m], path).toEqual([[], version, was.model]);
    }
  });
});

test('every list of old links is read by a test', () => {
  const files = readdirSync(import.meta.dirname);
  const tests = files.filter((name) => name.endsWith('.test.ts')).map((name) => readFileSync(join(import.meta.dirname, name), 'utf8')).join('\n');
  const lists = files.filter((name) => name.endsWith('links.json'));
  expect(lists.length).toBeGreaterThanOrEqual(8);
  expect(lists.filter((name) => !tests.includes(name))).toEqual([]);
});
