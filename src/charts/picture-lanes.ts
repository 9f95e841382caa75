/** The lanes of a comparison for a picture: one lane of twenty dots for each way, the axis and the rating. No name stands at a lane. */
import { axisTicks } from './axis-ticks.ts';
import { AXIS_END_KN } from './lane.ts';

/** Colours of the drawing; a picture has no dark form. */
export interface PictureColours { readonly ink: string; readonly line: string; readonly blue: string; readonly vermillion: string; readonly paper: string }

export interface PictureLanes {
  /** Elements of SVG, without text. */
  readonly drawn: string;
  /** Where a label of the axis stands, from the left. */
  readonly labels: readonly { readonly text: string; readonly x: number }[];
  readonly height: number;
}

const DOT = 5.5;
/** Height of one lane, and of all of them at most. */
const [LANE, LANES] = [24, 170];
const NEWTONS_IN_KN = 1000;

/**
 * Lanes from top to bottom in the order given.
 * @param lanes twenty equally likely forces of each way, kN; those beyond the axis stand at its end as an arrow
 * @param width of the drawing
 */
export function pictureLanes(lanes: readonly (readonly number[])[], ratingKn: number, width: number, colours: PictureColours): PictureLanes {
  const x = (kn: number): number => (kn / AXIS_END_KN) * width;
  const high = Math.min(LANE, LANES / Math.max(1, lanes.length));
  const bottom = lanes.length * high + 8;
  const parts = [`<path d="M0 ${bottom}H${width}" stroke="${colours.ink}" stroke-width="3" fill="none"/>`];
  const ticks = axisTicks(NEWTONS_IN_KN).map(({ text }) => Number(text));
  for (const tick of ticks) parts.push(`<path d="M${x(tick).toFixed(1)} 0V${bottom + 8}" stroke="${colours.line}" stroke-width="2" fill="none"/>`);
  for (const [i, dots] of lanes.entries()) {
    const y = (i + 0.5) * high + 4;
    for (const kn of dots) {
      if (kn > AXIS_END_KN) parts.push(`<path d="M${width - 10} ${y - 6}l10 6-10 6z" fill="${colours.blue}"/>`);
      else if (kn > ratingKn) parts.push(`<circle cx="${x(kn).toFixed(1)}" cy="${y}" r="${DOT}" fill="${colours.blue}"/>`);
      else parts.push(`<circle cx="${x(kn).toFixed(1)}" cy="${y}" r="${DOT - 1}" fill="${colours.paper}" stroke="${colours.vermillion}" stroke-width="2.5"/>`);
    }
  }
  parts.push(`<path d="M${x(ratingKn).toFixed(1)} -8V${bottom}" stroke="${colours.ink}" stroke-width="5" fill="none"/>`);
  return { drawn: parts.join(''), labels: ticks.map((tick) => ({ text: String(tick), x: x(tick) })), height: bottom };
}
