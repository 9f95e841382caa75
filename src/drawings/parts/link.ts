/** A quick link: a narrow ring that is screwed shut, through the eye above and with a sling below. */
import type { Point } from '../curves/point.ts';
import type { Mark, Strand } from '../scene.ts';
import { BEARING, MIDDLE } from './eye.ts';

/** Height of the link's lower bow, where a sling bears. */
export const LINK_BEARING = BEARING + 78;

const TOP = BEARING - 30;
const SHAPE: readonly Point[] = [[0, TOP], [-18, TOP + 7], [-25, TOP + 26], [-25, TOP + 78], [-18, LINK_BEARING - 7], [0, LINK_BEARING], [18, LINK_BEARING - 7], [25, TOP + 78], [25, TOP + 26], [18, TOP + 7]];
const placed = (points: readonly Point[]): Point[] => points.map(([x, y]): Point => [MIDDLE + x, y]);

/** A link that is shut. Its left side lies before the eye, its right side behind. @param says along the lower bow, left to right */
export const shutLink = (says: string): Strand => ({ name: 'link', kind: 'link', closed: true, points: placed(SHAPE), says: `o${says}u` });

/** A link whose nut is not screwed over the gap on its right side. @param says along the lower bow, right to left */
export function openLink(says: string): Strand {
  const points: Point[] = [[25, TOP + 70], [25, TOP + 80], ...SHAPE.slice(1, 7).reverse(), [0, TOP], [18, TOP + 7], [25, TOP + 26], [25, TOP + 48]];
  return { name: 'link', kind: 'link', closed: false, points: placed(points), says: `${says}ou` };
}

/** The nut: over the gap, or below it. */
export function nut(isShut: boolean): Mark[] {
  const y = TOP + (isShut ? 46 : 70);
  const x = MIDDLE + 17;
  const thread = isShut ? '' : `M${x + 5} ${TOP + 50}v20m6-20v20`;
  return [
    { mark: 'path', class: 'metal', d: `M${x} ${y}h16v24h-16z` },
    { mark: 'path', class: 'thin', d: `M${x + 5} ${y}v24m6-24v24${thread}` },
  ];
}
