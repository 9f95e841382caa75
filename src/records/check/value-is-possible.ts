import { numbersOf } from '../numbers.ts';
import type { Unit } from '../schema.ts';
import { POSSIBLE, SHARE_OF_ITSELF } from '../units.ts';
import type { Rule } from './rule.ts';

const OWN_STRENGTH: readonly string[] = ['unknotted', 'strand', 'new'];

export const valueIsPossible: Rule = {
  name: 'value-is-possible',
  description: 'Every number of a figure lies within what its unit allows, and an efficiency is not far above one.',
  check(report, { cells }) {
    for (const placed of cells.values()) {
      const { value, unit, of, kind, id } = placed.figure;
      if (unit === undefined) continue;
      const [low, high] = limits(unit, kind === 'measured' ? of : undefined);
      for (const { path, number } of numbersOf(value)) {
        if (number >= low && number <= high) continue;
        report({
          at: placed.record.at([...placed.path('value'), ...path]),
          subject: id,
          problem: `is outside ${low} to ${high} ${unit}${of && OWN_STRENGTH.includes(of) ? ` of ${of}` : ''}`,
          got: String(number),
          advice: 'Look the number, its unit and its denominator up again.',
        });
      }
    }
  },
};

function limits(unit: Unit, of: string | undefined): readonly [number, number] {
  if (of && OWN_STRENGTH.includes(of) && (unit === 'percent' || unit === 'ratio')) return [0, SHARE_OF_ITSELF[unit]];
  return POSSIBLE[unit];
}
