/** Maximum-likelihood fit of a lognormal distribution to breaking forces of which some are censored. */
import { normalQuantile } from '../numerics/normal.ts';
import { assertCensored, type CensoredPulls, logsOf } from './censored.ts';
import type { Interval } from './checks.ts';
import { fitNormal, normalQuantileInterval, normalSdInterval } from './fit-normal.ts';

export interface LognormalFit {
  readonly broken: number;
  readonly atLeast: number;
  /** Mean of ln. */
  readonly muLog: number;
  /** Maximum-likelihood sd of ln: denominator n where nothing is censored. */
  readonly sigmaLog: number;
  /** Of the forces themselves, not of their logarithms. */
  readonly logLikelihood: number;
  /** Standard errors of muLog and of ln sigmaLog, from the observed information (Wald). */
  readonly seMuLog: number;
  readonly seLogSigma: number;
  /** Correlation of the two errors. */
  readonly correlation: number;
}

/**
 * The fit: the normal one of the logarithms.
 * @throws RangeError when fewer than two breaks differ or a force is not positive.
 */
export function fitLognormal(pulls: CensoredPulls): LognormalFit {
  assertCensored(pulls, true);
  const logs = logsOf(pulls);
  const fit = fitNormal(logs);
  return {
    broken: fit.broken,
    atLeast: fit.atLeast,
    muLog: fit.mean,
    sigmaLog: fit.sd,
    logLikelihood: fit.logLikelihood - logs.broken.reduce((sum, x) => sum + x, 0),
    seMuLog: fit.seMean,
    seLogSigma: fit.seLogSd,
    correlation: fit.correlation,
  };
}

/** The force that a share `p` of pieces lies below, by the fit. */
export function lognormalFitQuantile(fit: Pick<LognormalFit, 'muLog' | 'sigmaLog'>, p: number): number {
  return Math.exp(fit.muLog + fit.sigmaLog * normalQuantile(p));
}

/** Profile-likelihood interval of that force. Approximate: for complete pulls the tolerance bound is exact. */
export function lognormalQuantileInterval(pulls: CensoredPulls, p: number, level = 0.95): Interval & { best: number } {
  assertCensored(pulls, true);
  const { low, high, best } = normalQuantileInterval(logsOf(pulls), p, level);
  return { low: Math.exp(low), high: Math.exp(high), best: Math.exp(best) };
}

/** Profile-likelihood interval of sigmaLog. */
export function sigmaLogInterval(pulls: CensoredPulls, level = 0.95): Interval {
  assertCensored(pulls, true);
  return normalSdInterval(logsOf(pulls), level);
}
