/**
 * Geometry of one lane of the comparator: twenty equal dots on a fixed force
 * axis, test pulls as ticks, and the strip of what breaks first. Numbers in,
 * SVG path data out; no scale library, because the axis never changes and two
 * comparisons must compare by eye.
 */

/** Ends of the axis, kN. Fixed. */
export const AXIS_END_KN = 30;
/** Width of a lane in drawing units, and units per kN. */
export const LANE_WIDTH = 600;
const UNITS_PER_KN = LANE_WIDTH / AXIS_END_KN;
/** Height of the dots' part of a lane; the dots stand on this line. */
export const BASELINE = 36;
/** Diameter of a dot in drawing units. */
export const DOT = 11;

/** Place of a force on the axis, in drawing units. @param kn kN, not negative */
export function placeOf(kn: number): number {
  if (!(kn >= 0)) throw new RangeError(`placeOf: kn must not be negative (got ${kn})`);
  return Math.round(kn * UNITS_PER_KN * 10) / 10;
}

/** Where a dot stands. */
export interface DotPlace { kn: number; x: number; y: number }

/**
 * Places dots at their exact force, and on top of one another where they would
 * overlap. A dot is never moved sideways: it must stay on its side of a line.
 * @param dots kN, any order; those beyond the axis are left out
 */
export function placeDots(dots: readonly number[]): DotPlace[] {
  const inside = dots.filter((kn) => kn <= AXIS_END_KN).sort((a, b) => a - b);
  const lastOnLevel: number[] = [];
  const levels = inside.map((kn) => {
    const x = placeOf(kn);
    let level = lastOnLevel.findIndex((last) => x - last >= DOT);
    if (level < 0) level = lastOnLevel.length;
    lastOnLevel[level] = x;
    return { kn, x, level };
  });
  const highest = Math.max(0, lastOnLevel.length - 1);
  // A narrow spread stacks high: the levels then close up rather than leave the lane.
  const step = highest === 0 ? DOT : Math.min(DOT, (BASELINE - DOT) / highest);
  return levels.map(({ kn, x, level }) => ({ kn, x, y: Math.round((BASELINE - DOT / 2 - level * step) * 10) / 10 }));
}

/** Path of dots, to be drawn with a round stroke as wide as a dot. */
export const dotsPath = (places: readonly DotPlace[]): string => places.map(({ x, y }) => `M${x} ${y}h0`).join('');

/** Path of short upright marks below the dots, one for each pull inside the axis. @param kn forces of single pulls */
export const ticksPath = (kn: readonly number[]): string =>
  kn.filter((one) => one <= AXIS_END_KN).map((one) => `M${placeOf(one)} ${BASELINE + 3}v9`).join('');

/** Width and height of a cell of the strip. */
export const CELL = LANE_WIDTH / 20;
export const STRIP_HEIGHT = 30;

/** Marks of the strip by letter: each its own shape at the foot of the cell, so that colour is never needed. */
const MARKS: Readonly<Record<string, (x: number) => string>> = {
  // Sling: a full bar. Knot: two teeth. Eye: two thin lines. Device: a block in the middle. Connector: a frame.
  S: (x) => `M${x + 1} 22h28v7h-28z`,
  K: (x) => `M${x + 2} 29l6.5-8 6.5 8zm13 0l6.5-8 6.5 8z`,
  E: (x) => `M${x + 2} 22h26v2h-26zm0 5h26v2h-26z`,
  D: (x) => `M${x + 9} 20h12v9h-12z`,
  C: (x) => `M${x + 2} 21h26v8h-26zm2 2v4h22v-4z`,
};

/** One path for each kind of link in the strip. @param strip twenty letters */
export function stripPaths(strip: string): { letter: string; d: string }[] {
  const kinds = [...new Set(strip)];
  return kinds.map((letter) => {
    const mark = MARKS[letter];
    if (!mark) throw new RangeError(`stripPaths: no mark for the letter ${letter}`);
    return { letter, d: [...strip].map((one, i) => (one === letter ? mark(i * CELL) : '')).join('') };
  });
}

/**
 * The letters themselves, to be drawn with a stroke: each from the upper left corner of its cell to that of the next.
 * They are no text, because browsers lay out text letter by letter, and twenty in each row take long.
 */
const GLYPHS: Readonly<Record<string, string>> = {
  S: 'm19 6c-1-3-8-3-8 1s9 2 9 6-9 4-10 0m20-13',
  K: 'm11 3v13m9-13l-8 8m3-3l6 8m9-16',
  E: 'm19 4h-8v11h8m-1-6h-7m19-9',
  D: 'm11 4v11h3c8 0 8-11 0-11h-3m19-4',
  C: 'm20 7c-2-5-9-4-9 3s7 7 9 3m10-13',
};

/** One path of all letters of the strip. */
export const stripLetters = (strip: string): string => `M0 0${[...strip].map((letter) => GLYPHS[letter]).join('')}`;
