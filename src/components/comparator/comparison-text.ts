/** A whole comparison as plain text, for a message to a friend: the caution first, the maker first, every number with its conditions. */
import type { Comparison } from '../../strength/types.ts';
import {
  aboveSentence, CAUTION_LINE, certaintyWords, type ForceUnit, GROUP_HEADINGS, GROUP_ORDER, MAKER_FIRST_LINE, nothingRanked, rowsOf, shownSpread, spreadSentence, weakLinkSentence,
} from '../../strength/wording.ts';
import type { SlingNames } from './setup.ts';
import { rigLine } from './words.ts';

/**
 * Text of a comparison.
 * @param link address that shows it again
 */
export function comparisonText(comparison: Comparison, slings: SlingNames, unit: ForceUnit, link: string): string {
  const { rig, bearing } = comparison;
  const counted = rig.demandKn ?? rig.ratingKn;
  const lines = [
    `Rig: ${rigLine(rig, slings)}`,
    `Bearing: ${bearing.mm} mm, ${bearing.measured ? 'as measured' : 'the smallest tested'}.`,
    `WARNING: ${MAKER_FIRST_LINE}`,
    CAUTION_LINE,
    comparison.summary,
  ];
  for (const group of GROUP_ORDER) {
    const rows = rowsOf(comparison, group, 'low');
    if (rows.length === 0 && group !== 'ranked') continue;
    lines.push('', GROUP_HEADINGS[group].toUpperCase());
    if (rows.length === 0) lines.push(nothingRanked(comparison.rig));
    for (const row of rows) {
      const spread = shownSpread(row, comparison.rig);
      const sentences = [
        ...(row.state === 'apart' || !row.attachment ? row.reasons : []),
        ...(counted === null ? [] : [aboveSentence(row, counted, unit)]),
        spread && spreadSentence(spread, unit),
        weakLinkSentence(row),
        (row.attachment || row.oneClipError.releases) && `One clipping error: ${row.oneClipError.what}`,
        row.attachment && `${certaintyWords(row).replace(/^./, (first) => first.toUpperCase())}.`,
      ].filter((one): one is string => Boolean(one));
      lines.push(`- ${row.place === undefined ? '' : `${row.place}. `}${row.name}: ${sentences.join(' ') || 'no figure.'}`);
    }
  }
  lines.push('', `Evidence ${comparison.evidence}, model ${comparison.model}.`, link);
  return `${lines.join('\n')}\n`;
}
