/** Girth hitch: finished, not snug, and step by step. */
import { curveThrough } from '../curves/curve.ts';
import type { Drawing } from '../drawing.ts';
import { girth, GIRTH_EYE } from '../knots/girth-hitch.ts';
import { move } from '../parts/move.ts';
import { right, wrong } from '../parts/signs.ts';
import { gathered } from './four-strands.ts';
import { rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, STEP_FROM, WORDS } from './places.ts';

const METHOD = 'girth-hitch';

export function girthHitch(): Drawing[] {
  const eye = 'sleeved-wire';
  const alt = 'Two legs of the sling come up from the connector, go over the eye in front, and come down behind it on both sides. There the sling crosses in front of its own two legs, close below the eye.';
  const clip = { at: CLIP, says: 'uo' };
  const threaded = gathered(curveThrough([[160, 178], [160, 200]]), '', [{ clipped: false, centre: 130, y: 390 }, { clipped: false, centre: 196, y: 270, half: 20 }], { kind: 'tape', pitch: 11 });
  return [
    { method: METHOD, frame: 'right', caption: 'The cross piece lies snug below the eye, over both legs.', alt, scene: rigged({ eye, eyeSays: GIRTH_EYE, slings: [girth(32, IN_CLIP, true)], clip, height: HEIGHT, above: right(WORDS) }) },
    {
      method: METHOD, frame: 'wrong', caption: 'The hitch was not drawn snug: the sling can move on the eye.',
      alt: 'The same hitch, but the cross piece hangs far below the eye, and the turns are loose.',
      scene: rigged({ eye, eyeSays: GIRTH_EYE, slings: [girth(120, IN_CLIP, true)], clip, height: HEIGHT, above: wrong(WORDS, 'not drawn snug') }),
    },
    {
      method: METHOD, frame: 'step-1', caption: 'Put one end of the sling through the eye.', alt: 'A closed sling goes through the eye. One end is short, the other long.',
      scene: { ...rigged({ eye, eyeSays: 'uuoo', slings: [threaded], height: 420, above: [] }), from: STEP_FROM },
    },
    {
      method: METHOD, frame: 'step-2', caption: 'Put the long end through the short one and draw it through.', alt: 'The long end comes out through the short one. The hitch is still loose.',
      scene: { ...rigged({ eye, eyeSays: GIRTH_EYE, slings: [girth(110, 400, false)], height: 430, above: move('M200 330v50', [200, 392], [0, 1]) }), from: STEP_FROM },
    },
    { method: METHOD, frame: 'step-3', caption: 'Draw the hitch snug, with the cross piece straight, and clip the end.', alt, scene: { ...rigged({ eye, eyeSays: GIRTH_EYE, slings: [girth(32, IN_CLIP, true)], clip, height: 520 }), from: STEP_FROM } },
  ];
}
