/**
 * The largest force in a rope that stops a fall, by the linear spring: F = W + sqrt(W^2 + 2 W K H / L), with the weight
 * W, the rope's modulus K, the fall H before the rope comes tight, and the rope L that stretches (A. Wexler, The Theory of
 * Belaying, 1950). Forces in kN, lengths in metres, energy in kJ, masses in kg.
 */
import { assertNotNegative, assertPositive } from './checks.ts';

/** A fall that a spring stops. */
export interface Fall {
  weightKn: number;
  /** Pull per unit of stretch, stretch as a share of the length. */
  modulusKn: number;
  /** Fall before the rope comes tight; 0 for a load that is let go on a tight rope. */
  fallM: number;
  /** The rope that stretches. With friction: its effective length (friction.ts). */
  ropeM: number;
}

/** Weight of a mass, kN. @param gravity newtons per kilogram */
export function weightKn(massKg: number, gravity: number): number {
  assertPositive(massKg, 'massKg');
  assertPositive(gravity, 'gravity');
  return (massKg * gravity) / 1000;
}

/**
 * Largest force at a fall factor: twice the weight at 0, whatever the rope.
 * @throws RangeError when weight or modulus is not positive, or the factor is below 0
 */
export function peakAtFactor(weight: number, modulusKn: number, factor: number): number {
  assertPositive(weight, 'weight');
  assertPositive(modulusKn, 'modulusKn');
  assertNotNegative(factor, 'factor');
  return weight + Math.sqrt(weight * weight + 2 * weight * modulusKn * factor);
}

/** Largest force of a fall, kN. @throws RangeError when a part of the fall is out of range */
export function peakForce({ weightKn: weight, modulusKn, fallM, ropeM }: Fall): number {
  assertPositive(ropeM, 'ropeM');
  assertNotNegative(fallM, 'fallM');
  return peakAtFactor(weight, modulusKn, fallM / ropeM);
}

/** Speed after a free fall, m/s. */
export function freeFallSpeed(fallM: number, gravity: number): number {
  assertNotNegative(fallM, 'fallM');
  assertPositive(gravity, 'gravity');
  return Math.sqrt(2 * gravity * fallM);
}

/** Where the energy of a fall is at its lowest point, kJ. */
export interface EnergyBalance {
  /** Given up by the climber: weight times the way down, stretch and slip with it. */
  potentialKj: number;
  /** Stored in the stretched rope. */
  storedKj: number;
  /** Turned into heat where the rope runs over connectors, and where it slips at the belay. */
  frictionKj: number;
  slipKj: number;
  /** What does not add up, as a share of the energy given up: 0 but for rounding. */
  off: number;
}

/** The balance of a fall whose rope runs over nothing. */
export function energyBalance(fall: Fall): EnergyBalance {
  const peak = peakForce(fall);
  const stretchM = (peak * fall.ropeM) / fall.modulusKn;
  return balanceOf(fall.weightKn * (fall.fallM + stretchM), 0.5 * peak * stretchM, 0, 0);
}

/** Puts the parts of a balance together. */
export function balanceOf(potentialKj: number, storedKj: number, frictionKj: number, slipKj: number): EnergyBalance {
  return { potentialKj, storedKj, frictionKj, slipKj, off: Math.abs(potentialKj - storedKj - frictionKj - slipKj) / potentialKj };
}
