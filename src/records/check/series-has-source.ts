import { isInvented } from '../read.ts';
import type { Rule } from './rule.ts';

export const seriesHasSource: Rule = {
  name: 'series-has-source',
  description: 'A series names its figure, or its source and the place in it; only invented series have neither, and stand in data/demo/series/.',
  check(report, { series }) {
    for (const record of series.values()) {
      const { data, id } = record;
      const invented = isInvented(record);
      if ('figure' in data) {
        if (invented)
          report({
            at: record.at(['figure']),
            subject: id,
            problem: 'stands among the invented series and names a figure',
            got: data.figure,
            advice: `Move it to data/series/${id}.yaml, with its pulls.`,
          });
        continue;
      }
      if ((data.standing === 'invented') !== invented)
        report({
          at: record.at(['standing']),
          subject: id,
          problem: invented ? 'stands among the invented series and has another standing' : 'is invented and stands among published series',
          got: data.standing,
          advice: invented ? `Write standing: invented, or move it to data/series/${id}.yaml.` : `Move it to data/demo/series/${id}.yaml, with its pulls.`,
        });
      for (const field of ['source', 'locator'] as const) {
        const said = data[field] !== undefined || record.spoilt([field]);
        if (invented && data[field] !== undefined)
          report({
            at: record.at([field]),
            subject: id,
            problem: `is invented and has a ${field}`,
            got: data[field],
            advice: 'Remove it: nobody may take an invented number for a published one.',
          });
        if (!invented && data.standing !== 'invented' && !said)
          report({
            at: record.at(['standing']),
            subject: id,
            problem: `has no ${field}`,
            got: data.standing,
            advice: field === 'source' ? 'Add source: the name of a record in data/sources/.' : 'Add locator: page, table or post; write not-recorded when you do not have it.',
          });
      }
    }
  },
};
