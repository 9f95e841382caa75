import { faultOf } from './references-exist.ts';
import type { Rule } from './rule.ts';

export const movedTargetIsOrdinary: Rule = {
  name: 'moved-target-is-ordinary',
  description: 'A figure that has moved or been split leads to figures that are there now, in one step.',
  check(report, records) {
    for (const record of records.moved.values()) {
      const { data } = record;
      const targets: [string, (string | number)[]][] =
        data.kind === 'moved' ? [[data.to, ['to']]] : data.to.map((to, i) => [to, ['to', i]]);
      for (const [to, path] of targets) {
        const at = record.at(path);
        if (records.moved.has(to.split('#')[0] as string)) {
          report({
            at,
            subject: record.id,
            problem: 'leads to a figure that has itself moved',
            got: to,
            advice: 'Name the figure at the end of the chain.',
          });
        } else if (!records.figures.has(to)) {
          // a whole table may take the place of a table
          const fault = faultOf(records, 'figures', to);
          if (fault) report({ at, subject: record.id, ...fault });
        }
      }
    }
  },
};
