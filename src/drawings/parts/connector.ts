/** A connector: a plain ring with a gate, which a sling is clipped into. */
import type { Point } from '../curves/point.ts';
import type { Mark, Strand } from '../scene.ts';

const SHAPE: readonly Point[] = [[0, 0], [-24, 2], [-41, 16], [-44, 48], [-38, 82], [-20, 97], [0, 99], [20, 97], [38, 82], [44, 48], [41, 16], [24, 2]];

/** Height of a connector, drawing units. */
export const CONNECTOR_HEIGHT = 99;

/**
 * Connector whose upper bar has its middle at a place. It is followed from there to the left and all the way round.
 * @param says its crossings: along the upper bar from the middle to the left, then from the far right to the middle
 * @param slim share of the width, for an eye that takes no more
 */
export function connector([x, y]: Point, says: string, slim = 1): Strand {
  return { name: 'connector', kind: 'connector', closed: true, points: SHAPE.map(([dx, dy]): Point => [x + dx * slim, y + dy]), says };
}

/** The gate, on the connector's right side: hinge and nose. */
export function gate([x, y]: Point, slim = 1): Mark {
  return { mark: 'path', class: 'thin', d: `M${x + 37 * slim} ${y + 26}l10-2M${x + 37 * slim} ${y + 74}l10 2` };
}

/** Arrow of the load, hanging from a place. */
export function load([x, y]: Point, length = 24): Mark[] {
  return [
    { mark: 'path', class: 'arrow', d: `M${x} ${y}v${length - 8}` },
    { mark: 'path', class: 'ink', d: `M${x} ${y + length}l-6-11h12z` },
  ];
}
