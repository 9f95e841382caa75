/** A comparison as a table of comma-separated values: units and certainty in columns, no cell that a spreadsheet would run. */
import { methodData } from '../../strength/method-data.ts';
import type { Comparison } from '../../strength/types.ts';
import { CAUTION_LINE, type ForceUnit, forceNumber } from '../../strength/wording.ts';

/**
 * One cell. Text that a spreadsheet would take for a formula gets an apostrophe in front; what holds a comma, a quote
 * or a line end is quoted.
 */
export function cell(value: string | number | null | undefined): string {
  const text = String(value ?? '');
  const plain = typeof value === 'string' && /^[=+\-@\t\r\n|%]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

const HEAD = 'group,place,method_id,method,state,unit,attachment_one_in_20_below,attachment_half_below,attachment_nineteen_in_20_below,rig_one_in_20_below,rig_half_below,rig_nineteen_in_20_below,of_20_above_line,line,breaks_first_of_20,certainty,clipping_error_releases,reasons,finished_length_cm,figures,conditions,evidence,model,link';

/**
 * The table, with its head and with line ends of the standard (RFC 4180).
 * @param unit unit of the forces, named in each row
 */
export function comparisonCsv(comparison: Comparison, unit: ForceUnit, link: string): string {
  const { rig, rows, evidence, model } = comparison;
  const line = rig.demandKn ?? rig.ratingKn;
  const ends = (of: { low: string; middle: string; high: string } | null) => [of?.low, of?.middle, of?.high];
  const lines = rows.map((row) => {
    // The digits of the page: one that is not shown there would claim more than the model can say.
    const data = methodData(row, rig, (kn) => forceNumber(kn, unit));
    return [
      data.group, data.place, data.id, data.name, data.state, unit, ...ends(data.attachment), ...ends(data.rig),
      data.aboveOf20, line === null || unit === 'kN' ? line : forceNumber(line, unit),
      data.firstOf20.map(({ letter, count }) => `${letter} ${count}`).join('; '), data.certainty,
      row.oneClipError.releases ? 'yes' : 'no', data.reason.join(' '), row.finishedCm === null ? null : Math.round(row.finishedCm),
      data.figures.join(' '), CAUTION_LINE, evidence, model, link,
    ];
  });
  return [HEAD, ...lines.map((cells) => cells.map(cell).join(','))].map((text) => `${text}\r\n`).join('');
}
