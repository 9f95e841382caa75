/** Every open question is met where a reader looks for it: it empties a cell of the comparison, or a method's page shows it. */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readAll } from '../../src/records/read.ts';

const { gaps, methods } = readAll(fileURLToPath(new URL('../..', import.meta.url)));

test('every gap blocks a cell or names the methods that it concerns', () => {
  const unseen = [...gaps].filter(([, { data }]) => data.blocks.length === 0 && data.concerns.length === 0).map(([id]) => id);
  expect(gaps.size).toBeGreaterThan(0);
  expect(unseen).toEqual([]);
});

test('what a sleeve does and what water and frost do is asked of every home method', () => {
  const home = [...methods].filter(([, { data }]) => data.role === 'home').map(([id]) => id).sort();
  for (const id of ['hitch-on-sleeved-wire', 'wet-and-frozen']) expect(gaps.get(id)?.data.concerns.toSorted(), id).toEqual(home);
});
