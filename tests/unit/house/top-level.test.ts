/** The shape of the house: a newcomer finds the place to change from the names of folders alone, so the names are fixed. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../support/step.ts';
import { filesUnder, topLevel } from '../../support/tree.ts';

const TOP = [
  '.ci', '.github', '.gitignore', 'CITATION.cff', 'DEVELOPERS.md', 'LICENSE', 'README.md', 'astro.config.mjs',
  'content', 'data', 'package-lock.json', 'package.json', 'public', 'src', 'tests', 'tsconfig.json',
];
const IN_SRC = [
  'records', 'numerics', 'evidence', 'strength', 'break-tests', 'retirement', 'falls', 'replacement', 'rack', 'teaching', 'links', 'citing', 'search', 'charts',
  'drawings', 'islands', 'offline', 'build', 'commands', 'components', 'layouts', 'pages', 'styles', 'content.config.ts', 'env.d.ts',
];
const IN_DATA = [
  'sources', 'figures', 'factors', 'methods', 'materials', 'slings', 'rules', 'gaps', 'corrections', 'series', 'replacements',
  'law', 'changes', 'versions', 'demo',
];
const IN_CONTENT = ['methods', 'materials', 'guides', 'lessons', 'terms'];
const IN_TESTS = ['unit', 'records', 'reference', 'browser', 'support', 'mutation', 'vitest.config.ts', 'playwright.config.ts', 'lint.json'];

/** Names that say nothing of what is inside. */
const EMPTY_NAMES = /^(?:.*-)?(?:utils?|helpers?|misc|common|stuff|lib|temp|tmp|data\d|v\d)$/i;

test('the top level holds what it should and nothing else', () => {
  expect(topLevel()).toEqual([...TOP].sort());
});

describe.each([
  ['src', IN_SRC],
  ['data', IN_DATA],
  ['content', IN_CONTENT],
  ['tests', IN_TESTS],
])('%s/', (folder, names) => {
  test('holds only rooms of the house', () => {
    const extra = readdirSync(join(ROOT, folder)).filter((name) => !names.includes(name) && !name.startsWith('.'));
    expect(extra).toEqual([]);
  });
});

test('no file or folder of ours has a name that says nothing of its content', () => {
  const named = [...filesUnder('src'), ...filesUnder('tests')];
  const steps = (path: string) => path.split('/').map((step) => step.replace(/\..*$/, ''));
  expect(named.filter((path) => steps(path).some((step) => EMPTY_NAMES.test(step)))).toEqual([]);
});

test('source files are named in lower case with hyphens; components and layouts in capitals', () => {
  const wrong = filesUnder('src').filter((path) => {
    const name = path.split('/').at(-1) ?? '';
    if (/^src\/(?:components|layouts)\/.*\.astro$/.test(path)) return !/^[A-Z][A-Za-z]*\.astro$/.test(name);
    if (/^src\/pages\//.test(path)) return !/^(?:\[(?:\.{3})?[a-z]+\]|[a-z0-9-]+)+(?:\.[a-z]+)+$/.test(name);
    if (/\.tsx$/.test(path)) return !/^[A-Za-z0-9-]+\.tsx$/.test(name);
    return !/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z]+)+$/.test(name);
  });
  expect(wrong).toEqual([]);
});

test('the scripts that the README and the workflows name exist and point to files', async () => {
  const { scripts } = (await import('../../../package.json', { with: { type: 'json' } })).default as { scripts: Record<string, string> };
  for (const name of ['start', 'test', 'check', 'build', 'dev', 'bench', 'compare', 'reference', 'new']) {
    expect(scripts, `package.json lacks the script "${name}"`).toHaveProperty(name);
    const file = /^node (\S+\.ts)/.exec(scripts[name] ?? '')?.[1];
    if (file) expect(existsSync(join(ROOT, file)), `${name}: ${file}`).toBe(true);
  }
});

test('.ci/run can be run and names the two commands', () => {
  expect(statSync(join(ROOT, '.ci/run')).mode & 0o111).not.toBe(0);
});
