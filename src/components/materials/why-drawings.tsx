/** Two drawings of why a sling weakens: fibres round a thick and a thin bearing, and a strand entering a knot. */

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

/** The knot: a loaded strand goes in under a strand that lies across it. */
export function KnotDrawing() {
  return (
    <svg viewBox="0 0 340 190" role="img" aria-label="A strand goes into an overhand knot. Where the loaded strand enters, it bends tightly and another strand presses across it. That place carries most.">
      <path class="sling" d="M12 96H118C150 96 158 60 190 52C226 43 246 66 240 92C234 120 200 136 172 128" />
      <path class="over" d="M148 118C132 104 136 70 166 52" />
      <path class="sling" d="M172 128C138 118 132 74 166 50C186 36 214 40 232 56" />
      <path class="over" d="M206 104L262 96" />
      <path class="sling" d="M150 108C176 112 206 102 328 96" />
      <path class="most" d="M104 96C126 96 138 92 148 80" />
      <text x="70" y="84">loaded strand</text>
      <text x="122" y="160">it breaks here first</text>
      <path d="M122 146V104" />
    </svg>
  );
}
