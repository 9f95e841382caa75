/** Quick link with a sling, single and doubled; and a connector straight in the eye. */
import { halfTurn, upright } from '../curves/bends.ts';
import { curveThrough } from '../curves/curve.ts';
import type { Point } from '../curves/point.ts';
import type { Drawing } from '../drawing.ts';
import { connector, gate, load } from '../parts/connector.ts';
import { DEVICE, FERRULE } from '../parts/device.ts';
import { BEARING, eye } from '../parts/eye.ts';
import { LINK_BEARING, nut, openLink, shutLink } from '../parts/link.ts';
import { move } from '../parts/move.ts';
import { plain, wrong } from '../parts/signs.ts';
import type { Scene, Strand } from '../scene.ts';
import { gathered } from './four-strands.ts';
import { rigged } from './frame.ts';
import { BOTH, CLIP, CLIP_LEFT, HEIGHT, IN_CLIP, ONE_FREE, WORDS } from './places.ts';

const SINGLE: Strand = (() => {
  const [left, rightSide, turn] = [150, 170, LINK_BEARING - 16];
  const points: Point[] = [...upright(left, IN_CLIP, turn), ...halfTurn(left, rightSide, turn, true).slice(1, -1), ...upright(rightSide, turn, IN_CLIP), ...halfTurn(rightSide, left, IN_CLIP, false).slice(1, -1)];
  return { name: 'sling', kind: 'broad-tape', closed: true, points, says: 'oouu' };
})();

const BELOW = curveThrough([[160, LINK_BEARING + 22], [160, LINK_BEARING + 44]]);

export function quickLink(): Drawing[] {
  const method = 'quick-link';
  const common = { eye: 'sleeved-wire', eyeSays: 'uo', clip: { at: CLIP, says: 'uo' }, height: HEIGHT } as const;
  return [
    { method, frame: 'right', caption: 'The nut covers the gap and is screwed tight.', alt: 'A steel quick link goes through the eye, its nut screwed over the gap. The sling lies in the link, and its other end in the connector.', scene: rigged({ ...common, slings: [shutLink('uo'), SINGLE], above: [...nut(true), plain(WORDS, 'screwed shut')] }) },
    { method, frame: 'wrong', caption: 'The nut is not screwed over the gap: the link is open.', alt: 'The same quick link, but its nut stands below the gap, and the thread shows. The link is open.', scene: rigged({ ...common, slings: [openLink('ou'), SINGLE], above: [...nut(false), ...move('M222 178h-18', [192, 178], [-1, 0], true), ...wrong(WORDS, 'the link is open')] }) },
  ];
}

export function quickLinkDoubled(): Drawing[] {
  const method = 'quick-link-doubled';
  const bundle = { bearing: LINK_BEARING };
  const common = { eye: 'sleeved-wire', eyeSays: 'uo', height: HEIGHT } as const;
  return [
    { method, frame: 'right', caption: 'Both ends of the sling are clipped, and the nut is screwed tight.', alt: 'A steel quick link goes through the eye, screwed shut. The sling passes through the link once, and both its ends are in the connector.', scene: rigged({ ...common, slings: [shutLink('uuoo'), gathered(BELOW, '', BOTH, bundle)], clip: { at: CLIP, says: 'ouou' }, above: [...nut(true), plain(WORDS, 'screwed shut, both ends clipped')] }) },
    { method, frame: 'wrong', caption: 'One end is not clipped: the sling runs out through the link.', alt: 'Only the left end of the sling is in the connector. The right end hangs free, and an arrow shows it running up and out through the link.', scene: rigged({ ...common, slings: [shutLink('uuoo'), gathered(BELOW, '', ONE_FREE, bundle)], clip: { at: CLIP_LEFT, says: 'uo' }, above: [...nut(true), ...move('M236 396C238 340 214 304 200 270', [196, 260], [-5, -12], true), ...wrong(WORDS, 'one end is not clipped')] }) },
  ];
}

/** The connector of the wrong drawing lies across: turned by a quarter, its long side in the eye. */
function across(): Strand {
  const upright = connector([0, -50], '', 0.8).points;
  return { name: 'connector', kind: 'connector', closed: true, points: upright.map(([x, y]): Point => [160 + y * 0.86, BEARING + 12 - x]), says: 'uo' };
}

export function clipTheEye(): Drawing[] {
  const method = 'clip-the-eye';
  const at: Point = [160, BEARING - 28];
  const height = 296;
  const whole = (strands: Strand[], above: Scene['above']): Scene => ({ height, below: DEVICE, strands: [...eye('bare-wire', 'uo'), ...strands], above: [...FERRULE, ...(above ?? [])] });
  return [
    { method, frame: 'right', caption: 'The connector hangs lengthwise in the eye.', alt: 'A connector is clipped straight into the eye and hangs lengthwise. There is no sling.', scene: whole([connector(at, 'ou', 0.7)], [gate(at, 0.7), ...load([160, at[1] + 107]), { mark: 'label', at: [206, 230], text: 'no sling' }]) },
    { method, frame: 'wrong', caption: 'The connector lies across: it is loaded sideways.', alt: 'The connector has turned in the eye and lies across. The load pulls on its long side.', scene: whole([across()], [...load([160, 212]), ...wrong(height - 10, 'loaded across')]) },
  ];
}
