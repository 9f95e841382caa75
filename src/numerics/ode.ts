/**
 * Ordinary differential equations, step by step: the pair of Dormand and Prince of orders 5 and 4 (Journal of
 * Computational and Applied Mathematics 6, 1980; coefficients recalled, checked against closed forms), with steps that
 * follow a tolerance and an event that ends the walk.
 */
import { findRoot } from './roots.ts';

/** Slope of the state at a time. The state is not to be changed. */
export type Slope = (t: number, y: readonly number[]) => readonly number[];

export interface OdeOptions {
  /** Error allowed in one step, relative to the larger of each component and 1. */
  tolerance?: number;
  /** No step is longer than this: what is drawn wants points in between. */
  longestStep?: number;
  /** The walk ends where this changes its sign from positive; it must be above 0 at some step before. */
  event?: (t: number, y: readonly number[]) => number;
}

/** What was walked through: times rising, one state each, and whether the event ended it. */
export interface Walk {
  readonly times: readonly number[];
  readonly states: readonly (readonly number[])[];
  readonly ended: boolean;
}

const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
const STAGES: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const FOURTH = [5179 / 57600, 0, 7571 / 16695, 393 / 640, -92097 / 339200, 187 / 2100, 1 / 40] as const;
const MOST_STEPS = 100_000;

/** One step of length h: the state of order 5, and how far that of order 4 is off, relative to each component or 1. */
function step(slope: Slope, t: number, y: readonly number[], h: number): { y: readonly number[]; error: number } {
  const slopes: (readonly number[])[] = [];
  let last = y;
  for (let s = 0; s < STAGES.length; s++) {
    const weights = STAGES[s] as readonly number[];
    last = y.map((value, i) => value + h * weights.reduce((sum, w, k) => sum + w * ((slopes[k] as readonly number[])[i] as number), 0));
    slopes.push(slope(t + (NODES[s] as number) * h, last));
  }
  let error = 0;
  for (let i = 0; i < y.length; i++) {
    const low = (y[i] as number) + h * FOURTH.reduce((sum, w, k) => sum + w * ((slopes[k] as readonly number[])[i] as number), 0);
    error = Math.max(error, Math.abs((last[i] as number) - low) / Math.max(1, Math.abs(last[i] as number)));
  }
  return { y: last, error };
}

/**
 * Walks from `start` at time `from` until time `to`, or until the event.
 * @throws RangeError when `to` is not after `from`, a slope gives no number, or the steps do not get there
 */
export function integrate(slope: Slope, start: readonly number[], from: number, to: number, options: OdeOptions = {}): Walk {
  const { tolerance = 1e-11, longestStep = Infinity, event } = options;
  if (!(to > from && to < Infinity)) throw new RangeError(`to must be after from and finite (got ${from} to ${to}).`);
  if (!(tolerance > 0) || !(longestStep > 0)) throw new RangeError('tolerance and longestStep must be positive.');
  const times = [from];
  const states: (readonly number[])[] = [[...start]];
  let t = from;
  let y: readonly number[] = start;
  let h = Math.min(longestStep, (to - from) / 100);
  let before = event ? event(t, y) : 0;
  for (let count = 0; count < MOST_STEPS; count++) {
    const isLast = t + h >= to;
    const length = isLast ? to - t : h;
    const next = step(slope, t, y, length);
    if (!Number.isFinite(next.error)) throw new RangeError(`slope gave no number near ${t}.`);
    if (next.error > tolerance) {
      h = length * Math.max(0.2, 0.9 * (tolerance / next.error) ** 0.2);
      if (t + h === t) throw new RangeError(`the steps became too short near ${t}.`);
      continue;
    }
    const after = event ? event(t + length, next.y) : 1;
    if (event && before > 0 && after <= 0) {
      const [at, base] = [t, y];
      const share = findRoot((x) => (x === 0 ? before : event(at + x * length, step(slope, at, base, x * length).y)), 0, 1);
      return { times: [...times, at + share * length], states: [...states, step(slope, at, base, share * length).y], ended: true };
    }
    t = isLast ? to : t + length;
    y = next.y;
    before = after;
    times.push(t);
    states.push(y);
    if (isLast) return { times, states, ended: false };
    h = Math.min(longestStep, length * Math.min(5, 0.9 * (tolerance / Math.max(next.error, 1e-300)) ** 0.2));
  }
  throw new RangeError(`more than ${MOST_STEPS} steps between ${from} and ${to}.`);
}
