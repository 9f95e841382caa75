import type { Rule } from './rule.ts';

export const comparisonShowsBreaks: Rule = {
  name: 'comparison-shows-breaks',
  description: 'A method that stands for comparison shows published breaks: its row has no gap that would name the nearest.',
  check(report, { methods }) {
    for (const record of methods.values()) {
      const { id: subject, data: { role, shown } } = record;
      if (role === 'comparison' && shown.length === 0 && !record.spoilt(['shown']))
        report({ at: record.at(['role']), subject, problem: 'stands for comparison and shows no published break', advice: 'Name the nearest figures in shown.' });
    }
  },
};
