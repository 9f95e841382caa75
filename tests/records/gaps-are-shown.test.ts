/** Every open question is met where a reader looks for it: it empties a cell of the comparison, or a method's page shows it. */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readAll } from '../../src/records/read.ts';

const { gaps, methods } = readAll(fileURLToPath(new URL('../..', import.meta.url)));

test('every gap blocks a cell, names the methods that it concerns, or names another page that shows it', () => {
  const unseen = [...gaps].filter(([, { data }]) => data.blocks.length === 0 && data.concerns.length === 0 && data.page === undefined).map(([id]) => id);
  expect(gaps.size).toBeGreaterThan(0);
  expect(unseen).toEqual([]);
});

const home = [...methods].filter(([, { data }]) => data.role === 'home');
const concerned = (gap: string): string[] | undefined => gaps.get(gap)?.data.concerns.toSorted();

test('what water and frost do is asked of every home method', () => {
  expect(concerned('wet-and-frozen')).toEqual(home.map(([id]) => id).sort());
});

test('what a sleeve does is asked of every home method whose textile may bear on one', () => {
  // The link at the eye is the textile, or the metal of the eye itself.
  const onSleeve = home.filter(([, { data }]) => data.eyes.includes('sleeved-wire') && data.links.some(({ part, at }) => at === 'eye' && part !== 'eye'));
  expect(onSleeve.length).toBeGreaterThan(0);
  expect(concerned('hitch-on-sleeved-wire')).toEqual(onSleeve.map(([id]) => id).sort());
});
