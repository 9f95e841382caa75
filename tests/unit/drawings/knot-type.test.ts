/**
 * Types of the knots that are drawn, computed from the drawings' own crossings. Expected polynomials: Rolfsen's table of
 * knots (D. Rolfsen, Knots and Links, 1976): 5_1 and 7_1 as Wikipedia and the Knot Atlas print them, 3_1 and 4_1 recalled.
 */
import { expect, test } from 'vitest';
import type { Point } from '../../../src/drawings/curves/point.ts';
import { cross } from '../../../src/drawings/crossings.ts';
import { drawingsOf } from '../../../src/drawings/drawings.ts';
import { alexanderPolynomial, linkingNumber } from '../../../src/drawings/knot-type.ts';
import { FIGURE_EIGHT_SAYS, figureEightPath } from '../../../src/drawings/knots/figure-eight.ts';
import { fishermansHalf } from '../../../src/drawings/knots/fishermans.ts';
import { OVERHAND_SAYS, overhandPath } from '../../../src/drawings/knots/overhand.ts';
import type { Scene, Strand } from '../../../src/drawings/scene.ts';

const UNKNOT = [1];
const TREFOIL_3_1 = [1, -1, 1];
const FIGURE_EIGHT_4_1 = [1, -3, 1];
const CINQUEFOIL_5_1 = [1, -1, 1, -1, 1];
const SEPTAFOIL_7_1 = [1, -1, 1, -1, 1, -1, 1];

const strand = (points: readonly Point[], says: string, closed = false, name = 'strand'): Strand => ({ name, kind: 'cord', closed, points, says });
const typeOf = (strands: Strand[], names?: string[]) => alexanderPolynomial(cross(strands), names);
function sceneOf(method: string, frame: string): Scene {
  const drawing = drawingsOf(method).find((one) => one.frame === frame);
  if (!drawing) throw new Error(`no drawing of ${method}, ${frame}`);
  return drawing.scene;
}
const finished = (method: string) => cross(sceneOf(method, 'right').strands);

// Torus curves of the table, by their formula: r = 2 + cos(q u) at the angle 2u, alternating.
const torus = (q: number): Strand => strand(Array.from({ length: 40 * q }, (_, i): Point => {
  const u = (2 * Math.PI * i) / (40 * q) + 0.05;
  const r = 40 * (2 + Math.cos(q * u));
  return [r * Math.cos(2 * u), r * Math.sin(2 * u)];
}), 'ou'.repeat(q), true);

test.each([[3, TREFOIL_3_1], [5, CINQUEFOIL_5_1], [7, SEPTAFOIL_7_1]])('the torus curve of %i crossings has the polynomial of the table', (q, expected) => {
  expect(typeOf([torus(q)])).toEqual(expected);
});

test('a ring without crossings, and a ring with one twist, are the unknot', () => {
  expect(typeOf([strand([[0, 0], [50, 0], [50, 50], [0, 50]], '', true)])).toEqual(UNKNOT);
  expect(typeOf([strand([[0, 0], [30, 30], [60, 60], [90, 30], [60, 0], [30, 30.5], [0, 60], [-30, 30]], 'ou', true)])).toEqual(UNKNOT);
});

// An overhand knot with its ends joined is the trefoil: nearlylowtech.com, "The Overhand Knot".
test('an overhand knot closed at its ends is the trefoil, 3_1', () => {
  const path = overhandPath([200, 200], 1, [160, 90], [160, 310]);
  expect(typeOf([strand(path.samples.filter((_, i) => i % 6 === 0), OVERHAND_SAYS)])).toEqual(TREFOIL_3_1);
});

test('an overhand with one crossing changed is no knot', () => {
  const path = overhandPath([200, 200], 1, [160, 90], [160, 310]);
  // First and fourth visits are of the same crossing.
  expect(typeOf([strand(path.samples.filter((_, i) => i % 6 === 0), 'uuooou')])).toEqual(UNKNOT);
});

test('a figure eight knot closed at its ends is 4_1', () => {
  const path = figureEightPath([200, 200], 1, [200, 70], [200, 330]);
  expect(typeOf([strand(path.samples.filter((_, i) => i % 6 === 0), FIGURE_EIGHT_SAYS)])).toEqual(FIGURE_EIGHT_4_1);
});

// "The cinquefoil is the closed version of the double overhand knot": Wikipedia, "Cinquefoil knot". Each turn adds two
// crossings to the overhand's three, over and under in turn: nearlylowtech.com, "The Overhand Knot".
test.each([[1, 'overhand, 3_1', TREFOIL_3_1], [2, 'double overhand, 5_1', CINQUEFOIL_5_1], [3, 'triple overhand, 7_1', SEPTAFOIL_7_1]])('half of a fisherman\'s bend with %i turns is a(n) %s', (turns, _name, expected) => {
  const { cord, says, other } = fishermansHalf(turns as number, 24);
  const crossed = [strand([[100, 10], [40, 10], ...cord], says, false, 'cord'), strand([[-300, 0], [-100, 0], [100, 0]], other, false, 'other')];
  expect(typeOf(crossed, ['cord'])).toEqual(expected);
});

/** Types of a cord's two ends, each by itself: the crossings of its first half with itself, and of its second. */
function endsOf(method: string, frame: string, name: string): number[][] {
  const crossed = cross(sceneOf(method, frame).strands);
  const index = crossed.strands.findIndex((one) => one.name === name);
  const middle = (crossed.curves[index] as { length: number }).length / 2;
  return [(at: number) => at < middle, (at: number) => at > middle].map((isIn) => alexanderPolynomial({
    ...crossed,
    crossings: crossed.crossings.filter(({ over, under }) => over.strand === index && under.strand === index && isIn(over.at) && isIn(under.at)),
  }, [name]));
}

test.each([
  ['cord-loop-double-fishermans', 'right', CINQUEFOIL_5_1],
  ['cord-loop-double-fishermans', 'step-2', CINQUEFOIL_5_1],
  ['cord-loop-double-fishermans', 'wrong', TREFOIL_3_1],
  ['cord-loop-triple-fishermans', 'right', SEPTAFOIL_7_1],
  ['cord-loop-triple-fishermans', 'wrong', CINQUEFOIL_5_1],
])('each end of the cord in %s, %s, is that knot by itself', (method, frame, expected) => {
  expect(endsOf(method, frame, 'cord')).toEqual([expected, expected]);
});

test('each end of the tape in a ring bend is an overhand by itself', () => {
  expect(endsOf('tape-loop-ring-bend', 'right', 'tape')).toEqual([TREFOIL_3_1, TREFOIL_3_1]);
  expect(alexanderPolynomial(cross(sceneOf('tape-loop-ring-bend', 'step-1').strands), ['tape'])).toEqual(TREFOIL_3_1);
});

// Two strands side by side along a trefoil: its cable (2, q). Of a drawing with three crossings of one hand, q is twice
// three and one more for the closing. W. B. R. Lickorish, An Introduction to Knot Theory, theorem 6.15: the polynomial of
// a cable is that of the torus knot (2, 7) times that of the trefoil at t squared. Multiplied by hand:
// (1 - t^2 + t^4)(1 - t + t^2 - t^3 + t^4 - t^5 + t^6). The theorem's number is recalled.
test('a ring bend, one tape following the other all the way, is the cable of a trefoil', () => {
  expect(alexanderPolynomial(finished('tape-loop-ring-bend'), ['tape'])).toEqual([1, -1, 0, 0, 1, -1, 1, 0, 0, -1, 1]);
});

test('the doubled part of a beer knot is an overhand', () => {
  expect(alexanderPolynomial(finished('tape-loop-beer-knot'), ['doubled tape'])).toEqual(TREFOIL_3_1);
});

// A closed sling stays what it is, whatever is tied in it without opening it; and it comes off a closed eye again.
const CLOSED = ['basket', 'basket-overhand', 'basket-figure-eight', 'girth-hitch', 'overhand-on-a-bight', 'bowline-on-a-bight', 'twin-eye-basket'];
test.each(CLOSED)('every drawing of %s has a sling that is the unknot and falls apart from the eye', (method) => {
  for (const { frame, scene } of drawingsOf(method)) {
    const crossed = cross(scene.strands);
    expect(alexanderPolynomial(crossed, ['sling']), frame).toEqual(UNKNOT);
    for (const eye of ['eye', 'left eye', 'right eye']) {
      if (!scene.strands.some(({ name, says }) => name === eye && says !== '')) continue;
      expect(linkingNumber(crossed, 'sling', eye), frame).toBe(0);
      expect(alexanderPolynomial(crossed, ['sling', eye]), frame).toEqual([]);
    }
  }
});

// A loop that is closed through a closed eye, by a seam or a join, is linked with it once.
test.each([['makers-sling', 'sling'], ['sewn-loop-single', 'sling'], ['sewn-loop-doubled', 'inner layer'], ['sewn-loop-doubled', 'outer layer'], ['keep-the-old-sling', 'old sling']])('the loop of %s (%s) is linked with the eye once', (method, name) => {
  expect(linkingNumber(finished(method), name, 'eye')).toBe(1);
});

// The Borromean rings, L6a4: (1 - t)^4 in one variable (recalled: (u-1)(v-1)(w-1) in three, times t - 1). No two of
// them are linked, and the three do not come apart.
test('eye, basket and connector are the Borromean rings: with both ends clipped they do not come apart', () => {
  expect(alexanderPolynomial(finished('basket'))).toEqual([1, -4, 6, -4, 1]);
});

test.each(['basket', 'twin-eye-basket', 'quick-link-doubled'])('with one end of %s left unclipped, eye and connector come apart', (method) => {
  expect(alexanderPolynomial(cross(sceneOf(method, 'wrong').strands))).toEqual([]);
});

test('each eye of a twin eye is bound to basket and connector in the same way', () => {
  for (const eye of ['left eye', 'right eye']) expect(alexanderPolynomial(finished('twin-eye-basket'), [eye, 'sling', 'connector'])).toEqual([1, -4, 6, -4, 1]);
});

test.each(['basket-overhand', 'basket-figure-eight'])('with both loops clipped, %s does not come off the eye', (method) => {
  expect(alexanderPolynomial(finished(method))).not.toEqual([]);
});

// One loop to clip: sling and connector come off together, through the hitch, by the way they were tied. So the knot's
// tightness and not its type is what keeps them on.
test.each(['girth-hitch', 'overhand-on-a-bight', 'bowline-on-a-bight'])('%s can be undone without unclipping', (method) => {
  expect(alexanderPolynomial(finished(method))).toEqual([]);
});
