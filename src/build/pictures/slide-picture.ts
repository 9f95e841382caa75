/**
 * A drawing as a picture for slides: the drawing on the left, what it shows on the right, credit and caution at the foot,
 * so that they stay with a picture that is passed on alone. White, in light colours. Letters are drawn as shapes: what
 * turns the drawing into dots has no letters of its own on a bare machine.
 */
import satori from 'satori';
import sharp from 'sharp';
import { type Scene, WIDTH } from '../../drawings/scene.ts';
import { SLIDE_COLOURS, SLIDE_STYLE } from '../../drawings/style.ts';
import { lettersOf, unletteredSvg } from '../../drawings/svg.ts';
import { DRAWING_WORDS } from './drawing-files.ts';
import { type Box, box, letters } from './layout.ts';

/** Size of the sheet, px: 16 to 9. */
export const [SLIDE_WIDTH, SLIDE_HEIGHT] = [1920, 1080];
/** Least size of a letter on the sheet, px. */
export const SMALLEST_SLIDE_LETTER = 24;
/** Size of letters in drawings, drawing units: that of the style. */
const LETTER = 13;
/** Room around the drawing, px, and the width of the half that it stands in. */
const [MARGIN, HALF] = [10, 1000];
/** Where the base line lies in a line of letters of height 1: the font's own 0.95 above and 0.225 below, centred. */
const BASE_LINE = (1 - 1.175) / 2 + 0.95;

/** What stands on a slide besides its drawing. */
export interface SlideWords { heading: string; part: string; caption: string }

/** Scale and place of a drawing on the sheet. @throws RangeError where its letters would come out too small */
export function placeOnSlide({ height, from = 0 }: Pick<Scene, 'height' | 'from'>): { scale: number; left: number; top: number } {
  const tall = height - from;
  const scale = Math.min((SLIDE_HEIGHT - 2 * MARGIN) / tall, (HALF - 2 * MARGIN) / WIDTH);
  if (LETTER * scale < SMALLEST_SLIDE_LETTER) throw new RangeError(`scene: letters of a drawing ${tall} units high come out under ${SMALLEST_SLIDE_LETTER} px on a slide`);
  return { scale, left: (HALF - WIDTH * scale) / 2, top: (SLIDE_HEIGHT - tall * scale) / 2 - from * scale };
}

/** The words of a slide and the letters of its drawing, as layout. */
export function slideLayout(scene: Scene, { heading, part, caption }: SlideWords): Box {
  const { scale, left, top } = placeOnSlide(scene);
  const { ink = '#000000' } = SLIDE_COLOURS;
  const size = LETTER * scale;
  const text = (fontSize: number, fontWeight: number): Record<string, string | number> => ({ fontSize, fontWeight, color: ink, lineHeight: 1.25 });
  const inDrawing = lettersOf(scene).map(({ at: [x, y], anchor = 'start', text: words }): Box => {
    const from = left + x * scale - { start: 0, middle: HALF / 2, end: HALF }[anchor];
    const justifyContent = { start: 'flex-start', middle: 'center', end: 'flex-end' }[anchor];
    return box({ fontSize: size, fontWeight: 400, color: ink, lineHeight: 1, position: 'absolute', left: from, top: top + y * scale - BASE_LINE * size, width: HALF, justifyContent }, words);
  });
  return box({ width: SLIDE_WIDTH, height: SLIDE_HEIGHT, fontFamily: 'Public Sans', position: 'relative' }, [
    ...inDrawing,
    box({ position: 'absolute', left: HALF, top: 150, width: SLIDE_WIDTH - HALF - 90, flexDirection: 'column' }, [
      box(text(64, 700), heading),
      ...(part === '' ? [] : [box({ ...text(48, 400), marginTop: 10 }, part)]),
      box({ ...text(44, 400), marginTop: 36, lineHeight: 1.35 }, caption),
    ]),
    box({ position: 'absolute', left: HALF, top: SLIDE_HEIGHT - 150, width: SLIDE_WIDTH - HALF - 60, flexDirection: 'column' }, DRAWING_WORDS.map((line) => box(text(30, 400), line))),
  ]);
}

/**
 * The picture of a drawing with its words, as PNG of sixteen colours. What is drawn wrong has a sign in vermillion, which
 * covers few dots: only a slower search keeps a place for it among the sixteen.
 */
export async function slidePicture({ scene, isWrong, ...words }: SlideWords & { scene: Scene; isWrong: boolean }): Promise<Buffer> {
  const { scale, left, top } = placeOnSlide(scene);
  const svg = await satori(slideLayout(scene, words) as unknown as Parameters<typeof satori>[0], { width: SLIDE_WIDTH, height: SLIDE_HEIGHT, fonts: letters() });
  const drawing = `<style>${SLIDE_STYLE}</style><rect width="${SLIDE_WIDTH}" height="${SLIDE_HEIGHT}" fill="${SLIDE_COLOURS['paper']}"/><g transform="translate(${left} ${top}) scale(${scale})">${unletteredSvg(scene)}</g>`;
  return sharp(Buffer.from(svg.replace(/<svg[^>]*>/, (open) => `${open}${drawing}`))).png({ palette: true, colours: 16, effort: isWrong ? 4 : 1, dither: 0 }).toBuffer();
}
