/** One drawing of a method or of what a lesson is about, with its sentence for those who cannot see it. */
import type { Scene } from './scene.ts';

/** What a drawing shows: the finished method, a mistake, or a step of tying; or what a lesson is about. */
export type Frame = 'right' | 'wrong' | `step-${1 | 2 | 3 | 4 | 5 | 6}` | 'fall' | 'top-piece';

/** A drawing as data. */
export interface Drawing {
  /** Id of the method, as in the records; `lessons` for what shows no method. */
  method: string;
  frame: Frame;
  /** Name of what shows no method. */
  name?: string;
  /** What is seen, in one or two plain sentences: the text alternative. */
  alt: string;
  /** What to do in a step, or what is right or wrong, to stand beside the drawing. */
  caption: string;
  scene: Scene;
}
