/** How each kind of strand is drawn: strokes on top of one another, widest first. Their classes are in the style. */
import type { Kind } from './scene.ts';

/** One stroke of a strand: its class and width, drawing units. */
export interface Stroke { class: string; width: number }

/** Width of the edge of a band. */
export const EDGE = 1.4;

const band = (width: number, edge: string, fill: string): Stroke[] => [{ class: edge, width }, { class: fill, width: width - 2 * EDGE }];

/** Strokes of each kind: tape is a band with two edges, cord a thick line. */
export const STROKES: Readonly<Record<Kind, readonly Stroke[]>> = {
  'narrow-tape': band(7, 'te', 'tf'),
  tape: band(9, 'te', 'tf'),
  'broad-tape': band(12, 'te', 'tf'),
  tube: band(16, 'te', 'tf'),
  'double-tube': [...band(16, 'te', 'tf'), { class: 'in', width: 7 }, { class: 'tf', width: 5 }],
  layer: band(7, 'ie', 'lf'),
  cord: [{ class: 'te', width: 7.5 }],
  wire: [{ class: 'ie', width: 4.5 }],
  sleeve: [...band(12, 'ie', 'pf'), { class: 'ie', width: 3 }],
  bar: [...band(15, 'ie', 'pf'), { class: 'ie', width: 3 }],
  metal: band(11, 'ie', 'mf'),
  connector: band(9, 'ie', 'pf'),
  link: band(10, 'ie', 'mf'),
};

/** Clear space that an upper strand leaves to each side where it crosses another. */
export const GAP = 2;

/** Whole width of a kind of strand. */
export const widthOf = (kind: Kind): number => Math.max(...STROKES[kind].map(({ width }) => width));
