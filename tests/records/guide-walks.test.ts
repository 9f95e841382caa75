/**
 * The walks of DEVELOPERS.md beside that of a figure (five-minute-path.test.ts), each walked as it is written, in a copy of
 * the project. What a walk says of commands, lines and files, `tests/support/guide-walk.ts` holds against what happens.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Block, commit, found, GUIDE, walk, walkGuide, walkOf } from '../support/guide-walk.ts';

/** Parts with a walk, and how its commands end. Each is refused once: it shows what is forgotten most easily. Then it is green with its tests, and taken out. */
const WALKS: readonly [part: string, heading: string, codes: number[][]][] = [
  ['## Add a factor', '### A factor in a walk', [[1], [0, 0], [0]]],
  ['## Add a method', '### A method in a walk', [[1], [0, 0], [0]]],
  ['## Add a rule of retirement', '### A rule in a walk', [[1], [0, 0], [0]]],
  ['## Add a series', '### A series in a walk', [[1], [0], [0]]],
  ['## Add a lesson', '### A lesson in a walk', [[1], [0, 0], [0]]],
];

// Side by side: most of the time is that of the commands.
test.concurrent.each(WALKS)('%s: every command prints what the guide says, the check is green, and nothing is left behind', async (part, heading, codes) => {
  const { steps } = await walkGuide(part, heading);
  expect(steps.map((step) => step.codes)).toEqual(codes);
}, 240_000);

test('the guide says that six parts have a walk, and these are they', () => {
  const parts = GUIDE.split(/^(?=## )/m).filter((part) => /^ *git restore \. && git clean/m.test(part)).map((part) => part.split('\n')[0]);
  expect(parts).toEqual(['## Add a figure', ...WALKS.map(([part]) => part)]);
  expect(GUIDE).toContain('\nSix parts below have a walk');
});

describe('a walk is refused', () => {
  const fence = (kind: string, ...lines: string[]): string => ['```', kind, '\n', ...lines.map((line) => `${line}\n`), '```\n'].join('');
  const guide = (...blocks: string[]): string => `## Add it\n\n### A walk\n\n${blocks.join('\n')}\n## Next\n`;
  const FILE = fence('yaml', '# data/new.yaml', 'a: 1');
  const GREEN = `${fence('sh', 'npm run check')}\n${fence('text', '0 faults')}`;
  const OUT = fence('sh', 'git restore . && git clean -fdq data');
  const blocksOf = (...blocks: string[]) => walkOf(guide(...blocks), '## Add it', '### A walk');

  test('where it is missing, names no file, ends in no green check, or is not taken out', () => {
    expect(() => walkOf(guide(), '## Add this', '### A walk')).toThrow('the guide has no "## Add this"');
    expect(() => walkOf(guide(), '## Add it', '### Another walk')).toThrow('the guide has no "### Another walk"');
    expect(() => blocksOf()).toThrow('does not end in a check');
    expect(() => blocksOf(fence('yaml', 'a: 1'), GREEN, OUT)).toThrow('"a: 1" does not begin with the name of its file');
    expect(() => blocksOf(GREEN, FILE, OUT)).toThrow('does not end in a check');
    expect(() => blocksOf(FILE, GREEN.replace('0 faults', '1 fault'), OUT)).toThrow('does not end in a check');
    expect(() => blocksOf(FILE, GREEN)).toThrow('does not end with the command that takes it out');
    // A comment in the first column of a block is no heading.
    expect(blocksOf(FILE, GREEN, OUT).map(({ kind }) => kind)).toEqual(['file', 'sh', 'text', 'sh']);
  });

  test('where a line is not printed, or stands out of its order', () => {
    expect(found(['a <was> -> <now>'], 'x\na  1 kN, apart -> 2 kN, apart')).toEqual([{ was: '1 kN, apart', now: '2 kN, apart' }]);
    expect(() => found(['b'], 'a\nc')).toThrow('"b" is not printed');
    expect(() => found(['c', 'a'], 'a\nc')).toThrow('"a" is not printed');
  });

  describe('in a small project', () => {
    let root = '';
    beforeEach(async () => {
      root = mkdtempSync(join(tmpdir(), 'small-project-'));
      writeFileSync(join(root, 'old.yaml'), 'list:\n  - one, and more\n  - two\nempty:\nnamed: already\n# spare:\n');
      writeFileSync(join(root, 'sorted.csv'), 'x\na\nc\n');
      await commit(root);
    });
    afterEach(() => rmSync(root, { recursive: true, force: true }));

    const file = (...lines: string[]): Block => ({ kind: 'file', lines });
    const says = (...lines: string[]): Block => ({ kind: 'text', lines });
    const sh = (...lines: string[]): Block => ({ kind: 'sh', lines });
    const out = sh('git restore . && git clean -fdq .');

    test('lines are written where their block says, and are gone at the end', async () => {
      const steps = await walk([
        file('# data/new.yaml', 'a: 1'), file('# old.yaml, below - two', '  - three'), file('# old.yaml, in place of - one...', '  - first'),
        file('# old.yaml', 'empty: full', 'spare: used'), file('# old.yaml, at the end', 'last: true'), file('# sorted.csv, in order', 'b', 'z'),
        sh('cat data/new.yaml old.yaml sorted.csv'), says('a: 1', 'list:', '  - first', '  - two', '  - three', 'empty: full', 'named: already', 'spare: used', 'last: true', 'x', 'a', 'b', 'c', 'z'),
        sh('echo 1 fault', 'exit 1'), says('1 fault'), out,
      ], root);
      expect(steps.map(({ codes }) => codes)).toEqual([[0], [0, 1], [0]]);
    });

    test.each<[string, Block[]]>([
      ['"exit 1" failed', [sh('exit 1'), out]],
      ['"echo 0 faults; exit 1" failed', [sh('echo 0 faults', 'exit 1'), says('0 faults'), out]],
      ['"0 faults" is not printed', [sh('echo 1 fault', 'exit 1'), says('0 faults'), out]],
      ['other files changed than the walk names: data/new.yaml, other.yaml', [file('# data/new.yaml', 'a: 1'), sh('echo b > other.yaml'), out]],
      ['the walk leaves behind: data/new.yaml', [file('# data/new.yaml', 'a: 1'), sh('git restore .')]],
      ['old.yaml has 0 lines "- three"', [file('# old.yaml, below - three', 'x'), out]],
      ['old.yaml has 2 lines "- ..."', [file('# old.yaml, in place of - ...', 'x'), out]],
      ['old.yaml has 0 lines "named:"', [file('# old.yaml', 'named: anew'), out]],
    ])('%s', async (message, blocks) => {
      await expect(walk(blocks, root)).rejects.toThrow(message);
    });
  });
});
