/** Basket, and basket through a twin eye. */
import type { Drawing } from '../drawing.ts';
import type { EyeKind } from '../parts/eye.ts';
import { move } from '../parts/move.ts';
import { plain, wrong } from '../parts/signs.ts';
import { type Bundle, gathered } from './four-strands.ts';
import { rigged } from './frame.ts';
import { BOTH, CLIP, CLIP_LEFT, HEIGHT, ONE_FREE, STRAIGHT, WORDS } from './places.ts';

function both(method: string, eye: EyeKind, bundle: Bundle, eyes: string): Drawing[] {
  return [
    {
      method, frame: 'right', caption: 'Both ends are clipped.',
      alt: `The sling goes through the ${eyes} once. Its two ends hang side by side, and both are in the connector.`,
      scene: rigged({ eye, eyeSays: 'uuoo', slings: [gathered(STRAIGHT, '', BOTH, bundle)], clip: { at: CLIP, says: 'ouou' }, height: HEIGHT, above: [plain(WORDS, 'both ends clipped')] }),
    },
    {
      method, frame: 'wrong', caption: `One end is not clipped: the sling runs out through the ${eyes}.`,
      alt: `Only the left end of the sling is in the connector. The right end hangs free, and an arrow shows it running up and out through the ${eyes}.`,
      scene: rigged({
        eye, eyeSays: 'uuoo', slings: [gathered(STRAIGHT, '', ONE_FREE, bundle)], clip: { at: CLIP_LEFT, says: 'uo' }, height: HEIGHT,
        above: [...move('M240 396C246 310 214 250 200 192', [197, 182], [-6, -24], true), ...wrong(WORDS, 'one end is not clipped')],
      }),
    },
  ];
}

export const basket = (): Drawing[] => both('basket', 'sleeved-wire', {}, 'eye');
export const twinEyeBasket = (): Drawing[] => both('twin-eye-basket', 'twin-eye', { wires: 2, bearing: 141 }, 'two eyes');
