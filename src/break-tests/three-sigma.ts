/**
 * What "mean - 3 sd" of n pulls promises. With the true mean and sd, 99.87 % of pieces lie above it. With those of a few
 * pulls that share is itself a matter of luck; here is how much.
 */
import { normalCdf } from '../numerics/normal.ts';
import { tCdf } from '../numerics/student-t.ts';
import { toleranceConfidence, toleranceCoverage } from '../numerics/tolerance-factor.ts';
import { assertShare } from './checks.ts';

export interface SigmaPromise {
  /** Share of pieces above it if mean and sd were known: Phi(k). */
  readonly nominal: number;
  /** Chance that it lies as low as it says: that the share above it is `nominal` or more. */
  readonly confidenceOfNominal: number;
  /** Share of pieces above it with the confidence asked for. */
  readonly coverage: number;
  /** Chance that it lies below a share `wantedCoverage` of pieces. */
  readonly confidenceOfWanted: number;
  /** Chance that the next piece breaks above it: P(T < k / sqrt(1 + 1/n)), T Student's with n - 1 degrees of freedom. */
  readonly nextPullAbove: number;
}

/**
 * What mean - k sd of n normal pulls promises; k is 3 unless said. Exact, by the noncentral t distribution.
 * @throws RangeError when n is below 2, k is not finite, or a share does not lie strictly between 0 and 1.
 */
export function promiseOfMeanLess(
  n: number,
  { k = 3, confidence = 0.95, wantedCoverage = 0.99 }: { k?: number; confidence?: number; wantedCoverage?: number } = {},
): SigmaPromise {
  assertShare(confidence, 'confidence');
  assertShare(wantedCoverage, 'wantedCoverage');
  const nominal = normalCdf(k);
  return {
    nominal,
    confidenceOfNominal: toleranceConfidence(n, k, nominal),
    coverage: toleranceCoverage(n, k, confidence),
    confidenceOfWanted: toleranceConfidence(n, k, wantedCoverage),
    nextPullAbove: tCdf(k / Math.sqrt(1 + 1 / n), n - 1),
  };
}
