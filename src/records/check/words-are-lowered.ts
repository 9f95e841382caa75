import type { Rule } from './rule.ts';

export const wordsAreLowered: Rule = {
  name: 'words-are-lowered',
  description: 'What is measured and printed in words alone, without a number, is lowered: nobody can say how many pieces it rests on.',
  check(report, { cells }) {
    for (const placed of cells.values()) {
      const { kind, value, lowered, id, standing } = placed.figure;
      if (kind !== 'measured' || standing === 'invented' || lowered.length > 0) continue;
      if (typeof value !== 'object' || !('statement' in value)) continue;
      report({
        at: placed.at('value'),
        subject: id,
        problem: 'says in words what was measured, and is not lowered for it',
        advice: 'Add a step to lowered: { by: few, why: the number of pieces is not printed }.',
      });
    }
  },
};
