/** What loops tied from tape share: the knot on the right leg, a plain left leg, the eye and the connector. */
import { halfTurn } from '../curves/bends.ts';
import type { Curve } from '../curves/curve.ts';
import type { Point } from '../curves/point.ts';
import { overhandPath } from '../knots/overhand.ts';
import { BEARING } from '../parts/eye.ts';
import type { Mark, Scene, Strand } from '../scene.ts';
import { type Clip, rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, WORDS } from './places.ts';

/** The knot and its tails are long: the connector hangs lower than elsewhere. */
export const LOWER = 22;
export const END = IN_CLIP + LOWER;

/** The knot lies on the right leg; the left leg is plain. */
export const LINE = 186;
export const PATH: Curve = overhandPath([217, 266], 0.82, [LINE, 188], [LINE, 344]);
const PLAIN = 116;
const [AT_EYE, AT_CLIP] = [18, 13];

const eased = (from: Point, to: Point): Point[] => [0, 0.2, 0.4, 0.6, 0.8, 1].map((share): Point => [from[0] + (to[0] - from[0]) * (1 - Math.cos(Math.PI * share)) / 2, from[1] + (to[1] - from[1]) * share]);

/** From the knot's lower end through the connector, up the plain leg, over the eye, to the knot's upper end. */
export function round(lower: Point, upper: Point, end: number): Point[] {
  const [left, rightSide, waist] = [160 - AT_CLIP, 160 + AT_CLIP, (end + BEARING) / 2];
  return [
    ...eased(lower, [rightSide, end - 10]), ...halfTurn(rightSide, left, end, false),
    [left, end - 10], [PLAIN + 12, waist + 70], [PLAIN, waist], [PLAIN + 8, waist - 70], [160 - AT_EYE, BEARING + 8],
    ...halfTurn(160 - AT_EYE, 160 + AT_EYE, BEARING - 10, true), [160 + AT_EYE + 1, BEARING + 8], [(160 + AT_EYE + upper[0]) / 2 + 1, (BEARING + 8 + upper[1]) / 2], upper,
  ];
}

/** The connector, the height of a whole drawing, and of its line of words. */
export const CLIPPED: Clip = { at: [CLIP[0], CLIP[1] + LOWER], says: 'uo' };
export const WHOLE = HEIGHT + LOWER;
export const FOOT = WORDS + LOWER;

/** The drawing of a tied loop, clipped or not yet. */
export function tiedLoop(slings: readonly Strand[], clip: Clip | undefined, above: readonly Mark[], height: number): Scene {
  return rigged({ eye: 'sleeved-wire', eyeSays: 'uo', slings, ...(clip ? { clip } : {}), height, above });
}
