/** Loops tied from tape: ring bend and beer knot. */
import { beside } from '../curves/beside.ts';
import { halfTurn } from '../curves/bends.ts';
import type { Curve } from '../curves/curve.ts';
import { type Point, reversed } from '../curves/point.ts';
import { among } from '../curves/says.ts';
import type { Drawing } from '../drawing.ts';
import { OVERHAND_SAYS, overhandPath } from '../knots/overhand.ts';
import { BEARING } from '../parts/eye.ts';
import { plain, wrong } from '../parts/signs.ts';
import type { Mark, Strand } from '../scene.ts';
import { type Clip, rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, STEP_FROM, WORDS } from './places.ts';

/** The knot and its tails are long: the connector hangs lower than elsewhere. */
const LOWER = 22;
const END = IN_CLIP + LOWER;

/** The knot lies on the right leg; the left leg is plain. */
const LINE = 186;
const PATH: Curve = overhandPath([217, 266], 0.82, [LINE, 188], [LINE, 344]);
const PLAIN = 116;
const HALF = 6;
const [AT_EYE, AT_CLIP] = [18, 13];

const eased = (from: Point, to: Point): Point[] => [0, 0.2, 0.4, 0.6, 0.8, 1].map((share): Point => [from[0] + (to[0] - from[0]) * (1 - Math.cos(Math.PI * share)) / 2, from[1] + (to[1] - from[1]) * share]);

/** From the knot's lower end through the connector, up the plain leg, over the eye, to the knot's upper end. */
function round(lower: Point, upper: Point, end: number): Point[] {
  const [left, rightSide, waist] = [160 - AT_CLIP, 160 + AT_CLIP, (end + BEARING) / 2];
  return [
    ...eased(lower, [rightSide, end - 10]), ...halfTurn(rightSide, left, end, false),
    [left, end - 10], [PLAIN + 12, waist + 70], [PLAIN, waist], [PLAIN + 8, waist - 70], [160 - AT_EYE, BEARING + 8],
    ...halfTurn(160 - AT_EYE, 160 + AT_EYE, BEARING - 10, true), [160 + AT_EYE + 1, BEARING + 8], [(160 + AT_EYE + upper[0]) / 2 + 1, (BEARING + 8 + upper[1]) / 2], upper,
  ];
}

/** Tape from its upper tail, down through the knot, round the loop, down through the knot again to its lower tail. */
function ringBend(tail: number): Strand {
  const [left, rightSide] = [beside(PATH, HALF), beside(PATH, -HALF)];
  const first = rightSide[0] as Point;
  const last = left.at(-1) as Point;
  const stub = tail < 12;
  const upperTail: Point[] = stub ? [[first[0], first[1] - tail]] : [[first[0] + tail * 0.75, first[1] - tail * 0.7], [first[0] + tail * 0.35, first[1] - tail * 0.4], [first[0] + 1, first[1] - tail * 0.1]];
  const lowerTail: Point[] = stub ? [[last[0], last[1] + tail]] : [[last[0] - 2, last[1] + tail * 0.15], [last[0] - tail * 0.36, last[1] + tail * 0.42], [last[0] - tail * 0.85, last[1] + tail * 0.6]];
  const knot = among(OVERHAND_SAYS, 2);
  return {
    name: 'tape', kind: 'tape', closed: false,
    points: [...upperTail, ...rightSide, ...round([(rightSide.at(-1) as Point)[0], 352], [(left[0] as Point)[0], 181], END), ...left, ...lowerTail],
    says: `${knot}uoou${knot}`,
  };
}

/** The first overhand, and the other end following it from below as far as some of its six visits. */
function following(visits: number, from: number): Strand[] {
  const PARTNER = [3, 4, 5, 0, 1, 2];
  const letters = [...OVERHAND_SAYS];
  const met = (visit: number) => (PARTNER[visit] as number) >= 6 - visits;
  const left = beside(PATH, HALF);
  const last = left.at(-1) as Point;
  const one = letters.map((letter, visit) => letter.repeat(met(visit) ? 2 : 1)).join('');
  const own = letters.slice(6 - visits).map((letter, i) => letter.repeat(met(6 - visits + i) ? 2 : 1)).join('');
  const threaded = round([LINE + HALF, 352], [(left[0] as Point)[0], 181], 430);
  const other: Point[] = visits === 0 ? threaded.slice(12) : [...reversed(beside(PATH, -HALF, from, PATH.length)).reverse(), ...threaded];
  return [{
    name: 'tape', kind: 'tape', closed: false,
    points: [...other, ...left, [last[0] - 5, last[1] + 16], [last[0] - 14, last[1] + 30]],
    says: `${visits === 0 ? '' : own}ou${one}`,
  }];
}

function drawn(slings: readonly Strand[], clip: Clip | undefined, above: readonly Mark[], height: number, eyeKind: 'metal-bar' | 'sleeved-wire' = 'sleeved-wire') {
  return rigged({ eye: eyeKind, eyeSays: 'uo', slings, ...(clip ? { clip } : {}), height, above });
}

const CLIPPED: Clip = { at: [CLIP[0], CLIP[1] + LOWER], says: 'uo' };

export function tapeLoopRingBend(): Drawing[] {
  const method = 'tape-loop-ring-bend';
  const alt = 'A loop of tape through the eye. Both of its ends run side by side through one overhand, from opposite sides. A tail stands out of the knot at each end.';
  const label: Mark[] = [{ mark: 'label', at: [234, 178], text: 'tail' }, { mark: 'label', at: [136, 350], text: 'tail' }];
  return [
    { method, frame: 'right', caption: 'Both tapes run side by side through the overhand. A long tail stands out at each end.', alt, scene: drawn([ringBend(38)], CLIPPED, [...label, plain(WORDS + LOWER, 'tied right')], HEIGHT + LOWER) },
    {
      method, frame: 'wrong', caption: 'The tails have crept in until hardly any is left.', alt: 'The same loop, but the tails end where they come out of the knot.',
      scene: drawn([ringBend(7)], CLIPPED, wrong(WORDS + LOWER, 'hardly any tail is left'), HEIGHT + LOWER),
    },
    { method, frame: 'step-1', caption: 'Thread the tape through the eye. Tie a loose overhand in one end.', alt: 'The tape goes through the eye. One end has a loose overhand in it; the other end hangs free.', scene: { ...drawn(following(0, PATH.length), undefined, [], 456), from: STEP_FROM } },
    { method, frame: 'step-2', caption: 'Follow the overhand with the other end, from its tail back.', alt: 'The other end enters the overhand beside the tail and has followed it half way.', scene: { ...drawn(following(3, PATH.length * 0.47), undefined, [], 456), from: STEP_FROM } },
    { method, frame: 'step-3', caption: 'Follow it to the end, lay both tapes flat, and draw the knot snug. Leave long tails.', alt, scene: { ...drawn([ringBend(38)], CLIPPED, label, 546), from: STEP_FROM } },
  ];
}

/** Tubular tape: the part where one end lies inside the other, and the rest of the loop. */
function beerKnot(inside: number): { strands: Strand[]; marks: Mark[] } {
  const knot = PATH;
  const mouth = knot.length;
  const core = beside(knot, 0, inside, mouth);
  const top = core[0] as Point;
  const rest = beside(knot, 0, 0, inside);
  const visits = inside === 0 ? 0 : 2;
  const says = OVERHAND_SAYS;
  return {
    strands: [
      { name: 'doubled tape', kind: 'double-tube', closed: false, goesOn: true, points: core, says: says.slice(visits) },
      { name: 'tape', kind: 'tube', closed: false, goesOn: true, points: [...round([LINE, 345], [LINE, 187.4], END), ...(inside === 0 ? [] : rest)], says: `uoou${says.slice(0, visits)}` },
    ],
    marks: [
      { mark: 'path', class: 'seam', d: `M${LINE - 10} 345h24l7 9` },
      { mark: 'label', at: [LINE + 20, 366], text: 'mouth' },
      { mark: 'path', class: 'bad', d: inside === 0 ? '' : `M${top[0] - 6} ${top[1]}h0` },
    ].filter((mark) => mark.mark !== 'path' || mark.d !== '') as Mark[],
  };
}

export function tapeLoopBeerKnot(): Drawing[] {
  const method = 'tape-loop-beer-knot';
  const good = beerKnot(0);
  const bad = beerKnot(PATH.length * 0.3);
  return [
    {
      method, frame: 'right', caption: 'The inner end, dashed, reaches well past the knot on both sides.',
      alt: 'A loop of tubular tape through the eye, with one overhand in it. A dashed line shows the inner end: it enters at the mouth of the outer tape below the knot and runs through the whole knot to above it.',
      scene: drawn(good.strands, CLIPPED, [...good.marks, { mark: 'label', at: [202, 184], text: 'inner end' }, plain(WORDS + LOWER, 'tied right')], HEIGHT + LOWER),
    },
    {
      method, frame: 'wrong', caption: 'The inner end stops inside the knot. From outside it looks the same.',
      alt: 'The same loop and the same knot. The dashed line shows that the inner end stops inside the knot.',
      scene: drawn(bad.strands, CLIPPED, [...bad.marks, ...wrong(WORDS + LOWER, 'the inner end stops in the knot')], HEIGHT + LOWER),
    },
  ];
}
