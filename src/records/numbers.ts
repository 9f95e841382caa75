/** Middle and scatter of a figure's value, in its own unit: only what the check needs to compare records. */
import type { Value } from './schema.ts';

/**
 * d2: mean range of n standard normal values, n from 2 to 25, as tabled for
 * control charts in ASTM E2587 and ISO 7870-2.
 */
const D2 = [
  1.128, 1.693, 2.059, 2.326, 2.534, 2.704, 2.847, 2.97, 3.078, 3.173, 3.258, 3.336, 3.407, 3.472, 3.532, 3.588, 3.64,
  3.689, 3.735, 3.778, 3.819, 3.858, 3.895, 3.931,
];

/** The one number a value stands for: exact, or a mean. Null for ranges, limits and words. */
export function middleOf(value: Value | undefined): number | null {
  if (typeof value === 'number') return value;
  if (value === undefined) return null;
  if ('tests' in value) return value.tests.reduce((a, b) => a + b, 0) / value.tests.length;
  if ('mean' in value) return value.mean;
  return null;
}

/** Coefficient of variation as a share of one and the number of pulls behind it; null where the value states no scatter. */
export function scatterOf(value: Value | undefined): { cv: number; n: number } | null {
  if (value === undefined || typeof value === 'number') return null;
  if ('tests' in value) {
    const n = value.tests.length;
    if (n < 2) return null;
    const mean = value.tests.reduce((a, b) => a + b, 0) / n;
    const sd = Math.sqrt(value.tests.reduce((a, b) => a + (b - mean) ** 2, 0) / (n - 1));
    return { cv: sd / mean, n };
  }
  if ('mean' in value) {
    if ((value.n ?? 0) < 2) return null;
    const cv = value.cv ?? (value.sd === undefined ? undefined : value.sd / value.mean);
    return cv === undefined ? null : { cv, n: value.n as number };
  }
  if ('low' in value && value.kind === 'extremes of n' && (value.n ?? 0) >= 2) {
    const d2 = D2[Math.min(value.n as number, 25) - 2] as number;
    return { cv: (value.high - value.low) / d2 / ((value.high + value.low) / 2), n: value.n as number };
  }
  return null;
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
