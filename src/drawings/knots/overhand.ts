/** Overhand knot as one path that strands follow: enters at the top, leaves at the bottom, with its lobes to the right. */
import { curveThrough, type Curve } from '../curves/curve.ts';
import type { Point } from '../curves/point.ts';

/** Over and under along the path. */
export const OVERHAND_SAYS = 'ououou';

/** The path comes to its three crossings six times: which other time each is the same crossing. */
export const OVERHAND_PARTNER: readonly number[] = [3, 4, 5, 0, 1, 2];

/** First half of the path, from the top to the far left of the ring, about a centre at 0,0; the other half mirrors it. */
const HALF: readonly Point[] = [[-38, -86], [-22, -52], [12, -24], [46, 4], [62, 38], [48, 72], [14, 88], [-22, 76], [-45, 44]];

/**
 * Path of an overhand knot.
 * @param size 1 is about 140 wide and 210 high for a bundle of four tapes
 */
export function overhandPath([cx, cy]: Point, size: number, top: Point, bottom: Point): Curve {
  const other = [...HALF].reverse().map(([x, y]): Point => [x, -y]);
  const scaled = [...HALF, [-50, 0] as Point, ...other].map(([x, y]): Point => [cx + size * x, cy + size * y]);
  return curveThrough([top, ...scaled, bottom]);
}
