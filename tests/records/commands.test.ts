/** The check and `new` as they are run: from the command line and inside a build, on a small project in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { recordCheck } from '../../src/build/steps/record-check.ts';
import { SOUND } from './project.ts';

const COMMANDS = fileURLToPath(new URL('../../src/commands/', import.meta.url));
let root = '';

function write(file: string, text: string): void {
  mkdirSync(dirname(join(root, file)), { recursive: true });
  writeFileSync(join(root, file), text);
}

function run(command: string, ...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(COMMANDS, command), ...words], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'records-'));
  for (const [file, text] of Object.entries(SOUND)) write(file, text);
});
afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

const BROKEN = 'data/figures/lab-a/broken.yaml';
const BROKEN_TEXT =
  'what: Slings\nkind: measured\nvalue: 900\nunit: kN\nstanding: read\nlocator: page 1\nchecked: "2026-01-05"\n';
const BROKEN_SAYS = `${BROKEN}:3:8 lab-a/broken: is outside 0 to 500 kN (got 900). Look the number, its unit and its denominator up again.`;

test('the check of a sound project says so and ends well', () => {
  expect(run('check.ts', root)).toEqual({ status: 0, out: '0 faults\n', err: '' });
});

test('the check of a broken project lists the faults and ends with 1', () => {
  write(BROKEN, BROKEN_TEXT);
  expect(run('check.ts', root)).toEqual({
    status: 1,
    out: `value-is-possible (1 fault)\n  ${BROKEN_SAYS}\n\n1 fault\n`,
    err: '',
  });
});

test('new writes a record once, and never over another', () => {
  const first = run('new.ts', 'figure', 'lab-c', 'pull');
  expect(first).toEqual({
    status: 0,
    out: 'data/figures/lab-c/pull.yaml: written. Fill it, then run npm run check.\nThere is no source lab-c yet: npm run new -- source lab-c.\n',
    err: '',
  });
  const text = readFileSync(join(root, 'data/figures/lab-c/pull.yaml'), 'utf8');
  writeFileSync(join(root, 'data/figures/lab-c/pull.yaml'), `${text}# mine\n`);
  expect(run('new.ts', 'figure', 'lab-c', 'pull')).toEqual({
    status: 1,
    out: '',
    err: 'data/figures/lab-c/pull.yaml: is there already. Choose another name, or edit it; nothing was written.\n',
  });
  expect(readFileSync(join(root, 'data/figures/lab-c/pull.yaml'), 'utf8')).toBe(`${text}# mine\n`);
});

test('new says what is wrong with a name, and writes nothing', () => {
  expect(run('new.ts', 'source', 'Lab C')).toEqual({
    status: 1,
    out: '',
    err: 'new: "Lab C" is not a lower-case name with hyphens. Use a to z, digits and single hyphens, for example club-2006.\n',
  });
  expect(existsSync(join(root, 'data/sources/Lab C.yaml'))).toBe(false);
});

test('a build stops on a fault before a page is made, and a server tells it', () => {
  const logged: string[] = [];
  const hooks = recordCheck().hooks as unknown as Record<string, (options: unknown) => void>;
  hooks['astro:config:done']?.({ config: { root: pathToFileURL(`${root}/`) } });
  expect(() => hooks['astro:build:start']?.({})).not.toThrow();
  hooks['astro:server:setup']?.({ logger: { error: (text: string) => logged.push(text) } });
  expect(logged).toEqual([]);
  write(BROKEN, BROKEN_TEXT);
  expect(() => hooks['astro:build:start']?.({})).toThrow(
    `The records or the prose have faults; nothing was built.\n\nvalue-is-possible (1 fault)\n  ${BROKEN_SAYS}`,
  );
  hooks['astro:server:setup']?.({ logger: { error: (text: string) => logged.push(text) } });
  expect(logged).toEqual([`\nvalue-is-possible (1 fault)\n  ${BROKEN_SAYS}\n\n1 fault`]);
});
