/**
 * Eight common devices, as a reader meets them at a rack, each with the first line that the page must give. The counts of
 * each line come from `tests/reference/states.csv`, which was written by hand; which methods are ranked is written here by
 * hand, with its reason, from the design: tested at the eye on the measured bearing, certainty low or better, survives one
 * clipping error, does not slip. Sizes and ratings are those of devices in use: common practice, no source.
 */
import type { Eye } from '../../src/records/schema.ts';

export interface Device {
  name: string;
  ratingKn: number;
  eye: Eye;
  /** Column of states.csv: `unmeasured`, or millimetres. */
  bearing: string;
  sling: string;
  /** Methods that may be ranked, in order, and why no other. */
  ranked: readonly string[];
  why: string;
}

export const DEVICES: readonly Device[] = [
  { name: 'smallest cam, bare wire loop, narrow HMPE', ratingKn: 6, eye: 'bare-wire', bearing: 'unmeasured', sling: 'hmpe-8', ranked: [], why: 'no test of narrow HMPE on a wire' },
  { name: 'small cam, bare wire loop measured, HMPE 10', ratingKn: 8, eye: 'bare-wire', bearing: '3.8', sling: 'hmpe-10', ranked: [], why: 'nothing shields the layer on bare wire: all that has a number is set apart' },
  { name: 'middle cam, sleeved wire measured, HMPE 10', ratingKn: 12, eye: 'sleeved-wire', bearing: '3.8', sling: 'hmpe-10', ranked: ['girth-hitch'], why: 'four pulls of the hitch on a 3.8 mm wire; the knotted baskets rest on an assumed sharing, the overhand goes first on two pulls' },
  { name: 'middle cam, sleeved wire not measured, nylon 16', ratingKn: 10, eye: 'sleeved-wire', bearing: 'unmeasured', sling: 'nylon-16', ranked: [], why: 'a bearing that was not measured is no tested one' },
  { name: 'older cam, wire under a plastic bar, HMPE 10', ratingKn: 9, eye: 'wire-under-bar', bearing: 'unmeasured', sling: 'hmpe-10', ranked: [], why: 'the bar breaks first and the wire is bare: set apart' },
  { name: 'old rigid-stem cam, hole or forged loop of 10 mm, nylon cord 7', ratingKn: 14, eye: 'metal-bar', bearing: '10', sling: 'nylon-cord-7', ranked: ['cord-loop-double-fishermans'], why: 'loops of this cord broke at 10 mm pins in two laboratories; the third turn is assumed' },
  { name: 'large cam, thin forged loop of 6 mm, HMPE 10', ratingKn: 13, eye: 'metal-bar', bearing: '6', sling: 'hmpe-10', ranked: [], why: 'between two tested bearings the certainty is that of the lower end, two pulls on the pin' },
  { name: 'cam with a twin eye, HMPE 10', ratingKn: 11, eye: 'twin-eye', bearing: 'unmeasured', sling: 'hmpe-10', ranked: [], why: 'no test of a sling over two wires' },
];
