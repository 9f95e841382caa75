import { statesScatter } from '../numbers.ts';
import type { Rule } from './rule.ts';

export const classSeriesStateScatter: Rule = {
  name: 'class-series-state-scatter',
  description:
    'Every series that a class takes its scatter from states one: two raw tests or more, a mean with sd or cv and n, or the extremes of n.',
  check(report, { classes, cells }) {
    for (const record of classes.values()) {
      const { cv } = record.data;
      if (!('from' in cv)) continue;
      cv.from.forEach((address, i) => {
        const value = cells.get(address)?.figure.value;
        if (value !== undefined && !statesScatter(value)) {
          report({
            at: record.at(['cv', 'from', i]),
            subject: `class/${record.id}`,
            problem: `${address} states no scatter`,
            got: JSON.stringify(value),
            advice: 'Remove it from the list, or give the figure its raw tests, its sd with n, or the extremes of n.',
          });
        }
      });
    }
  },
};
