/** The load path of a rig as a row of links, the one that most often goes first marked by shape and by word. */

/** What a link of the drawing shows. */
export interface ChainLink { letter: string; isWeakest: boolean }

const STEP = 84;

/** Chain from the device on the left to the connector on the right. Decoration: the table below it says the same. */
export function ChainDrawing({ links }: { links: readonly ChainLink[] }) {
  const width = links.length * STEP + 28;
  return (
    <svg class="chain" viewBox={`0 0 ${width} 58`} width={width} height="58" aria-hidden="true">
      {links.map(({ letter, isWeakest }, i) => (
        <g key={`${letter}${i}`} transform={`translate(${i * STEP + 8} 0)`}>
          <rect class={isWeakest ? 'weak' : undefined} x="2" y="8" width={STEP - 4 + 12} height="26" rx="13" />
          <text x="48" y="26">{letter}</text>
          {isWeakest && <path class="mark" d="M48 36l7 10h-14z" />}
          {isWeakest && <text class="says" x="48" y="57">weak link</text>}
        </g>
      ))}
    </svg>
  );
}
