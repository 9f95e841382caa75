/** A fall as a drawing to scale: wall, belayer, pieces, the climber before and at the lowest, and how far each part of the way is. */
import { apart, type FallScene, type Place } from '../../charts/fall-scene.ts';
import { metres } from './words.ts';

interface Props {
  scene: FallScene;
  /** Lengths that stand beside it, m. */
  aboveM: number;
  ropeOutM: number;
  spansM: Readonly<Record<'fall' | 'stretch' | 'slip', number>>;
  isOntoBelay: boolean;
  /** The whole in words, read out with the drawing. */
  title: string;
}

const DIMENSIONS = 250;
const SPAN_WORDS = { fall: 'fall', stretch: 'stretch', slip: 'slip' } as const;
const at = (value: number): string => value.toFixed(1);
const line = (places: readonly Place[]): string => `M${places.map(({ x, y }) => `${at(x)} ${at(y)}`).join('L')}`;

/** A person whose knot, or belay device, is at a place. No size of theirs is to scale. */
function Person({ x, y, kind }: Place & { kind: 'before' | 'after' | 'belayer' }) {
  return <path class={`person ${kind}`} d={`M${at(x)} ${at(y - 17)}m-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0M${at(x)} ${at(y - 12)}V${at(y + 2)}l-5 13m5-13l5 13M${at(x - 8)} ${at(y - 4)}l8 -5l8 5`} />;
}

/** The drawing. */
export function FallDrawing({ scene, aboveM, ropeOutM, spansM, isOntoBelay, title }: Props) {
  const { width, height, rope, belayer, pieces, before, after, spans, bar } = scene;
  const [top, ...others] = pieces;
  // The last place of the rope is the belayer's; where all rope is in the climber's part, all pieces are one.
  const lower = top && belayer.y - top.y > 1 ? others : [];
  const stop = top ?? belayer;
  const hung = isOntoBelay ? belayer : stop;
  const edge = Math.min(...rope.map(({ x }) => x)) - 16;
  const left: [wanted: number, words: string][] = [
    [before.y, 'climber'],
    ...(aboveM > 0 ? [[0.5 * (before.y + stop.y), `${metres(aboveM)} above`] as [number, string]] : []),
    ...(top ? [[top.y, 'top piece'] as [number, string]] : []),
    ...lower.map(({ y }): [number, string] => [y, 'piece']),
    ...(top ? [[0.5 * ((lower.at(-1) ?? top).y + belayer.y), `${metres(ropeOutM)} of rope`] as [number, string]] : []),
    [belayer.y, isOntoBelay ? 'belay' : 'belayer'],
  ];
  const last = height - 8;
  const leftAt = apart(left.map(([y]) => y + 4), 16, last);
  const rightAt = apart(spans.map(({ from, to }) => 0.5 * (from + to) + 4), 16, last);
  return (
    <svg class="fall-drawing" viewBox={`0 0 ${width} ${at(height)}`} role="img" aria-labelledby="fall-drawing-title">
      <title id="fall-drawing-title" data-working="sources">{title}</title>
      <path class="wall" d={`M${at(edge + 2)} 0H${DIMENSIONS - 12}V${at(height)}H${at(edge + 2)}z`} />
      <path class="guide" d={`M${at(before.x)} ${at(before.y)}H${DIMENSIONS + 5}${spans.map(({ to }) => `M${at(after.x)} ${at(to)}H${DIMENSIONS + 5}`).join('')}`} />
      {aboveM > 0 && <path class="rope was" d={line([stop, before])} />}
      {/* Over the piece and down, to where the climber hangs. */}
      <path class="rope" d={`${line(rope)}M${at(hung.x)} ${at(hung.y)}Q${at(after.x)} ${at(hung.y - 6)} ${at(after.x)} ${at(Math.min(hung.y + 16, after.y))}V${at(after.y)}`} />
      {!isOntoBelay && <path class="stance" d={`M${at(belayer.x - 18)} ${at(belayer.y + 17)}h36`} />}
      <Person {...belayer} kind="belayer" />
      <Person {...before} kind="before" />
      <Person {...after} kind="after" />
      {lower.map(({ x, y }, i) => <circle key={i} class="piece" cx={at(x)} cy={at(y)} r="4" />)}
      {top && <circle class="piece top" cx={at(top.x)} cy={at(top.y)} r="6" />}
      {spans.map(({ name, from, to }) => <path key={name} class={`span ${name}`} d={`M${DIMENSIONS} ${at(from)}V${at(to)}`} />)}
      {spans.map(({ name }, i) => <text key={name} x={DIMENSIONS + 9} y={at(rightAt[i] as number)} data-working="sources">{SPAN_WORDS[name]} {metres(spansM[name])}</text>)}
      {left.map(([, words], i) => <text key={i} x={at(edge - 4)} y={at(leftAt[i] as number)} text-anchor="end" data-input>{words}</text>)}
      <text x={at(after.x)} y={at(after.y + 28)} text-anchor="middle">lowest</text>
      <text x={DIMENSIONS - 18} y="15" text-anchor="end" class="soft-text">wall</text>
      <path class="bar" d={`M${DIMENSIONS + 9} ${at(height - 14)}v6h${at(bar.length)}v-6`} />
      <text x={DIMENSIONS + 9} y={at(height - 18)} data-axis>{metres(bar.metres)}</text>
    </svg>
  );
}
