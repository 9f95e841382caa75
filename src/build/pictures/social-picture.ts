/**
 * The picture that stands beside a link to a prebuilt comparison: the finding, the lanes, the eye that is assumed, the caution.
 * No way of attaching is named, so that a picture without its page names no winner. Letters are large enough for a
 * picture of 300 px.
 */
import satori from 'satori';
import sharp from 'sharp';
import { type PictureColours, pictureLanes } from '../../charts/picture-lanes.ts';
import { compare } from '../../strength/compare.ts';
import type { Rig } from '../../strength/types.ts';
import { pageEvidence } from '../comparator/page.ts';
import { type Box, box, letters } from './layout.ts';
import { siteName } from '../site.ts';

/** Size that readers of shared links ask for, px (Open Graph; 1.91 to 1). */
export const [PICTURE_WIDTH, PICTURE_HEIGHT] = [1200, 630];
/** Least size of a letter, px: 9 px where the picture is shown 300 px wide. */
export const SMALLEST_LETTER = 36;
/** Light tokens of the site's style. */
export const PICTURE_COLOURS: PictureColours & { soft: string } = { paper: '#fcfcfa', ink: '#16191c', soft: '#4e565d', line: '#c3c8cb', blue: '#0072b2', vermillion: '#d55e00' };

const MARGIN = 48;
const CHART_WIDTH = PICTURE_WIDTH - 2 * MARGIN - 60;

/** Everything that the picture says, in its order. @param eyeName what the comparison calls the eye */
export function pictureWords(rig: Readonly<Rig>, eyeName: string): { head: string; finding: string; rig: string; eye: string; caution: string } {
  const { ratingKn, sling, bearingMm, slingState } = rig;
  if (ratingKn === null || sling === null) throw new RangeError('rig must name its rating and sling.');
  const evidence = pageEvidence();
  const comparison = compare(evidence, rig);
  const ranked = comparison.rows.filter(({ group }) => group === 'ranked').length;
  const without = comparison.rows.filter(({ group }) => group === 'no-data').length;
  const one = ranked === 1;
  return {
    head: `${siteName}: home methods, one a row`,
    finding: `${ranked === 0 ? 'No home method' : `${ranked} home ${one ? 'method' : 'methods'}`} can be ranked here. For ${without} we found no test.`,
    rig: `Rated ${ratingKn} kN, ${evidence.slings[sling]?.name}, ${slingState}`,
    eye: `Eye assumed: ${eyeName}${bearingMm === null ? ', not measured' : `, ${bearingMm} mm`}`,
    caution: 'One slow pull, new and dry. Ask the maker first.',
  };
}

/** The picture as layout, and its lanes. */
export function pictureLayout(rig: Readonly<Rig>, eyeName: string): { layout: Box; drawn: string } {
  const words = pictureWords(rig, eyeName);
  const evidence = pageEvidence();
  const comparison = compare(evidence, rig);
  // The maker's way stands outside all comparing: beside home methods its lane would rank it.
  const rows = comparison.rows.filter(({ dots, method }) => dots.length > 0 && evidence.methods[method]?.role === 'home');
  const lanes = pictureLanes(rows.map(({ dots }) => dots), rig.ratingKn as number, CHART_WIDTH, PICTURE_COLOURS);
  const text = (size: number, weight: number, color = PICTURE_COLOURS.ink) => ({ fontSize: size, fontWeight: weight, color, lineHeight: 1.15 });
  const chartTop = 338;
  const layout = box({ width: PICTURE_WIDTH, height: PICTURE_HEIGHT, backgroundColor: PICTURE_COLOURS.paper, fontFamily: 'Public Sans', flexDirection: 'column', padding: `${MARGIN - 14}px ${MARGIN}px`, position: 'relative' }, [
    box({ ...text(SMALLEST_LETTER, 700), marginBottom: 14 }, words.head),
    box({ ...text(50, 700), marginBottom: 16 }, words.finding),
    box(text(38, 400), words.rig),
    box(text(38, 400), words.eye),
    ...lanes.labels.map(({ text: label, x }): Box => box({ ...text(SMALLEST_LETTER, 400, PICTURE_COLOURS.soft), position: 'absolute', left: MARGIN + x - 50, width: 100, justifyContent: 'center', top: chartTop + lanes.height + 10 }, label)),
    box({ ...text(SMALLEST_LETTER, 400, PICTURE_COLOURS.soft), position: 'absolute', left: MARGIN + CHART_WIDTH + 26, top: chartTop + lanes.height + 10 }, 'kN'),
    box({ ...text(SMALLEST_LETTER, 700), position: 'absolute', left: MARGIN, top: PICTURE_HEIGHT - 58 }, words.caution),
  ]);
  return { layout, drawn: `<g transform="translate(${MARGIN} ${chartTop})">${lanes.drawn}</g>` };
}

/** The picture of one prebuilt comparison, as PNG. */
export async function socialPicture(rig: Readonly<Rig>, eyeName: string): Promise<Buffer> {
  const { layout, drawn } = pictureLayout(rig, eyeName);
  const svg = await satori(layout as unknown as Parameters<typeof satori>[0], { width: PICTURE_WIDTH, height: PICTURE_HEIGHT, fonts: letters() });
  return sharp(Buffer.from(svg.replace('</svg>', `${drawn}</svg>`))).png({ palette: true, colours: 16, effort: 1, dither: 0 }).toBuffer();
}
