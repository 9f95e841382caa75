import { namedIn } from '../compared.ts';
import { pullsOf } from '../numbers.ts';
import type { Rule } from './rule.ts';

/** Fewer pulls than this lower the certainty of what is used. */
const ENOUGH = 10;

export const fewPullsLower: Rule = {
  name: 'few-pulls-lower',
  description:
    'A measured figure that a factor or a class uses and that rests on fewer than ten pulls, or does not say on how many, is lowered by few.',
  check(report, { factors, classes, cells }) {
    const used = new Set<string>();
    for (const { data } of factors.values()) for (const address of data.from) used.add(address);
    for (const { data } of classes.values()) {
      if ('from' in data.cv) for (const address of data.cv.from) used.add(address);
      if ('groups' in data.tau) for (const { address } of namedIn(data.tau.groups.flat())) used.add(address);
    }
    for (const address of used) {
      const placed = cells.get(address);
      if (placed?.figure.kind !== 'measured' || placed.figure.standing === 'invented') continue;
      const n = pullsOf(placed.figure.value);
      if (n !== undefined && n >= ENOUGH) continue;
      const { figure, record, cell } = placed;
      if (figure.lowered.some((step) => step.by === 'few')) continue;
      if (record.spoilt(['lowered']) || (cell !== undefined && record.spoilt(['cells', cell, 'lowered']))) continue;
      report({
        at: placed.at('value'),
        subject: address,
        problem: 'is used and rests on few pulls, and is not lowered for it',
        got: n === undefined ? 'no n' : `n ${n}`,
        advice: 'Add a step to lowered: { by: few, why: how many pulls }.',
      });
    }
  },
};
