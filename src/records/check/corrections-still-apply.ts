import type { PlacedFigure } from '../read.ts';
import type { Value } from '../schema.ts';
import type { Rule } from './rule.ts';

export const correctionsStillApply: Rule = {
  name: 'corrections-still-apply',
  description:
    "A correction is of a figure whose record still says what the source prints, and whose value is what the correction uses in its place.",
  check(report, { corrections, cells }) {
    for (const record of corrections.values()) {
      const { figure, used, expect } = record.data;
      const placed = cells.get(figure);
      if (!placed) continue; // told where references are followed
      const value = valueText(placed);
      const printed = placed.figure.asPrinted ?? value;
      if (printed !== expect.printed) {
        report({
          at: record.at(['expect', 'printed']),
          subject: record.id,
          problem: `${figure} no longer says what this correction is of`,
          got: printed,
          advice: 'The source was fixed or the record changed: remove the correction or update it.',
        });
      } else if (String(used) === expect.printed) {
        report({
          at: record.at(['used']),
          subject: record.id,
          problem: 'uses what the source prints, so it corrects nothing',
          got: String(used),
          advice: 'Write in used what stands in the place of the printed number, or remove the correction.',
        });
      } else if (value !== String(used) && !(typeof used === 'number' && Number(value) === used)) {
        report({
          at: record.at(['used']),
          subject: record.id,
          problem: `${figure} does not have this value`,
          got: `${used}, and the figure ${value}`,
          advice: `Give the figure the value that is used, and beside it asPrinted: "${expect.printed}".`,
        });
      }
    }
  },
};

/** A figure's value in the fewest signs; a bare number, or a mean, as it is written in the record. */
function valueText({ figure: { value }, record, path }: PlacedFigure): string {
  if (typeof value === 'number') return record.written(path('value')) ?? String(value);
  if (value !== undefined && 'mean' in value) return record.written([...path('value'), 'mean']) ?? String(value.mean);
  return wordsOf(value);
}

function wordsOf(value: Exclude<Value, number> | undefined): string {
  if (value === undefined) return 'no value';
  if ('tests' in value) return [...value.tests, ...(value.censored ?? []).map((x) => `at least ${x}`)].join(', ');
  if ('mean' in value) return String(value.mean);
  if ('low' in value) return `${value.low} to ${value.high}`;
  if ('atLeast' in value) return `at least ${value.atLeast}`;
  if ('atMost' in value) return `at most ${value.atMost}`;
  return value.statement;
}
