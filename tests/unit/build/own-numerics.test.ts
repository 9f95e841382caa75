/** The statistics of breaks and the motion of a fall get copies of the numerics, and nobody else does. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { copyOf, ownNumerics } from '../../../src/build/steps/own-numerics.ts';

const NORMAL = '/x/src/numerics/normal.ts';

test('the statistics of breaks, and a copy itself, import a copy', () => {
  expect(copyOf(NORMAL, '/x/src/break-tests/plan-bound.ts')).toBe(`${NORMAL}?breaks`);
  expect(copyOf(NORMAL, '/x/src/numerics/roots.ts?breaks')).toBe(`${NORMAL}?breaks`);
});

test('the motion of a fall imports copies of its own, which the statistics do not share', () => {
  expect(copyOf('/x/src/numerics/ode.ts', '/x/src/falls/time-course.ts')).toBe('/x/src/numerics/ode.ts?falls');
  expect(copyOf('/x/src/numerics/roots.ts', '/x/src/numerics/ode.ts?falls')).toBe('/x/src/numerics/roots.ts?falls');
  expect(copyOf(NORMAL, '/x/src/falls/demand.ts')).toBeNull();
});

test('the comparison, other files of the statistics, and a page keep the files themselves', () => {
  expect(copyOf(NORMAL, '/x/src/strength/chain.ts')).toBeNull();
  expect(copyOf('/x/src/break-tests/checks.ts', '/x/src/break-tests/plan-bound.ts')).toBeNull();
  expect(copyOf(NORMAL, undefined)).toBeNull();
});

test('a copy is the file, word for word', () => {
  const path = 'src/numerics/roots.ts';
  for (const mark of ['?breaks', '?falls']) expect(ownNumerics.load.handler(`${path}${mark}`)).toEqual({ code: readFileSync(path, 'utf8'), moduleType: 'ts' });
});
