/** Every drawing of every method, and the files that pages show lazily. */
import type { Drawing } from './drawing.ts';
import { basket, twinEyeBasket } from './methods/basket.ts';
import { basketFigureEight, basketOverhand } from './methods/basket-with-knot.ts';
import { bowlineOnABightDrawings } from './methods/bowline-on-a-bight.ts';
import { cordLoopDouble, cordLoopTriple } from './methods/cord-loops.ts';
import { girthHitch } from './methods/girth-hitch.ts';
import { clipTheEye, quickLink, quickLinkDoubled } from './methods/links.ts';
import { overhandOnABight } from './methods/overhand-on-a-bight.ts';
import { keepTheOldSling, makersSling, sewnLoopDoubled, sewnLoopSingle } from './methods/sewn.ts';
import { tapeLoopBeerKnot, tapeLoopRingBend } from './methods/tape-loops.ts';
import { type Scene, WIDTH } from './scene.ts';
import { eyePictures } from './methods/eyes.ts';
import { fileSvg } from './svg.ts';

const MAKERS: readonly (() => Drawing[])[] = [
  makersSling, sewnLoopSingle, sewnLoopDoubled, basket, basketOverhand, basketFigureEight, girthHitch, overhandOnABight, bowlineOnABightDrawings,
  quickLink, quickLinkDoubled, cordLoopDouble, cordLoopTriple, tapeLoopRingBend, tapeLoopBeerKnot, twinEyeBasket, clipTheEye, keepTheOldSling,
];

/** All drawings: of each method what is right, what is wrong, and its steps. */
export function allDrawings(): Drawing[] {
  return MAKERS.flatMap((make) => make());
}

/** Drawings of one method, the finished one first. Empty for an id that has none. */
export function drawingsOf(method: string): Drawing[] {
  return allDrawings().filter((drawing) => drawing.method === method);
}

/** A drawing as a file below the site's root. */
export interface DrawingFile { path: string; svg: string; alt: string; width: number; height: number }

/** Path of a drawing's file, without a leading slash. */
export const pathOfDrawing = ({ method, frame }: Drawing): string => `drawings/${method}/${frame}.svg`;

const file = (path: string, scene: Scene, alt: string): DrawingFile => ({ path, svg: fileSvg(scene, alt), alt, width: WIDTH, height: scene.height - (scene.from ?? 0) });

/** Every drawing and every kind of eye as a file, ready to be written. */
export function drawingFiles(): DrawingFile[] {
  return [
    ...allDrawings().map((drawing) => file(pathOfDrawing(drawing), drawing.scene, drawing.alt)),
    ...eyePictures().map(({ eye, scene, alt }) => file(`drawings/eyes/${eye}.svg`, scene, alt)),
  ];
}
