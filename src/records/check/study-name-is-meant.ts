import { editDistance } from '../nearest-name.ts';
import type { PlacedFigure } from '../read.ts';
import type { Rule } from './rule.ts';

export const studyNameIsMeant: Rule = {
  name: 'study-name-is-meant',
  description:
    'A study that one record alone names is not one letter away from another: a slip would count one laboratory twice.',
  check(report, { sources, cells }) {
    // One record counts once, however many cells it has: a slip at the head of a table is one slip.
    const named = new Map<string, Set<string>>();
    const first = new Map<string, PlacedFigure>();
    for (const placed of cells.values()) {
      const { study } = placed.figure;
      named.set(study, (named.get(study) ?? new Set()).add(placed.record.id));
      if (!first.has(study)) first.set(study, placed);
    }
    for (const [study, records] of named) {
      const placed = first.get(study) as PlacedFigure;
      // The name of a source is its own witness: it stands on disk as well.
      if (records.size > 1 || sources.has(study) || study === placed.figure.source) continue;
      const near = [...named.keys(), ...sources.keys()].sort().find((other) => editDistance(study, other) === 1);
      if (near === undefined) continue;
      report({
        at: placed.at('study'),
        subject: `${placed.figure.id} study`,
        problem: 'no other figure is of this study, and its name is one letter away from another',
        got: study,
        advice: `Did you mean ${near}? If it is another study, give it a name that cannot be mixed up.`,
      });
    }
  },
};
