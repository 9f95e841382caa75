/**
 * Pulls as ticks with the letter of what broke, twenty dots for the next pulls, and lower bounds, on one axis from nothing.
 * A lower limit is a dashed tick with a plus sign. How many dots lie beyond the axis is said at its end. The ticks of the axis are given, so that build and browser can each choose them.
 */
import { type Analysis, isNone } from '../../break-tests/analysis.ts';
import type { Pull } from '../../break-tests/pulls.ts';
import { type ForcePrinter, forcePrinter, modeLetters, percent } from './words.ts';

const [WIDTH, LEFT, RIGHT] = [400, 10, 18];
const [LETTER, DOT, LINE] = [17, 9, 14];

interface Props {
  readonly pulls: readonly Pull[];
  readonly analysis: Analysis;
  readonly unit: string;
  /** Ticks of the axis, from 0; the last is its end. */
  readonly ticks: readonly number[];
  /** Numbers of the reader, or invented. */
  readonly isOwn: boolean;
  /** What the drawing shows, in a sentence. */
  readonly title: string;
  /** Makes the ids of several drawings on one page differ. */
  readonly id?: string;
}

/** Where a mark stands, and how many marks it is stacked on. */
interface Placed { readonly x: number; readonly level: number }

/** Marks of one width laid side by side; where two would touch, the later stands on the earlier. */
export function stacked(xs: readonly number[], width: number): Placed[] {
  const tops: number[] = [];
  return xs.map((x) => {
    let level = tops.findIndex((last) => x - last >= width);
    if (level < 0) level = tops.length;
    tops[level] = x;
    return { x, level };
  });
}

/** The largest force that the drawing has to show; dots far out become arrows. */
export function reachOf(pulls: readonly Pull[], analysis: Analysis): number {
  const most = Math.max(...pulls.map(({ force }) => force));
  return isNone(analysis.dots) ? most : Math.max(most, Math.min(analysis.dots.forces.at(-1) as number, 1.3 * most));
}

const at = (x: number): string => x.toFixed(1);

function PullLane({ pulls, letters, x, top, print, mark }: { pulls: readonly Pull[]; letters: ReadonlyMap<string, string>; x: (force: number) => number; top: number; print: ForcePrinter; mark: object }) {
  const order = [...pulls].sort((a, b) => a.force - b.force);
  const placed = stacked(order.map(({ force }) => x(force)), LETTER);
  const height = 1 + Math.max(...placed.map(({ level }) => level));
  const base = top + height * LINE;
  return (
    <g class="pulls">
      {order.map(({ force, atLeast, mode }, i) => {
        const { x: place, level } = placed[i] as Placed;
        return (
          <g key={i}>
            <title {...mark}>{`${atLeast ? 'at least ' : ''}${print.force(force)}${mode ? `, ${mode}` : ''}`}</title>
            <path class={atLeast ? 'tick limit' : 'tick'} d={`M${at(place)} ${base}v16`} />
            {(letters.has(mode) || atLeast) && <text x={at(place)} y={base - 3 - level * LINE} text-anchor="middle">{letters.get(mode)}{atLeast && '+'}</text>}
          </g>
        );
      })}
    </g>
  );
}

/** Height of a lane of stacked marks. */
const lanes = (xs: readonly number[], width: number, line: number): number => (1 + Math.max(0, ...stacked(xs, width).map(({ level }) => level))) * line;

export function BreaksChart({ pulls, analysis, unit, ticks, isOwn, title, id = 'breaks' }: Props) {
  const print = forcePrinter(analysis.summary, unit);
  const mark = isOwn ? { 'data-input': true } : {};
  const letters = modeLetters(isNone(analysis.modes) ? null : analysis.modes);
  const end = ticks.at(-1) as number;
  const x = (force: number): number => LEFT + (force / end) * (WIDTH - LEFT - RIGHT);
  const dots = isNone(analysis.dots) ? [] : analysis.dots.forces;
  const shown = dots.filter((force) => force <= end);
  const bounds = analysis.bounds.flatMap(({ pair, lognormal }) => (isNone(lognormal) ? [] : [{ pair, bound: lognormal.bound }])).sort((a, b) => a.bound - b.bound);
  const pullTop = 16;
  const pullHeight = lanes([...pulls].map(({ force }) => x(force)).sort((a, b) => a - b), LETTER, LINE) + 18;
  const dotTop = pullTop + pullHeight + 22;
  const dotHeight = dots.length > 0 ? lanes(shown.map(x), DOT, DOT) : 0;
  const boundTop = dots.length > 0 ? dotTop + dotHeight + 20 : pullTop + pullHeight + 22;
  const places = stacked(bounds.map(({ bound }) => x(bound)), 34);
  const boundHeight = bounds.length > 0 ? 14 + (1 + Math.max(...places.map(({ level }) => level))) * LINE : 0;
  const axis = bounds.length > 0 ? boundTop + boundHeight + 4 : boundTop - 14;
  const height = axis + 34;
  return (
    <svg class="breaks-chart" viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-labelledby={`${id}-drawn`}>
      <title id={`${id}-drawn`} {...mark}>{title}</title>
      {ticks.map((tick) => (
        <g key={tick}><path class="grid" d={`M${at(x(tick))} 4V${axis}`} /><text class="axis" x={at(x(tick))} y={axis + 15} text-anchor="middle" data-axis>{tick}</text></g>
      ))}
      <path class="axis-line" d={`M${LEFT} ${axis}H${WIDTH - RIGHT}`} />
      <text class="axis" x={WIDTH - RIGHT} y={axis + 30} text-anchor="end" data-axis>{unit}</text>
      <text class="lane-name" x={LEFT + 2} y={pullTop - 3}>Pulls</text>
      <PullLane pulls={pulls} letters={letters} x={x} top={pullTop} print={print} mark={mark} />
      {dots.length > 0 && <text class="lane-name" x={LEFT + 2} y={dotTop - 6}>Twenty next pulls</text>}
      <g class="dots">
        {stacked(shown.map(x), DOT).map(({ x: place, level }, i) => <circle key={i} cx={at(place)} cy={at(dotTop + dotHeight - 4 - level * DOT)} r="3.8" />)}
      </g>
      {dots.length > shown.length && <text x={WIDTH - RIGHT} y={dotTop - 6} text-anchor="end" {...mark}>{`${dots.length - shown.length} beyond \u2192`}</text>}
      {bounds.length > 0 && <text class="lane-name" x={LEFT + 2} y={boundTop - 6}>So many break above it: lower bounds</text>}
      <g class="bounds">
        {bounds.map(({ pair }, i) => {
          const { x: place, level } = places[i] as Placed;
          return (
            <g key={pair.coverage}>
              <path class="bound" d={`M${at(place)} ${boundTop}v12m0-6h7m-3.5-3.5 3.5 3.5-3.5 3.5`} />
              <text x={at(place)} y={boundTop + 24 + level * LINE} text-anchor="middle" {...mark}>{percent(pair.coverage)}</text>
            </g>
          );
        })}
      </g>
    </svg>
  );
}

/** The pulls as a table: the twin of the drawing. */
export function PullTable({ pulls, notes = [], unit, printed, letters, isOwn, caption }: {
  readonly pulls: readonly Pull[];
  readonly notes?: readonly string[];
  readonly unit: string;
  /** The same forces as printed, where in another unit. */
  readonly printed?: { readonly unit: string; readonly forces: readonly number[] };
  readonly letters: ReadonlyMap<string, string>;
  readonly isOwn: boolean;
  readonly caption: string;
}) {
  const mark = isOwn ? { 'data-input': true } : {};
  const has = { mode: pulls.some(({ mode }) => mode !== ''), link: pulls.some(({ link }) => link !== ''), note: notes.some((note) => note !== '') };
  return (
    <table class="stack pulls">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Pull</th><th scope="col">Force, {unit}</th>{printed && <th scope="col">As printed, {printed.unit}</th>}
          {has.mode && <th scope="col">How it broke</th>}{has.link && <th scope="col">Which part</th>}{has.note && <th scope="col">Note</th>}
        </tr>
      </thead>
      <tbody>
        {pulls.map(({ force, atLeast, mode, link }, i) => (
          <tr key={i}>
            <th scope="row" {...mark}>{i + 1}</th>
            <td data-label="Force" {...mark}>{atLeast && 'at least '}{printed ? Number(force.toPrecision(4)) : force}</td>
            {printed && <td data-label="As printed" {...mark}>{printed.forces[i]}</td>}
            {has.mode && <td data-label="How it broke" {...mark}>{letters.has(mode) && <b>{letters.get(mode)} </b>}{mode || 'not recorded'}</td>}
            {has.link && <td data-label="Which part" {...mark}>{link || 'not recorded'}</td>}
            {has.note && <td data-label="Note" {...mark}>{notes[i]}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
