/** Drawings inside a row's cell: dots, lines and test pulls; the strip of what breaks first; the axis of a divider. */
import {
  AXIS_END_KN, BASELINE, DOT, dotsPath, LANE_WIDTH, placeDots, placeOf, STRIP_HEIGHT, stripLetters, stripPaths, ticksPath,
} from '../../charts/lane.ts';
import type { Row } from '../../strength/types.ts';
import { countAbove, force, forceNumber, line } from '../../strength/wording.ts';
import { Kept } from './kept.tsx';
import type { Frame } from './setup.ts';

/** Upright line at a force, or nothing where there is none or it lies beyond the axis. */
function upright(kn: number | null, name: string, height: number) {
  return kn === null || kn > AXIS_END_KN ? null : <path class={name} d={`M${placeOf(kn)} 0V${height}`} />;
}

/** The base of every lane: one and the same, so it is never compared again. */
const BASE = <path class="base" d={`M0 ${BASELINE}H${LANE_WIDTH}`} />;

/** The lowest dots are open, the others filled; test pulls as ticks under them. */
function marks(row: Row, countBelow: number, unit: Frame['unit']) {
  const places = placeDots(row.dots);
  const above = dotsPath(places.slice(countBelow));
  const below = dotsPath(places.slice(0, countBelow));
  const pulls = row.ticks.flatMap((one) => one.kn);
  const ticks = ticksPath(pulls);
  const most = Math.max(...row.dots, ...pulls);
  return (
    <>
      {above && <path class="dots" stroke-width={DOT} d={above} />}
      {below && <path class="dots below" stroke-width={DOT} d={below} />}
      {below && <path class="dots hole" stroke-width={DOT - 4} d={below} />}
      {ticks && <path class="ticks" d={ticks} />}
      {most > AXIS_END_KN && <text class="beyond" x={LANE_WIDTH - 4} y="14">{`${force(most, unit)} \u25b6`}</text>}
    </>
  );
}

/** Twenty dots at their force: filled above the line that counts, open below it. */
export function lane(row: Row, { ratingKn, demandKn, unit, upper }: Frame) {
  const counted = demandKn ?? ratingKn;
  const countBelow = counted === null ? 0 : row.dots.length - countAbove(row.dots, counted);
  return (
    <svg class="lane" viewBox={`0 0 ${LANE_WIDTH} 52`} aria-hidden="true">
      {BASE}
      {upright(upper.kn, 'upper', 52)}
      {upright(ratingKn, 'rating', 52)}
      {upright(demandKn, 'demand', 52)}
      <Kept of={[row.dots, row.ticks, countBelow, unit]}>{() => marks(row, countBelow, unit)}</Kept>
    </svg>
  );
}

const CELLS = <path class="cells" d={`M0 .5H600M0 29.5H600${Array.from({ length: 21 }, (_, i) => `M${i === 20 ? 599.5 : i * 30 + 0.5} 0V30`).join('')}`} />;

/** Twenty cells, one for each rig of twenty: which link goes first. */
export function strip(letters: string) {
  return (
    <svg class="strip" viewBox={`0 0 ${LANE_WIDTH} ${STRIP_HEIGHT}`} aria-hidden="true">
      {[CELLS, ...stripPaths(letters).map(({ letter, d }) => <path key={letter} class={`kind-${letter}`} d={d} />), <path key="letters" class="letters" d={stripLetters(letters)} />]}
    </svg>
  );
}

/** The axis: the same in every divider, from nothing to its fixed end. The rating and the demand are named on it. */
export function Axis({ frame }: { frame: Frame }) {
  const { unit, ratingKn, demandKn } = frame;
  const ticks = frame.ticks[unit];
  const marks = [
    ...(ratingKn === null ? [] : [{ kn: ratingKn, text: `rated ${unit === 'kN' ? ratingKn : forceNumber(ratingKn, unit)}`, name: 'rating' }]),
    ...(demandKn === null ? [] : [{ kn: demandKn, text: `must bear ${line(demandKn, unit)}`, name: 'demand' }]),
  ].sort((a, b) => a.kn - b.kn).filter(({ kn }) => kn <= AXIS_END_KN);
  return (
    <svg class="axis" viewBox={`0 0 ${LANE_WIDTH} 50`} aria-hidden="true" data-axis>
      {marks.map(({ kn, text, name }, i) => (
        <g key={name}>
          {upright(kn, name, 22)}
          {/* Of two marks the lower one is written to its left, so that the words never meet. */}
          <text class={marks.length === 2 && i === 0 ? 'to-left' : 'to-right'} x={placeOf(kn) + (marks.length === 2 && i === 0 ? -5 : 5)} y="19">{text}</text>
        </g>
      ))}
      <path class="base" d={`M0 49.5H${LANE_WIDTH}${ticks.map(({ kn }) => `M${Math.min(LANE_WIDTH - 0.5, Math.max(0.5, placeOf(kn)))} 44V50`).join('')}`} />
      <Kept of={[unit]}>{() => ticks.map(({ kn, text }, i) => (
        <text key={text} class={i === 0 ? 'first' : kn > AXIS_END_KN - 1 ? 'last' : undefined} x={placeOf(kn)} y="40">
          {i === ticks.length - 1 ? `${text} ${unit}` : text}
        </text>
      ))}</Kept>
    </svg>
  );
}
