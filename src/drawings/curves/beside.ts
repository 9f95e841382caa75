/** Strands that run side by side: control points beside a curve, so that a bundle follows one path. */
import { type Curve, directionAt, pointAt } from './curve.ts';
import type { Point } from './point.ts';

/** Distance between the control points that are handed out. */
const SPACING = 9;

/**
 * Control points at a distance beside a curve, from one length along it to another.
 * @param aside drawing units; positive to the right of the way the curve runs
 */
export function beside(curve: Curve, aside: number, from = 0, to = curve.length): Point[] {
  const count = Math.max(2, Math.round((to - from) / SPACING));
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const at = from + ((to - from) * i) / count;
    const [x, y] = pointAt(curve, at);
    const [dx, dy] = directionAt(curve, at);
    return [x - dy * aside, y + dx * aside];
  });
}
