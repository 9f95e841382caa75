/**
 * The five kinds of eye as strands. Each is followed from its top to the left, along its lower edge to the right, and
 * back: so its statement is read from left to right where a sling lies over the lower edge.
 */
import { moved, type Point } from '../curves/point.ts';
import type { Strand } from '../scene.ts';

/** Kinds of eye, named as in the records. */
export type EyeKind = 'bare-wire' | 'sleeved-wire' | 'wire-under-bar' | 'metal-bar' | 'twin-eye';

/** Height of the eye's lower edge, where the sling bears, and its middle. */
export const BEARING = 154;
export const MIDDLE = 160;

const LEFT: readonly Point[] = [[160, 82], [138, 88], [115, 104], [106, 126], [114, 145]];
const LOW: readonly Point[] = [[134, BEARING - 1], [160, BEARING], [186, BEARING - 1]];
const RIGHT: readonly Point[] = LEFT.slice(1).map(([x, y]): Point => [2 * MIDDLE - x, y]).reverse();
const RING: readonly Point[] = [...LEFT, ...LOW, ...RIGHT];

/** Distance of each wire of a twin eye from the middle, and how much lower the right one is drawn. */
const ASIDE = 11;
const LOWER = 13;

const ring = (name: string, kind: Strand['kind'], points: readonly Point[], says: string): Strand => ({ name, kind, closed: true, points, says });

/** Strands of an eye. @param says its crossings along the lower edge, left to right; of a twin eye the same at both wires */
export function eye(kind: EyeKind, says: string): Strand[] {
  switch (kind) {
    case 'bare-wire': return [ring('eye', 'wire', RING, says)];
    case 'sleeved-wire': return [ring('eye', 'sleeve', RING, says)];
    case 'metal-bar': return [ring('eye', 'metal', RING, says)];
    case 'wire-under-bar': return [
      // The bar lies over the wire: the wire's two ends go out of sight in it.
      { name: 'wire', kind: 'wire', closed: false, points: [[126, BEARING - 4], ...[...LEFT].reverse(), ...[...RIGHT].reverse(), [194, BEARING - 4]], says: '' },
      { name: 'eye', kind: 'bar', closed: false, points: [[119, BEARING - 2], [140, BEARING], [160, BEARING], [180, BEARING], [201, BEARING - 2]], says },
    ];
    case 'twin-eye': return [
      ring('left eye', 'wire', moved(RING, -ASIDE, -LOWER), `o${says}o`),
      ring('right eye', 'wire', moved(RING, ASIDE, 0), `u${says}u`),
    ];
  }
}
