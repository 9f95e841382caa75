/** Round numbers along the comparator's fixed axis, chosen at build for each unit. */
import { scaleLinear } from 'd3-scale';
import { AXIS_END_KN } from './lane.ts';

/** A tick: where it stands, in kN, and what is written at it. */
export interface Tick { kn: number; text: string }

/**
 * Ticks of a unit on the axis from 0 to `AXIS_END_KN`.
 * @param newtonsPerUnit size of the unit
 */
export function axisTicks(newtonsPerUnit: number): Tick[] {
  if (!(newtonsPerUnit > 0)) throw new RangeError(`axisTicks: newtonsPerUnit must be positive (got ${newtonsPerUnit})`);
  const end = (AXIS_END_KN * 1000) / newtonsPerUnit;
  return scaleLinear().domain([0, end]).ticks(6).map((value) => ({ kn: (value * newtonsPerUnit) / 1000, text: String(value) }));
}
