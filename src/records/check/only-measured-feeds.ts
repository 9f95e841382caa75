import { namedIn } from '../compared.ts';
import type { ResolvedFigure } from '../read.ts';
import { shown } from '../fault.ts';
import { FORCE_UNITS } from '../units.ts';
import type { Rule } from './rule.ts';

export const onlyMeasuredFeeds: Rule = {
  name: 'only-measured-feeds',
  description:
    'Only measured values with their pulls feed a factor or a class: no bare number, no bound alone, no teaching range, no interval, no statement, no requirement, no rule, nothing invented; a floor is one required force.',
  check(report, { factors, classes, slings, cells }) {
    const feeds = (subject: string, address: string, at: () => Parameters<typeof report>[0]['at']) => {
      const figure = cells.get(address)?.figure;
      const problem = figure && whyNot(figure);
      if (problem)
        report({
          at: at(),
          subject,
          problem: `${address} ${problem[0]}`,
          got: problem[1],
          advice: problem[2] ?? 'Move it to leftOut with the reason; it may be shown, never fed.',
        });
    };
    for (const record of factors.values()) {
      record.data.from.forEach((address, i) => {
        feeds(record.id, address, () => record.at(['from', i]));
      });
    }
    for (const record of classes.values()) {
      const { cv, tau } = record.data;
      if ('from' in cv)
        cv.from.forEach((address, i) => {
          feeds(`class/${record.id}`, address, () => record.at(['cv', 'from', i]));
        });
      if ('groups' in tau)
        tau.groups.forEach((group, g) => {
          for (const { address, path } of namedIn(group)) feeds(`class/${record.id}`, address, () => record.at(['tau', 'groups', g, ...path]));
        });
    }
    for (const record of [...factors.values(), ...slings.values()]) {
      const figure = record.data.floor === undefined ? undefined : cells.get(record.data.floor)?.figure;
      if (figure && figure.kind !== 'required') {
        report({
          at: record.at(['floor']),
          subject: record.id,
          problem: `the floor ${figure.id} is no requirement`,
          got: figure.kind,
          advice: 'Name a figure of the kind required.',
        });
      } else if (figure?.value !== undefined && (typeof figure.value !== 'number' || !FORCE_UNITS.has(figure.unit ?? 'count'))) {
        report({
          at: record.at(['floor']),
          subject: record.id,
          problem: `the floor ${figure.id} is no single force`,
          got: `${shown(figure.value)} ${figure.unit ?? 'without unit'}`,
          advice: 'Write the required force as one number in a unit of force.',
        });
      }
    }
  },
};

/** Why a figure may not feed the model, with what it is and, where it is not the usual one, the advice; nothing when it may. */
export function whyNot(figure: ResolvedFigure): [problem: string, got: string, advice?: string] | undefined {
  const { value, kind, standing } = figure;
  if (standing === 'invented') return ['is invented', standing];
  if (kind !== 'measured') return ['was not measured', kind];
  if (value === undefined) return ['has no value', 'nothing'];
  if (typeof value === 'number')
    return ['is one number that says nothing of its pulls', String(value), 'Write tests, or a mean with its n, as the source has it; or move it to leftOut with the reason.'];
  if ('atMost' in value) return ['is a maximum', 'atMost'];
  if ('statement' in value) return ['is a statement', 'statement'];
  if ('low' in value && (value.kind === 'teaching' || value.kind === "author's interval"))
    return ['is a range of the wrong kind', value.kind];
  if ('atLeast' in value)
    return ['is a lower limit alone', 'atLeast', 'A bound feeds only beside breaks of the same series: write tests and censored.'];
  return undefined;
}
