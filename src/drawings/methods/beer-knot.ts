/** Loop of tubular tape joined with a beer knot: finished, and with the inner end too short. */
import { beside } from '../curves/beside.ts';
import type { Point } from '../curves/point.ts';
import type { Drawing } from '../drawing.ts';
import { OVERHAND_SAYS } from '../knots/overhand.ts';
import { plain, wrong } from '../parts/signs.ts';
import type { Mark, Strand } from '../scene.ts';
import { CLIPPED, END, FOOT, LINE, PATH, round, tiedLoop, WHOLE } from './tape-loop.ts';

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
      scene: tiedLoop(good.strands, CLIPPED, [...good.marks, { mark: 'label', at: [202, 184], text: 'inner end' }, plain(FOOT, 'tied right')], WHOLE),
    },
    {
      method, frame: 'wrong', caption: 'The inner end stops inside the knot. From outside it looks the same.',
      alt: 'The same loop and the same knot. The dashed line shows that the inner end stops inside the knot.',
      scene: tiedLoop(bad.strands, CLIPPED, [...bad.marks, ...wrong(FOOT, 'the inner end stops in the knot')], WHOLE),
    },
  ];
}
