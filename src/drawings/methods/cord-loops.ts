/** Loops tied from cord with a double or a triple fisherman's bend: finished, wrong, and step by step. */
import { halfTurn, upright } from '../curves/bends.ts';
import { type Point, reversed, turned } from '../curves/point.ts';
import { backwards } from '../curves/says.ts';
import type { Drawing } from '../drawing.ts';
import { fishermansHalf, type Half, INSIDE } from '../knots/fishermans.ts';
import { BEARING } from '../parts/eye.ts';
import { right, wrong } from '../parts/signs.ts';
import type { Mark, Strand } from '../scene.ts';
import { type Clip, rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, STEP_FROM, WORDS } from './places.ts';

/** The knot is long: the connector hangs lower than elsewhere. */
const LOWER = 32;

/** Axis of the knot: where the cord from the eye enters it. */
const AXIS = 218;
/** The plain leg on the other side. */
const PLAIN = 118;
/** Half the distance of the legs where they turn over the eye, and in the connector. */
const AT_EYE = 22;
const AT_CLIP = 13;

/** Size of the knot across its axis. */
const ACROSS = 0.97;

/** How the bend is drawn. */
interface Bend {
  turns: number;
  tail: number;
  /** Size of the knot along its axis, and the gap between its two halves. */
  size: number;
  gap: number;
  /** Middle of the knot. */
  middle: number;
  /** Height of the lower end of the loop, and whether it is clipped. */
  end: number;
  clipped: boolean;
  /** Whether the second half is tied yet. */
  second: boolean;
}

/** A half along the axis, its right end below: from the drawing on its side to the upright one. */
function placed(half: readonly Point[], size: number, axis: number, y: number): Point[] {
  return half.map(([along, across]): Point => [axis - across * ACROSS, y + along * size]);
}

/** The cord from its upper tail to its lower one, or to its free end. */
function cord({ turns, tail, size, gap, middle, end, clipped, second }: Bend): Strand {
  const half: Half = fishermansHalf(turns, tail);
  const [top, bottom] = [middle - gap - half.length * size, middle + gap + half.length * size];
  const upper = placed(half.cord, size, AXIS, middle - gap);
  // Half a turn about the knot's centre lays the second half round the first cord's standing part.
  const centre: Point = [AXIS - (INSIDE * ACROSS) / 2, middle];
  const lower = turned(upper, centre);
  const lowerAxis = AXIS - INSIDE * ACROSS;
  const clip = clipped ? 'uo' : '';
  const down = (from: Point, to: Point): Point[] => [0, 0.2, 0.4, 0.6, 0.8, 1].map((share): Point => [from[0] + (to[0] - from[0]) * (1 - Math.cos(Math.PI * share)) / 2, from[1] + (to[1] - from[1]) * share]);
  const [left, rightSide] = [160 - AT_CLIP, 160 + AT_CLIP];
  const waist = (end + BEARING) / 2;
  const loop: Point[] = [
    ...down([lowerAxis, bottom + 18], [rightSide, end - 10]), ...halfTurn(rightSide, left, end, false),
    [left, end - 10], [PLAIN + 10, waist + 70], [PLAIN, waist], [PLAIN + 7, waist - 70], [160 - AT_EYE, BEARING + 8],
  ];
  const over: Point[] = [...halfTurn(160 - AT_EYE, 160 + AT_EYE, BEARING - 8, true), [160 + AT_EYE + 1, BEARING + 8], [(160 + AT_EYE + AXIS) / 2 + 1, (BEARING + top) / 2 + 4]];
  const straight = upright(lowerAxis, middle - gap, bottom);
  const last = second ? lower : upright(AXIS, middle, bottom + 40);
  return {
    name: 'cord', kind: 'cord', closed: false,
    points: [...reversed(upper), ...straight, ...loop, ...over, ...upright(AXIS, top, middle - gap), ...last],
    says: `${backwards(half.says)}${second ? backwards(half.other) : ''}${clip}ou${half.other}${second ? half.says : ''}`,
  };
}

function drawn(bend: Bend, clip: Clip | undefined, above: readonly Mark[], height: number) {
  return rigged({ eye: 'metal-bar', eyeSays: 'uo', slings: [cord(bend)], ...(clip ? { clip } : {}), height, above });
}

function drawings(method: string, name: string, turns: number, usual: Pick<Bend, 'size' | 'gap' | 'middle'>): Drawing[] {
  const count = ['', 'one turn', 'two turns', 'three turns'];
  const finished: Bend = { ...usual, turns, tail: 26, end: IN_CLIP + LOWER, clipped: true, second: true };
  const clip: Clip = { at: [CLIP[0], CLIP[1] + LOWER], says: 'uo' };
  const alt = `A loop of cord through the eye. Its ends are joined by a ${name}: each end lies in ${count[turns]} round the other cord and is tucked through them. The two halves lie close together, and both tails stand out well.`;
  return [
    { method, frame: 'right', caption: `Each half shows ${count[turns]}, side by side, and a long tail.`, alt, scene: drawn(finished, clip, right(WORDS + LOWER), HEIGHT + LOWER) },
    {
      method, frame: 'wrong', caption: `Each half has only ${count[turns - 1]}, and the tails are short.`, alt: `The same loop, but each half of the knot has only ${count[turns - 1]}, and the tails hardly come out of it.`,
      scene: drawn({ ...finished, turns: turns - 1, tail: 15 }, clip, wrong(WORDS + LOWER, 'a turn too few, short tails'), HEIGHT + LOWER),
    },
    {
      method, frame: 'step-1', caption: `Thread the cord through the eye. Lay one end round the other cord in ${count[turns]}, back over itself, and tuck it through them.`,
      alt: `The cord goes through the eye. One end lies in ${count[turns]} round the other cord and itself, and is tucked through them. The other end hangs free.`,
      scene: { ...drawn({ ...finished, middle: usual.middle - 6, end: 420, clipped: false, second: false }, undefined, [], 440), from: STEP_FROM },
    },
    {
      method, frame: 'step-2', caption: 'Do the same with the other end, the other way round.', alt: 'Both halves of the knot are tied, one above the other, still apart.',
      scene: { ...drawn({ ...finished, gap: usual.gap + 10, tail: 22, end: 430, clipped: false }, undefined, [], 450), from: STEP_FROM },
    },
    { method, frame: 'step-3', caption: 'Draw the halves together and snug. Clip the loop.', alt, scene: { ...drawn(finished, clip, [], 556), from: STEP_FROM } },
  ];
}

export const cordLoopDouble = (): Drawing[] => drawings('cord-loop-double-fishermans', 'double fisherman\u2019s bend', 2, { size: 1.3, gap: 4, middle: 262 });
export const cordLoopTriple = (): Drawing[] => drawings('cord-loop-triple-fishermans', 'triple fisherman\u2019s bend', 3, { size: 1.12, gap: 4, middle: 264 });
