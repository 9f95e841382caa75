import { referencesOf } from '../references.ts';
import type { Rule } from './rule.ts';

export const demoStaysInDemo: Rule = {
  name: 'demo-stays-in-demo',
  description: 'Nothing outside the invented examples names an invented figure.',
  check(report, records) {
    for (const { to, collection, from, fromCollection, field, at } of referencesOf(records)) {
      if (collection !== 'figures') continue;
      const invented = to.startsWith('demo/') || records.cells.get(to)?.figure.standing === 'invented';
      const inside =
        fromCollection === 'figures' &&
        (from.startsWith('demo/') || records.figures.get(from)?.data.standing === 'invented');
      if (invented && !inside)
        report({
          at,
          subject: `${from} ${field}`,
          problem: 'names an invented figure',
          got: to,
          advice: 'Name a published figure, or leave the place empty and write a gap.',
        });
    }
  },
};
