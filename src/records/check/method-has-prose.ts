import type { Rule } from './rule.ts';

export const methodHasProse: Rule = {
  name: 'method-has-prose',
  description: 'Every method has a page of prose.',
  check(report, { methods, files }) {
    for (const record of methods.values()) {
      const file = `content/methods/${record.id}.mdx`;
      if (!(file in files))
        report({
          warning: true,
          at: record.at(),
          subject: record.id,
          problem: `there is no ${file}`,
          advice: 'Write it; numbers only through <Fig id>.',
        });
    }
  },
};
