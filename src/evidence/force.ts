/** Exact conversions of printed units to the ones that the model computes in: kN for forces, shares of one for ratios. */
import type { Unit } from '../records/schema.ts';

/**
 * How many of the model's unit one printed unit is. Forces by definition: 1 lbf = 0.45359237 kg x 9.80665 m/s^2,
 * 1 kgf = 9.80665 N (NIST SP 811, appendix B).
 */
const MODEL_UNITS: Partial<Record<Unit, number>> = {
  kN: 1, N: 1e-3, daN: 1e-2, kgf: 9.80665e-3, lbf: 4.4482216152605e-3, ratio: 1, percent: 1e-2,
};

/** Factor from the printed unit to kN or to a share of one; null where the unit is neither a force nor a ratio. */
export function toModelUnit(unit: Unit | undefined): number | null {
  return (unit && MODEL_UNITS[unit]) ?? null;
}
