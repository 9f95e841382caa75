/** Drawings inside a row's cell: dots, lines and test pulls; the strip of what breaks first; the axis of a divider. */
import {
  AXIS_END_KN, BASELINE, DOT, dotsPath, LANE_WIDTH, placeDots, placeOf, STRIP_HEIGHT, stripLetterPlaces, stripPaths, ticksPath,
} from '../../charts/lane.ts';
import type { Row } from '../../strength/types.ts';
import { force, forceNumber, line } from '../../strength/wording.ts';
import { Kept } from './kept.tsx';
import type { Frame } from './setup.ts';

/** Upright line at a force, or nothing where it lies beyond the axis. */
function Upright({ kn, name, height }: { kn: number; name: string; height: number }) {
  return kn > AXIS_END_KN ? null : <path class={name} d={`M${placeOf(kn)} 0V${height}`} />;
}

/** Twenty dots at their force: filled above the line that counts, open below it; test pulls as ticks under them. */
export function Lane({ row, frame }: { row: Row; frame: Frame }) {
  const { ratingKn, demandKn, unit } = frame;
  const counted = demandKn ?? ratingKn;
  const places = placeDots(row.dots);
  const below = places.filter(({ kn }) => counted !== null && kn <= counted);
  const above = places.filter(({ kn }) => counted === null || kn > counted);
  const belowPath = dotsPath(below);
  const ticks = ticksPath(row.ticks.flatMap((one) => one.kn));
  const most = Math.max(0, ...row.dots, ...row.ticks.flatMap((one) => one.kn));
  return (
    <svg class="lane" viewBox={`0 0 ${LANE_WIDTH} 52`} aria-hidden="true">
      <path class="base" d={`M0 ${BASELINE}H${LANE_WIDTH}`} />
      <Upright kn={frame.upper.kn} name="upper" height={52} />
      {ratingKn !== null && <Upright kn={ratingKn} name="rating" height={52} />}
      {demandKn !== null && <Upright kn={demandKn} name="demand" height={52} />}
      {above.length > 0 && <path class="dots" stroke-width={DOT} d={dotsPath(above)} />}
      {belowPath && <path class="dots below" stroke-width={DOT} d={belowPath} />}
      {belowPath && <path class="dots hole" stroke-width={DOT - 4} d={belowPath} />}
      {ticks && <path class="ticks" d={ticks} />}
      {most > AXIS_END_KN && <text class="beyond" x={LANE_WIDTH - 4} y="14">{`${force(most, unit)} \u25b6`}</text>}
    </svg>
  );
}

const CELLS = `M0 .5H600M0 29.5H600${Array.from({ length: 21 }, (_, i) => `M${i === 20 ? 599.5 : i * 30 + 0.5} 0V30`).join('')}`;

/** Twenty cells, one for each rig of twenty: which link goes first. */
export function Strip({ strip }: { strip: string }) {
  return (
    <svg class="strip" viewBox={`0 0 ${LANE_WIDTH} ${STRIP_HEIGHT}`} aria-hidden="true">
      <path class="cells" d={CELLS} />
      {stripPaths(strip).map(({ letter, d }) => <path key={letter} class={`kind-${letter}`} d={d} />)}
      <text x={stripLetterPlaces(strip)} y="17">{strip}</text>
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
          <Upright kn={kn} name={name} height={22} />
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
