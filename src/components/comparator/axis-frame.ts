/** What the drawings of one comparison read: its axis in the unit shown, its lines, the words around it. */
import type { Comparison, Evidence } from '../../strength/types.ts';
import { type ForceUnit, NEWTONS_PER } from '../../strength/wording.ts';
import type { Frame, Setup } from './setup.ts';

/** The frame of a comparison without the pairs and the stage of its rows. */
export function axisFrame({ base, ticks, upper }: Setup, evidence: Evidence, { rig }: Comparison, unit: ForceUnit): Frame {
  return {
    evidence, base, upper, unit, ratingKn: rig.ratingKn, demandKn: rig.demandKn, lengthCm: rig.lengthCm, pairsOf: () => [], stage: 'drawn',
    ticks: { [unit]: ticks[unit].map((value) => ({ kn: (value * NEWTONS_PER[unit]) / 1000, text: String(value) })) } as Frame['ticks'],
  };
}
