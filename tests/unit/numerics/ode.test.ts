/** Motions whose solution is a formula. */
import { expect, test } from 'vitest';
import { integrate } from '../../../src/numerics/ode.ts';

test('a swing without damping is a cosine and a sine, after three of its periods', () => {
  const { states, ended } = integrate((_t, [x = 0, v = 0]) => [v, -4 * x], [1, 0], 0, 3 * Math.PI);
  expect(ended).toBe(false);
  const [x = 0, v = 0] = states.at(-1) ?? [];
  expect(Math.abs(x - 1)).toBeLessThan(1e-8);
  expect(Math.abs(v)).toBeLessThan(1e-8);
});

test('growth by a rate that falls with time is the exponential of its integral', () => {
  const { states } = integrate((t, [y = 0]) => [y * Math.cos(t)], [1], 0, 2);
  expect((states.at(-1)?.[0] ?? 0) / Math.exp(Math.sin(2)) - 1).toBeCloseTo(0, 9);
});

test('an event ends the walk where it happens: a stone thrown up stands still after v / g', () => {
  const { times, states, ended } = integrate((_t, [, v = 0]) => [v, -10], [0, 7], 0, 5, { event: (_t, [, v = 0]) => v });
  expect(ended).toBe(true);
  expect(times.at(-1)).toBeCloseTo(0.7, 11);
  expect(states.at(-1)?.[0]).toBeCloseTo(2.45, 11);
});

test('no step is longer than asked, and times rise', () => {
  const { times } = integrate(() => [1], [0], 0, 1, { longestStep: 0.05 });
  expect(Math.max(...times.slice(1).map((t, i) => t - (times[i] as number)))).toBeLessThanOrEqual(0.05 + 1e-15);
  expect(times.at(-1)).toBe(1);
});

test('what cannot be walked is refused by name', () => {
  expect(() => integrate(() => [1], [0], 1, 1)).toThrow(/^to must be after from/);
  expect(() => integrate(() => [Number.NaN], [0], 0, 1)).toThrow(/^slope gave no number/);
  expect(() => integrate(() => [1], [0], 0, 1, { tolerance: 0 })).toThrow(/^tolerance/);
});
