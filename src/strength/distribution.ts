/** The distributions that a strength or a load may have, and what a chain asks of them. */
import { gammaFunction } from '../numerics/log-gamma.ts';
import { normalCdf, normalPdf, normalQuantile } from '../numerics/normal.ts';

/** Normal by mean and sd; lognormal by mean and sd of ln; Weibull by shape and scale, from 0 upwards. */
export type Distribution =
  | { readonly dist: 'normal'; readonly mu: number; readonly sigma: number }
  | { readonly dist: 'lognormal'; readonly muLog: number; readonly sigmaLog: number }
  | { readonly dist: 'weibull'; readonly shape: number; readonly scale: number };

/**
 * Checks the parameters.
 * @throws RangeError when a spread, shape or scale is not positive.
 */
export function assertDistribution(d: Distribution, name: string): void {
  const valid =
    d.dist === 'normal'
      ? Number.isFinite(d.mu) && d.sigma > 0 && d.sigma < Infinity
      : d.dist === 'lognormal'
        ? Number.isFinite(d.muLog) && d.sigmaLog > 0 && d.sigmaLog < Infinity
        : d.shape > 0 && d.shape < Infinity && d.scale > 0 && d.scale < Infinity;
  if (!valid)
    throw new RangeError(`${name} must have finite parameters and a positive spread (got ${JSON.stringify(d)}).`);
}

/** Density at x. */
export function density(d: Distribution, x: number): number {
  if (d.dist === 'normal') return normalPdf((x - d.mu) / d.sigma) / d.sigma;
  if (x <= 0) return 0;
  if (d.dist === 'lognormal') return normalPdf((Math.log(x) - d.muLog) / d.sigmaLog) / (d.sigmaLog * x);
  const power = (x / d.scale) ** d.shape;
  return (d.shape / x) * power * Math.exp(-power);
}

/** P(X > x). */
export function survivalOf(d: Distribution, x: number): number {
  if (d.dist === 'normal') return normalCdf((d.mu - x) / d.sigma);
  if (x <= 0) return 1;
  if (d.dist === 'lognormal') return normalCdf((d.muLog - Math.log(x)) / d.sigmaLog);
  return Math.exp(-((x / d.scale) ** d.shape));
}

/** P(X <= x). */
export function cdfOf(d: Distribution, x: number): number {
  if (d.dist === 'normal') return normalCdf((x - d.mu) / d.sigma);
  if (x <= 0) return 0;
  if (d.dist === 'lognormal') return normalCdf((Math.log(x) - d.muLog) / d.sigmaLog);
  return -Math.expm1(-((x / d.scale) ** d.shape));
}

/** The x with P(X <= x) = p, for 0 < p < 1. */
export function quantileOf(d: Distribution, p: number): number {
  if (d.dist === 'normal') return d.mu + d.sigma * normalQuantile(p);
  if (d.dist === 'lognormal') return Math.exp(d.muLog + d.sigmaLog * normalQuantile(p));
  return d.scale * (-Math.log1p(-p)) ** (1 / d.shape);
}

/** Mean. */
export function meanOf(d: Distribution): number {
  if (d.dist === 'normal') return d.mu;
  if (d.dist === 'lognormal') return Math.exp(d.muLog + 0.5 * d.sigmaLog ** 2);
  return d.scale * gammaFunction(1 + 1 / d.shape);
}

/** Standard deviation. */
export function sdOf(d: Distribution): number {
  if (d.dist === 'normal') return d.sigma;
  if (d.dist === 'lognormal') return meanOf(d) * Math.sqrt(Math.expm1(d.sigmaLog ** 2));
  const first = gammaFunction(1 + 1 / d.shape);
  return d.scale * Math.sqrt(gammaFunction(1 + 2 / d.shape) - first * first);
}
