/** One method of a comparison as data, the same shape for the page's files and for the command. Pure. */
import type { Comparison, Row, Spread } from './types.ts';
import { countAbove, partName, stripCounts } from './wording.ts';

/** Out of twenty, never all and never none: the drawn dots say no more than that. */
const ofTwenty = (count: number): number => Math.min(19, Math.max(1, count));

/**
 * A method as data; forces as `shown` gives them.
 * `aboveOf20` counts against the demand or else the rating, and is null without either or without a result.
 * @param shown a force in kN as the number or the text that is given
 */
export function methodData<T>(row: Row, { ratingKn, demandKn }: Comparison['rig'], shown: (kn: number) => T) {
  const counted = demandKn ?? ratingKn;
  const spread = (of: Spread | null) => of && { low: shown(of.low), middle: shown(of.middle), high: shown(of.high) };
  return {
    id: row.method, name: row.name, state: row.state, reason: row.reasons, group: row.group, place: row.place ?? null,
    attachment: spread(row.attachment), rig: spread(row.rig),
    aboveOf20: counted === null || row.dots.length === 0 ? null : ofTwenty(countAbove(row.dots, counted)),
    firstOf20: stripCounts(row.strip).map(({ letter, count }) => ({ letter, link: partName(letter), count: ofTwenty(count) })),
    certainty: row.certainty, figures: row.figures, shown: row.shown, gap: row.gap ?? null,
  };
}
