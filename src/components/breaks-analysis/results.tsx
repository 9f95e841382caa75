/** The answer of the analysis: the finding, the drawing with its table, everything in numbers, and a second series beside it. */
import { type Analysis, isNone } from '../../break-tests/analysis.ts';
import type { SeriesCompared } from '../../break-tests/compare-series.ts';
import type { FurtherBound } from '../../break-tests/further-pulls.ts';
import type { Pull } from '../../break-tests/pulls.ts';
import { plainTicks } from '../../charts/plain-ticks.ts';
import { BreaksChart, PullTable, reachOf } from '../breaks/chart.tsx';
import { SeriesComparison } from '../breaks/comparison.tsx';
import { SeriesStatistics } from '../breaks/statistics.tsx';
import { modeLetters } from '../breaks/words.ts';
import { findingWords, furtherWords } from './words.ts';

export interface AnalysisShown {
  readonly pulls: readonly Pull[];
  readonly notes: readonly string[];
  readonly unit: string;
  readonly analysis: Analysis;
  readonly further: readonly FurtherBound[];
  readonly compared: SeriesCompared | null;
  readonly names: readonly [string, string];
}

export function AnalysisResults({ pulls, notes, unit, analysis, further, compared, names }: AnalysisShown) {
  const letters = modeLetters(isNone(analysis.modes) ? null : analysis.modes);
  return (
    <>
      <p class="headline" data-input>{findingWords(analysis, unit)}</p>
      <BreaksChart pulls={pulls} analysis={analysis} unit={unit} ticks={plainTicks(reachOf(pulls, analysis))} isOwn title={findingWords(analysis, unit)} />
      {further.length > 0 && <p data-input>{furtherWords(analysis, further, unit)}</p>}
      <PullTable pulls={pulls} notes={notes} unit={unit} letters={letters} isOwn caption="The pulls, as read" />
      {compared && (
        <>
          <h3 id="compared">Beside the second series</h3>
          <SeriesComparison compared={compared} names={names} unit={unit} isOwn />
        </>
      )}
      <SeriesStatistics analysis={analysis} unit={unit} isOwn heading="h3" />
    </>
  );
}
