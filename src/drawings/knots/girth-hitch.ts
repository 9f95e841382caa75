/** A closed sling drawn through itself round the eye. */
import { halfTurn, upright } from '../curves/bends.ts';
import type { Point } from '../curves/point.ts';
import { BEARING, MIDDLE } from '../parts/eye.ts';
import type { Strand } from '../scene.ts';

/** Half of the distance between the two legs, and between the two outer turns. */
const LEG = 6.25;
const OUTER = 29;

/**
 * The sling as one closed strand: up the left leg, over the eye in front, down behind it, across both legs, and the same
 * way back on the right.
 * @param depth how far below the eye the cross piece lies: little where the hitch is snug
 * @param end height of the lower end; @param clipped whether it is clipped
 */
export function girth(depth: number, end: number, clipped: boolean): Strand {
  const turn = BEARING - 14;
  const across = BEARING + depth;
  const side = (sign: 1 | -1, x: number): number => MIDDLE + sign * x;
  const over = (sign: 1 | -1): Point[] => [...upright(side(sign, LEG), across + 30, turn + 4), ...halfTurn(side(sign, LEG), side(sign, OUTER), turn, true), ...upright(side(sign, OUTER), turn + 4, across - 18)];
  const lower = halfTurn(side(1, LEG + 3), side(-1, LEG + 3), end, false);
  return {
    name: 'sling', kind: 'tape', closed: true,
    points: [
      [side(-1, LEG + 3), end - 8], ...upright(side(-1, LEG), end - 50, across + 44), ...over(-1),
      [side(-1, OUTER - 3), across - 8], [side(-1, OUTER - 12), across - 1], [MIDDLE, across], [side(1, OUTER - 12), across - 1], [side(1, OUTER - 3), across - 8],
      ...over(1).reverse(), ...upright(side(1, LEG), across + 44, end - 50), [side(1, LEG + 3), end - 8], ...lower,
    ],
    says: `${clipped ? 'o' : ''}uouoouou${clipped ? 'u' : ''}`,
  };
}

/** The eye's side of the crossings. */
export const GIRTH_EYE = 'ouuo';
