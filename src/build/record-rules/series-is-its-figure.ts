/** A rule of the record check that needs an engine: a published series is its figure, pull by pull. */
import type { Rule } from '../../records/check/rule.ts';
import { pullsFileOf } from '../../records/read.ts';
import { readPulls } from '../series/pulls.ts';

/** What of the first list the second does not have, by its force, each as often as it is missing. */
function missingIn<T>(wanted: readonly T[], found: readonly number[], forceOf: (one: T) => number): T[] {
  const left = [...found];
  return wanted.filter((one) => {
    const at = left.indexOf(forceOf(one));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

export const seriesIsItsFigure: Rule = {
  name: 'series-is-its-figure',
  description: 'The pulls of a series that names a figure are its single breaks and its lower limits, in its unit, no more and no fewer.',
  check(report, { series, cells, files }) {
    const known = new Map<string, string>();
    for (const record of series.values()) {
      const { data, id } = record;
      if (!('figure' in data)) continue;
      const at = record.at(['figure']);
      const first = known.get(data.figure);
      if (first !== undefined) report({ at, subject: id, problem: 'has the figure of another series', got: data.figure, advice: `Keep ${first}, and remove this one.` });
      known.set(data.figure, id);
      const figure = cells.get(data.figure)?.figure;
      if (!figure) continue;
      const { value, unit } = figure;
      if (typeof value !== 'object' || !('tests' in value)) {
        report({ at, subject: id, problem: 'names a figure without single breaks', got: data.figure, advice: 'Name a figure whose value is { tests: [...] }.' });
        continue;
      }
      const file = pullsFileOf(record);
      const reading = readPulls(files[file] ?? '');
      if (!('series' in reading)) continue;
      const { pulls, places, unit: own } = reading.series;
      if (own !== unit) {
        report({ at: { file, line: 1, col: 1 }, subject: id, problem: 'has another unit than its figure', got: own, advice: `Write force_${unit} and the forces as printed.` });
        continue;
      }
      for (const [kind, wanted, isLimit] of [['break', value.tests, false], ['lower limit', value.censored ?? [], true]] as const) {
        const found = pulls.map((pull, i) => ({ ...pull, place: places[i] as (typeof places)[number] })).filter(({ atLeast }) => atLeast === isLimit);
        const lost = missingIn(wanted, found.map(({ force }) => force), (force) => force);
        if (lost.length > 0) report({ at: { file, line: 1, col: 1 }, subject: id, problem: `lacks a ${kind} of its figure`, got: `no ${lost.join(', no ')}`, advice: `Add a row for each, or correct ${data.figure}.` });
        for (const { force, place } of missingIn(found, wanted, (pull) => pull.force))
          report({ at: { file, ...place }, subject: id, problem: `is a ${kind} that its figure does not have`, got: String(force), advice: `Look it up in the source; correct the row or ${data.figure}.` });
      }
    }
  },
};
