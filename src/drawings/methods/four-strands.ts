/** A closed sling through the eye in four strands, gathered in a knot or not, with two loops at its lower end. */
import { beside } from '../curves/beside.ts';
import { halfTurn, upright } from '../curves/bends.ts';
import { bight } from '../curves/bights.ts';
import type { Curve } from '../curves/curve.ts';
import { type Point, reversed } from '../curves/point.ts';
import { among, backwards } from '../curves/says.ts';
import { BEARING } from '../parts/eye.ts';
import type { Kind, Strand } from '../scene.ts';

/** Distance between the middles of neighbouring strands of narrow tape. */
export const PITCH = 9;

/** One of the two loops: hanging at a place, clipped or not; or turned back where the path ends. */
export type Loop = { clipped: boolean; centre: number; y: number; half?: number } | 'at the end';

/** How the bundle is drawn, where it is not narrow tape over the usual eye. */
export interface Bundle { kind?: Kind; pitch?: number; bearing?: number; /** How often a strand meets the eye on each side. */ wires?: number }

/** Up at one place, over the eye, down at another, from and to one height. */
export function overEye(from: number, to: number, below: number, bearing = BEARING): Point[] {
  const turn = bearing - 12;
  return [...upright(from, below, turn + 4), ...halfTurn(from, to, turn, true), ...upright(to, turn + 4, below)];
}

/** A hanging loop: down from one strand, round, and up to the other. */
function hanging(from: number, to: number, top: number, centre: number, y: number, half: number): Point[] {
  const [left, right] = [centre - half, centre + half];
  const fall = y - top;
  const between = (strand: number, side: number): Point[] => [0.3, 0.6].map((share): Point => [strand + (side - strand) * (1 - Math.cos(Math.PI * share)) / 2, top + fall * share * 0.9]);
  return [...between(from, left), [left, y - 6], ...halfTurn(left, right, y, false), [right, y - 6], ...between(to, right).reverse()];
}

/**
 * The whole sling as one closed strand. From the left loop it runs up the first strand, over the eye, down the fourth,
 * through the right loop, up the third, over the eye inside the first turn, and down the second.
 * @param path way of the bundle through the knot, top to bottom
 * @param says the knot's crossings along it
 */
export function gathered(path: Curve, says: string, [left, right]: readonly [Loop, Loop], bundle: Bundle = {}): Strand {
  const { kind = 'narrow-tape', pitch = PITCH, bearing = BEARING, wires = 1 } = bundle;
  const aside = [1.5, 0.5, -0.5, -1.5].map((place) => place * pitch) as [number, number, number, number];
  const [a, b, c, d] = aside.map((one) => beside(path, one)) as [Point[], Point[], Point[], Point[]];
  const top = (a[0] as Point)[1] - 6;
  const x = (points: Point[], end: 0 | -1) => (points.at(end) as Point)[0];
  const bottom = (a.at(-1) as Point)[1];
  const turned = (one: Loop, from: Point[], to: Point[], fromAside: number, toAside: number): Point[] =>
    (one === 'at the end' ? bight(path, path.length, fromAside, toAside) : hanging(x(from, -1), x(to, -1), bottom, one.centre, one.y, one.half ?? pitch * 1.1));
  const points: Point[] = [
    ...reversed(a), ...overEye(x(a, 0), x(d, 0), top, bearing), ...d,
    ...reversed(turned(right, c, d, aside[2], aside[3])),
    ...reversed(c), ...overEye(x(c, 0), x(b, 0), top, bearing), ...b,
    ...reversed(turned(left, a, b, aside[0], aside[1])),
  ];
  const down = among(says, 4);
  const up = backwards(down);
  const clip = (one: Loop, letters: string) => (one !== 'at the end' && one.clipped ? letters : '');
  const [front, behind] = ['o'.repeat(wires), 'u'.repeat(wires)];
  // Left strands lie in front of the eye, right ones behind. In each loop the left strand lies in front of the connector.
  return {
    name: 'sling', kind, closed: true, points,
    says: `${up}${front}${behind}${down}${clip(right, 'uo')}${up}${behind}${front}${down}${clip(left, 'uo')}`,
  };
}
