/**
 * Smooth curve through control points: a cubic spline over chord length, with continuous curvature, so that a strand has
 * no corner. It is kept as closely spaced samples; crossings are found on them and the drawn path is fitted to them.
 */
import { distance, type Point } from './point.ts';

/** Samples of a curve with the length along it. A closed curve's last sample lies just before its first. */
export interface Curve {
  closed: boolean;
  samples: readonly Point[];
  /** Length from the first sample to each. */
  along: readonly number[];
  /** Whole length; of a closed curve with the way back to the first sample. */
  length: number;
}

/** Distance between samples, drawing units. */
const STEP = 2;
/** Control points of a closed curve that are repeated beyond its ends, so that the seam is as smooth as the rest. */
const WRAP = 8;

/** Second derivatives of a natural cubic spline, for values at rising places. */
function secondDerivatives(at: readonly number[], values: readonly number[]): number[] {
  const n = at.length;
  const result = new Array<number>(n).fill(0);
  const scratch = new Array<number>(n).fill(0);
  for (let i = 1; i < n - 1; i++) {
    const [before, here, after] = [at[i - 1] as number, at[i] as number, at[i + 1] as number];
    const share = (here - before) / (after - before);
    const pivot = share * (result[i - 1] as number) + 2;
    const slope = ((values[i + 1] as number) - (values[i] as number)) / (after - here) - ((values[i] as number) - (values[i - 1] as number)) / (here - before);
    result[i] = (share - 1) / pivot;
    scratch[i] = ((6 * slope) / (after - before) - share * (scratch[i - 1] as number)) / pivot;
  }
  result[n - 1] = 0;
  for (let i = n - 2; i >= 0; i--) result[i] = (result[i] as number) * (result[i + 1] as number) + (scratch[i] as number);
  return result;
}

/** Value of the spline between two places. */
function between(at: readonly number[], values: readonly number[], bends: readonly number[], i: number, t: number): number {
  const h = (at[i + 1] as number) - (at[i] as number);
  const a = ((at[i + 1] as number) - t) / h;
  const b = 1 - a;
  return a * (values[i] as number) + b * (values[i + 1] as number) + (((a ** 3 - a) * (bends[i] as number) + (b ** 3 - b) * (bends[i + 1] as number)) * h * h) / 6;
}

/** Smooth curve through the control points, in their order. Points that lie on one another are one. */
export function curveThrough(points: readonly Point[], closed = false): Curve {
  const own = points.filter((point, i) => i === 0 || distance(point, points[i - 1] as Point) > 0.01);
  if (closed && distance(own[0] as Point, own.at(-1) as Point) <= 0.01) own.pop();
  if (own.length < (closed ? 3 : 2)) throw new RangeError(`curveThrough: too few control points (got ${own.length})`);
  const wrap = closed ? Math.min(WRAP, own.length) : 0;
  const all = closed ? [...own.slice(-wrap), ...own, ...own.slice(0, wrap + 1)] : own;
  const at = [0];
  for (let i = 1; i < all.length; i++) at.push((at[i - 1] as number) + distance(all[i - 1] as Point, all[i] as Point));
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  const [bendsX, bendsY] = [secondDerivatives(at, xs), secondDerivatives(at, ys)];
  const samples: Point[] = [];
  const lastSpan = wrap + own.length - (closed ? 1 : 2);
  for (let i = wrap; i <= lastSpan; i++) {
    const span = (at[i + 1] as number) - (at[i] as number);
    const count = Math.max(1, Math.round(span / STEP));
    for (let k = 0; k < count; k++) {
      const t = (at[i] as number) + (span * k) / count;
      samples.push([between(at, xs, bendsX, i, t), between(at, ys, bendsY, i, t)]);
    }
  }
  if (!closed) samples.push(own.at(-1) as Point);
  return curveOf(samples, closed);
}

/** Curve of given samples. */
export function curveOf(samples: readonly Point[], closed: boolean): Curve {
  const along = [0];
  for (let i = 1; i < samples.length; i++) along.push((along[i - 1] as number) + distance(samples[i - 1] as Point, samples[i] as Point));
  const length = (along.at(-1) as number) + (closed ? distance(samples.at(-1) as Point, samples[0] as Point) : 0);
  return { closed, samples, along, length };
}

/** Where a length along the curve falls: the sample before it, and the share of the way to the next. */
function locate({ along, length, closed }: Curve, at: number): [number, number] {
  const place = closed ? ((at % length) + length) % length : Math.min(length, Math.max(0, at));
  let low = 0;
  let high = along.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((along[middle] as number) <= place) low = middle;
    else high = middle - 1;
  }
  const next = low + 1 < along.length ? (along[low + 1] as number) : length;
  return [low, next > (along[low] as number) ? (place - (along[low] as number)) / (next - (along[low] as number)) : 0];
}

/** Point at a length along the curve. A closed curve goes round; an open one stops at its ends. */
export function pointAt(curve: Curve, at: number): Point {
  const [i, share] = locate(curve, at);
  const from = curve.samples[i] as Point;
  const to = curve.samples[i + 1] ?? (curve.closed ? (curve.samples[0] as Point) : from);
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}

/** Direction at a length along the curve, of length one. */
export function directionAt(curve: Curve, at: number): Point {
  const reach = 1.5;
  const [a, b] = [pointAt(curve, at - reach), pointAt(curve, at + reach)];
  const length = distance(a, b) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
