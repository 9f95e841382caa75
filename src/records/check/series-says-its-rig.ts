import type { Rule } from './rule.ts';

/** What no series that stands by itself may leave open: without it nobody can repeat a pull. */
const ASKED = ['method', 'form', 'material', 'bearing', 'legs', 'state', 'pull'] as const;

export const seriesSaysItsRig: Rule = {
  name: 'series-says-its-rig',
  description: 'A series that stands by itself says how it was rigged, in what, over what and how it was pulled.',
  check(report, { series }) {
    for (const record of series.values()) {
      const { data, id } = record;
      if ('figure' in data || record.spoilt(['rig'])) continue;
      const open = ASKED.filter((field) => data.rig[field] === undefined && !record.spoilt(['rig', field]));
      if (open.length > 0)
        report({
          at: record.at(['rig']),
          subject: id,
          problem: 'leaves its rig open',
          got: `no ${open.join(', no ')}`,
          advice: `Add to rig: ${open.join(', ')}.`,
        });
    }
  },
};
