/** A rule of the record check that needs an engine: how much a series scatters is worked out where the model does it. */
import { observe } from '../../evidence/observation.ts';
import type { Rule } from '../../records/check/rule.ts';
import { statesScatter } from '../../records/numbers.ts';

export const scatterBelowCeiling: Rule = {
  name: 'scatter-below-ceiling',
  description: 'No series that feeds a factor or its class scatters more than the ceiling of that class.',
  check(report, { factors, classes, cells }) {
    for (const record of factors.values()) {
      const ceiling = classes.get(record.data.class)?.data.ceiling.cv;
      for (const [i, address] of record.data.from.entries()) {
        look(record.id, record.data.class, ceiling, address, () => record.at(['from', i]));
      }
    }
    for (const record of classes.values()) {
      const { cv, ceiling } = record.data;
      if (!('from' in cv)) continue;
      for (const [i, address] of cv.from.entries()) {
        look(`class/${record.id}`, record.id, ceiling.cv, address, () => record.at(['cv', 'from', i]));
      }
    }

    function look(subject: string, name: string, ceiling: number | undefined, address: string, at: () => Parameters<typeof report>[0]['at']) {
      const figure = cells.get(address)?.figure;
      if (!figure || ceiling === undefined || !statesScatter(figure.value)) return;
      const seen = observe(figure);
      if (!seen || seen.cv === null || seen.cv <= ceiling) return;
      report({
        at: at(),
        subject,
        problem: `${address} varies more than the class ${name} allows (ceiling ${ceiling})`,
        got: `cv ${seen.cv.toFixed(3)}, n ${seen.n}`,
        advice: 'Look at the class again: raise its ceiling with the reason, or leave the figure out with one.',
      });
    }
  },
};
