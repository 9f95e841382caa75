/** How the statistics of breaks are printed, and the words for a part that has no result. One wording for build and browser. */
import type { FitFamily, None, Shares } from '../../break-tests/analysis.ts';
import type { Interval } from '../../break-tests/checks.ts';
import type { Pull } from '../../break-tests/pulls.ts';
import type { Summary } from '../../break-tests/summary.ts';

const SPACE = '\u00a0';

/** Prints forces of one series alike. */
export interface ForcePrinter {
  readonly unit: string;
  /** The number alone. */
  bare(force: number): string;
  /** With its unit. */
  force(force: number): string;
  /** Both ends, the unit once; an end that the pulls do not bound in words. */
  interval(interval: Interval): string;
}

/** A number with so many decimals, and a true minus. */
const fixed = (x: number, decimals: number): string => x.toFixed(decimals).replace(/^-(?=0(?:\.0*)?$)/, '').replace('-', '\u2212');

/** Decimals at which a standard deviation has two significant digits; without one, the mean three. No more than two: load cells are not finer. */
function decimalsOf({ spread, mean }: Summary): number {
  const digits = spread ? 1 - Math.floor(Math.log10(spread.sd)) : 2 - Math.floor(Math.log10(mean));
  return Math.min(2, Math.max(0, digits));
}

/** @param unit sign of the unit of the pulls, as it is to be printed */
export function forcePrinter(summary: Summary, unit: string): ForcePrinter {
  const decimals = decimalsOf(summary);
  const bare = (force: number): string => fixed(force, decimals);
  const force = (x: number): string => `${bare(x)}${SPACE}${unit}`;
  return {
    unit,
    bare,
    force,
    interval: ({ low, high }) => (high === Infinity ? `${force(low)} or more` : `${bare(low)} to ${force(high)}`),
  };
}

/** A share of one as a percentage: whole, or with what it takes to tell it from none and from all. */
export function percent(share: number): string {
  const p = 100 * share;
  if (p === 0 || p === 100) return `${p}${SPACE}%`;
  if (p > 99.99) return `over 99.99${SPACE}%`;
  if (p < 0.01) return `under 0.01${SPACE}%`;
  if (p > 99) return `${fixed(p, 2)}${SPACE}%`;
  return `${p < 10 ? fixed(p, p < 1 ? 2 : 1) : fixed(p, 0)}${SPACE}%`;
}

export const percents = ({ low, high }: Interval): string => (high === Infinity ? `${percent(low)} or more` : `${percent(low)} to ${percent(high)}`);

/** A chance of a test, to two digits. */
export const chance = (p: number): string => (p < 0.001 ? 'p below 0.001' : `p = ${Number(p.toPrecision(2))}`);

/** A factor or statistic, to three digits. */
export const three = (x: number): string => fixed(Number(x.toPrecision(3)), Math.max(0, 2 - Math.floor(Math.log10(Math.abs(x) || 1))));

export const FAMILY_NAMES: Readonly<Record<FitFamily, string>> = { normal: 'Normal', lognormal: 'Lognormal', weibull: 'Weibull' };

/** Why a part has no result, as a sentence without a number. */
export function noneWords({ why }: None): string {
  const words: Record<None['why'], string> = {
    'one-pull': 'One pull shows no scatter.',
    'all-equal': 'All pulls ended at one force. The scatter is hidden by rounding, or the machine stopped there.',
    'too-few': 'There are too few pulls for it.',
    censored: 'The test is for series in which every pull broke the part.',
    'no-break': 'It takes two different breaks of the part at least.',
    unnamed: 'It is not recorded for every break.',
    'one-link': 'The same part broke every time, so nothing competes.',
  };
  return words[why];
}

/** The letter of each mode, the most frequent first: A, B, C ... Pulls without a mode have none. */
export function modeLetters(shares: Shares | null): ReadonlyMap<string, string> {
  return new Map((shares?.shares ?? []).map(({ mode }, i) => [mode, i < 26 ? String.fromCharCode(65 + i) : '*']));
}

/** "12 pulls, 1 of them a lower limit". */
export function pullsWords(pulls: readonly Pull[]): string {
  const limits = pulls.filter(({ atLeast }) => atLeast).length;
  const count = pulls.length === 1 ? '1 pull' : `${pulls.length} pulls`;
  return limits === 0 ? count : limits === pulls.length ? `${count}, all lower limits` : `${count}, ${limits} of them lower limits`;
}
