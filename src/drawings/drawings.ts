/** Every drawing of every method, and the files that pages show lazily. */
import type { Drawing } from './drawing.ts';
import { tapeLoopBeerKnot } from './methods/beer-knot.ts';
import { basket, twinEyeBasket } from './methods/basket.ts';
import { basketFigureEight, basketOverhand } from './methods/basket-with-knot.ts';
import { bowlineOnABightDrawings } from './methods/bowline-on-a-bight.ts';
import { cordLoopDouble, cordLoopTriple } from './methods/cord-loops.ts';
import { girthHitch } from './methods/girth-hitch.ts';
import { clipTheEye, quickLink, quickLinkDoubled } from './methods/links.ts';
import { overhandOnABight } from './methods/overhand-on-a-bight.ts';
import { keepTheOldSling, makersSling, sewnLoopDoubled, sewnLoopSingle } from './methods/sewn.ts';
import { tapeLoopRingBend } from './methods/ring-bend.ts';
import { type Scene, WIDTH } from './scene.ts';
import { fallLesson } from './lessons/falls.ts';
import { eyePictures } from './methods/eyes.ts';
import { fileSvg } from './svg.ts';

/** Who draws which method, in the order of the records. */
const BY_METHOD: Readonly<Record<string, () => Drawing[]>> = {
  'makers-sling': makersSling,
  'sewn-loop-single': sewnLoopSingle,
  'sewn-loop-doubled': sewnLoopDoubled,
  basket,
  'basket-overhand': basketOverhand,
  'basket-figure-eight': basketFigureEight,
  'girth-hitch': girthHitch,
  'overhand-on-a-bight': overhandOnABight,
  'bowline-on-a-bight': bowlineOnABightDrawings,
  'quick-link': quickLink,
  'quick-link-doubled': quickLinkDoubled,
  'cord-loop-double-fishermans': cordLoopDouble,
  'cord-loop-triple-fishermans': cordLoopTriple,
  'tape-loop-ring-bend': tapeLoopRingBend,
  'tape-loop-beer-knot': tapeLoopBeerKnot,
  'twin-eye-basket': twinEyeBasket,
  'clip-the-eye': clipTheEye,
  'keep-the-old-sling': keepTheOldSling,
};

/** Drawings that show no method, but what a lesson is about. */
const FOR_LESSONS = (): Drawing[] => fallLesson();

/** All drawings of methods: of each what is right, what is wrong, and its steps. */
export const allDrawings = (): Drawing[] => Object.values(BY_METHOD).flatMap((draw) => draw());

/** Drawings of one method, the finished one first; of `lessons`, those that show no method. Empty for an id that has none. */
export const drawingsOf = (method: string): Drawing[] => (method === 'lessons' ? FOR_LESSONS() : (BY_METHOD[method]?.() ?? []));

/** A drawing as a file below the site's root. */
export interface DrawingFile { path: string; svg: string; alt: string; width: number; height: number }

/** Path of a drawing's file, without a leading slash. */
export const pathOfDrawing = ({ method, frame }: Drawing): string => `drawings/${method}/${frame}.svg`;

/**
 * Every drawing and every kind of eye as a file, ready to be written.
 * @param says what each file says of itself besides its alternative text
 */
export function drawingFiles(says = ''): DrawingFile[] {
  const file = (path: string, scene: Scene, alt: string): DrawingFile => ({ path, svg: fileSvg(scene, alt, says), alt, width: WIDTH, height: scene.height - (scene.from ?? 0) });
  return [
    ...[...allDrawings(), ...FOR_LESSONS()].map((drawing) => file(pathOfDrawing(drawing), drawing.scene, drawing.alt)),
    ...eyePictures().map(({ eye, scene, alt }) => file(`drawings/eyes/${eye}.svg`, scene, alt)),
  ];
}
