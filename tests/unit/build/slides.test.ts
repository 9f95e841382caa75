/** Pictures for slides: of the size and shape of a screen, white, with letters that are there and large enough. Colours and sizes are read from the dots, by a decoder. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { siteDrawings } from '../../../src/build/pictures/drawing-files.ts';
import { placeOnSlide, SLIDE_HEIGHT, SLIDE_WIDTH, SMALLEST_SLIDE_LETTER, slideLayout } from '../../../src/build/pictures/slide-picture.ts';
import { pictureOf, siteSlides, slidePng } from '../../../src/build/pictures/slides.ts';
import { lettersOf } from '../../../src/drawings/svg.ts';

const slides = [...siteSlides().values()];
/** Slides with much and little in them; all would take the test several seconds. */
const sample = slides.filter(({ path }) => /makers-sling|tape-loop-ring-bend|eyes\/wire-under-bar|girth-hitch\/step-1|basket\/wrong|bowline-on-a-bight\/wrong/.test(path));

interface Node { props: { style?: Record<string, unknown>; children?: string | Node[] } }
const texts = ({ props: { style = {}, children } }: Node): { size: number; text: string }[] =>
  typeof children === 'string' ? [{ size: Number(style['fontSize']), text: children }] : (children ?? []).flatMap(texts);

interface Dots { at(x: number, y: number): [number, number, number] }
async function dotsOf(path: string): Promise<Dots> {
  const { data, info } = await sharp(await slidePng(path)).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  return { at: (x, y) => [0, 1, 2].map((i) => data[(y * info.width + x) * 3 + i]) as [number, number, number] };
}
const isDark = ([r, g, b]: [number, number, number]): boolean => r + g + b < 200;
const isVermillion = ([r, g, b]: [number, number, number]): boolean => r > 190 && g < 130 && b < 60;

/** Dots of one kind in a box. */
function count({ at }: Dots, [left, top, right, bottom]: readonly [number, number, number, number], is: (dot: [number, number, number]) => boolean): number {
  let found = 0;
  for (let y = Math.round(top); y < bottom; y++) for (let x = Math.round(left); x < right; x++) if (is(at(x, y))) found++;
  return found;
}

test('every drawing that has a file has a picture for slides', () => {
  expect(slides.map(({ path }) => path).sort()).toEqual([...siteDrawings().keys()].map(pictureOf).sort());
});

test('no letter on a slide is smaller than 24 px', () => {
  for (const slide of slides) for (const { size, text } of texts(slideLayout(slide.scene, slide) as Node)) expect(size, `${slide.path}: ${text}`).toBeGreaterThanOrEqual(SMALLEST_SLIDE_LETTER);
  expect(() => placeOnSlide({ height: 600 })).toThrow('letters of a drawing 600 units high');
});

test('a slide says what is drawn, whose it is, and that the maker is asked first', () => {
  for (const slide of slides) {
    const words = texts(slideLayout(slide.scene, slide) as Node).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining([slide.heading, slide.caption, 'Second Sling, CC BY 4.0']));
    expect(words.join(' ')).toContain('Ask the maker first.');
  }
});

describe.each(sample)('$path', (slide) => {
  test('is a white PNG of 16 to 9, at least 1600 px wide', async () => {
    const { width, height, format } = await sharp(await slidePng(slide.path)).metadata();
    expect([width, height, format]).toEqual([SLIDE_WIDTH, SLIDE_HEIGHT, 'png']);
    expect(SLIDE_WIDTH).toBeGreaterThanOrEqual(1600);
    expect(SLIDE_WIDTH * 9).toBe(SLIDE_HEIGHT * 16);
    const { at } = await dotsOf(slide.path);
    for (const [x, y] of [[2, 2], [SLIDE_WIDTH - 3, 2], [2, SLIDE_HEIGHT - 3], [SLIDE_WIDTH - 3, SLIDE_HEIGHT - 3]] as const) expect(at(x, y)).toEqual([255, 255, 255]);
  });

  test('has dark letters where the drawing has its words, and beside it', async () => {
    const dots = await dotsOf(slide.path);
    const { scale, left, top } = placeOnSlide(slide.scene);
    for (const { at: [x, y], text, anchor = 'start' } of lettersOf(slide.scene)) {
      const width = text.length * 5 * scale;
      const from = left + x * scale - { start: 0, middle: width / 2, end: width }[anchor];
      // The small letters stand on the base line, and reach half a letter above it.
      const dark = count(dots, [from, top + (y - 7) * scale, from + width, top + y * scale], isDark);
      expect(dark, text).toBeGreaterThan(text.length * 25);
      // Of these words no letter has a tail: below the base line it is clear.
      if (!/[gjpqy,]/.test(text)) expect(count(dots, [from, top + (y + 1.5) * scale, from + width, top + (y + 3) * scale], isDark), `${text}, below its base line`).toBe(0);
    }
    expect(count(dots, [1000, 150, 1830, 420], isDark)).toBeGreaterThan(4000);
    expect(count(dots, [1000, 930, 1830, 1010], isDark)).toBeGreaterThan(1500);
  });

  test('shows vermillion where an error is drawn, and only there', async () => {
    const found = count(await dotsOf(slide.path), [0, 0, SLIDE_WIDTH, SLIDE_HEIGHT], isVermillion);
    if (slide.isWrong) expect(found).toBeGreaterThan(250);
    else expect(found).toBe(0);
  });
});
