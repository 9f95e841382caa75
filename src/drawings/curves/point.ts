/** Points of a drawing, and the few things done with them. x to the right, y down, in drawing units. */

export type Point = readonly [number, number];

export const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Each point moved by the same step. */
export const moved = (points: readonly Point[], dx: number, dy: number): Point[] => points.map(([x, y]) => [x + dx, y + dy]);

/** Each point turned by half a turn about a centre: over stays over. */
export const turned = (points: readonly Point[], [cx, cy]: Point): Point[] => points.map(([x, y]) => [2 * cx - x, 2 * cy - y]);

/** The other way along a curve. */
export const reversed = <T>(list: readonly T[]): T[] => [...list].reverse();
