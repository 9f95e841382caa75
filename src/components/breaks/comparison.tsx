/** One series beside another: how many times as strong, by which test, and in how many pairs. */
import type { SeriesCompared } from '../../break-tests/compare-series.ts';
import { chance, percent, percents, three } from './words.ts';

interface Props {
  readonly compared: SeriesCompared;
  /** What each is called in a sentence: "the knotted sling". */
  readonly names: readonly [string, string];
  /** Sign of the common unit. */
  readonly unit: string;
  /** Numbers of the reader, or invented. */
  readonly isOwn: boolean;
}

const ratioWords = (ratio: number, low: number, high: number): string => `${three(ratio)} (${three(low)} to ${three(high)})`;

const capital = (words: string): string => words.replace(/^./, (letter) => letter.toUpperCase());

/** The finding: what the interval of the ratio allows to say. */
export function comparedSentence({ means, chance: pairs, noMeans }: SeriesCompared, [a, b]: readonly [string, string]): string {
  const upper = capital(a);
  if (!means) return `${upper} broke above ${b} in ${percent(pairs.chance)} of pairs. ${noMeans === 'one-pull' ? 'With one pull in a series' : 'With no scatter in either'}, no ratio has an interval.`;
  const { ratio, interval } = means.geometric;
  if (interval.low > 1) return `${upper} broke at ${three(ratio)} times the force of ${b}.`;
  if (interval.high < 1) return `${upper} broke at ${percent(ratio)} of the force of ${b}.`;
  return `These pulls do not tell ${a} and ${b} apart. The ratio of ${three(ratio)} could be chance.`;
}

export function SeriesComparison({ compared, names, unit, isOwn }: Props) {
  const mark = isOwn ? { 'data-input': true } : {};
  const { means, rank, chance: pairs, n, atLeast, level } = compared;
  const rows: [string, string, string][] = [];
  if (means) {
    const { geometric, arithmetic, welch } = means;
    rows.push(
      ['Ratio of the middles', ratioWords(geometric.ratio, geometric.interval.low, geometric.interval.high), 'for lognormal pulls; scatter may differ'],
      ['Ratio of the means', arithmetic ? ratioWords(arithmetic.ratio, arithmetic.interval.low, arithmetic.interval.high) : 'the second mean is too uncertain to divide by', 'Fieller'],
      ['Difference of the means', `${three(welch.difference)} (${three(welch.interval.low)} to ${three(welch.interval.high)}) ${unit}, ${chance(welch.p)}`, 'Welch'],
    );
  }
  const rankP = rank.exact?.twoSided ?? rank.approximate?.twoSided;
  rows.push(
    ['Rank test', rankP === undefined ? 'all pulls are equal' : `${chance(rankP)}; so many pulls can give ${chance(rank.smallestP)} at best`, 'takes no distribution for granted'],
    ['One pull against one', `${percent(pairs.chance)} of pairs (${percents(pairs.interval)})`, 'chance that the first breaks above the second'],
  );
  return (
    <>
      <p><b {...mark}>{comparedSentence(compared, names)}</b></p>
      <table class="stack numbers">
        <caption {...mark}>{capital(names[0])} ({n[0]} pulls) against {names[1]} ({n[1]} pulls), intervals of {percent(level)}</caption>
        <thead><tr><th scope="col">Asked</th><th scope="col">Answer</th><th scope="col">How</th></tr></thead>
        <tbody>{rows.map(([asked, answer, how]) => <tr key={asked}><th scope="row">{asked}</th><td {...mark}>{answer}</td><td>{how}</td></tr>)}</tbody>
      </table>
      {atLeast[0] + atLeast[1] > 0 && <p>Pulls that did not break the part count at the force that they came to: this can only lower their series.</p>}
    </>
  );
}
