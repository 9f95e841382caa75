/**
 * The path of DEVELOPERS.md, "Add a figure", "In five minutes", walked as it is written: its commands are run, its lines
 * are filled in, and what it says is printed is looked for. It is walked in a copy of the project.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { copyProject } from '../../src/commands/bench-copy.ts';
import { readAll } from '../../src/records/read.ts';
import { numbersOf } from '../../src/records/numbers.ts';
import { ROOT } from '../support/step.ts';

/** A block of code of the guide: commands, what they print, or lines of a file. */
interface Block { kind: 'sh' | 'text' | 'yaml'; lines: string[] }

/** The text below a heading, up to the next one. */
function section(markdown: string, heading: string): string {
  const [, after] = markdown.split(`\n${heading}\n`);
  if (after === undefined) throw new RangeError(`heading: the guide has no "${heading}"`);
  return after.split(/\n#{1,6} /)[0] as string;
}

/** Blocks of code in their order, without the indent of the list that they stand in. */
function blocksOf(markdown: string): Block[] {
  return [...markdown.matchAll(/^( *)```(sh|text|yaml)\n([\s\S]*?)\n\1```$/gm)].map(([, indent = '', kind, body = '']) => ({
    kind: kind as Block['kind'], lines: body.split('\n').map((line) => line.slice(indent.length)),
  }));
}

/** A line of the guide as a pattern: `<...>` stands for anything, and columns may be set wider. */
function patternOf(line: string): RegExp {
  const names = /<([a-z]+)>/g;
  const literal = (text: string): string => RegExp.escape(text).replace(/(?:\\x20| )+/g, ' +');
  let pattern = '';
  let from = 0;
  for (const match of line.matchAll(names)) {
    pattern += `${literal(line.slice(from, match.index))}(?<${match[1]}>.+?)`;
    from = match.index + match[0].length;
  }
  return new RegExp(`^${pattern}${literal(line.slice(from))}$`);
}

/** What stands for `<...>` in the lines of the guide, line by line; fails with the first line that is not printed in its order. */
function found(lines: readonly string[], printed: string): Record<string, string>[] {
  const rest = printed.split('\n');
  return lines.map((line) => {
    const at = rest.findIndex((each) => patternOf(line).test(each));
    expect(at, `"${line}" is not printed, or not in its place, in:\n${printed}`).toBeGreaterThanOrEqual(0);
    const groups = patternOf(line).exec(rest[at] as string)?.groups ?? {};
    rest.splice(0, at + 1);
    return groups;
  });
}

/** Writes a block into the file that its first line names: below a line, or each line in the place of the empty one of its field. */
function fill(root: string, [head = '', ...lines]: readonly string[]): void {
  const [, file, below] = /^# ([\w./-]+)(?:, below (.+))?$/.exec(head) ?? [];
  if (file === undefined) throw new RangeError(`yaml: the block "${head}" does not begin with the name of its file`);
  let text = readFileSync(join(root, file), 'utf8');
  const replaceOnce = (what: RegExp, by: string): void => {
    expect(text.match(what), `${what} in ${file}:\n${text}`).toHaveLength(1);
    text = text.replace(what, () => by);
  };
  if (below !== undefined) replaceOnce(new RegExp(`^${RegExp.escape(below)}$`, 'gm'), [below, ...lines].join('\n'));
  else for (const line of lines) {
    const field = line.slice(0, line.indexOf(':'));
    // A field that must be filled stands there empty; one that is optional stands behind a sign, with no value.
    replaceOnce(new RegExp(`^(?:${field}:(?: \\{\\}| \\[\\]| "[YMD-]+")?|# ${field}:)$`, 'gm'), line);
  }
  writeFileSync(join(root, file), text);
}

const FIGURE = 'outing-club-2026/girth-on-wire';
const FILE = `data/figures/${FIGURE}.yaml`;
const blocks = blocksOf(section(readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8'), '### In five minutes'));
const root = mkdtempSync(join(tmpdir(), 'five-minutes-'));
/** How each step ended: exit codes of its commands, what they printed, and what stood for `<...>`. */
const steps: { codes: (number | null)[]; printed: string; groups: Record<string, string>[] }[] = [];
/** The record as it stood while the check still had something to say of it. */
let checkedRecord = '';

beforeAll(() => copyProject(ROOT, root));
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('a figure in five minutes, as the guide has it', () => {
  // First, and alone in running anything: the tests below look at what it saw.
  test('every command prints what the guide says, with its lines filled in where it says', () => {
    for (const { kind, lines } of blocks) {
      if (kind === 'yaml') fill(root, lines);
      else if (kind === 'sh') {
        const ran = lines.map((line) => spawnSync(line, { cwd: root, encoding: 'utf8', shell: true }));
        steps.push({ codes: ran.map(({ status }) => status), printed: ran.map(({ stdout, stderr }) => stdout + stderr).join(''), groups: [] });
      } else {
        const step = steps.at(-1) as (typeof steps)[number];
        step.groups = found(lines, step.printed);
        if (step.codes.includes(1)) checkedRecord = readFileSync(join(root, FILE), 'utf8');
      }
    }
  }, 60_000);

  test('two records are written, the check refuses the figure until it is placed, and then passes', () => {
    expect(steps.map(({ codes }) => codes)).toEqual([[0, 0], [1], [0]]);
  });

  test('six lines of the figure are filled, and every number in them is said to be invented', () => {
    const six = blocks.filter(({ lines }) => lines[0] === `# ${FILE}`);
    expect(six.map(({ lines }) => lines.length - 1)).toEqual([6]);
    const source = readFileSync(join(root, 'data/sources/outing-club-2026.yaml'), 'utf8');
    expect(source).toMatch(/^authors: .*\bfictional\b/m);
    expect(source).toMatch(/^informal: invented\b/m);
  });

  test('the refusal points at the line of the record where the figure begins', () => {
    const place = (steps[1] as (typeof steps)[number]).groups.find((groups) => 'line' in groups);
    const first = checkedRecord.split('\n').findIndex((line) => line !== '' && !line.startsWith('#'));
    expect(place).toEqual({ line: String(first + 1), column: '1' });
  });

  // Whatever the model: pulls below all others of the same rig can only bring the middle down.
  test('the middles that moved go down, as the new pulls lie below all others on a wire as thin', () => {
    const { cells, factors } = readAll(root);
    const own = cells.get(FIGURE)?.figure;
    const others = (factors.get('girth-hmpe')?.data.from ?? []).filter((id) => id !== FIGURE).map((id) => cells.get(id)?.figure)
      .filter((figure) => figure?.rig.bearingMm === own?.rig.bearingMm);
    const kilonewtons = (figure: typeof own): number[] => numbersOf(figure?.value).map(({ number }) => number);
    expect([own, ...others].map((figure) => figure?.unit)).toEqual([own, ...others].map(() => 'kN'));
    expect(others.length).toBeGreaterThan(0);
    expect(Math.max(...kilonewtons(own))).toBeLessThan(Math.min(...others.flatMap(kilonewtons)));
    const moved = (steps[2] as (typeof steps)[number]).groups.filter((groups) => 'was' in groups);
    expect(moved.length).toBeGreaterThan(0);
    for (const { was = '', now = '' } of moved) {
      expect(was).toMatch(/^\d+\.\d kN, /);
      expect(Number.parseFloat(now)).toBeLessThan(Number.parseFloat(was));
    }
  });
});

test('a line that is not printed is told, and so is one out of its order', () => {
  expect(found(['a <was> -> <now>'], 'x\na  1 kN, apart -> 2 kN, apart')).toEqual([{ was: '1 kN, apart', now: '2 kN, apart' }]);
  expect(() => found(['b'], 'a\nc')).toThrow('"b" is not printed');
  expect(() => found(['c', 'a'], 'a\nc')).toThrow('"a" is not printed');
});
