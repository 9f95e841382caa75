/**
 * Geometry of breaks over bearings: force up, diameter along. Places along are percents of the width, so that marks and
 * letters keep their size on every screen; places up are pixels. What lies beyond the tested bearings stays empty.
 */
import type { Mark } from './figures-chart.ts';

/** A published figure at its bearing: a diameter in mm, or a pin's diameter over a rope's. */
export interface BearingPoint { bearing: number; mark: Mark }

/** Where a panel is drawn: end of the axis along, numbers up the panel to the end of that axis, and its height, px. */
export interface BearingFrame { bearingEnd: number; values: readonly number[]; height: number }

/** Sign of a mark in a panel: a pull by itself, a mean, one number. */
export type BearingSign = 'pull' | 'mean' | 'one';

/** What is drawn. */
export interface BearingPanel {
  signs: { sign: BearingSign; x: number; y: number; taught?: true }[];
  /** Stretches along the axis in which nothing was tested, percent. */
  untested: { from: number; width: number }[];
  /** The model's line as a path in a square of 100 by 100; null where it has none. */
  line: string | null;
  /** Numbers up the panel, px from the top. */
  rows: { y: number; value: number }[];
}

const round = (value: number): number => Math.round(10 * value) / 10;

/** Place along the axis, percent; null beyond its end. */
export function alongPercent(bearing: number, bearingEnd: number): number | null {
  if (!(bearing >= 0)) throw new RangeError(`bearing: must not be negative (got ${bearing})`);
  return bearing > bearingEnd ? null : round((100 * bearing) / bearingEnd);
}

/**
 * Lays out one panel.
 * @param same what lies nearer to a test than this counts as tested; 0 for a table of the trade
 * @param line the model's middle between two tested bearings, as pairs of bearing and value
 */
export function bearingPanel(points: readonly BearingPoint[], { bearingEnd, values, height }: BearingFrame, same: number, line: readonly (readonly [number, number])[] | null): BearingPanel {
  const valueEnd = Math.max(...values);
  const x = (bearing: number): number => {
    const place = alongPercent(bearing, bearingEnd);
    if (place === null) throw new RangeError(`bearing: lies beyond the axis (got ${bearing}, end ${bearingEnd})`);
    return place;
  };
  const y = (value: number): number => round(height * (1 - Math.min(1, value / valueEnd)));
  const signs = points.flatMap(({ bearing, mark }) => {
    const how = mark.taught ? { taught: true as const } : {};
    const sign = (kind: BearingSign, value: number) => ({ sign: kind, x: x(bearing), y: y(value), ...how });
    if (mark.kind === 'pulls') return mark.broken.map((value) => sign('pull', value));
    if (mark.kind === 'mean') return [sign('mean', mark.at)];
    if (mark.kind === 'one') return [sign('one', mark.at)];
    throw new RangeError(`point: a ${mark.kind} has no single place in this chart`);
  });
  const stretch = (a: number, b: number) => (b > a ? [{ from: x(a), width: round(x(b) - x(a)) }] : []);
  const bearings = points.map(({ bearing }) => bearing);
  // Each test speaks for its own bearing alone; a table of the trade speaks from its first step to its last.
  const ends = same > 0 ? [...new Set(bearings)].sort((a, b) => a - b).map((bearing) => [bearing - same, bearing + same] as const) : [[Math.min(...bearings), Math.max(...bearings)] as const];
  const starts = [0, ...ends.map(([, to]) => Math.min(to, bearingEnd))];
  const stops = [...ends.map(([from]) => Math.max(0, from)), bearingEnd];
  const untested = bearings.length === 0 ? [{ from: 0, width: 100 }] : starts.flatMap((from, k) => stretch(from, stops[k] as number));
  const path = line?.map(([bearing, value], i) => `${i === 0 ? 'M' : 'L'}${x(bearing)} ${round((100 * y(value)) / height)}`).join('') ?? null;
  return { signs, untested, line: path, rows: values.map((value) => ({ y: y(value), value })) };
}
