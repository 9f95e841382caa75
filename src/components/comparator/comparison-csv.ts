/** A comparison as a table of comma-separated values: units and certainty in columns, no cell that a spreadsheet would run. */
import type { Comparison } from '../../strength/types.ts';
import { CAUTION_LINE, countAbove, type ForceUnit, inUnit, stripCounts } from '../../strength/wording.ts';

/**
 * One cell. Text that a spreadsheet would take for a formula gets an apostrophe in front; what holds a comma, a quote
 * or a line end is quoted.
 */
export function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const plain = /^[=+\-@\t\r\n|%]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

const HEAD = [
  'group', 'place', 'method_id', 'method', 'state', 'unit', 'attachment_one_in_20_below', 'attachment_half_below', 'attachment_nineteen_in_20_below', 'rig_one_in_20_below', 'rig_half_below', 'rig_nineteen_in_20_below',
  'of_20_above_line', 'line', 'breaks_first_of_20', 'certainty', 'clipping_error_releases', 'reasons', 'finished_length_cm', 'figures', 'conditions', 'evidence', 'model', 'link',
] as const;

/**
 * The table, with its head and with line ends of the standard (RFC 4180).
 * @param unit unit of the forces, named in each row
 */
export function comparisonCsv(comparison: Comparison, unit: ForceUnit, link: string): string {
  const { rig } = comparison;
  const counted = rig.demandKn ?? rig.ratingKn;
  const shown = (kn: number | undefined): number | null => (kn === undefined ? null : Number(inUnit(kn, unit).toFixed(unit === 'kN' ? 2 : 0)));
  const rows = comparison.rows.map((row) => [
    row.group, row.place ?? null, row.method, row.name, row.state, unit,
    shown(row.attachment?.low), shown(row.attachment?.middle), shown(row.attachment?.high), shown(row.rig?.low), shown(row.rig?.middle), shown(row.rig?.high),
    // Out of twenty, never all and never none: the drawn dots say no more than that.
    counted === null || row.dots.length === 0 ? null : Math.min(19, Math.max(1, countAbove(row.dots, counted))), counted === null ? null : shown(counted),
    stripCounts(row.strip).map((one) => `${one.letter} ${one.count}`).join('; '), row.certainty,
    row.oneClipError.releases ? 'yes' : 'no', row.reasons.join(' '), row.finishedCm === null ? null : Math.round(row.finishedCm),
    row.figures.join(' '), CAUTION_LINE, comparison.evidence, comparison.model, link,
  ]);
  return [HEAD, ...rows].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}
