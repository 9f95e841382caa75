import { namedIn } from '../compared.ts';
import { shown } from '../fault.ts';
import { pullsOf } from '../numbers.ts';
import type { Rule } from './rule.ts';

export const classGroupsStateN: Rule = {
  name: 'class-groups-state-n',
  description:
    'Every figure that a class takes its spread between studies from says how many pulls stand behind it: without n its own scatter would count as spread.',
  check(report, { classes, cells }) {
    for (const record of classes.values()) {
      const { tau } = record.data;
      if (!('groups' in tau)) continue;
      for (const [g, group] of tau.groups.entries()) {
        for (const { address, path } of namedIn(group)) {
          const value = cells.get(address)?.figure.value;
          if (value === undefined || pullsOf(value) !== undefined) continue;
          report({
            at: record.at(['tau', 'groups', g, ...path]),
            subject: `class/${record.id}`,
            problem: `${address} does not say how many pulls stand behind it`,
            got: shown(value),
            advice: 'Remove it from the group, or give the figure its raw tests, or the n of its mean or extremes.',
          });
        }
      }
    }
  },
};
