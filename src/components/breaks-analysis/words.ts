/** Words of the analysis: what was read, what a record says of itself, and the finding in one sentence. */
import { type Analysis, isNone } from '../../break-tests/analysis.ts';
import type { FurtherBound } from '../../break-tests/further-pulls.ts';
import type { ForceUnit, LeftOutRow } from '../../break-tests/table-pulls.ts';
import type { TraceFlag } from '../../break-tests/trace.ts';
import { forcePrinter, percent } from '../breaks/words.ts';

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** What a record's flag says, and what to do about it. */
export const FLAG_WORDS: Readonly<Record<TraceFlag, string>> = {
  'no-rest': 'It does not rest unloaded at its start, so no offset was taken off.',
  'large-offset': 'Its offset is more than a hundredth of the peak. Was the cell set to nothing?',
  saturated: 'Its top is cut off. The force was at least the peak.',
  dropouts: 'The force is gone for moments and is back.',
  'lone-peak': 'The peak is one sample alone. Look whether it is a spike.',
  missing: 'Samples are missing.',
  'time-disorder': 'Time stands still or runs back in places; those samples are left out.',
  gaps: 'There are gaps in time.',
  'gap-at-peak': 'Something is missing at the peak. The true peak may be higher.',
  'no-break': 'The force does not fall off at the end, so nothing is seen to break.',
  'early-drop': 'The force fell and came back before the peak: something slipped or broke early.',
};
/** Flags after which the peak is a lower limit unless the reader says otherwise. */
export const LIMIT_FLAGS: readonly TraceFlag[] = ['saturated', 'no-break', 'gap-at-peak'];

/** "Read: 5 forces in kN." with what was left out. */
export function readWords(count: number, limits: number, unit: ForceUnit, isStated: boolean, leftOut: readonly LeftOutRow[]): string {
  const without = leftOut.filter(({ why }) => why === 'no-force').map(({ line }) => line);
  const below = leftOut.filter(({ why }) => why === 'not-positive').map(({ line }) => line);
  const rows = (lines: readonly number[]): string => `${lines.length === 1 ? 'row' : 'rows'} ${lines.slice(0, 8).join(', ')}${lines.length > 8 ? ` and ${lines.length - 8} more` : ''}`;
  return [
    `Read: ${counted(count, 'force')} in ${unit}, ${isStated ? 'as the table says' : 'as chosen above'}${limits > 0 ? `; ${limits} of them ${limits === 1 ? 'is a lower limit' : 'are lower limits'}` : ''}.`,
    without.length > 0 ? `No force in ${rows(without)}: left out.` : '',
    below.length > 0 ? `No force above nothing in ${rows(below)}: left out.` : '',
  ].filter((text) => text !== '').join(' ');
}

/** The finding, in a sentence or two: what nineteen in twenty break above, or why nobody can say. */
export function findingWords(analysis: Analysis, unit: string): string {
  const { pulls, summary } = analysis;
  const print = forcePrinter(summary, unit);
  const pair = analysis.bounds.find(({ pair: { coverage, confidence } }) => coverage === 0.95 && confidence === 0.95);
  const begin = `With ${counted(pulls, 'pull')}:`;
  if (!pair || isNone(pair.lognormal)) return `${begin} ${pulls === 1 ? `it came apart at ${print.force(summary.mean)}` : `all came apart at ${print.force(summary.mean)}`}. Nothing can be said of the next.`;
  return `${begin} about 19 in 20 such rigs break above ${print.force(pair.lognormal.bound)} (${percent(pair.pair.confidence)} sure). Their mean is ${print.force(summary.mean)}.`;
}

/** What more pulls would buy, in one sentence. */
export function furtherWords(analysis: Analysis, further: readonly FurtherBound[], unit: string): string {
  const print = forcePrinter(analysis.summary, unit);
  const n = analysis.pulls;
  return `If further pulls kept mean and scatter as they are, that bound would rise: ${further.map((one) => `with ${one.n - n} more to ${print.force(one.bound)}`).join(', ')}. Only the doubt shrinks, not the scatter.`;
}
