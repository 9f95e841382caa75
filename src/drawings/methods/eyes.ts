/** The five kinds of eye, each with a sling through it. */
import { halfTurn, upright } from '../curves/bends.ts';
import type { Point } from '../curves/point.ts';
import { DEVICE, FERRULE } from '../parts/device.ts';
import { BEARING, eye, type EyeKind } from '../parts/eye.ts';
import type { Mark, Scene, Strand } from '../scene.ts';

/** Drawing of one kind of eye. */
export interface EyePicture { eye: EyeKind; alt: string; scene: Scene }

const HEIGHT = 236;
const label = (x: number, y: number, text: string): Mark => ({ mark: 'label', at: [x, y], text });
const pointer = (d: string): Mark => ({ mark: 'path', class: 'thin', d });

/** One band of tape over the eye, its ends going on below. @param wires how many edges it lies over */
function tape(wires: number): Strand {
  const [left, right, turn] = [145, 175, BEARING - 12 - (wires - 1) * 13];
  const points: Point[] = [...upright(left, HEIGHT, turn), ...halfTurn(left, right, turn, true).slice(1, -1), ...upright(right, turn, HEIGHT)];
  return { name: 'sling', kind: 'broad-tape', closed: false, goesOn: true, points, says: `${'o'.repeat(wires)}${'u'.repeat(wires)}` };
}

const KINDS: readonly { eye: EyeKind; alt: string; marks: readonly Mark[] }[] = [
  { eye: 'bare-wire', alt: 'An eye of bare wire. The sling lies straight on the wire.', marks: [pointer('M196 149l16 32'), label(206, 195, 'wire')] },
  { eye: 'sleeved-wire', alt: 'An eye of wire in a plastic sleeve. The sling lies on the sleeve.', marks: [pointer('M198 152l14 29'), label(206, 195, 'plastic sleeve')] },
  { eye: 'wire-under-bar', alt: 'An eye of wire with a plastic bar over its lower edge. The sling lies on the bar.', marks: [pointer('M194 158l14 24'), label(204, 195, 'plastic bar'), label(222, 120, 'wire')] },
  { eye: 'metal-bar', alt: 'An eye that is a solid metal bar or a forged loop. The sling lies on the metal.', marks: [pointer('M198 152l14 29'), label(206, 195, 'metal')] },
  { eye: 'twin-eye', alt: 'Two wire eyes side by side. The sling goes through both.', marks: [pointer('M206 150l10 30'), label(206, 195, 'two wires')] },
];

/** A drawing of each kind of eye, in the order of the records. */
export function eyePictures(): EyePicture[] {
  return KINDS.map(({ eye: kind, alt, marks }) => {
    const wires = kind === 'twin-eye' ? 2 : 1;
    return { eye: kind, alt, scene: { height: HEIGHT, from: 52, below: DEVICE, strands: [...eye(kind, 'uo'), tape(wires)], above: [...FERRULE, ...marks] } };
  });
}
