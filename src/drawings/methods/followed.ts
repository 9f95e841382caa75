/**
 * A pair of strands knotted in an overhand, and its bight that goes through the eye and follows the knot back: all the
 * way, part of it, or not yet. The finished knot is four strands side by side.
 */
import { beside } from '../curves/beside.ts';
import { bight } from '../curves/bights.ts';
import type { Curve } from '../curves/curve.ts';
import { halfTurn } from '../curves/bends.ts';
import { type Point, reversed } from '../curves/point.ts';
import { backwards } from '../curves/says.ts';
import { OVERHAND_PARTNER, OVERHAND_SAYS } from '../knots/overhand.ts';
import type { Strand } from '../scene.ts';
import { overEye, PITCH } from './four-strands.ts';

/** What a strand says that follows the overhand up to some of its six visits, top to bottom. @param mates strands with it at each visit of the other */
function sayings(upTo: number, mates: (visit: number) => number): string {
  return [...OVERHAND_SAYS].slice(0, upTo).map((letter, visit) => letter.repeat(mates(OVERHAND_PARTNER[visit] as number))).join('');
}

/** How far the bight goes. */
export interface Following {
  /** Whether it goes through the eye; where not, it waits beside it. */
  throughEye: boolean;
  /** Visits of the path that it has followed, of six, and the length along the path where it ends. */
  visits: number;
  to: number;
  /** Height of the lower end of the sling, and its middle. */
  end: Point;
  clipped: boolean;
}

/** The whole sling as one closed strand. */
export function followedOverhand(path: Curve, { throughEye, visits, to, end, clipped }: Following): Strand {
  const at = [1.5, 0.5, -0.5, -1.5].map((place) => place * PITCH) as [number, number, number, number];
  const [a, b] = [beside(path, at[0]), beside(path, at[1])];
  const x = (points: Point[], which: 0 | -1) => (points.at(which) as Point)[0];
  const top = (a[0] as Point)[1] - 6;
  const bottom = (a.at(-1) as Point)[1];
  const half = 10;
  const down = (from: number, side: number): Point[] => [0.25, 0.5, 0.75].map((share): Point => [from + (end[0] + side * half - from) * (1 - Math.cos(Math.PI * share)) / 2, bottom + (end[1] - bottom) * share]);
  const lower = [...down(x(a, -1), -1), [end[0] - half, end[1] - 6] as Point, ...halfTurn(end[0] - half, end[0] + half, end[1], false), [end[0] + half, end[1] - 6] as Point, ...reversed(down(x(b, -1), 1))];
  const pair = sayings(6, (other) => (throughEye && other < visits ? 4 : 2));
  const clip = clipped ? 'uo' : '';
  const common = { name: 'sling', kind: 'narrow-tape' as const, closed: true };
  if (!throughEye) {
    const turn = halfTurn(x(a, 0), x(b, 0), top + 4, true);
    return { ...common, points: [...reversed(a), ...turn, ...b, ...reversed(lower)], says: `${backwards(pair)}${pair}${clip}` };
  }
  const [c, d] = [beside(path, at[2], 0, to), beside(path, at[3], 0, to)];
  const follower = sayings(visits, (other) => (other < visits ? 4 : 2));
  return {
    ...common,
    points: [...reversed(a), ...overEye(x(a, 0), x(d, 0), top), ...d, ...reversed(bight(path, to, at[2], at[3])), ...reversed(c), ...overEye(x(c, 0), x(b, 0), top), ...b, ...reversed(lower)],
    says: `${backwards(pair)}ou${follower}${backwards(follower)}uo${pair}${clip}`,
  };
}
