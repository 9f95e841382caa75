/** A comparison as JSON: what the page shows, to its last digit, with what it was made with. */
import { methodData } from '../../strength/method-data.ts';
import type { Comparison } from '../../strength/types.ts';
import { CAUTION_LINE, type ForceUnit, forceNumber, MAKER_FIRST_LINE } from '../../strength/wording.ts';

/**
 * Text of the file. The rig is as the reader gave it, in kN, mm and cm; forces of methods are in `unit`.
 * @param link address that shows the comparison again
 */
export function comparisonJson({ evidence, model, rig, bearing, summary, rows }: Comparison, unit: ForceUnit, link: string): string {
  return JSON.stringify({
    caution: [MAKER_FIRST_LINE, CAUTION_LINE], counts: 'Of 20: 19 stands for 19 or more, 1 for 1 or fewer.', evidence, model, link, unit, rig, bearing, summary,
    methods: rows.map((row) => methodData(row, rig, (kn) => Number(forceNumber(kn, unit)))),
  }, null, 2);
}
