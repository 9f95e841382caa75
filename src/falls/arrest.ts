/**
 * A fall that is stopped by a rope over connectors, held fast at the belay or slipping there. Held fast, it is the equation
 * of fall.ts on the effective length of the rope. A belay that slips at a known pull sets a ceiling: the rope runs at that
 * pull until the climber hangs. Forces in kN, lengths in metres.
 */
import { assertPositive } from './checks.ts';
import { balanceOf, type EnergyBalance, peakForce } from './fall.ts';
import { type Route, type SolvedRoute, solveRoute } from './friction.ts';

export interface Arrest {
  weightKn: number;
  modulusKn: number;
  /** Fall before the rope comes tight. */
  fallM: number;
  route: Route;
  /** Pull at the belayer's end at which rope runs through; absent: held fast. */
  slipKn?: number | undefined;
}

export interface Arrested {
  climberKn: number;
  /** Pull in each segment of the route, the climber's first. */
  pullsKn: readonly number[];
  belayerKn: number;
  /** Load on each connector, the top piece first; none where the rope runs over none. */
  connectorsKn: readonly number[];
  /** By how much the rope stretched at the climber, and how much ran through the belay. */
  stretchM: number;
  slipM: number;
  /** Rope that took part, as if all of it carried the climber's pull. */
  effectiveM: number;
  energy: EnergyBalance;
}

/** Largest pull at the climber that a slipping belay lets through, or Infinity. */
export function ceilingKn(solved: SolvedRoute, slipKn: number | undefined): number {
  if (slipKn === undefined) return Infinity;
  assertPositive(slipKn, 'slipKn');
  return slipKn / (solved.pulls.at(-1) as number);
}

/**
 * Stops a fall.
 * @throws RangeError when a part is out of range, or the belay slips at so little that it never stops the climber
 */
export function arrest({ weightKn, modulusKn, fallM, route, slipKn }: Arrest): Arrested {
  const solved = solveRoute(route);
  const { pulls, loads, effectiveM } = solved;
  const held = peakForce({ weightKn, modulusKn, fallM, ropeM: effectiveM });
  const ceiling = ceilingKn(solved, slipKn);
  const climberKn = Math.min(held, ceiling);
  if (!(climberKn > weightKn)) throw new RangeError(`slipKn must stop the climber: the rope runs at ${climberKn} kN, and the weight is ${weightKn} kN.`);
  const stretchM = (climberKn * effectiveM) / modulusKn;
  const slipM = climberKn < held ? (weightKn * (fallM + stretchM) - 0.5 * climberKn * stretchM) / (climberKn - weightKn) : 0;
  return {
    climberKn,
    pullsKn: pulls.map((pull) => pull * climberKn),
    belayerKn: (pulls.at(-1) as number) * climberKn,
    connectorsKn: loads.map((load) => load * climberKn),
    stretchM,
    slipM,
    effectiveM,
    energy: energyOf(solved, route, climberKn, { weightKn, modulusKn, fallM, stretchM, slipM }),
  };
}

/** The balance, each part from its own segment or connector: the rope that went over a turn times the pull that was lost there. */
function energyOf(
  { pulls }: SolvedRoute,
  { segmentsM }: Route,
  climberKn: number,
  { weightKn, modulusKn, fallM, stretchM, slipM }: { weightKn: number; modulusKn: number; fallM: number; stretchM: number; slipM: number },
): EnergyBalance {
  let stored = 0;
  let friction = 0;
  /** Stretch of all rope behind the turn at hand. */
  let behindM = 0;
  for (let i = segmentsM.length - 1; i >= 0; i--) {
    const pull = (pulls[i] as number) * climberKn;
    const segmentStretchM = ((segmentsM[i] as number) * pull) / modulusKn;
    stored += 0.5 * pull * segmentStretchM;
    behindM += segmentStretchM;
    // While the rope stretches the pull grows from 0; while it slips it is all there.
    if (i > 0) friction += ((pulls[i - 1] as number) * climberKn - pull) * (0.5 * behindM + slipM);
  }
  const belayer = (pulls.at(-1) as number) * climberKn;
  return balanceOf(weightKn * (fallM + stretchM + slipM), stored, friction, belayer * slipM);
}
