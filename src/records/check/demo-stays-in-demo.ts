import { isInvented } from '../read.ts';
import { referencesOf } from '../references.ts';
import type { Rule } from './rule.ts';

export const demoStaysInDemo: Rule = {
  name: 'demo-stays-in-demo',
  description: 'Nothing outside the invented examples names an invented figure or series.',
  check(report, records) {
    for (const { to, collection, from, fromCollection, field, at } of referencesOf(records)) {
      if (collection === 'series') {
        const [one, other] = [records.series.get(from), records.series.get(to)];
        if (one && other && isInvented(one) !== isInvented(other))
          report({
            at,
            subject: `${from} ${field}`,
            problem: 'sets an invented series beside a published one',
            got: to,
            advice: 'Name a series of the same kind, or leave the entry out.',
          });
        continue;
      }
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
