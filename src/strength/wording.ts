/**
 * Results in words. Pure: a row in, a sentence out, so that page, copied text
 * and command say the same. Rules: the verb is "break above"; out of twenty
 * never all and never none; half break below the middle; the low value is
 * named as what it is. No verdict of any kind.
 */
import type { Comparison, Group, LinkResult, Rig, Row, Spread } from './types.ts';

/** Units of force that a reader may choose. */
export type ForceUnit = 'kN' | 'lbf' | 'kgf';

/** Exact: the pound-force is 0.45359237 kg x 9.80665 m/s2, the kilogram-force 1 kg x 9.80665 m/s2. */
export const NEWTONS_PER: Readonly<Record<ForceUnit, number>> = { kN: 1000, lbf: 4.4482216152605, kgf: 9.80665 };

/** A force in another unit. @param kn kN */
export function inUnit(kn: number, unit: ForceUnit): number {
  if (!Number.isFinite(kn)) throw new RangeError(`inUnit: kn must be finite (got ${kn})`);
  return (kn * 1000) / NEWTONS_PER[unit];
}

/** A computed force without its unit: to a tenth of a kN, or to ten lbf or kgf, which is about as fine. */
export function forceNumber(kn: number, unit: ForceUnit): string {
  const value = inUnit(kn, unit);
  return unit === 'kN' ? value.toFixed(1) : String(Math.round(value / 10) * 10);
}

/** A computed force with its unit. */
export const force = (kn: number, unit: ForceUnit): string => `${forceNumber(kn, unit)} ${unit}`;

/** A rating or demand as the reader gave it: no digits added in kN. */
export const line = (kn: number, unit: ForceUnit): string => (unit === 'kN' ? `${kn} kN` : force(kn, unit));

/** How many of the dots lie above a line. The sentence and the drawing both use this count. */
export const countAbove = (dots: readonly number[], lineKn: number): number => dots.filter((kn) => kn > lineKn).length;

/** A count out of twenty that never claims all or none. */
export function aboutOfTwenty(count: number): string {
  if (!Number.isInteger(count) || count < 0 || count > 20) throw new RangeError(`aboutOfTwenty: count must be 0 to 20 (got ${count})`);
  if (count === 20) return 'more than 19';
  return count === 0 ? 'fewer than 1' : `about ${count}`;
}

/** "Of 20 rigs built like this, about 19 would break above 12 kN in one slow pull, new and dry." Null without a result. */
export function aboveSentence(row: Row, lineKn: number, unit: ForceUnit): string | null {
  if (row.dots.length !== 20) return null;
  return `Of 20 rigs built like this, ${aboutOfTwenty(countAbove(row.dots, lineKn))} would break above ${line(lineKn, unit)} in one slow pull, new and dry.`;
}

/** The same, short enough for a row. */
export function aboveShort(row: Row, lineKn: number, unit: ForceUnit): string | null {
  if (row.dots.length !== 20) return null;
  const words = aboutOfTwenty(countAbove(row.dots, lineKn));
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} of 20 break above ${line(lineKn, unit)}`;
}

/** "1 in 20 below 11.5, half below 13.0 kN" */
export const lowAndMiddle = (spread: Spread, unit: ForceUnit): string =>
  `1 in 20 below ${forceNumber(spread.low, unit)}, half below ${force(spread.middle, unit)}`;

/** Out of twenty pairs, from so many on a method counts as the stronger one; fewer either way are a tie. */
const STRONGER_FROM = 13;

/** "stronger in about 17 of 20 pairs", "weaker in about 17 of 20 pairs", or a tie, said as one. @param wins share of pairs between 0 and 1 */
export function pairShort(wins: number): string {
  const ahead = Math.round(wins * 20);
  if (ahead >= STRONGER_FROM) return `stronger in ${aboutOfTwenty(ahead)} of 20 pairs`;
  if (20 - ahead >= STRONGER_FROM) return `weaker in ${aboutOfTwenty(20 - ahead)} of 20 pairs`;
  return `a tie: stronger in ${aboutOfTwenty(ahead)} of 20 pairs`;
}

/** Both ends of the spread in full sentences, with what the low value is not. */
export const spreadSentence = (spread: Spread, unit: ForceUnit): string =>
  `Half break below ${force(spread.middle, unit)}; 1 in 20 breaks below ${force(spread.low, unit)}. That is no minimum and no working load.`;

const PART: Readonly<Record<LinkResult['letter'], string>> = {
  S: 'the sling at the eye', K: 'the knot or join', E: 'the eye', D: 'the device', C: 'the connector end',
};

/** What each letter of the strip stands for, in the order of the legend. */
export const LETTERS = ['S', 'K', 'E', 'D', 'C'] as const satisfies readonly LinkResult['letter'][];

/** Name of a link by its letter. */
export const partName = (letter: LinkResult['letter']): string => PART[letter];

/** Cells of the strip by letter, largest first. */
export function stripCounts(strip: string): { letter: LinkResult['letter']; count: number }[] {
  return LETTERS.map((letter) => ({ letter, count: strip.split(letter).length - 1 }))
    .filter((one) => one.count > 0).sort((a, b) => b.count - a.count);
}

/** True where device and attachment come out close and the device's mean over its rating is only assumed. */
function isAboutEqual(row: Row): boolean {
  const device = row.links.find((one) => one.part === 'device');
  if (!device || row.links.length < 2 || !device.factors.some((factor) => factor.assumed)) return false;
  return device.first >= 0.3 && device.first <= 0.7;
}

/** Which link goes first, in twenty rigs. Null where the row has no strip. */
export function weakLinkSentence(row: Row): string | null {
  const counts = stripCounts(row.strip);
  const [most, ...others] = counts;
  if (!most) return null;
  if (others.length === 0) return `In ${aboutOfTwenty(most.count)} of 20 rigs like this ${PART[most.letter]} goes first.`;
  const rest = others.map((one) => `in ${one.count} ${PART[one.letter]}`).join(', ');
  const equal = isAboutEqual(row) ? 'About equal, because the mean strength of the device is assumed. ' : '';
  return `${equal}Of 20 rigs like this, in about ${most.count} ${PART[most.letter]} goes first, ${rest}. For one rig we do not know which.`;
}

/** The same, short enough for a column. */
export function weakLinkShort(row: Row): string | null {
  const most = stripCounts(row.strip)[0];
  if (!most) return null;
  return isAboutEqual(row) ? 'about equal' : PART[most.letter].replace(/^the /, '');
}

/** How sure a row is, in a few words; the maker's sling has no published figure of its own, only the rating. */
export function certaintyWords(row: Pick<Row, 'certainty' | 'group'>): string {
  if (row.certainty) return `certainty ${row.certainty}`;
  return row.group === 'maker' ? 'assumed from the rating' : 'no figure';
}

/** Headings of the groups, in the order of the page. */
export const GROUP_HEADINGS: Readonly<Record<Group, string>> = {
  maker: 'The maker\u2019s way',
  ranked: 'Done at home: tested on a wire or pin of this diameter, forgiving of one clipping error',
  unranked: 'Computed, but on too little to rank',
  apart: 'Set apart: strength is not the point',
  comparison: 'For comparison only',
  'no-data': 'No figures for this rig',
  'other-sling': 'Made from another sling',
};
export const GROUP_ORDER = ['maker', 'ranked', 'unranked', 'apart', 'comparison', 'no-data', 'other-sling'] as const satisfies readonly Group[];

/** The line that stands under every result. */
export const CAUTION_LINE = 'One slow pull, new, dry. Not in these numbers: placement, rock, wear, wet.';
/** What comes before any home method. */
export const MAKER_FIRST_LINE = 'The maker\u2019s instruction and a professional re-sling come first. Attaching a sling at home ends the maker\u2019s approval and can fail.';
/** What an empty ranked group says, and what would change it. */
export function nothingRanked(rig: Rig): string {
  return rig.bearingMm === null || rig.eye === null
    ? 'No home method. Only one that was tested on the diameter of your eye can be ranked: say the kind of eye and measure what the sling bears on.'
    : 'No home method. None has a figure at this eye for this sling with enough certainty that also survives one clipping error.';
}

/** True where the numbers of a row are those of the whole rig: against a demand the device counts too. */
export const countsDevice = (rig: Pick<Rig, 'ratingKn' | 'demandKn'>): boolean => rig.demandKn !== null && rig.ratingKn !== null;

/** The spread that a row shows: of the whole rig against a demand, else of the attachment. */
export function shownSpread(row: Row, rig: Pick<Rig, 'ratingKn' | 'demandKn'>): Spread | null {
  return countsDevice(rig) ? row.rig : row.attachment;
}

/** Rows of one group, in the order asked for; the ranked order is the engine's unless another is chosen. */
export function rowsOf(comparison: Comparison, group: Group, sort: 'low' | 'middle' | 'name'): Row[] {
  const rows = comparison.rows.filter((row) => row.group === group);
  if (sort === 'name') return rows.sort((a, b) => a.name.localeCompare(b.name, 'en'));
  if (sort === 'middle') return rows.sort((a, b) => (b.attachment?.middle ?? -1) - (a.attachment?.middle ?? -1));
  return rows;
}
