/**
 * The noncentral t distribution: (Z + delta) / (Y / sqrt(df)) with Z standard normal and Y chi with `df` degrees of
 * freedom. P(T <= t) is the mean of Phi(r Y - delta), r = t / sqrt(df), over the chi density, by 20-node Gauss-Legendre
 * panels. Phi steps at y* = delta / r within widths of 1 / |r|; panels are split there, or few degrees of freedom would
 * come out wrong in the seventh figure.
 */
import { logGamma } from './log-gamma.ts';
import { normalCdf, normalQuantile } from './normal.ts';
import { gaussLegendre } from './quadrature.ts';
import { findRoot } from './roots.ts';

/** Beyond this distance from sqrt(df) the chi density holds less than 1e-20. */
const CHI_REACH = 7.5;

function tail(t: number, df: number, delta: number, upper: boolean): number {
  if (!(df > 0 && df < Infinity)) throw new RangeError(`df must be positive and finite (got ${df}).`);
  if (!Number.isFinite(delta)) throw new RangeError(`delta must be finite (got ${delta}).`);
  if (Number.isNaN(t)) throw new RangeError('t must be a number (got NaN).');
  if (t === 0 || !Number.isFinite(t)) {
    const below = t === 0 ? normalCdf(-delta) : t > 0 ? 1 : 0;
    return upper ? (t === 0 ? normalCdf(delta) : 1 - below) : below;
  }
  const root = Math.sqrt(df);
  const r = t / root;
  const low = Math.max(0, root - CHI_REACH);
  const high = root + CHI_REACH;
  const edges: number[] = [];
  for (let i = 0; i <= 12; i++) edges.push(low + ((high - low) * i) / 12);
  const step = delta / r;
  for (let k = -8; k <= 8; k++) {
    const edge = step + k / Math.abs(r);
    if (edge > low && edge < high) edges.push(edge);
  }
  edges.sort((a, b) => a - b);
  const rule = gaussLegendre(20);
  const constant = (1 - 0.5 * df) * Math.LN2 - logGamma(0.5 * df);
  const sign = upper ? -1 : 1;
  let sum = 0;
  for (let e = 0; e + 1 < edges.length; e++) {
    const from = edges[e] as number;
    const half = 0.5 * ((edges[e + 1] as number) - from);
    if (half <= 0) continue;
    for (let i = 0; i < 20; i++) {
      const y = from + half * (1 + (rule.nodes[i] as number));
      const dense = Math.exp(constant + (df - 1) * Math.log(y) - 0.5 * y * y);
      sum += half * (rule.weights[i] as number) * dense * normalCdf(sign * (r * y - delta));
    }
  }
  return Math.min(1, sum);
}

/** P(T <= t). */
export function noncentralTCdf(t: number, df: number, delta: number): number {
  return tail(t, df, delta, false);
}

/** P(T > t). */
export function noncentralTSurvival(t: number, df: number, delta: number): number {
  return tail(t, df, delta, true);
}

/**
 * The t with P(T <= t) = p.
 * @throws RangeError unless 0 < p < 1, df > 0 and delta is finite.
 */
export function noncentralTQuantile(p: number, df: number, delta: number): number {
  const z = normalQuantile(p);
  const upper = p > 0.5;
  const miss = (t: number): number => (upper ? 1 - p - tail(t, df, delta, true) : tail(t, df, delta, false) - p);
  const start = delta + z * Math.sqrt(1 + (delta * delta) / (2 * df));
  let stride = 0.1 * (1 + Math.abs(start) / Math.sqrt(df));
  let low = start;
  let high = start;
  const first = miss(start);
  if (first === 0) return start;
  for (let widen = 0; widen < 200; widen++) {
    if (first < 0) {
      low = high;
      high += stride;
      if (miss(high) >= 0) break;
    } else {
      high = low;
      low -= stride;
      if (miss(low) <= 0) break;
    }
    stride *= 1.8;
  }
  return findRoot(miss, low, high, 1e-15);
}

/**
 * The delta at which P(T <= t) = p: the limit of a confidence interval for delta. P(T <= t) falls as delta grows.
 * @throws RangeError unless 0 < p < 1, df > 0 and t is finite.
 */
export function noncentralTDelta(p: number, t: number, df: number): number {
  if (!Number.isFinite(t)) throw new RangeError(`t must be finite (got ${t}).`);
  const upper = p > 0.5;
  const miss = (delta: number): number =>
    upper ? 1 - p - tail(t, df, delta, true) : tail(t, df, delta, false) - p;
  const start = t - normalQuantile(p) * Math.sqrt(1 + (t * t) / (2 * df));
  let stride = 0.2 * (1 + Math.abs(start) / Math.sqrt(df));
  let low = start;
  let high = start;
  const first = miss(start);
  if (first === 0) return start;
  for (let widen = 0; widen < 200; widen++) {
    if (first > 0) {
      low = high;
      high += stride;
      if (miss(high) <= 0) break;
    } else {
      high = low;
      low -= stride;
      if (miss(low) >= 0) break;
    }
    stride *= 1.8;
  }
  return findRoot(miss, low, high, 1e-15);
}
