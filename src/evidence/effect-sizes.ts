/** Effects and their variances from summary statistics: what pooling is fed with. */
import { chiSquareQuantile } from '../numerics/gamma.ts';
import { logGamma } from '../numerics/log-gamma.ts';

/** One study's estimate and the variance of its error. */
export interface Effect {
  readonly value: number;
  readonly variance: number;
}

/** Mean, sample standard deviation and number of tests of one series. */
export interface Summary {
  readonly mean: number;
  readonly sd: number;
  readonly n: number;
}

function assertSummary(summary: Summary, name: string): void {
  if (!(summary.sd >= 0 && summary.sd < Infinity))
    throw new RangeError(`${name}.sd must be 0 or more (got ${summary.sd}).`);
  if (!(Number.isInteger(summary.n) && summary.n >= 1)) {
    throw new RangeError(`${name}.n must be a whole number from 1 (got ${summary.n}).`);
  }
  if (!Number.isFinite(summary.mean)) throw new RangeError(`${name}.mean must be finite (got ${summary.mean}).`);
}

function assertPositiveMean(summary: Summary, name: string): void {
  assertSummary(summary, name);
  if (!(summary.mean > 0)) throw new RangeError(`${name}.mean must be positive (got ${summary.mean}).`);
}

/**
 * Variance of the ln of a mean of n tests with coefficient of variation `cv`: cv^2 / n (delta method).
 * @throws RangeError unless cv >= 0 and n >= 1.
 */
export function logMeanVariance(cv: number, n: number): number {
  if (!(cv >= 0 && cv < Infinity)) throw new RangeError(`cv must be 0 or more (got ${cv}).`);
  if (!(n >= 1)) throw new RangeError(`n must be 1 or more (got ${n}).`);
  return (cv * cv) / n;
}

/** ln of a mean, with its variance. */
export function logMean(summary: Summary): Effect {
  assertPositiveMean(summary, 'summary');
  return { value: Math.log(summary.mean), variance: logMeanVariance(summary.sd / summary.mean, summary.n) };
}

/** ln(mean of `a` / mean of `b`), the log response ratio of independent series, with its variance (delta method). */
export function logResponseRatio(a: Summary, b: Summary): Effect {
  assertPositiveMean(a, 'a');
  assertPositiveMean(b, 'b');
  return {
    value: Math.log(a.mean / b.mean),
    variance: logMeanVariance(a.sd / a.mean, a.n) + logMeanVariance(b.sd / b.mean, b.n),
  };
}

/** ln of the coefficient of variation, corrected for small samples: ln cv + 1 / (2 (n - 1)). */
export function logCoefficientOfVariation(summary: Summary): Effect {
  assertPositiveMean(summary, 'summary');
  if (summary.n < 2 || summary.sd === 0) throw new RangeError('summary must have n of 2 or more and an sd above 0.');
  const correction = 1 / (2 * (summary.n - 1));
  const cv = summary.sd / summary.mean;
  return { value: Math.log(cv) + correction, variance: correction + logMeanVariance(cv, summary.n) };
}

/**
 * Hedges' factor J(df) = Gamma(df / 2) / (sqrt(df / 2) Gamma((df - 1) / 2)), which makes a standardised difference
 * unbiased (Hedges, Journal of Educational Statistics 6, 1981). Needs df above 1.
 */
export function hedgesFactor(df: number): number {
  if (!(df > 1)) throw new RangeError(`df must be above 1 (got ${df}).`);
  return Math.exp(logGamma(0.5 * df) - logGamma(0.5 * (df - 1))) / Math.sqrt(0.5 * df);
}

/** The usual approximation of Hedges' factor: 1 - 3 / (4 df - 1). */
export function hedgesFactorApproximate(df: number): number {
  return 1 - 3 / (4 * df - 1);
}

/** (mean of a - mean of b) / pooled sd, without correction. */
export function cohensD(a: Summary, b: Summary): number {
  assertSummary(a, 'a');
  assertSummary(b, 'b');
  const df = a.n + b.n - 2;
  if (df < 1) throw new RangeError(`a and b must hold three tests together at least (got ${a.n + b.n}).`);
  return (a.mean - b.mean) / Math.sqrt(((a.n - 1) * a.sd ** 2 + (b.n - 1) * b.sd ** 2) / df);
}

/** Hedges' g with the exact factor; variance 1/n1 + 1/n2 + g^2 / (2 (n1 + n2)). */
export function hedgesG(a: Summary, b: Summary): Effect {
  const d = cohensD(a, b);
  const g = hedgesFactor(a.n + b.n - 2) * d;
  return { value: g, variance: 1 / a.n + 1 / b.n + (g * g) / (2 * (a.n + b.n)) };
}

/** One coefficient of variation over several series. */
export interface PooledCv {
  readonly cv: number;
  /** Degrees of freedom: tests less series. */
  readonly df: number;
  /** Chi-square interval of the cv at the level asked for. */
  readonly low: number;
  readonly high: number;
}

/**
 * Coefficient of variation common to several series: root of the mean of cv^2 weighted by n - 1. Series of one test say
 * nothing of scatter and count for nothing.
 * @throws RangeError when no series has two tests, a cv is negative, or the level is not between 0 and 1.
 */
export function pooledCv(series: readonly { readonly cv: number; readonly n: number }[], level = 0.95): PooledCv {
  if (!(level > 0 && level < 1)) throw new RangeError(`level must lie between 0 and 1 (got ${level}).`);
  let sum = 0;
  let df = 0;
  for (const { cv, n } of series) {
    if (!(cv >= 0 && cv < Infinity)) throw new RangeError(`series.cv must be 0 or more (got ${cv}).`);
    if (!(Number.isInteger(n) && n >= 1)) throw new RangeError(`series.n must be a whole number from 1 (got ${n}).`);
    sum += (n - 1) * cv * cv;
    df += n - 1;
  }
  if (df === 0) throw new RangeError('series must hold one of two tests or more.');
  const outside = 0.5 * (1 - level);
  return {
    cv: Math.sqrt(sum / df),
    df,
    low: Math.sqrt(sum / chiSquareQuantile(1 - outside, df)),
    high: Math.sqrt(sum / chiSquareQuantile(outside, df)),
  };
}
