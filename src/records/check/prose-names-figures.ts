import { proseOf } from '../prose/read.ts';
import { faultOf } from './references-exist.ts';
import type { Rule } from './rule.ts';

export const proseNamesFigures: Rule = {
  name: 'prose-names-figures',
  description: 'Every figure that prose names exists.',
  check(report, records) {
    for (const { id, at } of proseOf(records).mentions) {
      const fault = faultOf(records, 'figures', id);
      if (fault) report({ at, subject: 'Fig', ...fault });
    }
  },
};
