/** What each count of pulls gives, drawn; the table below it has the same numbers. */

export interface PlanPoint { readonly n: number; /** A share of one. */ readonly value: number; /** Give or take. */ readonly spread?: number }

interface Props {
  points: readonly PlanPoint[];
  /** The finding, read out with the drawing. */
  title: string;
  /** What stands on the upright axis. */
  label: string;
  /** What no number of pulls can pass, with its name. */
  limit?: { value: number; label: string };
  /** Pulls that are enough, marked where they are among the points. */
  needed: number | null;
}

const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = [470, 270, 46, 14, 30, 46];
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200];

/** The drawing: dots joined by a line, with what a series may differ by as bars. Axes begin at nothing. */
export function PlanChart({ points, title, label, limit, needed }: Props) {
  const most = points.at(-1)?.n ?? 1;
  const x = (n: number): string => (LEFT + (n / most) * (WIDTH - LEFT - RIGHT)).toFixed(1);
  const y = (share: number): string => (HEIGHT - BOTTOM - Math.min(Math.max(share, 0), 1) * (HEIGHT - TOP - BOTTOM)).toFixed(1);
  const step = STEPS.find((one) => most / one <= 8) ?? 200;
  // A bound below nothing is not drawn: it says nothing of a force.
  const drawn = points.filter(({ value }) => value >= 0);
  const marked = drawn.find(({ n }) => n === needed);
  return (
    <svg class="plan-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-labelledby="plan-chart-title">
      <title id="plan-chart-title" data-input>{title}</title>
      {[0, 0.2, 0.4, 0.6, 0.8, 1].map((tick) => (
        <g key={tick}><path class="grid" d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`} /><text x={LEFT - 6} y={Number(y(tick)) + 4} text-anchor="end" data-axis>{100 * tick}</text></g>
      ))}
      {Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step).map((n) => <text key={n} x={x(n)} y={HEIGHT - BOTTOM + 18} text-anchor="middle" data-axis>{n}</text>)}
      <text x={LEFT} y={HEIGHT - 6}>pulls</text>
      <text x={0} y={12}>{label}</text>
      {limit && limit.value > 0 && <><path class="limit" d={`M${LEFT} ${y(limit.value)}H${WIDTH - RIGHT}`} /><text x={WIDTH - RIGHT} y={Number(y(limit.value)) - 6} text-anchor="end">{limit.label}</text></>}
      <path class="spread" d={drawn.map(({ n, value, spread = 0 }) => (spread > 0 ? `M${x(n)} ${y(value - spread)}V${y(value + spread)}` : '')).join('')} />
      <path class="run" d={`M${drawn.map(({ n, value }) => `${x(n)} ${y(value)}`).join('L')}`} />
      {drawn.map(({ n, value }) => <circle key={n} class="dot" cx={x(n)} cy={y(value)} r="3.5" />)}
      {marked && <><circle class="enough" cx={x(marked.n)} cy={y(marked.value)} r="9" /><text x={x(marked.n)} y={Number(y(marked.value)) + (marked.value > 0.2 ? 26 : -16)} text-anchor="middle" data-input>{`${marked.n} pulls`}</text></>}
    </svg>
  );
}
