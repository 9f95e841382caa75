/**
 * Geometry of the chart of all measured figures: one lane for each kind of rig, on an axis from 0. Numbers in, places
 * out. Places along the axis are percents of the lane's width, so that marks and letters keep their size on every
 * screen; places down the lane are pixels.
 */
import { scaleLinear } from 'd3-scale';

/** One figure on the axis. All numbers in the axis' unit; `n` is the number of pulls, null where the source does not say. */
export type Mark = (
  /** Every pull by itself; `held` are pulls in which something else gave way first. */
  | { kind: 'pulls'; broken: readonly number[]; held: readonly number[] }
  | { kind: 'mean'; at: number; n: number | null }
  /** One number of which the source says no more. */
  | { kind: 'one'; at: number }
  | { kind: 'range'; low: number; high: number; n: number | null }
  | { kind: 'atLeast' | 'atMost'; at: number; n: number | null }
) & {
  /** A rule or a range used in teaching: drawn lighter than what was measured. */
  taught?: true;
};

/** An axis from 0: its end, and where its ticks stand, in percent. */
export interface Axis { end: number; ticks: { at: number; text: string }[] }

/** A sign that stands at one place: a tick of a pull, a dot, a diamond, an arrow. */
export type Sign = 'pull' | 'held' | 'mean' | 'one' | 'atLeast' | 'atMost';

/** What is drawn of a lane, lines of marks from the top. */
export interface Lane {
  /** Pixels. */
  height: number;
  signs: { sign: Sign; at: number; y: number; taught?: true }[];
  /** `joins`: the thin line through the pulls of one series. `range`: from lowest to highest. */
  bars: { kind: 'joins' | 'range'; from: number; width: number; y: number; taught?: true }[];
  /** Numbers of pulls, and what lies beyond the axis. */
  texts: { text: string; at: number; y: number; beside: 'sign' | 'arrow' | 'end' }[];
}

/** Height of one line of marks, and of the room above the first and below the last, px. */
export const LINE = 15;
const ROOM = 3;
/** The narrowest lane of a whole line of the page that a reader sees, px: marks are stacked so that they never meet there. */
const NARROWEST = 300;
/** Room that a sign takes to each side of its place, and a letter to its right, px. */
const HALF_SIGN = 6;
const ARROW = 16;
const LETTER = 7;
const GAP = 4;

/**
 * Axis from 0 that ends at a round number at or above the largest, yet not above `most`: a few far values would crush the
 * others. Throws RangeError where `largest` is not above 0.
 * @param count of ticks, about
 */
export function axisFor(largest: number, most: number, count = 5): Axis {
  if (!(largest > 0)) throw new RangeError(`axisFor: largest must be above 0 (got ${largest})`);
  const scale = scaleLinear().domain([0, Math.min(largest, most)]).nice(count);
  const end = scale.domain()[1] as number;
  return { end, ticks: scale.ticks(count).map((value) => ({ at: percent(value, end), text: String(value) })) };
}

/** Place on the axis, percent to one decimal; never beyond its end. */
function percent(value: number, end: number): number {
  if (!(value >= 0)) throw new RangeError(`figures chart: a number must not be negative (got ${value})`);
  return Math.round(1000 * Math.min(1, value / end)) / 10;
}

/** Lowest and highest number of a mark. */
function span(mark: Mark): [number, number] {
  if (mark.kind === 'pulls') {
    const all = [...mark.broken, ...mark.held];
    if (all.length === 0) throw new RangeError('figures chart: a series of pulls has none');
    return [Math.min(...all), Math.max(...all)];
  }
  return mark.kind === 'range' ? [mark.low, mark.high] : [mark.at, mark.at];
}

/** The largest number of some marks. */
export function largestOf(marks: readonly Mark[]): number {
  return Math.max(...marks.map((mark) => span(mark)[1]));
}

const countOf = (mark: Mark): string => (mark.kind === 'pulls' || mark.kind === 'one' || mark.n === null ? '' : String(mark.n));

/** Room that a mark takes on the narrowest lane, in pixels from the lane's left end. */
function footprint(mark: Mark, end: number, narrowest: number): [number, number] {
  const [low, high] = span(mark).map((value) => (percent(value, end) * narrowest) / 100) as [number, number];
  const left = mark.kind === 'atMost' ? ARROW : HALF_SIGN;
  const right = mark.kind === 'atLeast' || (mark.kind === 'pulls' && mark.held.length > 0) ? ARROW : HALF_SIGN;
  const count = countOf(mark);
  return [low - left, high + right + (count === '' ? 0 : LETTER * count.length)];
}

/**
 * Lays out one lane: every mark on the first line on which it meets no other.
 * @param narrowest width of the lane where it is narrowest, px
 */
export function laneOf(marks: readonly Mark[], { end }: Axis, narrowest = NARROWEST): Lane {
  const lane: Lane = { height: 0, signs: [], bars: [], texts: [] };
  const lastOn: number[] = [];
  const placed = marks.map((mark) => ({ mark, room: footprint(mark, end, narrowest) })).sort((a, b) => a.room[0] - b.room[0] || a.room[1] - b.room[1]);
  for (const { mark, room: [left, right] } of placed) {
    let line = lastOn.findIndex((last) => left - last >= GAP);
    if (line < 0) line = lastOn.length;
    lastOn[line] = right;
    draw(lane, mark, end, ROOM + LINE * line + LINE / 2);
  }
  lane.height = 2 * ROOM + LINE * Math.max(1, lastOn.length);
  return lane;
}

/** Adds the parts of one mark, centred on the height `y`. */
function draw(lane: Lane, mark: Mark, end: number, y: number): void {
  const [low, high] = span(mark);
  const from = percent(low, end);
  const to = percent(high, end);
  const how = mark.taught ? { taught: true as const } : {};
  if (mark.kind === 'pulls') {
    if (to > from) lane.bars.push({ kind: 'joins', from, width: round(to - from), y });
    for (const value of mark.broken) if (value <= end) lane.signs.push({ sign: 'pull', at: percent(value, end), y });
    for (const value of mark.held) if (value <= end) lane.signs.push({ sign: 'held', at: percent(value, end), y });
  } else if (mark.kind === 'range') lane.bars.push({ kind: 'range', from, width: round(to - from), y, ...how });
  else if (mark.at <= end) lane.signs.push({ sign: mark.kind, at: from, y, ...how });
  if (high > end) lane.texts.push({ text: `${high} \u25b6`, at: 100, y, beside: 'end' });
  else if (countOf(mark) !== '') lane.texts.push({ text: countOf(mark), at: to, y, beside: mark.kind === 'atLeast' ? 'arrow' : 'sign' });
}

const round = (value: number): number => Math.round(10 * value) / 10;
