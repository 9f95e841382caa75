/**
 * Words that may stand nowhere in the project. The verb for strength is *break above* (DESIGN, "Words");
 * "safe" as a verdict is a rule of the record check. The project speaks of itself alone: no paths of one machine.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../support/step.ts';
import { filesUnder } from '../../support/tree.ts';

interface Ban {
  word: RegExp;
  instead: string;
}

const IN_WHAT_READERS_SEE: readonly Ban[] = [
  { word: /\b(?:holds?|held|holding)\s+(?:up to\s+|about\s+|at least\s+|over\s+)?(?:\d|<Fig|\{[^}]*kn)/i, instead: 'Say "breaks above": no result is a promise to hold.' },
  { word: /\b(?:bomb-?proof|bomber|bullet-?proof|fool-?proof|unbreakable|indestructible|fail-?safe)\b/i, instead: 'Say what was measured and where it stops.' },
  { word: /\bguarante(?:e|es|ed|eing)\b/i, instead: 'Nothing here is guaranteed; say what the figure promises.' },
  { word: /\b(?:20|twenty) (?:in|of|out of) (?:20|twenty)\b/i, instead: 'Say "more than 19 in 20".' },
  { word: /\bas good as new\b/i, instead: 'Say what was compared with what.' },
  { word: /\bbreaking strain\b/i, instead: 'Strain is a stretch; say "breaking force".' },
];

const ANYWHERE: readonly Ban[] = [
  { word: /(?:^|[\s"'`(=])\/(?:work|tmp|root|home\/[a-z]+|Users\/[A-Za-z]+)\//, instead: 'Write a path within the project.' },
  { word: /\bregistry\.npmjs\.org\b|\bunpkg\.com\b|\bcdn\.[a-z]+\.[a-z]+\b/i, instead: 'The project fetches nothing by address.' },
  { word: /\b(?:TODO|FIXME|XXX|HACK)\b(?!\s*\([^)]+\))/, instead: 'Do it, or say in the comment why not and when.' },
];

/** Faults of a text, as `path:line: "word". What to do.` */
function banned(path: string, text: string, bans: readonly Ban[]): string[] {
  return text.split('\n').flatMap((line, index) =>
    bans.flatMap(({ word, instead }) => {
      const found = word.exec(line);
      return found ? [`${path}:${index + 1}: "${found[0].trim()}". ${instead}`] : [];
    }),
  );
}

const own = 'tests/unit/house/words.test.ts';
const texts = ['.ci', '.github', 'content', 'data', 'public', 'src', 'tests', ''].flatMap((folder) =>
  folder === '' ? ['README.md', 'DEVELOPERS.md', 'CITATION.cff', 'package.json', 'astro.config.mjs', 'tsconfig.json'].filter((name) => existsSync(join(ROOT, name))) : filesUnder(folder),
).filter((path) => path !== own && /\.(?:ts|tsx|mjs|astro|mdx?|ya?ml|json|css|csv|cff|txt|svg|html)$|\/run$/.test(path));
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');

test('pages, prose and records say nothing that promises strength', () => {
  const seen = texts.filter((path) => /^(?:content|data|src)\/|^README/.test(path));
  expect(seen.length).toBeGreaterThan(50);
  expect(seen.flatMap((path) => banned(path, read(path), IN_WHAT_READERS_SEE))).toEqual([]);
});

test('no file names a path of one machine, a registry, or a task without its reason', () => {
  expect(texts.flatMap((path) => banned(path, read(path), ANYWHERE))).toEqual([]);
});

test.each([
  ['The basket holds 12 kN.'],
  ['It held about 9 kN on the wire.'],
  ['A bombproof sling'],
  ['We guarantee it'],
  ['breaks above in 20 of 20 rigs'],
])('a promise is found: %s', (line) => {
  expect(banned('content/a.mdx', line, IN_WHAT_READERS_SEE)).toHaveLength(1);
});

test.each([['The basket breaks above the rating.'], ['A sling holds the device in the rack.'], ['about 19 of 20 break above']])('plain words pass: %s', (line) => {
  expect(banned('content/a.mdx', line, IN_WHAT_READERS_SEE)).toEqual([]);
});
