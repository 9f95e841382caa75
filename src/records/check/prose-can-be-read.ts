import { proseOf } from '../prose/read.ts';
import type { Rule } from './rule.ts';

export const proseCanBeRead: Rule = {
  name: 'prose-can-be-read',
  description:
    'Every page and component can be read by its parser, and prose is MDX: a fault in a .md page would publish an empty one.',
  check(report, records) {
    for (const { message, at } of proseOf(records).failures) {
      report({
        at,
        subject: 'prose',
        problem: 'cannot be read here',
        got: message,
        advice: 'Correct the markup; nothing behind this place was checked.',
      });
    }
    for (const file of Object.keys(records.files)) {
      if (/^content\/.*\.md$/.test(file))
        report({
          at: { file, line: 1, col: 1 },
          subject: 'prose',
          problem: 'is Markdown without components',
          got: '.md',
          advice: 'Rename it to .mdx.',
        });
    }
  },
};
