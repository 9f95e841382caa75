/**
 * One half of a fisherman's bend: a cord turned round another cord and round itself, its end tucked through the turns.
 * Along the axis: the cord comes from the right at one side of the axis, the other cord lies on the axis, the tail leaves
 * to the left at the other side. Turns that lie in front run down, turns behind run up.
 */
import type { Point } from '../curves/point.ts';

/** Distance between the three cords inside the turns, and between neighbouring half turns. */
export const INSIDE = 10;
const STEP = 10.5;
/** How far the turns reach from the axis. */
const REACH = 22;

/** One half: the path of its cord, and what it and the other cord say. */
export interface Half {
  /** From the right, through the turns, to the end of the tail. Axis at height 0, the turns' right end at 0. */
  cord: Point[];
  /** The cord's crossings along it, with itself and with the other cord. */
  says: string;
  /** The other cord's crossings, from left to right. */
  other: string;
  /** Length of the turns along the axis. */
  length: number;
}

/** @param turns full turns that show in front: one in a fisherman's, two in a double, three in a triple @param tail length of the tail */
export function fishermansHalf(turns: number, tail: number): Half {
  const halves = 2 * turns + 1;
  const left = -halves * STEP;
  const cord: Point[] = [[left / 2, INSIDE], [left + 2, INSIDE], [left - 6, INSIDE - 3], [left - 9, -2], [left - 5, -13]];
  for (let k = 1; k < halves; k++) {
    const x = left + (k - 0.5) * STEP + 2;
    const sign = k % 2 === 1 ? -1 : 1;
    if (k > 1) cord.push([x - 4.2, sign * (REACH - 5)]);
    cord.push([x, sign * REACH]);
    if (k < halves - 1) cord.push([x + 4.2, sign * (REACH - 5)], [x + STEP / 2, 0]);
  }
  cord.push([-5, 13], [-1, 2], [-4, -7], [-12, -INSIDE], [left / 2, -INSIDE], [left, -INSIDE], [left - tail * 0.55, -INSIDE - 2], [left - tail, -INSIDE - 9]);
  // Behind first, then in front by turns: on the way in the cord meets the last turn first.
  const inner = 'o'.concat('uo'.repeat(turns)).slice(0, -1);
  const turnsSay = `uu${'ooouuu'.repeat(turns)}`.slice(0, -1);
  return { cord, says: `${inner}${turnsSay}${backTail(turns)}`, other: `o${'uo'.repeat(turns)}`, length: -left };
}

/** The tail meets every turn but the one that it comes from, last first: in front ones lie over it. */
const backTail = (turns: number): string => 'uo'.repeat(turns);
