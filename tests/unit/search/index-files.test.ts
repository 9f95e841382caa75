/** What the build writes for search: complete, the same each time, and the list from A to Z. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lettersOf, listedAuthor, orderOf } from '../../../src/build/search/a-z.ts';
import { searchFiles } from '../../../src/build/search/files.ts';
import { sectionsOf } from '../../../src/build/search/sections.ts';
import { searchPages } from '../../../src/build/search/pages.ts';
import { TRADE_WORDS } from '../../../src/search/trade-words.ts';
import { keyOf, wordsOf } from '../../../src/search/words.ts';
import { ROOT } from '../../support/step.ts';
import { allPages } from './site-index.ts';

const ids = (folder: string, ending: string): string[] => readdirSync(join(ROOT, folder)).filter((name) => name.endsWith(ending)).map((name) => name.slice(0, -ending.length));

test('another process writes the same two files under the same names, whatever its place and language', () => {
  const code = "import('./src/build/search/files.ts').then(({ searchFiles }) => console.log(JSON.stringify(Object.values(searchFiles()).map(({ name }) => name))))";
  const names = execFileSync(process.execPath, ['-e', code], { cwd: ROOT, encoding: 'utf8', env: { ...process.env, TZ: 'Asia/Tokyo', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' } });
  const files = Object.values(searchFiles());
  expect(JSON.parse(names)).toEqual(files.map(({ name }) => name));
  for (const { name, text } of files) expect(name.split('-').at(-1)).toBe(createHash('sha256').update(text).digest('hex').slice(0, 12));
});

test('every guide, method, material, lesson, term, source and gap can be found, and each address once', () => {
  const paths = new Set(allPages.map(({ path }) => path));
  const missing = [
    ...ids('content/guides', '.mdx').map((id) => `/guides/${id}/`), ...ids('content/methods', '.mdx').map((id) => `/methods/${id}/`),
    ...ids('content/materials', '.mdx').map((id) => `/materials/${id}/`), ...ids('content/lessons', '.mdx').map((id) => `/teach/${id}/`),
    ...ids('data/sources', '.yaml').map((id) => `/sources/${id}/`), ...ids('data/gaps', '.yaml').map((id) => `/gaps/${id}/`),
    ...ids('data/rules', '.yaml').map((id) => `/retire/#rule-${id}`), ...ids('data/series', '.yaml').map((id) => `/breaks/${id}/`),
    ...ids('data/replacements', '.yaml').map((id) => `/replace/#${id}`), '/compare/', '/caution/', '/model/',
  ].filter((path) => !paths.has(path));
  expect(missing).toEqual([]);
  for (const id of ids('content/terms', '.mdx')) expect(paths.has(`/terms/${id}/`) || paths.has(`/terms/#${id}`), id).toBe(true);
  expect(paths.size).toBe(allPages.length);
});

test('the caution and the guides are found by their sentences, not by their names alone', () => {
  const caution = allPages.find(({ path }) => path === '/caution/');
  expect(JSON.stringify(caution?.parts)).toContain('goes to the bin');
  for (const { path, kind, parts = [] } of allPages) if (kind === 'guide' || kind === 'method' || kind === 'material') expect(parts.length, path).toBeGreaterThan(1);
});

test('prose is cut at its headings; figures stay figures, and what is computed is left out', () => {
  const text = '---\ntitle: x\n---\nFirst words.\n\n## In a knot\n\nIt broke at <Fig id="en-566/loop-minimum" />. It was {1 + 1} slings.\n\n- Look at it.\n';
  expect(sectionsOf('content/guides/x.mdx', text)).toEqual([
    { at: '', head: '', text: 'First words.' },
    // EN 566 asks 22 kN of a sling.
    { at: 'in-a-knot', head: 'In a knot', text: expect.stringMatching(/^It broke at \{en-566\/loop-minimum\|22\u00a0kN\|read\}\.\nLook at it\.$/) },
  ]);
  const page = '---\nconst x = 1;\n---\n<Page title="T"><h1>Title</h1><p>Lead of <cite>EN 566</cite>.</p><h2 id="who">Who</h2><p>The maker. Then {x}.</p></Page>\n';
  expect(sectionsOf('src/pages/x.astro', page)).toEqual([{ at: '', head: '', text: 'Lead of {|EN 566}.' }, { at: 'who', head: 'Who', text: 'The maker.' }]);
});

test('each trade word stands for something that the site names', () => {
  const names = new Set(allPages.flatMap(({ title, also = [] }) => [title, ...also].map((name) => keyOf(wordsOf(name)))));
  const known = JSON.stringify(allPages).toLowerCase();
  for (const [called] of TRADE_WORDS) expect(names.has(keyOf(wordsOf(called))) || known.includes(called.toLowerCase()), called).toBe(true);
});

test('the list goes by letter, without articles, and people by surname', () => {
  expect(orderOf('A form for ten pulls') < orderOf('Gaps') && orderOf('A form for ten pulls') > orderOf('Eye')).toBe(true);
  expect(listedAuthor('J. M. Beverly, S. W. Attaway')).toBe('Beverly J. M., S. W. Attaway');
  expect(listedAuthor('CEN, EN 566, 2017')).toBe('CEN, EN 566, 2017');
  const letters = lettersOf(searchPages());
  expect(letters.map(({ letter }) => letter)).toEqual([...letters.map(({ letter }) => letter)].sort());
  for (const { letter } of letters) expect(letter).toMatch(/^[A-Z]$/);
  const all = letters.flatMap(({ entries }) => entries);
  expect(all).toContainEqual({ name: "Lark's foot", path: '/terms/girth-hitch/', kind: 'term', rest: 'girth hitch' });
});
