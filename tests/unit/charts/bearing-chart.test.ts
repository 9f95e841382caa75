/** Breaks over bearings. Places are worked out by hand: percents along, pixels from the top. */
import { describe, expect, test } from 'vitest';
import { alongPercent, type BearingPoint, bearingPanel } from '../../../src/charts/bearing-chart.ts';

/** Sixteen millimetres along, forty up, a hundred pixels high: one unit along is 6.25 %, one up 2.5 px. */
const frame = { bearingEnd: 16, values: [20, 40], height: 100 };
const pulls: BearingPoint = { bearing: 4, mark: { kind: 'pulls', broken: [10, 12], held: [] } };
const mean: BearingPoint = { bearing: 10, mark: { kind: 'mean', at: 20, n: 2 } };

describe('marks', () => {
  test('each pull stands at its own force above its bearing, a mean is one sign', () => {
    expect(bearingPanel([pulls, mean], frame, 0.5, null).signs).toEqual([
      { sign: 'pull', x: 25, y: 75 }, { sign: 'pull', x: 25, y: 70 }, { sign: 'mean', x: 62.5, y: 50 },
    ]);
  });

  test('what a table of the trade says is told apart from a test', () => {
    expect(bearingPanel([{ bearing: 8, mark: { kind: 'one', at: 40, taught: true } }], frame, 0, null).signs).toEqual([{ sign: 'one', x: 50, y: 0, taught: true }]);
  });

  test.each(['range', 'atLeast'] as const)('a %s has no single place and is refused', (kind) => {
    const mark = kind === 'range' ? { kind, low: 1, high: 2, n: null } : { kind, at: 1, n: null };
    expect(() => bearingPanel([{ bearing: 4, mark }], frame, 0.5, null)).toThrow(RangeError);
  });

  test('the numbers of the axis stand at their height', () => {
    expect(bearingPanel([], frame, 0.5, null).rows).toEqual([{ y: 50, value: 20 }, { y: 0, value: 40 }]);
  });
});

describe('what nobody tested', () => {
  test('is everything where there is no point', () => {
    expect(bearingPanel([], frame, 0.5, null).untested).toEqual([{ from: 0, width: 100 }]);
  });

  test('is all but half a millimetre to each side of a test, also between two tests', () => {
    // 3.5 is 21.875 %, 4.5 is 28.125 %, 9.5 is 59.375 %, 10.5 is 65.625 %.
    expect(bearingPanel([pulls, mean], frame, 0.5, null).untested).toEqual([{ from: 0, width: 21.9 }, { from: 28.1, width: 31.3 }, { from: 65.6, width: 34.4 }]);
  });

  test('has no gap between two tests that lie side by side', () => {
    expect(bearingPanel([pulls, { ...mean, bearing: 5 }], frame, 0.5, null).untested).toEqual([{ from: 0, width: 21.9 }, { from: 34.4, width: 65.6 }]);
  });

  test('is what lies beyond the ends of a table of the trade', () => {
    const step = (bearing: number): BearingPoint => ({ bearing, mark: { kind: 'one', at: 20, taught: true } });
    expect(bearingPanel([step(4), step(8), step(16)], frame, 0, null).untested).toEqual([{ from: 0, width: 25 }]);
  });

  test('does not reach to an end of the axis that was tested', () => {
    // From 1 to 15.5: 6.25 % to 96.875 %.
    expect(bearingPanel([{ ...pulls, bearing: 0.5 }, { ...mean, bearing: 16 }], frame, 0.5, null).untested).toEqual([{ from: 6.3, width: 90.6 }]);
  });
});

test('the line runs through the places that it is given, and through no other', () => {
  expect(bearingPanel([pulls, mean], frame, 0.5, [[4, 10], [8, 20]]).line).toBe('M25 75L50 50');
  expect(bearingPanel([pulls, mean], frame, 0.5, null).line).toBeNull();
});

test("a reader's bearing has a place on the axis, and none beyond its end", () => {
  expect([0, 4, 16, 16.1].map((mm) => alongPercent(mm, 16))).toEqual([0, 25, 100, null]);
  expect(() => alongPercent(-1, 16)).toThrow(RangeError);
  expect(() => alongPercent(Number.NaN, 16)).toThrow(RangeError);
});
