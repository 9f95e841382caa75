/** What a drawing is made of: strands with their crossings stated, and marks that cross nothing. */
import type { Point } from './curves/point.ts';

/** What a strand is, which decides how it is drawn. */
export type Kind = 'narrow-tape' | 'tape' | 'broad-tape' | 'tube' | 'double-tube' | 'layer' | 'cord' | 'wire' | 'sleeve' | 'bar' | 'metal' | 'connector' | 'link';

/** A strand as data: control points, and what it does at each crossing. */
export interface Strand {
  /** Names it in messages and tests. */
  name: string;
  kind: Kind;
  closed: boolean;
  /** Whether the ends of an open strand go on in another one, so that they are not drawn as cut. */
  goesOn?: boolean;
  /** Control points of a smooth curve. */
  points: readonly Point[];
  /**
   * One letter for each crossing in the order in which the strand comes to it: `o` over, `u` under. Every crossing is
   * come to twice, so it is stated twice, and the two statements must agree.
   */
  says: string;
}

/** Drawn beside or on top of the strands; crosses nothing. */
export type Mark =
  /** Any shape in one of the classes of the style. */
  | { mark: 'path'; class: string; d: string }
  | { mark: 'label'; at: Point; text: string; anchor?: 'start' | 'middle' | 'end' };

/** A whole drawing, 320 units wide. */
export interface Scene {
  /** Height of the foot; the head is at 0 unless less is shown. */
  height: number;
  /** How much is cut off above. */
  from?: number;
  strands: readonly Strand[];
  /** Below the strands: what they lie on. */
  below?: readonly Mark[];
  above?: readonly Mark[];
}

/** Width of every drawing: on a small phone one unit is about one pixel. */
export const WIDTH = 320;
