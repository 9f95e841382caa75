/** Pictures beside shared links: legible where they are shown small, of the size that is asked for, and without a winner. Contrast by WCAG 2.2, relative luminance. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { EYE_NAMES } from '../../../src/components/comparator/words.ts';
import { pageEvidence, prebuiltRigs } from '../../../src/build/comparator/page.ts';
import { PICTURE_COLOURS, PICTURE_HEIGHT, PICTURE_WIDTH, pictureLayout, pictureWords, SMALLEST_LETTER, socialPicture } from '../../../src/build/pictures/social-picture.ts';

/** Relative luminance of a colour written with six digits (WCAG 2.2, definition). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

interface Node { props: { style?: Record<string, unknown>; children?: string | Node[] } }
const texts = ({ props: { style = {}, children } }: Node): { size: number; color: string; text: string }[] =>
  typeof children === 'string' ? [{ size: Number(style['fontSize']), color: String(style['color']), text: children }] : (children ?? []).flatMap(texts);

const rigs = prebuiltRigs();
const eyeOf = ({ eye }: (typeof rigs)[number]): string => EYE_NAMES[eye ?? 'bare-wire'];
const evidence = pageEvidence();
const home = Object.values(evidence.methods).filter(({ role }) => role === 'home').map(({ name }) => name.toLowerCase());

describe('a picture', () => {
  test('shown 300 px wide, its smallest letter is 9 px and every letter has a contrast of 4.5 to 1', () => {
    expect((SMALLEST_LETTER * 300) / PICTURE_WIDTH).toBeGreaterThanOrEqual(9);
    for (const rig of rigs) {
      for (const { size, color } of texts(pictureLayout(rig, eyeOf(rig)).layout as Node)) {
        expect((size * 300) / PICTURE_WIDTH).toBeGreaterThanOrEqual(9);
        expect(contrast(color, PICTURE_COLOURS.paper)).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
  test('names its eye, its caution and what was found, and no home method', () => {
    for (const rig of rigs) {
      const words = pictureWords(rig, eyeOf(rig));
      const all = Object.values(words).join(' ').toLowerCase();
      expect(words.eye).toMatch(/^Eye assumed: /);
      expect(words.caution).toContain('Ask the maker');
      expect(home.filter((name) => all.includes(name))).toEqual([]);
    }
  });
  test('is a PNG of the size that Open Graph readers ask for, under 100 kB, and not blank', async () => {
    const rig = rigs[60] as (typeof rigs)[number];
    const png = await socialPicture(rig, eyeOf(rig));
    const { width, height, format } = await sharp(png).metadata();
    expect([width, height, format]).toEqual([PICTURE_WIDTH, PICTURE_HEIGHT, 'png']);
    expect(png.length).toBeLessThan(100_000);
    expect((await sharp(png).stats()).entropy).toBeGreaterThan(0.3);
  });
});
