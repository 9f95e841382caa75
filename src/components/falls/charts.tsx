/** Loads of a fall as ranges on one axis from nothing, and the pull over time. */
import { apart } from '../../charts/fall-scene.ts';
import { plainTicks } from '../../charts/plain-ticks.ts';
import type { Spread } from '../../falls/evidence.ts';
import type { TimeCourse } from '../../falls/time-course.ts';
import { kn, rangeWords } from './words.ts';

/** One load: its name, and its range in kN. */
export interface Load { name: string; kn: Spread }

const at = (value: number): string => value.toFixed(1);
const [WIDTH, LEFT, RIGHT, ROW] = [360, 6, 14, 46];

/** Ranges below each other: a bar from low to high, a dot at the middle. */
export function RangeChart({ loads, title }: { loads: readonly Load[]; title: string }) {
  const ticks = plainTicks(Math.max(...loads.map(({ kn: { high } }) => high)));
  const most = ticks.at(-1) as number;
  const x = (force: number): string => at(LEFT + (force / most) * (WIDTH - LEFT - RIGHT));
  const foot = loads.length * ROW + 4;
  return (
    <svg class="fall-chart" viewBox={`0 0 ${WIDTH} ${foot + 36}`} role="img" aria-labelledby="fall-ranges-title">
      <title id="fall-ranges-title" data-working="sources">{title}</title>
      <path class="grid" d={ticks.map((tick) => `M${x(tick)} 4V${foot}`).join('')} />
      {loads.map(({ name, kn: { low, middle, high } }, i) => {
        const y = i * ROW + 34;
        return (
          <g key={name}>
            <text x={LEFT} y={y - 14} data-working="sources"><tspan class="strong">{name}</tspan>{` ${rangeWords({ low, high })}, middle ${kn(middle)}`}</text>
            <path class="range" d={`M${x(low)} ${y}H${x(high)}M${x(low)} ${y - 6}v12M${x(high)} ${y - 6}v12`} />
            <circle class="dot" cx={x(middle)} cy={y} r="5.5" />
          </g>
        );
      })}
      {ticks.map((tick) => <text key={tick} x={x(tick)} y={foot + 15} text-anchor={tick === 0 ? 'start' : 'middle'} data-axis>{tick}</text>)}
      <text x={LEFT} y={foot + 32}>kN</text>
    </svg>
  );
}

const [TALL, UP, DOWN, SIDE] = [200, 22, 36, 78];

/** The pulls of the middle over time, from the start of the fall to the lowest point. */
export function TimeChart({ course, isOntoBelay, title }: { course: TimeCourse; isOntoBelay: boolean; title: string }) {
  const { moments, lowestAt } = course;
  const names = isOntoBelay ? ([['climberKn', 'the belay', 'stop']] as const) : ([['topPieceKn', 'top piece', 'stop'], ['climberKn', 'climber', 'climber'], ['belayerKn', 'belayer', 'belayer']] as const);
  const forces = plainTicks(Math.max(...names.flatMap(([key]) => moments.map((one) => one[key]))));
  const times = plainTicks(lowestAt).filter((tick) => tick <= lowestAt);
  const [most, left] = [forces.at(-1) as number, 30];
  const x = (seconds: number): string => at(left + (seconds / lowestAt) * (WIDTH - left - SIDE));
  const y = (force: number): number => TALL - DOWN - (force / most) * (TALL - UP - DOWN);
  const ends = names.map(([key]) => y((moments.at(-1) as (typeof moments)[number])[key]) + 4);
  const labels = apart(ends, 15, TALL - DOWN);
  return (
    <svg class="fall-chart" viewBox={`0 0 ${WIDTH} ${TALL}`} role="img" aria-labelledby="fall-time-title">
      <title id="fall-time-title" data-working="sources">{title}</title>
      <path class="grid" d={forces.map((tick) => `M${left} ${at(y(tick))}H${WIDTH - SIDE}`).join('')} />
      {forces.map((tick) => <text key={tick} x={left - 5} y={at(y(tick) + 4)} text-anchor="end" data-axis>{tick}</text>)}
      {times.map((tick) => <text key={tick} x={x(tick)} y={TALL - DOWN + 17} text-anchor="middle" data-axis>{tick}</text>)}
      <text x={0} y={12}>kN</text>
      <text x={left} y={TALL - 4}>seconds from letting go</text>
      {names.map(([key, name, kind], i) => (
        <g key={name}>
          <path class={`pull ${kind}`} d={`M${moments.map((one) => `${x(one.seconds)} ${at(y(one[key]))}`).join('L')}`} />
          <text x={WIDTH - SIDE + 6} y={at(labels[i] as number)}>{name}</text>
        </g>
      ))}
    </svg>
  );
}
