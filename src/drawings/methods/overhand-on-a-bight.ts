/** Overhand on a bight round the eye: finished, wrong, and step by step. */
import type { Drawing } from '../drawing.ts';
import { overhandPath } from '../knots/overhand.ts';
import { move } from '../parts/move.ts';
import { right, wrong } from '../parts/signs.ts';
import type { Mark } from '../scene.ts';
import { type Following, followedOverhand } from './followed.ts';
import { rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, STEP_FROM, WORDS } from './places.ts';

const PATH = overhandPath([193, 262], 0.88, [160, 176], [160, 392]);
const METHOD = 'overhand-on-a-bight';
/** The knot and its bight are long: the connector hangs lower than elsewhere. */
const LOWER = 30;

function drawn(following: Following, above: readonly Mark[], height: number) {
  return rigged({
    eye: 'sleeved-wire', eyeSays: following.throughEye ? 'uuoo' : '', slings: [followedOverhand(PATH, following)],
    ...(following.clipped ? { clip: { at: [152, CLIP[1] + LOWER], says: 'uo' } } : {}), height, above,
  });
}

const FINISHED: Following = { throughEye: true, visits: 6, to: PATH.length, end: [152, IN_CLIP + LOWER], clipped: true };
const HANGING: Following = { ...FINISHED, end: [152, 436], clipped: false };

export function overhandOnABight(): Drawing[] {
  const alt = 'Two loops of the sling stand round the eye. Below it all four strands run side by side through one overhand. Two of them go on to the connector; the other two end in a short bight below the knot.';
  return [
    { method: METHOD, frame: 'right', caption: 'Four strands run through the overhand, side by side. The bight stands well out of the knot.', alt, scene: drawn({ ...FINISHED }, [...right(WORDS + LOWER), { mark: 'label', at: [184, 392], text: 'bight' }], HEIGHT + LOWER) },
    {
      method: METHOD, frame: 'wrong', caption: 'The bight was not followed all the way round: it can come out.',
      alt: 'The same overhand, but the bight comes back from the eye and ends in the middle of the knot. Only two strands run all the way round.',
      scene: drawn({ ...FINISHED, visits: 1, to: PATH.length * 0.118 }, wrong(WORDS + LOWER, 'not followed all the way round'), HEIGHT + LOWER),
    },
    {
      method: METHOD, frame: 'step-1', caption: 'Tie an overhand in the doubled sling. Leave a long bight.',
      alt: 'A closed sling, doubled, with an overhand in it. Its bight waits beside the eye.',
      scene: { ...drawn({ ...HANGING, throughEye: false, visits: 0, to: 0 }, move('M160 158V128', [160, 116], [0, -1]), 464), from: STEP_FROM },
    },
    {
      method: METHOD, frame: 'step-2', caption: 'Put the bight through the eye and back into the knot, beside its own strands.',
      alt: 'The bight goes through the eye and enters the knot beside the two strands that are there.',
      scene: { ...drawn({ ...HANGING, visits: 1, to: PATH.length * 0.118 }, [], 464), from: STEP_FROM },
    },
    {
      method: METHOD, frame: 'step-3', caption: 'Follow the strands all the way round.',
      alt: 'The bight has followed the knot half way round. Half of the knot has four strands, the rest two.',
      scene: { ...drawn({ ...HANGING, visits: 3, to: PATH.length * 0.49 }, [], 464), from: STEP_FROM },
    },
    { method: METHOD, frame: 'step-4', caption: 'Draw it snug, strand beside strand, and clip the long end.', alt, scene: { ...drawn(FINISHED, [], 550), from: STEP_FROM } },
  ];
}
