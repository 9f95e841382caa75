/** What a figure's value states: its middle, its pulls, whether it has a scatter. The scatter itself is worked out with the evidence. */
import type { Value } from './schema.ts';

/** The one number a value stands for: exact, or a mean. Null for ranges, limits and words. */
export function middleOf(value: Value | undefined): number | null {
  if (typeof value === 'number') return value;
  if (value === undefined) return null;
  if ('tests' in value) return value.tests.reduce((a, b) => a + b, 0) / value.tests.length;
  if ('mean' in value) return value.mean;
  return null;
}

/** Pulls behind a value, as far as it says; undefined where it does not. Pulls in which something else gave way do not count. */
export function pullsOf(value: Value | undefined): number | undefined {
  if (value === undefined || typeof value === 'number' || 'statement' in value) return undefined;
  return 'tests' in value ? value.tests.length : value.n;
}

/** True where a value states how its pulls scatter: two raw tests or more, a mean with sd or cv and n, the extremes of n. */
export function statesScatter(value: Value | undefined): boolean {
  if (value === undefined || typeof value === 'number' || (pullsOf(value) ?? 0) < 2) return false;
  if ('tests' in value) return true;
  if ('mean' in value) return value.sd !== undefined || value.cv !== undefined;
  return 'low' in value && value.kind === 'extremes of n';
}

/** Every number in a value with the path to it inside the value. */
export function numbersOf(value: Value | undefined): { path: (string | number)[]; number: number }[] {
  if (typeof value === 'number') return [{ path: [], number: value }];
  if (value === undefined || 'statement' in value) return [];
  if ('tests' in value)
    return [
      ...value.tests.map((number, i) => ({ path: ['tests', i], number })),
      ...(value.censored ?? []).map((number, i) => ({ path: ['censored', i], number })),
    ];
  if ('mean' in value) return [{ path: ['mean'], number: value.mean }];
  if ('low' in value)
    return [
      { path: ['low'], number: value.low },
      { path: ['high'], number: value.high },
    ];
  if ('atLeast' in value) return [{ path: ['atLeast'], number: value.atLeast }];
  return [{ path: ['atMost'], number: value.atMost }];
}

/** Half a unit of the last digit of a number as printed: how far a recomputed one may lie away. */
export function halfLastDigit(printed: string): number {
  const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}
