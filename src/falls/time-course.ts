/**
 * A fall from its start to its lowest point, as motion: free fall, the rope stretching, the rope running through the belay.
 * Integrated from the forces, so it is a second way to the peak of arrest.ts. Seconds, metres, kN.
 */
import { integrate, type Walk } from '../numerics/ode.ts';
import { type Arrest, ceilingKn } from './arrest.ts';
import { assertPositive } from './checks.ts';
import { freeFallSpeed } from './fall.ts';
import { solveRoute } from './friction.ts';

/** One moment of a fall. */
export interface Moment {
  seconds: number;
  /** Way down from where the climber was. */
  downM: number;
  speed: number;
  climberKn: number;
  belayerKn: number;
  /** Load on the top piece; 0 where the rope runs over none. */
  topPieceKn: number;
}

export interface TimeCourse {
  moments: readonly Moment[];
  /** When the rope comes tight, and when the climber is lowest. */
  tightAt: number;
  lowestAt: number;
  /** Largest pull at the climber, and how much rope ran through the belay, both from the motion. */
  peakKn: number;
  slipM: number;
}

/** Points of the free fall and of each later part, at least. */
const POINTS = 24;

/**
 * Walks through a fall until the climber stops.
 * @param gravity newtons per kilogram
 * @throws RangeError as `arrest` does
 */
export function timeCourse({ weightKn, modulusKn, fallM, route, slipKn }: Arrest, gravity: number): TimeCourse {
  assertPositive(weightKn, 'weightKn');
  assertPositive(modulusKn, 'modulusKn');
  const solved = solveRoute(route);
  const stiffness = modulusKn / solved.effectiveM;
  const ceiling = ceilingKn(solved, slipKn);
  if (!(ceiling > weightKn)) throw new RangeError(`slipKn must stop the climber: the rope runs at ${ceiling} kN, and the weight is ${weightKn} kN.`);
  const speed = freeFallSpeed(fallM, gravity);
  const tightAt = speed / gravity;
  const behind = solved.pulls.at(-1) as number;
  const moment = (seconds: number, downM: number, v: number, climberKn: number): Moment => ({
    seconds, downM, speed: v, climberKn, belayerKn: climberKn * behind, topPieceKn: climberKn * (solved.loads[0] ?? 0),
  });

  const moments: Moment[] = [];
  if (fallM > 0) {
    for (let i = 0; i < POINTS; i++) {
      const t = (tightAt * i) / POINTS;
      moments.push(moment(t, 0.5 * gravity * t * t, gravity * t, 0));
    }
  }
  // State: way below the tight point, and speed. A quarter of a swing is the longest the rope can take to stop a fall.
  const swing = Math.PI * Math.sqrt((weightKn / gravity) / stiffness);
  const stretchingTo = (reached: number): Walk =>
    integrate((_t, [x = 0, v = 0]) => [v, gravity * (1 - (stiffness * x) / weightKn)], [0, speed], tightAt, tightAt + 1.01 * swing, {
      longestStep: swing / (2 * POINTS),
      event: (t, [x = 0, v = 0]) => (t === tightAt ? 1 : Math.min(v, reached - stiffness * x)),
    });
  const stretching = stretchingTo(ceiling);
  stretching.times.forEach((t, i) => {
    const [x = 0, v = 0] = stretching.states[i] as readonly number[];
    moments.push(moment(t, fallM + x, v, Math.min(stiffness * x, ceiling)));
  });
  const last = stretching.states.at(-1) as readonly number[];
  const [stretched = 0, left = 0] = last;
  let lowestAt = stretching.times.at(-1) as number;
  let slipM = 0;
  const isSlipping = stiffness * stretched >= ceiling * (1 - 1e-9) && left > 1e-9 * (speed + 1);
  if (isSlipping) {
    // A constant pull slows the climber evenly.
    const slowing = gravity * (ceiling / weightKn - 1);
    const duration = left / slowing;
    const running = integrate((_t, [, v = 0]) => [v, -slowing], [stretched, left], lowestAt, lowestAt + 1.01 * duration, {
      longestStep: duration / POINTS,
      event: (_t, [, v = 0]) => v,
    });
    running.times.slice(1).forEach((t, i) => {
      const [x = 0, v = 0] = running.states[i + 1] as readonly number[];
      moments.push(moment(t, fallM + x, v, ceiling));
    });
    slipM = ((running.states.at(-1) as readonly number[])[0] as number) - stretched;
    lowestAt = running.times.at(-1) as number;
  }
  return { moments, tightAt, lowestAt, peakKn: isSlipping ? ceiling : stiffness * stretched, slipM };
}
