/** Two drawings of why a sling weakens: fibres round a thick and a thin bearing, and what lies on a strand inside a knot. */

/** A sling of three fibres over a round bearing. The outer one is drawn as the one that carries most where the bend is tight. */
function Over({ x, radius, isTight }: { x: number; radius: number; isTight: boolean }) {
  const top = 74;
  return (
    <g>
      <circle class="bar" cx={x} cy={top} r={radius} />
      {[5, 11, 17].map((gap, i) => {
        const r = radius + gap;
        return <path key={gap} class={isTight && i === 2 ? 'most' : 'sling'} d={`M${x - r} 150V${top}A${r} ${r} 0 0 1 ${x + r} ${top}V150`} />;
      })}
    </g>
  );
}

/** The bend: on a thick bar and on a thin wire. */
export function BendDrawing() {
  return (
    <svg viewBox="0 0 340 190" role="img" aria-label="A sling over a thick bar: all its fibres are about equally long. The same sling over a thin wire: the outer fibre has much the longer way and carries most.">
      <Over x={95} radius={38} isTight={false} />
      <Over x={262} radius={7} isTight />
      <text x="95" y="178">thick bar</text>
      <text x="262" y="178">thin wire</text>
    </svg>
  );
}

/** What happens inside a knot, without the rest of it: the loaded strand goes in under a strand that presses on it, and bends tightly round a third. */
export function KnotDrawing() {
  return (
    <svg viewBox="0 0 340 190" role="img" aria-label="Inside a knot. The loaded strand goes in under another strand that presses across it, and bends tightly round a third. There it carries most.">
      <circle class="bar" cx="222" cy="112" r="15" />
      <path class="sling" d="M10 88H222A24 24 0 0 1 222 136H150" />
      <path class="most" d="M168 88H222A24 24 0 0 1 246 112" />
      <path class="over" d="M182 46V150" />
      <path class="sling" d="M182 46V150" />
      <path d="M12 88L24 81M12 88L24 95" />
      <text x="76" y="76">loaded strand</text>
      <text x="182" y="36">lies across and presses</text>
      <text x="284" y="92">tight bend</text>
      <text x="170" y="178">in a knot</text>
    </svg>
  );
}
