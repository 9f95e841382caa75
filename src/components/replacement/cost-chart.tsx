/** Cost against count, one line for each way, with the counts at which the cheapest way changes; and the same as a table. */
import type { CostCurves } from '../../replacement/answer.ts';
import type { Way } from '../../replacement/read-words.ts';
import { listed, type Printer, WAY_NAMES, WAY_WORDS } from './words.ts';

const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = [470, 316, 50, 134, 32, 46];
/** Line and mark of each way: told apart by shape and dashes, not by colour alone. */
const MARKS: Readonly<Record<Way, { mark: string; size: number }>> = {
  maker: { mark: 'M-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z', size: 4 },
  workshop: { mark: 'M-4-4H4V4H-4Z', size: 4 },
  new: { mark: 'M0-5 5 4H-5Z', size: 5 },
  home: { mark: 'M0-5 5 0 0 5-5 0Z', size: 5 },
};

/** Ticks from nothing to at least `most`: one, two or five times a power of ten apart, about five of them. */
export function costTicks(most: number): number[] {
  const rough = Math.max(most, 1e-6) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= rough * (1 - 1e-9)) as number);
  return Array.from({ length: Math.ceil(most / step - 1e-9) + 1 }, (_, i) => i * step);
}

/** The finding, as a sentence: which way is cheapest from which count on. */
export function cheapestSentence({ cheapest, ways }: CostCurves, printer: Printer): string {
  if (ways.length < 2) return 'With one price there is nothing to compare yet.';
  const [first, ...rest] = cheapest;
  if (!first) return '';
  const names = (some: readonly Way[]): string => listed(some.map((way) => WAY_WORDS[way]));
  const start = rest.length === 0 ? `At every count shown ${names(first.ways)} ${first.ways.length > 1 ? 'cost the same, and least' : 'costs least'}` : `For one device ${names(first.ways)} ${first.ways.length > 1 ? 'cost least' : 'costs least'}`;
  return `${[start, ...rest.map(({ count, ways: some }) => `from ${printer.count(count)} on ${names(some)}`)].join('; ')}.`;
}

/** The drawing. @param suffix makes ids of several drawings on one page differ */
export function CostChart({ curves, printer, suffix = '' }: { curves: CostCurves; printer: Printer; suffix?: string }) {
  const { ways, cheapest, count } = curves;
  const counts = ways[0]?.totals.length ?? 0;
  const ticks = costTicks(Math.max(...ways.flatMap(({ totals }) => totals)));
  const most = ticks.at(-1) as number;
  const x = (n: number): number => LEFT + ((n - 1) / Math.max(counts - 1, 1)) * (WIDTH - LEFT - RIGHT);
  const y = (cost: number): number => HEIGHT - BOTTOM - (most > 0 ? cost / most : 0) * (HEIGHT - TOP - BOTTOM);
  const at = (n: number): string => n.toFixed(1);
  const every = counts > 30 ? 10 : counts > 14 ? 5 : 1;
  // Labels at the ends of lines are moved apart, downwards from the highest.
  const labels = ways.map(({ way, totals }) => ({ way, y: y(totals.at(-1) as number) })).sort((a, b) => a.y - b.y);
  for (const [i, label] of labels.entries()) label.y = Math.max(label.y, (labels[i - 1]?.y ?? -Infinity) + 18);
  const over = (labels.at(-1)?.y ?? 0) - (HEIGHT - BOTTOM);
  if (over > 0) for (const label of labels) label.y -= over;
  const lineId = `cost-lines${suffix}`;
  return (
    <svg class="cost-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-labelledby={lineId}>
      <title id={lineId} data-input>{`Cost in all against the number of devices. ${cheapestSentence(curves, printer)}`}</title>
      {ticks.map((tick) => (
        <g key={tick}><path class="grid" d={`M${LEFT} ${at(y(tick))}H${WIDTH - RIGHT}`} /><text x={LEFT - 6} y={at(y(tick) + 4)} text-anchor="end" data-axis>{printer.count(tick)}</text></g>
      ))}
      {Array.from({ length: counts }, (_, i) => i + 1).filter((n) => n === 1 || n % every === 0).map((n) => <text key={n} x={at(x(n))} y={HEIGHT - BOTTOM + 18} text-anchor="middle" data-axis>{n}</text>)}
      <text x={LEFT} y={HEIGHT - 6}>devices</text>
      <text x={0} y={12}>cost in all</text>
      {count > 0 && count <= counts && <path class="mine" d={`M${at(x(count))} ${TOP}V${HEIGHT - BOTTOM}`} />}
      {count > 0 && count <= counts && <text x={at(x(count))} y={TOP - 3} text-anchor="middle">yours</text>}
      {ways.map(({ way, totals }) => (
        <g key={way} class={`way-${way}`}>
          <path class="run" d={`M${totals.map((cost, i) => `${at(x(i + 1))} ${at(y(cost))}`).join('L')}`} />
          {totals.map((cost, i) => ((i + 1) % every === 0 || i === 0) && <path key={i} class="mark" d={MARKS[way].mark} transform={`translate(${at(x(i + 1))} ${at(y(cost))})`} />)}
        </g>
      ))}
      {cheapest.slice(1).map(({ count: n, ways: some }) => {
        const cost = ways.find(({ way }) => way === some[0])?.totals[n - 1] as number;
        return <g key={n}><circle class="turn" cx={at(x(n))} cy={at(y(cost))} r="9" /><text x={at(x(n))} y={at(Math.min(y(cost) + 24, HEIGHT - BOTTOM - 4))} text-anchor="middle" data-input>{`from ${n}`}</text></g>;
      })}
      {labels.map(({ way, y: place }) => <text key={way} x={WIDTH - RIGHT + 10} y={at(place + 4)}>{WAY_NAMES[way]}</text>)}
    </svg>
  );
}

/** The same numbers as a table. */
export function CostTable({ curves: { ways }, printer, caption }: { curves: CostCurves; printer: Printer; caption: string }) {
  const counts = ways[0]?.totals.length ?? 0;
  return (
    <div class="scroll">
      <table>
        <caption>{caption}</caption>
        <thead><tr><th scope="col">Devices</th>{ways.map(({ way }) => <th key={way} scope="col" class="amount">{WAY_NAMES[way]}</th>)}</tr></thead>
        <tbody>
          {Array.from({ length: counts }, (_, i) => {
            const least = Math.min(...ways.map(({ totals }) => totals[i] as number));
            return (
              <tr key={i}>
                <th scope="row" data-input>{printer.count(i + 1)}</th>
                {ways.map(({ way, totals }) => {
                  const isLeast = (totals[i] as number) <= least * (1 + 1e-9);
                  return <td key={way} class="amount" data-input>{isLeast ? <b>{printer.money(totals[i] as number)} <span class="least">least</span></b> : printer.money(totals[i] as number)}</td>;
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
