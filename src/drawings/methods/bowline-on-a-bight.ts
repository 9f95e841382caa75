/** Bowline on a bight: finished, wrong, and step by step. */
import type { Drawing } from '../drawing.ts';
import { type Bight, bowlineOnABight, bowlineSays } from '../knots/bowline-on-a-bight.ts';
import { curveThrough } from '../curves/curve.ts';
import { halfTurn } from '../curves/bends.ts';
import { move } from '../parts/move.ts';
import { plain, wrong } from '../parts/signs.ts';
import type { Mark, Strand } from '../scene.ts';
import { gathered } from './four-strands.ts';
import { type Clip, rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, STEP_FROM, WORDS } from './places.ts';

const METHOD = 'bowline-on-a-bight';
const PITCH = 11;
/** The knot is long: the connector hangs lower than elsewhere. */
const LOWER = 22;

function sling(bight: Bight, end: number, clipped: boolean): Strand {
  const half = PITCH / 2;
  const points = bowlineOnABight({ centre: [160, 276], size: 0.86, pitch: PITCH, turn: 138, end: end - 14, bight });
  const lower = halfTurn(160 - half - 2, 160 + half + 2, end, false).reverse();
  return { name: 'sling', kind: 'tape', closed: true, points: [...points, ...lower], says: clipped ? `o${bowlineSays(bight)}u` : bowlineSays(bight) };
}

function drawn(bight: Bight, end: number, clip: Clip | undefined, above: readonly Mark[], height: number) {
  return rigged({ eye: 'metal-bar', eyeSays: 'oouu', slings: [sling(bight, end, clip !== undefined)], ...(clip ? { clip } : {}), height, above });
}

export function bowlineOnABightDrawings(): Drawing[] {
  const alt = 'Two loops of the sling stand round the eye. Their strands come up through a turn of two strands, and there join in a collar behind the two strands that go to the connector.';
  const clip: Clip = { at: [CLIP[0], CLIP[1] + LOWER], says: 'uo' };
  const threaded = gathered(curveThrough([[160, 178], [160, 200]]), '', [{ clipped: false, centre: 134, y: 400 }, { clipped: false, centre: 188, y: 330 }], { kind: 'tape', pitch: PITCH });
  return [
    { method: METHOD, frame: 'right', caption: 'Two loops round the eye, and the bight as a collar behind the standing strands.', alt, scene: drawn('behind', IN_CLIP + LOWER, clip, [plain(WORDS + LOWER, 'tied right')], HEIGHT + LOWER) },
    {
      method: METHOD, frame: 'wrong', caption: 'The bight was not passed over the device: it only lies in front, and nothing ties it.',
      alt: 'The same turn and the same loops, but the bight lies in front of the standing strands and not behind them.',
      scene: drawn('in front', IN_CLIP + LOWER, clip, wrong(WORDS + LOWER, 'bight not passed over the device'), HEIGHT + LOWER),
    },
    { method: METHOD, frame: 'step-1', caption: 'Put a long bight of the sling through the eye.', alt: 'A closed sling goes through the eye; both ends hang down.', scene: { ...rigged({ eye: 'metal-bar', eyeSays: 'uuoo', slings: [threaded], height: 430 }), from: STEP_FROM } },
    { method: METHOD, frame: 'step-2', caption: 'Make a turn in the two standing strands, and put the bight through it from behind.', alt: 'The two standing strands make a turn. The bight comes through it from behind and lies in front.', scene: { ...drawn('in front', 430, undefined, [], 450), from: STEP_FROM } },
    {
      method: METHOD, frame: 'step-3', caption: 'Open the bight and pass it over the knot, the loops and the whole device.', alt: 'The bight is opened so wide that it goes round the knot and the whole device. An arrow shows it passing down behind the device.',
      scene: drawn('round the device', 430, undefined, move('M210 12C250 30 262 70 262 116', [262, 128], [0, 1]), 450),
    },
    { method: METHOD, frame: 'step-4', caption: 'Let the bight close behind the standing strands. Draw every strand snug and clip the end.', alt, scene: { ...drawn('behind', IN_CLIP + LOWER, clip, [], 542), from: STEP_FROM } },
  ];
}
