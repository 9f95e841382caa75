/** Places on the chart of all figures. Expected places are worked out by hand from the drawing's own rule: percents of the axis. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axisFor, laneOf, largestOf, LINE, type Mark } from '../../../src/charts/figures-chart.ts';

describe('the axis', () => {
  test('begins at nothing and ends at a round number above the largest', () => {
    expect(axisFor(47.94, 60)).toEqual({ end: 50, ticks: [0, 10, 20, 30, 40, 50].map((value) => ({ at: 2 * value, text: String(value) })) });
    expect(axisFor(94, 150).end).toBe(100);
  });

  test('does not follow one far value', () => {
    expect(axisFor(400, 60).end).toBe(60);
  });

  test.each([0, -3, Number.NaN])('is refused where the largest is %s', (largest) => {
    expect(() => axisFor(largest, 60)).toThrow(RangeError);
  });
});

const axis = axisFor(50, 60);
const one = (mark: Mark) => laneOf([mark], axis);

describe('one mark', () => {
  test('single pulls are ticks, each at its own force, joined by a thin line', () => {
    const lane = one({ kind: 'pulls', broken: [10, 12.5, 11], held: [] });
    expect(lane.signs).toEqual([20, 25, 22].map((at) => ({ sign: 'pull', at, y: expect.any(Number) })));
    expect(lane.bars).toEqual([{ kind: 'joins', from: 20, width: 5, y: expect.any(Number) }]);
    expect(lane.texts).toEqual([]);
  });

  test('one pull alone has no line through it', () => {
    expect(one({ kind: 'pulls', broken: [10], held: [] }).bars).toEqual([]);
  });

  test('a pull in which something else gave way first has a sign of its own', () => {
    expect(one({ kind: 'pulls', broken: [10], held: [20] }).signs.map(({ sign, at }) => [sign, at])).toEqual([['pull', 20], ['held', 40]]);
  });

  test('a mean says its number of pulls, and says nothing where the source does not', () => {
    expect(one({ kind: 'mean', at: 25, n: 5 })).toMatchObject({ signs: [{ sign: 'mean', at: 50 }], texts: [{ text: '5', at: 50, beside: 'sign' }] });
    expect(one({ kind: 'mean', at: 25, n: null }).texts).toEqual([]);
  });

  test('a range is a bar from end to end', () => {
    expect(one({ kind: 'range', low: 5, high: 15, n: null }).bars).toEqual([{ kind: 'range', from: 10, width: 20, y: expect.any(Number) }]);
  });

  test('a bound is an arrow that leaves its other side open', () => {
    expect(one({ kind: 'atLeast', at: 15, n: null }).signs).toMatchObject([{ sign: 'atLeast', at: 30 }]);
    expect(one({ kind: 'atMost', at: 15, n: null }).signs).toMatchObject([{ sign: 'atMost', at: 30 }]);
  });

  test('what lies beyond the axis is no mark at its end but its number with an arrow', () => {
    const lane = one({ kind: 'mean', at: 72, n: 3 });
    expect(lane.signs).toEqual([]);
    expect(lane.texts).toEqual([{ text: '72 \u25b6', at: 100, y: expect.any(Number), beside: 'end' }]);
  });

  test('a series without pulls and a negative number are refused', () => {
    expect(() => one({ kind: 'pulls', broken: [], held: [] })).toThrow(RangeError);
    expect(() => one({ kind: 'one', at: -1 })).toThrow(RangeError);
  });
});

test('the largest of some marks is the highest end of any', () => {
  expect(largestOf([{ kind: 'range', low: 1, high: 9, n: null }, { kind: 'pulls', broken: [3], held: [8] }, { kind: 'one', at: 7 }])).toBe(9);
});

test('marks that would meet stand on lines of their own, and the lane grows by a line each', () => {
  const far = laneOf([{ kind: 'one', at: 5 }, { kind: 'one', at: 40 }], axis);
  const near = laneOf([{ kind: 'one', at: 5 }, { kind: 'one', at: 5.1 }], axis);
  expect(new Set(far.signs.map(({ y }) => y)).size).toBe(1);
  expect(new Set(near.signs.map(({ y }) => y)).size).toBe(2);
  expect(near.height - far.height).toBe(LINE);
});

const force = fc.double({ min: 0.1, max: 50, noNaN: true });
const marks = fc.array(fc.oneof(
  fc.record({ kind: fc.constant('one' as const), at: force }),
  fc.record({ kind: fc.constant('mean' as const), at: force, n: fc.option(fc.integer({ min: 1, max: 99 })) }),
  fc.record({ kind: fc.constant('pulls' as const), broken: fc.array(force, { minLength: 1, maxLength: 6 }), held: fc.constant([]) }),
), { minLength: 1, maxLength: 30 });

test('no sign of one figure touches that of another, on a lane as narrow as a phone gives', () => {
  // A dot is 9 px wide; the narrowest lane is that of a window of 320 px less its margins.
  fc.assert(fc.property(marks, (given) => {
    const { signs, height } = laneOf(given.filter(({ kind }) => kind !== 'pulls'), axis);
    for (const a of signs) {
      expect(a.y).toBeLessThan(height);
      for (const b of signs) if (a !== b && a.y === b.y) expect(Math.abs(a.at - b.at) * 3).toBeGreaterThan(9);
    }
  }));
});

test('every number of every figure is drawn', () => {
  fc.assert(fc.property(marks, (given) => {
    const numbers = given.flatMap((mark) => (mark.kind === 'pulls' ? mark.broken : [mark.at]));
    const drawn = laneOf(given, axis).signs.map(({ at }) => at);
    expect([...drawn].sort((a, b) => a - b)).toEqual(numbers.map((x) => Math.round(20 * x) / 10).sort((a, b) => a - b));
  }));
});

test('on a narrow panel marks are stacked that stand side by side on a wide one', () => {
  const marks: Mark[] = [10, 14].map((at) => ({ kind: 'mean', at, n: 2 }));
  // 4 of 50 are 24 px on a lane of 300, and 8 px on one of 100: a dot and its number need more than that.
  const lines = (narrowest?: number) => new Set(laneOf(marks, axis, narrowest).signs.map(({ y }) => y)).size;
  expect([lines(), lines(100)]).toEqual([1, 2]);
});

test('what is taught keeps its shape and is told apart', () => {
  expect(one({ kind: 'range', low: 5, high: 15, n: null, taught: true }).bars).toMatchObject([{ kind: 'range', taught: true }]);
  expect(one({ kind: 'atMost', at: 5, n: null, taught: true }).signs).toMatchObject([{ sign: 'atMost', taught: true }]);
  expect(one({ kind: 'one', at: 5 }).signs[0]).not.toHaveProperty('taught');
});
