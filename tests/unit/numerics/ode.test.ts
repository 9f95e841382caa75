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

test('an event may look at the time, and begins to count once it was above 0', () => {
  const timed = integrate(() => [1], [0], 0, 1, { event: (t) => 0.3 - t });
  expect(timed.times.at(-1)).toBeCloseTo(0.3, 11);
  expect(timed.states.at(-1)?.[0]).toBeCloseTo(0.3, 11);
  // A stone thrown up from 1 m below: it comes down through 0 at (7 + sqrt(49 - 20)) / 10 s.
  const height = (_t: number, [y = 0]: readonly number[]) => y;
  const stone = integrate((_t, [, v = 0]) => [v, -10], [-1, 7], 0, 5, { event: height });
  expect(stone.times.at(-1)).toBeCloseTo((7 + Math.sqrt(29)) / 10, 11);
  // One that falls from 0 was never above it.
  expect(integrate((_t, [, v = 0]) => [v, -10], [0, -1], 0, 1, { event: height }).ended).toBe(false);
});

test('the walk begins with its start, and errors are relative to what is large', () => {
  const start = [1e6];
  const { times, states } = integrate((_t, [y = 0]) => [y], start, 0, 1);
  expect([times[0], states[0]]).toEqual([0, [1e6]]);
  expect(states[0]).not.toBe(start);
  expect((states.at(-1)?.[0] ?? 0) / 1e6 / Math.E - 1).toBeCloseTo(0, 9);
});

test('a step is of order five: ten of a tenth give e to a millionth', () => {
  const { states } = integrate((_t, [y = 0]) => [y], [1], 0, 1, { tolerance: 1, longestStep: 0.1 });
  expect(Math.abs((states.at(-1)?.[0] ?? 0) - Math.E)).toBeLessThan(1e-6);
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
  expect(() => integrate(() => [1], [0], 0, 1, { longestStep: 0 })).toThrow(/^tolerance and longestStep/);
  expect(() => integrate(() => [1], [0], 0, Infinity)).toThrow(/^to must be after from and finite/);
  // A jump of the slope that no step resolves; and 1 / (1 - t), which has no value at 1.
  expect(() => integrate((t) => [t < 0.5 ? 0 : 1e30], [0], 0, 1)).toThrow(/^the steps became too short near 0\.(?:5|49)/);
  expect(() => integrate((_t, [y = 0]) => [y * y], [1], 0, 2)).toThrow(/^slope gave no number near 0\.99/);
  expect(() => integrate(() => [1], [0], 0, 1, { longestStep: 1e-6 })).toThrow('more than 100000 steps between 0 and 1.');
});
