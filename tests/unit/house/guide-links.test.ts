/**
 * What the README and the contributors' guide point to is in the repository: files, images, and headings of their own.
 * And the guide's picture of the house has every room that is there.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../support/step.ts';

/** Targets of Markdown links and images outside code. */
function targetsOf(markdown: string): string[] {
  const prose = markdown.replace(/^ *```[\s\S]*?^ *```$/gm, '').replace(/`[^`\n]*`/g, '');
  return [...prose.matchAll(/!?\[[^\]]*\]\(([^)\s]+)\)/g)].map((match) => match[1] as string);
}

/** Anchors of the headings, by the rule of hosts of repositories: lower case, without signs, hyphens for spaces. */
function anchorsOf(markdown: string): string[] {
  return [...markdown.matchAll(/^#{1,6} (.+)$/gm)].map((match) => (match[1] as string).toLowerCase().replace(/[^\p{L}\p{N} -]/gu, '').replaceAll(' ', '-'));
}

/** Targets that lead nowhere. Addresses elsewhere are left to the reader's browser. */
function missing(markdown: string): string[] {
  return targetsOf(markdown).filter((target) => {
    if (/^[a-z]+:/.test(target)) return false;
    if (target.startsWith('#')) return !anchorsOf(markdown).includes(target.slice(1));
    return !existsSync(join(ROOT, target.replace(/#.*$/, '')));
  });
}

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const text = readFileSync(join(ROOT, name), 'utf8');

  test('links only to what is there', () => {
    expect(targetsOf(text).length).toBeGreaterThan(2);
    expect(missing(text)).toEqual([]);
  });
});

test('a file, an image and a heading that are not there are found', () => {
  expect(missing('# Here\n[a](#here) [b](#there) [c](NONE.md) ![d](.github/none.png) [e](LICENSE) `[f](x.md)`')).toEqual(['#there', 'NONE.md', '.github/none.png']);
});

test('the house of the guide has every room of src, every folder of tests, and no room that is not there', () => {
  const [, house = ''] = /^## The house\n+```\n([\s\S]*?)^```$/m.exec(readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')) ?? [];
  const folders = (path: string): string[] => readdirSync(join(ROOT, path), { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name).sort();
  // A room stands at the head of its line, behind two spaces; some share one.
  const rooms = house.split('\n').flatMap((line) => /^ {2}((?:[a-z-]+\/ *)+)/.exec(line)?.[1]?.match(/[a-z-]+/g) ?? []);
  expect(rooms.sort()).toEqual(folders('src'));
  expect(/^tests\/ +(.*)$/m.exec(house)?.[1]?.split(' ').sort()).toEqual(folders('tests'));
});
