import type { Rule } from './rule.ts';

export const kindFitsValue: Rule = {
  name: 'kind-fits-value',
  description: 'What is measured, required, constant or assumed has a value and its unit; a rule needs neither.',
  check(report, { cells }) {
    for (const placed of cells.values()) {
      const { kind, value, unit, id } = placed.figure;
      if (kind !== 'rule' && placed.lacks('value')) {
        report({
          at: placed.at('kind'),
          subject: id,
          problem: 'has no value',
          got: kind,
          advice: 'Add value, or cells; only kind: rule may go without.',
        });
      }
      const isStatement = typeof value === 'object' && 'statement' in value;
      if (value !== undefined && !isStatement && placed.lacks('unit')) {
        report({
          at: placed.at('value'),
          subject: id,
          problem: 'has a value without a unit',
          got: JSON.stringify(value),
          advice: 'Add unit, as the source prints it.',
        });
      }
      const ownUnit = placed.cell === undefined || placed.path('unit').length > 1; // a cell may inherit the unit of its table
      if (unit !== undefined && isStatement && ownUnit) {
        report({
          at: placed.at('unit'),
          subject: id,
          problem: 'is a statement in words and has a unit',
          got: unit,
          advice: 'Remove the unit, or write the number as a value.',
        });
      }
    }
  },
};
