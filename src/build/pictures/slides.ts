/** Drawings as pictures for slides: each drawing of the site with its words beside it, on one sheet of 16 to 9. */
import { allDrawings, drawingsOf, pathOfDrawing } from '../../drawings/drawings.ts';
import { eyePictures } from '../../drawings/methods/eyes.ts';
import type { Scene } from '../../drawings/scene.ts';
import { siteRecords } from '../records.ts';
import { slidePicture } from './slide-picture.ts';

/** What a slide shows. */
export interface Slide {
  /** Path of the picture below the site's root, `drawings/basket/right.png`. */
  path: string;
  /** Name of the method, of the eye, or of what a lesson is about. */
  heading: string;
  /** Step or state, in a word or two; empty for what is no method. */
  part: string;
  caption: string;
  /** Whether it shows an error. */
  isWrong: boolean;
  scene: Scene;
}

/** Path of the picture that belongs to a drawing's file. */
export const pictureOf = (svgPath: string): string => svgPath.replace(/\.svg$/, '.png');

/** A frame's name in words: `step-2` is "step 2". */
export const frameWords = (frame: string): string => frame.replace('-', ' ');

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
let all: Map<string, Slide> | undefined;

/** Every slide by its path: all drawings of methods, then the kinds of eye. */
export function siteSlides(): ReadonlyMap<string, Slide> {
  if (all) return all;
  const { methods } = siteRecords();
  const slides = [
    ...[...allDrawings(), ...drawingsOf('lessons')].map((drawing): Slide => ({
      path: pictureOf(pathOfDrawing(drawing)), heading: drawing.name ?? methods.get(drawing.method)?.name ?? drawing.method,
      part: drawing.name ? '' : capital(frameWords(drawing.frame)), caption: drawing.caption, isWrong: drawing.frame === 'wrong', scene: drawing.scene,
    })),
    ...eyePictures().map(({ eye, alt, scene }): Slide => ({ path: `drawings/eyes/${eye}.png`, heading: `Eye: ${eye.replaceAll('-', ' ')}`, part: '', caption: alt, isWrong: false, scene })),
  ];
  all = new Map(slides.map((slide) => [slide.path, slide]));
  return all;
}

const drawn = new Map<string, Promise<Buffer>>();

/** The picture of a slide, drawn once for a build. @throws RangeError where no drawing has this path */
export function slidePng(path: string): Promise<Buffer> {
  const slide = siteSlides().get(path);
  if (!slide) throw new RangeError(`path: no drawing has a picture for slides there (got ${path})`);
  const known = drawn.get(path) ?? slidePicture(slide);
  drawn.set(path, known);
  return known;
}
