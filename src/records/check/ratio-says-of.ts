import type { Rule } from './rule.ts';

export const ratioSaysOf: Rule = {
  name: 'ratio-says-of',
  description: 'A measured share says what it is a share of.',
  check(report, { cells }) {
    for (const placed of cells.values()) {
      const { figure } = placed;
      if ((figure.unit === 'percent' || figure.unit === 'ratio') && figure.kind === 'measured' && placed.lacks('of')) {
        report({
          at: placed.at('value'),
          subject: figure.id,
          problem: `is a ${figure.unit} of nothing`,
          advice: 'Add of: the address of a figure, or a named denominator such as unknotted, rated-minimum or strand.',
        });
      }
    }
  },
};
