/** A rule of the record check that needs an engine: the pulls of a series are read as a pasted table is. */
import type { Rule } from '../../records/check/rule.ts';
import { pullsFileOf } from '../../records/read.ts';
import { readPulls } from '../series/pulls.ts';

export const seriesCanBeRead: Rule = {
  name: 'series-can-be-read',
  description: 'The pulls of a series are a table with a heading, a number and a force in each row, and words where they are known.',
  check(report, { series, files }) {
    for (const record of series.values()) {
      const file = pullsFileOf(record);
      const csv = files[file];
      if (csv === undefined) continue;
      const reading = readPulls(csv);
      if ('series' in reading) continue;
      for (const { line, col, problem, got, advice } of reading.faults) report({ at: { file, line, col }, subject: record.id, problem, got, advice });
    }
  },
};
