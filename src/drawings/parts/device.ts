/** Outline of a device: a stem, an axle, lobes that could be anybody's, and a bar to draw them back. */
import type { Mark } from '../scene.ts';

const LOBE = 'M157 16c-16-15-45-7-49 33 17 3 36-4 50-16z';
const OTHER = 'M163 16c16-15 45-7 49 33-17 3-36-4-50-16z';

/** Head and stem, down to where the eye begins. */
export const DEVICE: readonly Mark[] = [
  { mark: 'path', class: 'solid', d: 'M155 22h10v56h-10z' },
  { mark: 'path', class: 'solid', d: `${LOBE}${OTHER}M160 18a6 6 0 0 1 0 12 6 6 0 0 1 0-12` },
  { mark: 'path', class: 'solid', d: 'M136 57h48v6h-48z' },
];

/** The sleeve that closes the eye below the stem; lies over the eye's upper end. */
export const FERRULE: readonly Mark[] = [{ mark: 'path', class: 'solid', d: 'M152 70h16v18h-16z' }];
