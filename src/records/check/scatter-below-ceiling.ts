import { scatterOf } from '../numbers.ts';
import type { Rule } from './rule.ts';

export const scatterBelowCeiling: Rule = {
  name: 'scatter-below-ceiling',
  description: 'No series that feeds a factor or its class scatters more than the ceiling of that class.',
  check(report, { factors, classes, cells }) {
    for (const record of factors.values()) {
      const ceiling = classes.get(record.data.class)?.data.ceiling.cv;
      record.data.from.forEach((address, i) => {
        look(record.id, record.data.class, ceiling, address, () => record.at(['from', i]));
      });
    }
    for (const record of classes.values()) {
      const { cv, ceiling } = record.data;
      if ('from' in cv)
        cv.from.forEach((address, i) => {
          look(`class/${record.id}`, record.id, ceiling.cv, address, () => record.at(['cv', 'from', i]));
        });
    }

    function look(
      subject: string,
      name: string,
      ceiling: number | undefined,
      address: string,
      at: () => Parameters<typeof report>[0]['at'],
    ) {
      const scatter = scatterOf(cells.get(address)?.figure.value);
      if (!scatter || ceiling === undefined || scatter.cv <= ceiling) return;
      report({
        at: at(),
        subject,
        problem: `${address} varies more than the class ${name} allows (ceiling ${ceiling})`,
        got: `cv ${scatter.cv.toFixed(3)}, n ${scatter.n}`,
        advice: 'Look at the class again: raise its ceiling with the reason, or leave the figure out with one.',
      });
    }
  },
};
