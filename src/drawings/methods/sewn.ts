/** Sewn slings: the maker's, one layer, two layers, and an old one. */
import { halfTurn, upright } from '../curves/bends.ts';
import type { Point } from '../curves/point.ts';
import type { Drawing } from '../drawing.ts';
import { BEARING } from '../parts/eye.ts';
import { right } from '../parts/signs.ts';
import { stitches } from '../parts/stitches.ts';
import type { Kind, Mark, Strand } from '../scene.ts';
import { rigged } from './frame.ts';
import { CLIP, HEIGHT, IN_CLIP, WORDS } from './places.ts';

/** A loop sewn shut through the eye: its left leg before eye and connector, its right leg behind. */
function loop(name: string, half: number, kind: Kind = 'broad-tape'): Strand {
  const [left, rightSide, turn] = [160 - half, 160 + half, BEARING - 12];
  const points: Point[] = [
    ...upright(left, IN_CLIP, turn), ...halfTurn(left, rightSide, turn, true).slice(1, -1), ...upright(rightSide, turn, IN_CLIP), ...halfTurn(rightSide, left, IN_CLIP, false).slice(1, -1),
  ];
  return { name, kind, closed: true, points, says: 'oouu' };
}

const one = { at: CLIP, says: 'uo' };
const label = (x: number, y: number, text: string): Mark => ({ mark: 'label', at: [x, y], text });

/** Short threads that stand off the edges of a leg. */
function frayed(x: number, from: number, to: number): Mark {
  let d = '';
  for (let y = from, i = 0; y < to; y += 5 + ((i * 7) % 11), i++) d += i % 2 === 0 ? `M${x - 6} ${y}q-${3 + (i % 3)} 0-${2 + (i % 4)} ${4 + (i % 3)}` : `M${x + 6} ${y}q${2 + (i % 4)} 1 ${3 + (i % 3)}-${3 + (i % 2)}`;
  return { mark: 'path', class: 'thin', d };
}

export function makersSling(): Drawing[] {
  const half = 20;
  const inner = 9.5;
  const layer: Strand = {
    name: 'protective layer', kind: 'layer', closed: false, says: 'ou',
    points: [...upright(160 - inner, 212, BEARING - 12), ...halfTurn(160 - inner, 160 + inner, BEARING - 12, true).slice(1, -1), ...upright(160 + inner, BEARING - 12, 212)],
  };
  return [{
    method: 'makers-sling', frame: 'right', caption: 'A second layer lies between the eye and the tape that carries the load.',
    alt: 'A sewn sling through the eye. Between the eye and the tape lies a second, shorter layer of textile, sewn to it. The tape that carries the load does not touch the eye.',
    scene: rigged({
      eye: 'bare-wire', eyeSays: 'uuoo', slings: [loop('sling', half), layer], clip: one, height: HEIGHT,
      above: [stitches(140, 194, 11, 14), stitches(180, 194, 11, 14), stitches(180, 270, 11, 44), { mark: 'path', class: 'thin', d: 'M171 206h34' }, label(209, 204, 'protective'), label(209, 218, 'layer'), label(196, 296, 'seam'), ...right(WORDS)],
    }),
  }];
}

export function sewnLoopSingle(): Drawing[] {
  return [{
    method: 'sewn-loop-single', frame: 'right', caption: 'One layer of tape lies straight on the eye.',
    alt: 'A sewn sling through the eye. One layer of tape carries the load and lies straight on the eye, with nothing between them.',
    scene: rigged({ eye: 'bare-wire', eyeSays: 'uo', slings: [loop('sling', 15)], clip: one, height: HEIGHT, above: [stitches(175, 270, 11, 44), label(190, 296, 'seam'), { mark: 'path', class: 'thin', d: 'M184 150l26 34' }, label(204, 198, 'nothing between')] }),
  }];
}

export function sewnLoopDoubled(): Drawing[] {
  return [{
    method: 'sewn-loop-doubled', frame: 'right', caption: 'Two layers of tape lie straight on the eye, sewn to one another.',
    alt: 'A sling sewn through the eye in two layers. Both layers carry the load, and nothing lies between them and the eye.',
    scene: rigged({
      eye: 'bare-wire', eyeSays: 'uuoo', slings: [loop('outer layer', 22, 'tape'), loop('inner layer', 10, 'tape')], clip: { at: CLIP, says: 'uuoo' }, height: HEIGHT,
      above: [stitches(176, 266, 21, 48), label(194, 294, 'seam through'), label(194, 308, 'both layers'), { mark: 'path', class: 'thin', d: 'M190 150l22 34' }, label(204, 198, 'nothing between')],
    }),
  }];
}

export function keepTheOldSling(): Drawing[] {
  return [{
    method: 'keep-the-old-sling', frame: 'right', caption: 'The old sling stays in the eye.',
    alt: 'A device with its old sewn sling, whose edges are frayed.',
    scene: rigged({
      eye: 'bare-wire', eyeSays: 'uo', slings: [loop('old sling', 15)], clip: one, height: HEIGHT,
      above: [stitches(175, 270, 11, 44), frayed(145, 190, 360), frayed(175, 190, 260), frayed(175, 324, 370), label(196, 296, 'old sling')],
    }),
  }];
}
