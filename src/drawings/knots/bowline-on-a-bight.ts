/**
 * Bowline on a bight in a closed sling, its two loops round an eye above, its standing part below. Described with the
 * standing part above, as handbooks do, and then turned round.
 */
import { beside } from '../curves/beside.ts';
import { halfTurn } from '../curves/bends.ts';
import { curveThrough } from '../curves/curve.ts';
import { type Point, reversed } from '../curves/point.ts';
import { backwards } from '../curves/says.ts';

/** Way of the pair from the standing part through the turn and round to the eye, standing part at 0,-150, eye at 0,150. */
const PAIR: readonly Point[] = [
  [0, -112], [0, -84], [0, -46], [-9, -16], [-32, 2], [-53, 24], [-48, 52], [-20, 68], [14, 70], [48, 60], [63, 32], [54, -12], [28, -40], [-8, -50],
  [-46, -48], [-80, -28], [-96, 8], [-92, 54], [-66, 94], [-34, 120], [-20, 142], [-18, 160],
];

/** Where the bight lies: pulled through the turn and left in front, opened round the whole device, or closed behind. */
export type Bight = 'in front' | 'round the device' | 'behind';

/** The sling's crossings along it, with the eye. The pair lies in front of the eye where it comes to it first. */
export function bowlineSays(bight: Bight): string {
  const collar = { 'in front': 'u', 'round the device': '', behind: 'o' }[bight];
  // From the standing part: the collar, the turn's own crossing, over both legs, under the right one, and out.
  const standing = `${collar}uuuoouoou`;
  // Up through the turn, the bight, and down through the turn again.
  const legs = `uuoooo${{ 'in front': 'oo', 'round the device': '', behind: 'uu' }[bight]}oouu`;
  return `${standing}ou${legs}uo${backwards(standing)}`;
}

/** How the knot is placed. */
export interface Placing { centre: Point; size: number; /** Distance between the two strands of a pair. */ pitch: number; /** Height where the pair turns over the eye. */ turn: number; /** Height where the standing part begins. */ end: number; bight: Bight }

/** The sling from the left standing strand through the knot to the right one, as control points. */
/** Way of the opened bight: out to the right of the drawing, up over the device, and down on the left. */
const ROUND: readonly Point[] = [
  [190, 362], [222, 376], [262, 366], [288, 320], [297, 220], [294, 120], [276, 50], [230, 14], [160, 5],
  [90, 14], [44, 50], [26, 120], [23, 220], [32, 320], [58, 366], [98, 376], [130, 362],
];

export function bowlineOnABight({ centre: [cx, cy], size, pitch, turn, end, bight }: Placing): Point[] {
  const place = ([x, y]: Point): Point => [cx - x * size, cy - y * size];
  const pair = curveThrough([[cx, end], ...PAIR.map(place)]);
  const half = pitch / 2;
  const eyeX = 18 * size;
  // Seen as drawn, the pair reaches the eye to the right of the middle and leaves it to the left.
  const through = (aside: number): Point[] => halfTurn(cx + eyeX - aside, cx - eyeX + aside, turn, true);
  const leg = (points: readonly Point[]): Point[] => points.map(place);
  const outer = beside(pair, half);
  const inner = beside(pair, -half);
  return [
    ...inner, ...through(half),
    [cx - eyeX + half, turn + 12], ...leg([[12, 116], [-8, 96], [-20, 70], [-22, 36], [-22, 0], [-22, -50], [-22, -84]]),
    ...(bight === 'round the device' ? ROUND : leg([[-16, -98], [0, -104], [16, -98]])),
    ...leg([[22, -84], [22, -46], [21, 0], [21, 36], [22, 70], [26, 100]]), [cx - eyeX - half, turn + 12],
    ...reversed(through(-half)), ...reversed(outer),
  ];
}
