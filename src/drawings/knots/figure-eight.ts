/** Figure eight knot as one path that strands follow: enters at the top, leaves at the bottom, a lobe to each side of its waist. */
import { curveThrough, type Curve } from '../curves/curve.ts';
import type { Point } from '../curves/point.ts';

/** Over and under along the path. */
export const FIGURE_EIGHT_SAYS = 'ouououou';

/** Half of the path, from the top to the waist's middle, about a centre at 0,0; the other half is the same after half a turn. */
const HALF: readonly Point[] = [[0, -112], [-4, -76], [-20, -30], [-38, 8], [-56, 42], [-54, 78], [-28, 98], [4, 98], [38, 90], [58, 64], [50, 34], [22, 12]];

/**
 * Path of a figure eight knot about a centre.
 * @param size 1 is about 150 wide and 240 high for a bundle of four tapes
 */
export function figureEightPath([cx, cy]: Point, size: number, top: Point, bottom: Point): Curve {
  const other = [...HALF].reverse().map(([x, y]): Point => [-x, -y]);
  const scaled = [...HALF, [0, 0] as Point, ...other].map(([x, y]): Point => [cx + size * x, cy + size * y]);
  return curveThrough([top, ...scaled, bottom]);
}
