/**
 * A fall beside a comparison, under `f`: nine in ten of its loads on the top piece lie between two forces in kN, and the query
 * of the page of falls that gives it again. Total: any string gives a fall or the reason why not.
 */
import { readNumber, writeNumber } from './read-number.ts';

export interface FallBeside {
  lowKn: number;
  highKn: number;
  /** Query of the page of falls, without the question mark; empty where the load comes from elsewhere. */
  query: string;
}
export type FallBesideRead = { fall: FallBeside } | { why: string };

const BETWEEN = '~';
const LOAD = { low: 0.1, high: 100, unit: 'kN' };

/** Reads the value of `f`. */
export function parseFallBeside(value: string): FallBesideRead {
  const [low, high = '', ...rest] = value.split(BETWEEN) as [string, ...string[]];
  const [from, to] = [readNumber(low, LOAD), readNumber(high, LOAD)];
  if (!from.ok) return { why: `the lower load is ${from.why}` };
  if (!to.ok) return { why: `the upper load is ${to.why}` };
  if (to.value <= from.value) return { why: 'the upper load must lie above the lower one' };
  return { fall: { lowKn: from.value, highKn: to.value, query: rest.join(BETWEEN) } };
}

/** The value of `f`; loads are written to ten newtons. */
export function serialiseFallBeside({ lowKn, highKn, query }: FallBeside): string {
  return [writeNumber(Number(lowKn.toFixed(2))), writeNumber(Number(highKn.toFixed(2))), ...(query === '' ? [] : [query])].join(BETWEEN);
}
