import { proseOf } from '../prose/read.ts';
import { findQuantities } from '../prose/quantity.ts';
import type { Rule } from './rule.ts';

export const prose: Rule = {
  name: 'prose',
  description: 'A quantity in prose, front matter, a component or the words of a record comes from a figure.',
  check(report, records) {
    for (const { text, at, kind } of proseOf(records).passages) {
      for (const quantity of findQuantities(text)) {
        report({
          at: at(quantity.index),
          subject: 'prose',
          problem: `"${quantity.text}" is a quantity without an origin`,
          advice:
            kind === 'record'
              ? 'Name the figure in a field of the record, and say it without the number.'
              : 'Use <Fig id="source/result" /> or move it into a record.',
        });
      }
    }
  },
};
