/**
 * Friction of a rope that runs over connectors. At each the pull falls by e^(-mu phi) (capstan, Euler and Eytelwein), so
 * the rope behind stretches less, and the climber falls on a shorter rope than is out: its effective length. The pulls at
 * the largest force follow from the climber's; all parts of the rope are one spring of the same modulus.
 */
import { assertNotNegative } from './checks.ts';

/** A place where the rope turns. */
export interface Turn {
  /** By how much the rope turns there; 180 over a top piece with both strands hanging down, 0 where it runs straight. */
  turnDeg: number;
  /** Coefficient of friction between rope and connector; 0 for a pulley without any. */
  friction: number;
}

/** The way of the rope from the climber to the belayer. */
export interface Route {
  /** Lengths of rope between the turns, the climber's first: one more than there are turns. */
  segmentsM: readonly number[];
  /** The top piece first. */
  turns: readonly Turn[];
}

/** What friction makes of a route, for a pull of one at the climber. */
export interface SolvedRoute {
  /** Pull in each segment; 1 at the climber, the last is the belayer's. */
  pulls: readonly number[];
  /** Load on each connector: the pulls on both of its sides, put together by direction. */
  loads: readonly number[];
  /** Rope that stretches like the climber's own segment: the sum of each length times its pull. */
  effectiveM: number;
  ropeM: number;
}

const RADIANS = Math.PI / 180;

/** Share of the pull that is left behind a turn: e^(-mu phi). @throws RangeError when friction or angle is below 0 */
export function pullLeft({ turnDeg, friction }: Turn): number {
  assertNotNegative(turnDeg, 'turnDeg');
  assertNotNegative(friction, 'friction');
  return Math.exp(-friction * turnDeg * RADIANS);
}

/** The friction that leaves a share of the pull behind half a turn: -ln(share) / pi. */
export function frictionFromHalfTurn(left: number): number {
  if (!(left > 0 && left <= 1)) throw new RangeError(`left must be above 0 and at most 1 (got ${left}).`);
  return left === 1 ? 0 : -Math.log(left) / Math.PI;
}

/** Load on a connector where a rope turns, from the pulls before and behind it: both together at 180, their difference at 0. */
export function connectorLoad(before: number, behind: number, turnDeg: number): number {
  // (before - behind)^2 + 4 before behind sin^2(turn / 2): the law of cosines, without its loss near 0.
  return Math.hypot(before - behind, 2 * Math.sqrt(before * behind) * Math.sin(0.5 * turnDeg * RADIANS));
}

/**
 * Solves a route.
 * @throws RangeError when there is not one segment more than turns, a length is below 0 or all are 0, or the climber's is
 */
export function solveRoute({ segmentsM, turns }: Route): SolvedRoute {
  if (segmentsM.length !== turns.length + 1) {
    throw new RangeError(`segmentsM must hold one more than turns (got ${segmentsM.length} and ${turns.length}).`);
  }
  const pulls = [1];
  const loads: number[] = [];
  let effectiveM = 0;
  let ropeM = 0;
  segmentsM.forEach((length, i) => {
    assertNotNegative(length, `segmentsM[${i}]`);
    const turn = turns[i - 1];
    if (turn) {
      const before = pulls[i - 1] as number;
      pulls.push(before * pullLeft(turn));
      loads.push(connectorLoad(before, pulls[i] as number, turn.turnDeg));
    }
    effectiveM += length * (pulls[i] as number);
    ropeM += length;
  });
  if (!(effectiveM > 0)) throw new RangeError('segmentsM must not all be 0.');
  return { pulls, loads, effectiveM, ropeM };
}
