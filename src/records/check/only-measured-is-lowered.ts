import type { Rule } from './rule.ts';

export const onlyMeasuredIsLowered: Rule = {
  name: 'only-measured-is-lowered',
  description: 'Only what is measured has a certainty, so only it may be lowered.',
  check(report, { figures }) {
    for (const record of figures.values()) {
      const { data } = record;
      if (data.kind === 'measured') continue;
      const paths: (string | number)[][] = data.lowered ? [['lowered']] : [];
      if ('cells' in data)
        for (const [name, cell] of Object.entries(data.cells)) if (cell.lowered) paths.push(['cells', name, 'lowered']);
      for (const path of paths)
        report({
          at: record.keyAt(path),
          subject: record.id,
          problem: 'is lowered but was not measured',
          got: data.kind,
          advice: 'Remove lowered; say what is doubtful in note.',
        });
    }
  },
};
