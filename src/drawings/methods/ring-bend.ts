/** Loop of tape joined with a ring bend: finished, with the tails crept in, and step by step. */
import { beside } from '../curves/beside.ts';
import type { Point } from '../curves/point.ts';
import { among } from '../curves/says.ts';
import type { Drawing } from '../drawing.ts';
import { OVERHAND_PARTNER, OVERHAND_SAYS } from '../knots/overhand.ts';
import { plain, wrong } from '../parts/signs.ts';
import type { Mark, Strand } from '../scene.ts';
import { STEP_FROM } from './places.ts';
import { CLIPPED, END, FOOT, LINE, PATH, round, tiedLoop, WHOLE } from './tape-loop.ts';

/** How far each of the two tapes lies beside the knot's path. */
const HALF = 6;

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
  const letters = [...OVERHAND_SAYS];
  const met = (visit: number) => (OVERHAND_PARTNER[visit] as number) >= 6 - visits;
  const left = beside(PATH, HALF);
  const last = left.at(-1) as Point;
  const one = letters.map((letter, visit) => letter.repeat(met(visit) ? 2 : 1)).join('');
  const own = letters.slice(6 - visits).map((letter, i) => letter.repeat(met(6 - visits + i) ? 2 : 1)).join('');
  const threaded = round([LINE + HALF, 352], [(left[0] as Point)[0], 181], 430);
  const other: Point[] = visits === 0 ? threaded.slice(12) : [...beside(PATH, -HALF, from, PATH.length), ...threaded];
  return [{
    name: 'tape', kind: 'tape', closed: false,
    points: [...other, ...left, [last[0] - 5, last[1] + 16], [last[0] - 14, last[1] + 30]],
    says: `${visits === 0 ? '' : own}ou${one}`,
  }];
}

export function tapeLoopRingBend(): Drawing[] {
  const method = 'tape-loop-ring-bend';
  const alt = 'A loop of tape through the eye. Both of its ends run side by side through one overhand, from opposite sides. A tail stands out of the knot at each end.';
  const label: Mark[] = [{ mark: 'label', at: [234, 178], text: 'tail' }, { mark: 'label', at: [136, 350], text: 'tail' }];
  return [
    { method, frame: 'right', caption: 'Both tapes run side by side through the overhand. A long tail stands out at each end.', alt, scene: tiedLoop([ringBend(38)], CLIPPED, [...label, plain(FOOT, 'tied right')], WHOLE) },
    {
      method, frame: 'wrong', caption: 'The tails have crept in until hardly any is left.', alt: 'The same loop, but the tails end where they come out of the knot.',
      scene: tiedLoop([ringBend(7)], CLIPPED, wrong(FOOT, 'hardly any tail is left'), WHOLE),
    },
    { method, frame: 'step-1', caption: 'Thread the tape through the eye. Tie a loose overhand in one end.', alt: 'The tape goes through the eye. One end has a loose overhand in it; the other end hangs free.', scene: { ...tiedLoop(following(0, PATH.length), undefined, [], 456), from: STEP_FROM } },
    { method, frame: 'step-2', caption: 'Follow the overhand with the other end, from its tail back.', alt: 'The other end enters the overhand beside the tail and has followed it half way.', scene: { ...tiedLoop(following(3, PATH.length * 0.47), undefined, [], 456), from: STEP_FROM } },
    { method, frame: 'step-3', caption: 'Follow it to the end, lay both tapes flat, and draw the knot snug. Leave long tails.', alt, scene: { ...tiedLoop([ringBend(38)], CLIPPED, label, 546), from: STEP_FROM } },
  ];
}
