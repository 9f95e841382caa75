/** Basket with an overhand or a figure eight at the clip end: finished, wrong, and step by step. */
import { type Curve, curveOf } from '../curves/curve.ts';
import { FIGURE_EIGHT_SAYS, figureEightPath } from '../knots/figure-eight.ts';
import { OVERHAND_SAYS, overhandPath } from '../knots/overhand.ts';
import type { Drawing, Frame } from '../drawing.ts';
import { move } from '../parts/move.ts';
import { right, wrong } from '../parts/signs.ts';
import type { Mark, Scene } from '../scene.ts';
import { gathered, type Loop } from './four-strands.ts';
import { type Clip, rigged } from './frame.ts';
import { BOTH, CLIP, CLIP_LEFT, HEIGHT, ONE_FREE, STEP_FROM, STRAIGHT, WORDS } from './places.ts';

/** A knot that gathers four strands. */
interface Knot {
  method: string;
  name: string;
  path: Curve;
  says: string;
  /** Where the ring is made and the end not yet tucked: length along the path, and what has been crossed by then. */
  ring: { to: number; says: string; do: string; alt: string; finish: string };
}

const OVERHAND: Knot = {
  method: 'basket-overhand', name: 'overhand', says: OVERHAND_SAYS, path: overhandPath([193, 256], 0.88, [160, 172], [160, 336]),
  ring: {
    to: 0.78, says: 'ou', do: 'Lay all four strands in a ring.', alt: 'The four strands lie side by side in a ring. Their ends point through it.',
    finish: 'Pass the ends through the ring and draw the overhand snug, strand beside strand.',
  },
};

const FIGURE_EIGHT: Knot = {
  method: 'basket-figure-eight', name: 'figure eight', says: FIGURE_EIGHT_SAYS, path: figureEightPath([160, 259], 0.77, [160, 164], [160, 350]),
  ring: {
    to: 0.63, says: 'uo', do: 'Lay all four strands in a loop, the ends in front.', alt: 'The four strands lie side by side in a loop. Their ends cross in front of the strands above it.',
    finish: 'Turn the ends round behind the strands above, and put them through the loop from the front. Draw it snug, strand beside strand.',
  },
};

/** First piece of a path. */
const firstOf = (path: Curve, share: number): Curve => curveOf(path.samples.filter((_, i) => (path.along[i] as number) <= share * path.length), false);

function drawings({ method, name, path, says, ring }: Knot): Drawing[] {
  const scene = (along: Curve, letters: string, loops: readonly [Loop, Loop], clip: Clip | undefined, above: readonly Mark[]): Scene =>
    rigged({ eye: 'sleeved-wire', eyeSays: 'uuoo', slings: [gathered(along, letters, loops)], ...(clip ? { clip } : {}), height: HEIGHT, above });
  const step = (frame: Frame, caption: string, alt: string, drawn: Scene, height: number): Drawing => ({ method, frame, caption, alt, scene: { ...drawn, from: STEP_FROM, height } });
  const bottom = (path.samples.at(-1) as readonly [number, number])[1];
  const free: [Loop, Loop] = [{ clipped: false, centre: 142, y: bottom + 52 }, { clipped: false, centre: 178, y: bottom + 52 }];
  const finished: Drawing = {
    method, frame: 'right', caption: `All four strands run through the ${name}, side by side. Both loops are clipped.`,
    alt: `The sling goes through the eye. Below it one ${name} gathers all four strands, side by side. Two loops come out below the knot, and both are in the connector.`,
    scene: scene(path, says, BOTH, { at: CLIP, says: 'ouou' }, right(WORDS)),
  };
  return [
    finished,
    {
      method, frame: 'wrong', caption: 'One loop is not clipped: half of the strands below the knot carry nothing.',
      alt: `The same ${name} in four strands, but only the left loop is in the connector. The right loop hangs free.`,
      scene: scene(path, says, ONE_FREE, { at: CLIP_LEFT, says: 'uo' }, wrong(WORDS, 'one loop is not clipped')),
    },
    step('step-1', 'Put one end of the sling through the eye.', 'A closed sling goes through the eye. Its end is short on one side and long on the other.',
      scene(STRAIGHT, '', [{ clipped: false, centre: 136, y: 390 }, { clipped: false, centre: 184, y: 250 }], undefined, move('M206 236v34', [206, 282], [0, 1])), 420),
    step('step-2', 'Bring both ends level.', 'The sling hangs from the eye in four strands. Both ends are level.',
      scene(STRAIGHT, '', [{ clipped: false, centre: 144, y: 330 }, { clipped: false, centre: 176, y: 330 }], undefined, []), 360),
    step('step-3', ring.do, ring.alt, scene(firstOf(path, ring.to), ring.says, ['at the end', 'at the end'], undefined, []), bottom + 40),
    step('step-4', ring.finish, `The finished ${name} in four strands. Two loops hang below it.`,
      scene(path, says, free, undefined, []), bottom + 80),
    step('step-5', 'Clip both loops.', finished.alt, { ...scene(path, says, BOTH, { at: CLIP, says: 'ouou' }, []) }, 520),
  ];
}

export const basketOverhand = (): Drawing[] => drawings(OVERHAND);
export const basketFigureEight = (): Drawing[] => drawings(FIGURE_EIGHT);
