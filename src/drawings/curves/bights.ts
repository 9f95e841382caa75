/** Ends of bundles: a strand that turns back beside itself. */
import { type Curve, directionAt, pointAt } from './curve.ts';
import type { Point } from './point.ts';

/** Half turn at a length along a path, forward as it runs, from one distance beside it to another. Distances as in `beside`. */
export function bight(path: Curve, at: number, from: number, to: number): Point[] {
  const [x, y] = pointAt(path, at);
  const [dx, dy] = directionAt(path, at);
  const [middle, radius] = [(from + to) / 2, Math.abs(to - from) / 2];
  return [0, 1, 2, 3, 4, 5, 6].map((i): Point => {
    const angle = (Math.PI * i) / 6;
    const aside = middle + ((from - to) / 2) * Math.cos(angle);
    const ahead = radius * 1.1 * Math.sin(angle) + 2;
    return [x - dy * aside + dx * ahead, y + dx * aside + dy * ahead];
  });
}
