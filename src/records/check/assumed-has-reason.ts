import type { Rule } from './rule.ts';

export const assumedHasReason: Rule = {
  name: 'assumed-has-reason',
  description: 'An assumption is marked so twice, by kind and by standing, and says why.',
  check(report, { figures }) {
    for (const record of figures.values()) {
      const { kind, standing, why } = record.data;
      if (kind !== 'assumed' && standing !== 'assumed') continue;
      if (why === undefined && !record.spoilt(['why'])) {
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: 'is assumed without a reason',
          advice: 'Add why: what makes this a fair choice, and what would change it.',
        });
      }
      if (kind !== 'assumed')
        report({
          at: record.at(['kind']),
          subject: record.id,
          problem: 'has the standing assumed but another kind',
          got: kind,
          advice: 'Write kind: assumed, or say how it was read.',
        });
      if (standing !== 'assumed')
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: 'has the kind assumed but another standing',
          got: standing,
          advice: 'Write standing: assumed, or another kind.',
        });
    }
  },
};
