/** Pulls of which some did not end in a break of the part in question: they say "at least this". */
import { assertForces, assertValues } from './checks.ts';

/** Breaking forces, and forces that were reached without a break: right-censored pulls. One unit for both. */
export interface CensoredPulls {
  readonly broken: readonly number[];
  /** The strength is at least this: the clamp broke, another part broke, or the machine stopped. */
  readonly atLeast?: readonly number[];
}

/**
 * Throws a RangeError unless all are finite (and positive, for forces) and two breaks differ: with fewer, no scatter can
 * be fitted.
 */
export function assertCensored(pulls: CensoredPulls, positive: boolean): void {
  const check = positive ? assertForces : assertValues;
  check(pulls.broken, 2, 'broken');
  check(pulls.atLeast ?? [], 0, 'atLeast');
  if (pulls.broken.every((x) => x === pulls.broken[0])) {
    throw new RangeError('broken must hold two different values at least.');
  }
}

/** The logarithms of pulls. */
export function logsOf(pulls: CensoredPulls): Required<CensoredPulls> {
  return { broken: pulls.broken.map(Math.log), atLeast: (pulls.atLeast ?? []).map(Math.log) };
}
