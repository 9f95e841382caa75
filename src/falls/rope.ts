/**
 * A rope's modulus from the impact force that its sheet prints. That force is the largest one in the standard drop; the
 * equation of fall.ts, turned round, gives the modulus: K = F (F - 2 W) / (2 W f).
 */
import { assertNotNegative, assertPositive, assertShare } from './checks.ts';
import { peakAtFactor } from './fall.ts';

/**
 * How the mass falls in the standard drop. Two geometries are in circulation: 4.8 m on 2.8 m of rope, a fall factor of
 * 1.71, and 4.6 m on 2.6 m, of 1.77. Both lift the mass 2.3 m above the edge and fix the rope 0.3 m behind it; the second
 * leaves no rope hanging beside the mass.
 */
export interface DropGeometry {
  /** Height of the mass over the edge that the rope runs over. */
  raisedM: number;
  /** All the rope, from the mass to where it is fixed. */
  ropeM: number;
  /** The part of it behind the edge. */
  behindM: number;
}

/** The standard drop of one kind of rope. */
export interface StandardDrop extends DropGeometry { weightKn: number }

function assertGeometry({ raisedM, ropeM, behindM }: DropGeometry): void {
  assertPositive(raisedM, 'raisedM');
  assertNotNegative(behindM, 'behindM');
  if (!(ropeM < Infinity && ropeM - behindM >= raisedM * (1 - 1e-12))) {
    throw new RangeError(`ropeM must reach from the mass to the edge and behind it (got ${ropeM}).`);
  }
}

/** Free fall of the mass until the rope comes tight. @throws RangeError when the rope does not reach the mass */
export function standardFallM(geometry: DropGeometry): number {
  assertGeometry(geometry);
  return geometry.raisedM + geometry.ropeM - geometry.behindM;
}

/** Fall factor as it is printed: the fall over all the rope, friction at the edge left out. */
export function standardFallFactor(geometry: DropGeometry): number {
  return standardFallM(geometry) / geometry.ropeM;
}

/**
 * Fall factor over the rope that takes part, where the rope behind the edge carries only a share of the pull.
 * @param tensionRatio pull behind the edge over pull before it; 1 without friction
 */
function effectiveFactor(geometry: DropGeometry, tensionRatio: number): number {
  assertShare(tensionRatio, 'tensionRatio');
  return standardFallM(geometry) / (geometry.ropeM - geometry.behindM + tensionRatio * geometry.behindM);
}

/**
 * Modulus of a rope, kN, from its rated impact force.
 * @param ratedKn impact force of the first standard drop
 * @param tensionRatio what the edge leaves of the pull; 1, as all published inversions take it, where nothing is said
 * @throws RangeError when the rated force is not above twice the weight: no rope pulls less
 */
export function modulusFromRated(ratedKn: number, drop: StandardDrop, tensionRatio = 1): number {
  assertPositive(ratedKn, 'ratedKn');
  assertPositive(drop.weightKn, 'weightKn');
  if (!(ratedKn > 2 * drop.weightKn)) throw new RangeError(`ratedKn must be above twice the weight, ${2 * drop.weightKn} (got ${ratedKn}).`);
  return (ratedKn * (ratedKn - 2 * drop.weightKn)) / (2 * drop.weightKn * effectiveFactor(drop, tensionRatio));
}

/** The impact force that the standard drop of a rope of this modulus gives: `modulusFromRated` the other way. */
export function ratedFromModulus(modulusKn: number, drop: StandardDrop, tensionRatio = 1): number {
  return peakAtFactor(drop.weightKn, modulusKn, effectiveFactor(drop, tensionRatio));
}

/** Load on the edge of the standard drop: the pulls before and behind it together. */
export function standardTopLoad(ratedKn: number, tensionRatio: number): number {
  assertPositive(ratedKn, 'ratedKn');
  assertShare(tensionRatio, 'tensionRatio');
  return ratedKn * (1 + tensionRatio);
}
