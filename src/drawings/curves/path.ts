/** Path data of a piece of a curve: a chain of cubic Béziers whose ends lie on it and run as it runs. */
import { type Curve, directionAt, pointAt } from './curve.ts';
import type { Point } from './point.ts';

/** Greatest distance between the drawn path and the curve, drawing units. */
const TOLERANCE = 0.2;
/** Greatest length of one Bézier. */
const MOST_LENGTH = 160;

const round = (value: number): number => Math.round(value * 10) / 10;
/** Numbers with as few signs as SVG allows: a minus sign parts numbers by itself. */
export function numbers(values: readonly number[]): string {
  return values.map((value, i) => {
    const text = String(round(value) === 0 ? 0 : round(value)).replace(/^(-?)0\./, '$1.');
    return i > 0 && !text.startsWith('-') ? ` ${text}` : text;
  }).join('');
}

/** Start, two handles and end of the Bézier that runs as the curve runs at two lengths along it. */
function bezier(curve: Curve, from: number, to: number): [Point, Point, Point, Point] {
  const reach = (to - from) / 3;
  const [a, d, u, v] = [pointAt(curve, from), pointAt(curve, to), directionAt(curve, from), directionAt(curve, to)];
  return [a, [a[0] + u[0] * reach, a[1] + u[1] * reach], [d[0] - v[0] * reach, d[1] - v[1] * reach], d];
}

/** Whether one Bézier between two lengths keeps to the curve. */
function fits(curve: Curve, from: number, to: number): boolean {
  if (to - from > MOST_LENGTH) return false;
  const [a, b, c, d] = bezier(curve, from, to);
  return [0.2, 0.35, 0.5, 0.65, 0.8].every((t) => {
    const s = 1 - t;
    const at = (k: 0 | 1) => s ** 3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t ** 3 * d[k];
    const on = pointAt(curve, from + t * (to - from));
    const [ux, uy] = directionAt(curve, from + t * (to - from));
    return Math.abs((at(0) - on[0]) * uy - (at(1) - on[1]) * ux) < TOLERANCE;
  });
}

/** Lengths along the curve at which one Bézier ends and the next begins: as few as keep to it. */
function stations(curve: Curve, from: number, to: number): number[] {
  const result = [from];
  let at = from;
  while (at < to) {
    let next = to;
    while (next - at > 4 && !fits(curve, at, next)) next = at + (next - at) * 0.8;
    if (next < to && to - next < 4) next = (at + to) / 2;
    result.push(next);
    at = next;
  }
  return result;
}

/** Path data from one length along the curve to another; the whole of it where none is given. */
export function pathOf(curve: Curve, from = 0, to = curve.length): string {
  const whole = curve.closed && to - from >= curve.length - 0.01;
  let [x, y] = pointAt(curve, from).map(round) as [number, number];
  let path = `M${numbers([x, y])}`;
  const ends = stations(curve, from, to);
  for (let i = 1; i < ends.length; i++) {
    const [, p, q, last] = bezier(curve, ends[i - 1] as number, ends[i] as number);
    const end = last.map(round) as [number, number];
    path += `c${numbers([p[0] - x, p[1] - y, q[0] - x, q[1] - y, end[0] - x, end[1] - y])}`;
    [x, y] = end;
  }
  return whole ? `${path}z` : path;
}
