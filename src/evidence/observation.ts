/** What one figure says of a mean and a scatter, on the scale of ln. */
import { rangeDivisor } from '../numerics/range-divisor.ts';
import type { Value } from '../records/schema.ts';
import { toModelUnit } from './force.ts';

/** The part of a figure that the pooling needs. */
export interface Reading {
  id: string;
  study: string;
  kind: string;
  standing: string;
  value?: Value | undefined;
  unit?: Parameters<typeof toModelUnit>[0];
}

/** A mean of ln (kN, or a ratio) with what the source says of its scatter. */
export interface Observation {
  figure: string;
  study: string;
  logMean: number;
  /** Pulls behind the mean; null where the source does not say. */
  n: number | null;
  /** Coefficient of variation that the series itself shows, as a share of one; null where it states none. */
  cv: number | null;
  /** ln of each break and of each pull in which something else gave way first; only where there are such pulls. */
  pulls?: { broken: readonly number[]; held: readonly number[] };
}

/** Half the width of a 90 % interval in standard deviations of a normal. */
export const NINETY = 1.6448536269514722;

/**
 * Reads one figure. Null where it may not feed: what is not measured, invented, a statement, a single bare number, a bound
 * alone, a teaching range or an author's interval. Raw breaks give the mean of ln; a mean gives ln of it. Extremes of n give
 * sd = range / d2(n); a range between products is read as holding nine in ten of them.
 */
export function observe(figure: Reading): Observation | null {
  const { value } = figure;
  const scale = toModelUnit(figure.unit);
  if (figure.kind !== 'measured' || figure.standing === 'invented' || value === undefined || scale === null) return null;
  const from = { figure: figure.id, study: figure.study };
  if (typeof value === 'number') return null;
  if ('tests' in value) {
    const { tests } = value;
    const n = tests.length;
    const mean = tests.reduce((sum, x) => sum + x, 0) / n;
    const logMean = tests.reduce((sum, x) => sum + Math.log(x * scale), 0) / n;
    const sd = n > 1 ? Math.sqrt(tests.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1)) : null;
    const seen = { ...from, logMean, n, cv: sd === null ? null : sd / mean };
    if (!value.censored) return seen;
    const logs = (kn: readonly number[]): number[] => kn.map((x) => Math.log(x * scale));
    return { ...seen, pulls: { broken: logs(tests), held: logs(value.censored) } };
  }
  if ('mean' in value) {
    const cv = value.cv ?? (value.sd === undefined ? null : value.sd / value.mean);
    return { ...from, logMean: Math.log(value.mean * scale), n: value.n ?? null, cv };
  }
  if ('low' in value && value.low > 0) {
    const middle = (value.low + value.high) / 2;
    const width = value.high - value.low;
    if (value.kind === 'extremes of n' && value.n) {
      return { ...from, logMean: Math.log(middle * scale), n: value.n, cv: width / rangeDivisor(value.n) / middle };
    }
    if (value.kind === 'between products') {
      return { ...from, logMean: Math.log(middle * scale), n: value.n ?? null, cv: width / (2 * NINETY) / middle };
    }
  }
  return null;
}
