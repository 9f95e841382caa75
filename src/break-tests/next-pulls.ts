/** Where the next pulls of a series may lie, as equally likely forces to draw: of twenty such pulls, about one at each. */
import { tQuantile } from '../numerics/student-t.ts';
import type { CensoredPulls } from './censored.ts';
import { assertCount, assertForces, assertScatter } from './checks.ts';
import { fitLognormal } from './fit-lognormal.ts';

/** Below so many breaks the scatter of a series is too uncertain to be drawn. */
export const DOTS_FROM = 5;

/**
 * `count` equally likely forces of the next pull, weakest first: the middles of as many equal slices of Student's t
 * prediction of the logarithms, mean + t s sqrt(1 + 1/n) with n - 1 degrees of freedom (exact for lognormal pulls). With
 * censored pulls: most likely mean and sd, the sd times sqrt(b / (b - 1)) and the error of the mean from the likelihood,
 * b - 1 degrees of freedom from b breaks (approximate).
 * @throws RangeError when there are fewer than five breaks, all are equal, a force is not positive or count is below 1.
 */
export function nextPulls(pulls: CensoredPulls, count = 20): number[] {
  assertCount(count, 1, 'count');
  const { broken } = pulls;
  assertForces(broken, DOTS_FROM, 'broken');
  assertScatter(broken, 'broken');
  const n = broken.length;
  // With nothing censored that is the exact prediction: the fit's sd times sqrt(n / (n - 1)) is the sample's.
  const { muLog, sigmaLog, seMuLog } = fitLognormal(pulls);
  const spread = Math.sqrt((n / (n - 1)) * (sigmaLog ** 2 + seMuLog ** 2));
  return Array.from({ length: count }, (_, i) => Math.exp(muLog + spread * tQuantile((i + 0.5) / count, n - 1)));
}
