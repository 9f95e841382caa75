/** The model held against a measurement: a conference paper's standard drop, where the load on the top piece was measured. */
import type { FallConstants, Spread } from './evidence.ts';
import { pullLeft } from './friction.ts';
import { standardTopLoad } from './rope.ts';

export interface MeasuredDrop {
  ratedKn: number;
  /** Load on the top piece, first drop: as measured, and as the model has it for the range of friction. */
  measuredKn: number;
  modelKn: Spread;
  /** How far the model lies above, as a share of the measured load; below 0 where it lies below. */
  above: Spread;
}

/**
 * Compares the two. The rope was held fast and turned back over the anchor under test, so the climber's side bears the
 * rated force by definition, and friction alone says what the anchor bears.
 */
export function measuredDrop({ measured, friction }: FallConstants): MeasuredDrop {
  const load = (coefficient: number): number => standardTopLoad(measured.ratedKn, pullLeft({ turnDeg: 180, friction: coefficient }));
  const modelKn = { low: load(friction.high), middle: load(friction.middle), high: load(friction.low) };
  const share = (kn: number): number => kn / measured.topPieceKn - 1;
  return { ratedKn: measured.ratedKn, measuredKn: measured.topPieceKn, modelKn, above: { low: share(modelKn.low), middle: share(modelKn.middle), high: share(modelKn.high) } };
}
