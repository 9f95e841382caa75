/** Outline of a device: a stem, an axle, lobes that could be anybody's, and a bar to draw them back. */
import type { Mark } from '../scene.ts';

/** A lobe to the left of the axle: a round outer edge, which meets the rock, and a straight inner one. */
const LOBE = 'M164 15C150 0 118 4 109 46L126 50 164 34z';
const OTHER = 'M156 15C170 0 202 4 211 46L194 50 156 34z';
/** Grooves of the outer edges. */
const GROOVES = 'M122 14l5 5M114 26l7 4M110 38l8 2M198 14l-5 5M206 26l-7 4M210 38l-8 2';

/** Head and stem, down to where the eye begins. */
export const DEVICE: readonly Mark[] = [
  { mark: 'path', class: 'solid', d: 'M155 30h10v48h-10z' },
  { mark: 'path', class: 'solid', d: LOBE },
  { mark: 'path', class: 'solid', d: OTHER },
  { mark: 'path', class: 'thin', d: GROOVES },
  { mark: 'path', class: 'solid', d: 'M160 18a6 6 0 0 1 0 12 6 6 0 0 1 0-12M136 57h48v6h-48z' },
];

/** The sleeve that closes the eye below the stem; lies over the eye's upper end. */
export const FERRULE: readonly Mark[] = [{ mark: 'path', class: 'solid', d: 'M152 70h16v18h-16z' }];
