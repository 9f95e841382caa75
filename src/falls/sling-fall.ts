/**
 * A fall onto a sling that is clipped to the belay, without a rope. The same equation holds with the sling's own stiffness.
 * No test that we found gives that stiffness in a fall; the yarn's gives a ceiling, since weave, stitches and the body only
 * make it softer.
 */
import { assertPositive } from './checks.ts';
import { peakForce } from './fall.ts';

/** A fibre as its yarn: pull per unit of stretch, and strength, both per weight of a length. */
export interface Yarn { modulusNPerTex: number; strengthNPerTex: number }

/**
 * Stiffest that a sling of this yarn can be, kN per unit of stretch: a loop with just enough yarn for its breaking force
 * is as much stiffer than strong as its yarn is.
 * @param breakingKn breaking force of the loop
 */
export function slingModulusCeiling(breakingKn: number, { modulusNPerTex, strengthNPerTex }: Yarn): number {
  assertPositive(breakingKn, 'breakingKn');
  assertPositive(modulusNPerTex, 'modulusNPerTex');
  assertPositive(strengthNPerTex, 'strengthNPerTex');
  return (breakingKn * modulusNPerTex) / strengthNPerTex;
}

/** Stiffness, kN per unit of stretch, that a measured peak force stands for: the equation of a fall turned round. */
export function slingModulusFromPeak(peakKn: number, weightKn: number, factor: number): number {
  assertPositive(weightKn, 'weightKn');
  assertPositive(factor, 'factor');
  if (!(peakKn > 2 * weightKn)) throw new RangeError(`peakKn must be above twice the weight, ${2 * weightKn} (got ${peakKn}).`);
  return (peakKn * (peakKn - 2 * weightKn)) / (2 * weightKn * factor);
}

export interface SlingFall {
  /** By the equation, as if nothing broke. */
  peakKn: number;
  /** True where that is above what the sling breaks at: then something breaks, or gives, first. */
  isBeyondBreaking: boolean;
  /** Fall over length of the sling. */
  factor: number;
}

/**
 * A static fall onto a sling.
 * @param fallM free fall before the sling comes tight; at most twice its length
 * @throws RangeError when a part is out of range
 */
export function slingFall(fall: { weightKn: number; modulusKn: number; fallM: number; slingM: number; breakingKn: number }): SlingFall {
  const { weightKn, modulusKn, fallM, slingM, breakingKn } = fall;
  assertPositive(slingM, 'slingM');
  assertPositive(breakingKn, 'breakingKn');
  if (fallM > 2 * slingM) throw new RangeError(`fallM must be at most twice the sling, ${2 * slingM} (got ${fallM}).`);
  const peakKn = peakForce({ weightKn, modulusKn, fallM, ropeM: slingM });
  return { peakKn, isBeyondBreaking: peakKn > breakingKn, factor: fallM / slingM };
}
