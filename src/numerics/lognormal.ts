/** The lognormal distribution: ln X is normal with mean `muLog` and standard deviation `sigmaLog`. */
import { normalCdf, normalPdf, normalQuantile } from './normal.ts';

function assertSigma(sigmaLog: number): void {
  if (!(sigmaLog > 0 && sigmaLog < Infinity)) {
    throw new RangeError(`sigmaLog must be positive and finite (got ${sigmaLog}).`);
  }
}

/** Density at `x`. */
export function lognormalPdf(x: number, muLog: number, sigmaLog: number): number {
  assertSigma(sigmaLog);
  return x <= 0 ? 0 : normalPdf((Math.log(x) - muLog) / sigmaLog) / (sigmaLog * x);
}

/** P(X <= x). */
export function lognormalCdf(x: number, muLog: number, sigmaLog: number): number {
  assertSigma(sigmaLog);
  return x <= 0 ? 0 : normalCdf((Math.log(x) - muLog) / sigmaLog);
}

/** P(X > x). */
export function lognormalSurvival(x: number, muLog: number, sigmaLog: number): number {
  assertSigma(sigmaLog);
  return x <= 0 ? 1 : normalCdf((muLog - Math.log(x)) / sigmaLog);
}

/** The x with P(X <= x) = p. */
export function lognormalQuantile(p: number, muLog: number, sigmaLog: number): number {
  assertSigma(sigmaLog);
  return Math.exp(muLog + sigmaLog * normalQuantile(p));
}

/** Mean: exp(muLog + sigmaLog^2 / 2). */
export function lognormalMean(muLog: number, sigmaLog: number): number {
  return Math.exp(muLog + 0.5 * sigmaLog * sigmaLog);
}

/** Standard deviation. */
export function lognormalSd(muLog: number, sigmaLog: number): number {
  return lognormalMean(muLog, sigmaLog) * Math.sqrt(Math.expm1(sigmaLog * sigmaLog));
}

/** The sd of ln X that a coefficient of variation of X means: sqrt(ln(1 + cv^2)). */
export function sigmaLogFromCv(cv: number): number {
  if (!(cv >= 0 && cv < Infinity)) throw new RangeError(`cv must be 0 or more (got ${cv}).`);
  return Math.sqrt(Math.log1p(cv * cv));
}
