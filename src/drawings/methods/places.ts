/** Places that the drawings of methods share. */
import { curveThrough, type Curve } from '../curves/curve.ts';
import type { Point } from '../curves/point.ts';
import { MIDDLE } from '../parts/eye.ts';

/** The connector at its usual place, and the height at which a sling turns in it. */
export const CLIP: Point = [MIDDLE, 384];
export const IN_CLIP = 400;
/** Height of a whole drawing, of its line of words, and what a step leaves out above. */
export const HEIGHT = 540;
export const WORDS = 531;
export const STEP_FROM = 52;

/** Loops of four strands, both clipped, and one of them hanging free beside the connector. */
export const BOTH = [{ clipped: true, centre: 140, y: IN_CLIP }, { clipped: true, centre: 180, y: IN_CLIP }] as const;
export const ONE_FREE = [{ clipped: true, centre: 140, y: IN_CLIP }, { clipped: false, centre: 212, y: 398 }] as const;
/** The connector beside which a loop hangs free. */
export const CLIP_LEFT: Point = [140, 384];

/** Four strands that hang from the eye without a knot. */
export const STRAIGHT: Curve = curveThrough([[MIDDLE, 176], [MIDDLE, 200]]);
