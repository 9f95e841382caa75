/** The path of DEVELOPERS.md, "Add a figure", "In five minutes", walked as it is written, and what the guide says of it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readAll, type Records } from '../../src/records/read.ts';
import { numbersOf } from '../../src/records/numbers.ts';
import { type Block, type Step, walkGuide } from '../support/guide-walk.ts';

const FIGURE = 'outing-club-2026/girth-on-wire';
const FILE = `data/figures/${FIGURE}.yaml`;
const SOURCE = 'data/sources/outing-club-2026.yaml';

/** What the walk saw: how its steps ended, and the copy as it stood when the check refused the figure and when it passed. */
let blocks: Block[] = [];
let steps: Step[] = [];
const refused = { figure: '' };
const passed: { source: string; records?: Records } = { source: '' };

describe('a figure in five minutes, as the guide has it', () => {
  // First, and alone in running anything: the tests below look at what it saw.
  test('every command prints what the guide says, with its lines filled in where it says, and nothing is left behind', async () => {
    ({ blocks, steps } = await walkGuide('## Add a figure', '### In five minutes', ({ codes, printed }, root) => {
      if (codes.includes(1)) refused.figure = readFileSync(join(root, FILE), 'utf8');
      else if (/^Effect on the answers/m.test(printed)) Object.assign(passed, { source: readFileSync(join(root, SOURCE), 'utf8'), records: readAll(root) });
    }));
  }, 240_000);

  test('two records are written, the check refuses the figure until it is placed, and then it passes with its tests', () => {
    expect(steps.map(({ codes }) => codes)).toEqual([[0, 0], [1], [0], [0, 0], [0]]);
  });

  test('six lines of the figure are filled, and every number in them is said to be invented', () => {
    const six = blocks.filter(({ lines }) => lines[0] === `# ${FILE}`);
    expect(six.map(({ lines }) => lines.length - 1)).toEqual([6]);
    expect(passed.source).toMatch(/^authors: .*\bfictional\b/m);
    expect(passed.source).toMatch(/^informal: invented\b/m);
  });

  test('the refusal points at the line of the record where the figure begins', () => {
    const place = (steps[1] as Step).groups.find((groups) => 'line' in groups);
    const first = refused.figure.split('\n').findIndex((line) => line !== '' && !line.startsWith('#'));
    expect(place).toEqual({ line: String(first + 1), column: '1' });
  });

  // Whatever the model: pulls below all others of the same rig can only bring the middle down.
  test('the middles that moved go down, as the new pulls lie below all others on a wire as thin', () => {
    const { cells, factors } = passed.records as Records;
    const own = cells.get(FIGURE)?.figure;
    const others = (factors.get('girth-hmpe')?.data.from ?? []).filter((id) => id !== FIGURE).map((id) => cells.get(id)?.figure)
      .filter((figure) => figure?.rig.bearingMm === own?.rig.bearingMm);
    const kilonewtons = (figure: typeof own): number[] => numbersOf(figure?.value).map(({ number }) => number);
    expect([own, ...others].map((figure) => figure?.unit)).toEqual([own, ...others].map(() => 'kN'));
    expect(others.length).toBeGreaterThan(0);
    expect(Math.max(...kilonewtons(own))).toBeLessThan(Math.min(...others.flatMap(kilonewtons)));
    const moved = (steps[2] as Step).groups.filter((groups) => 'was' in groups);
    expect(moved.length).toBeGreaterThan(0);
    for (const { was = '', now = '' } of moved) {
      expect(was).toMatch(/^\d+\.\d kN, /);
      expect(Number.parseFloat(now)).toBeLessThan(Number.parseFloat(was));
    }
  });
});
