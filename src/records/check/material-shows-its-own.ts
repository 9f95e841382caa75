import type { Rule } from './rule.ts';

export const materialShowsItsOwn: Rule = {
  name: 'material-shows-its-own',
  description: 'A figure whose rig names a material stands only with that material; wide HMPE woven with nylon is never one with HMPE.',
  check(report, { materials, cells }) {
    for (const record of materials.values()) {
      for (const [topic, { figures }] of Object.entries(record.data.topics)) {
        figures.forEach((address, i) => {
          const named = cells.get(address)?.figure.rig.material;
          if (named === undefined || record.data.materials.includes(named)) return;
          report({
            at: record.at(['topics', topic, 'figures', i]),
            subject: record.id,
            problem: `${address} is a figure of ${named}, which is not among the materials of this record`,
            got: record.data.materials.join(', '),
            advice: 'Show it with its own material, or correct materials.',
          });
        });
      }
    }
  },
};
