/** Units of records: which are forces, and what a value in each may be at all. */
import type { Unit } from './schema.ts';

export const FORCE_UNITS: ReadonlySet<Unit> = new Set<Unit>(['kN', 'N', 'daN', 'kgf', 'lbf']);

/**
 * Ends of what is possible on a climbing device, its sling and what pulls on
 * them. Wide on purpose: a value outside is a slip of the unit or of a digit.
 */
export const POSSIBLE: Readonly<Record<Unit, readonly [number, number]>> = {
  kN: [0, 500],
  N: [0, 500_000],
  daN: [0, 50_000],
  kgf: [0, 50_000],
  lbf: [0, 112_000],
  percent: [0, 500],
  ratio: [0, 20],
  mm: [0, 5000],
  cm: [0, 1000],
  m: [0, 10_000],
  kg: [0, 10_000],
  g: [0, 10_000],
  years: [0, 60],
  months: [0, 720],
  weeks: [0, 520],
  days: [0, 3650],
  celsius: [-80, 1000],
  count: [0, 1_000_000],
  'mm per cycle': [0, 1000],
  cycles: [0, 10_000_000],
  J: [0, 1_000_000],
  // Not strength alone: the stiffest fibres reach some hundreds.
  'N/tex': [0, 500],
  'g/cm3': [0, 25],
  degrees: [0, 360],
};

/** A share of the same piece's own strength: more than this is a denominator mixed up. */
export const SHARE_OF_ITSELF = { percent: 130, ratio: 1.3 } as const;
