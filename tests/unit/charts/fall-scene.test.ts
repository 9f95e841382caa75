/** The drawing of a fall is to scale. Expected lengths are sums by hand of what was told, and plane geometry. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apart, type FallLengths, fallScene, type Place } from '../../../src/charts/fall-scene.ts';

/** By hand: 2 m above, 0.5 m slack, 12 m out: 9.5 m from belayer to top piece; free fall 4.5 m; 1.5 m of stretch. */
const CRAG: FallLengths = { segmentsM: [2.5, 9.5 / 3, 9.5 / 3, 9.5 / 3], turnsDeg: [0, 0], aboveM: 2, slackM: 0.5, stretchM: 1.5, slipM: 0 };
const far = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);
const lengths = ({ rope }: { rope: readonly Place[] }): number[] => rope.slice(1).map((one, i) => far(one, rope[i] as Place));
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyFall: fc.Arbitrary<FallLengths> = fc.record({ aboveM: metres(0, 50), slackM: metres(0, 10), parts: metres(0.1, 40), turn: metres(0, 150), stretchM: metres(0.01, 20), slipM: metres(0, 20) })
  .map(({ parts, turn, ...one }) => ({ ...one, segmentsM: [one.aboveM + one.slackM, parts, parts, parts], turnsDeg: [turn, turn] }));

test('heights stand to each other as what was told: 2 m above, 4.5 m of fall, 1.5 m of stretch, 9.5 m from belayer to top piece', () => {
  const { scale, before, after, pieces, belayer, spans, belowBelayM } = fallScene(CRAG);
  const [top] = pieces as [Place];
  expect((top.y - before.y) / scale).toBeCloseTo(2, 9);
  expect((belayer.y - top.y) / scale).toBeCloseTo(9.5, 9);
  expect(spans.map(({ name, from, to }) => [name, (to - from) / scale])).toEqual([['fall', expect.closeTo(4.5, 9)], ['stretch', expect.closeTo(1.5, 9)]]);
  // 9.5 - 0.5 - 2 - 1.5 = 5.5 above the belayer.
  expect((belayer.y - after.y) / scale).toBeCloseTo(5.5, 9);
  expect(belowBelayM).toBeCloseTo(-5.5, 9);
});

test('every part of the rope has its length, and turns by its angle, however it zigzags; the top piece is above the belayer', () => {
  fc.assert(fc.property(anyFall, (fall) => {
    const scene = fallScene(fall);
    const { rope, scale } = scene;
    for (const [i, length] of lengths(scene).entries()) expect(length / scale / (fall.segmentsM[i + 1] as number)).toBeCloseTo(1, 6);
    const headings = rope.slice(1).map((one, i) => (180 / Math.PI) * Math.atan2(one.x - (rope[i] as Place).x, (rope[i] as Place).y - one.y));
    for (const [i, heading] of headings.slice(1).entries()) {
      const turn = Math.abs(heading - (headings[i] as number));
      expect(Math.min(turn, 360 - turn)).toBeCloseTo(fall.turnsDeg[0] as number, 5);
    }
    const [first, last] = [rope[0] as Place, rope.at(-1) as Place];
    expect(Math.abs(last.x - first.x) / scale).toBeLessThan(1e-6 * fall.segmentsM.reduce((sum, one) => sum + one, 1));
  }), { numRuns: 300 });
});

test('nothing stands outside the drawing, and the bar is as long as it says', () => {
  fc.assert(fc.property(anyFall, (fall) => {
    const { rope, before, after, spans, width, height, scale, bar } = fallScene(fall);
    for (const { x, y } of [...rope, before, after, ...spans.map(({ to }) => ({ x: 0, y: to }))]) expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
    expect(bar.length / scale).toBeCloseTo(bar.metres, 9);
    // By hand: three straight parts, then up; the climber ends lower than the piece by what hangs.
    const hangs = fall.aboveM + fall.slackM + fall.stretchM + fall.slipM;
    expect((after.y - (rope.at(-1) as Place).y) / scale / hangs).toBeCloseTo(1, 6);
  }), { numRuns: 300 });
});

test('a fall onto the belay has no piece: the climber ends as far below as all the rope and its stretch', () => {
  const { pieces, rope, belayer, after, scale, belowBelayM } = fallScene({ segmentsM: [3], turnsDeg: [], aboveM: 3, slackM: 0, stretchM: 1.2, slipM: 0.8 });
  expect([pieces, rope.length]).toEqual([[], 1]);
  expect((after.y - belayer.y) / scale).toBeCloseTo(5, 9);
  expect(belowBelayM).toBeCloseTo(5, 9);
});

test('labels keep their distance, their order and the lower edge, and one that stands alone is not moved', () => {
  expect(apart([10, 12, 60], 16, 100)).toEqual([10, 26, 60]);
  expect(apart([90, 95], 16, 100)).toEqual([84, 100]);
});

test.each([
  [{ aboveM: -1 }, /^aboveM must be 0 or more/], [{ segmentsM: [1, Number.NaN, 1, 1] }, /^segmentsM\[1\] must be 0 or more/], [{ turnsDeg: [] }, /^turnsDeg must hold two fewer than segmentsM/],
])('lengths that cannot be are refused by their name: %j', (change, message) => expect(() => fallScene({ ...CRAG, ...change })).toThrow(message));
