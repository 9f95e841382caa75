import { pullsFileOf } from '../read.ts';
import type { Rule } from './rule.ts';

/** Pages below `/breaks/` that are none of a series. */
const TAKEN = ['analyse', 'plan'];

export const seriesHasItsPulls: Rule = {
  name: 'series-has-its-pulls',
  description: 'Beside each record of a series stands the CSV of its pulls under the same name, and no CSV stands alone; each has a page of its own.',
  check(report, { series, present, files }) {
    for (const record of series.values()) {
      const file = pullsFileOf(record);
      if (files[file] === undefined)
        report({
          at: record.at(),
          subject: record.id,
          problem: 'has no pulls beside it',
          advice: `Write ${file} with the heading pull,force_kN,mode,link,note and one row a pull.`,
        });
      if (TAKEN.includes(record.id))
        report({
          at: record.at(),
          subject: record.id,
          problem: 'has the name of another page below /breaks/',
          advice: 'Rename it.',
        });
    }
    for (const file of Object.keys(files)) {
      const demo = /^data\/demo\/series\/([^/]+)\.yaml$/.exec(file)?.[1];
      if (demo !== undefined && files[`data/series/${demo}.yaml`] !== undefined)
        report({
          at: { file, line: 1, col: 1 },
          subject: demo,
          problem: 'has the name of a published series, and both would have one page',
          advice: 'Rename the invented one.',
        });
      const id = /^data\/(?:demo\/)?series\/([^/]+)\.csv$/.exec(file)?.[1];
      if (id === undefined || files[file.replace(/csv$/, 'yaml')] !== undefined || present.series.has(id)) continue;
      report({
        at: { file, line: 1, col: 1 },
        subject: id,
        problem: 'has pulls and no record',
        advice: `Write ${file.replace(/csv$/, 'yaml')}, or remove the file.`,
      });
    }
  },
};
