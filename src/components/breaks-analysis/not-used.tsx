/** Pieces of the link that were not used, word for word. */
export function NotUsed({ pieces }: { pieces: readonly { piece: string; why: string }[] }) {
  return (
    <>
      <p><b>Not understood in this link, and not used:</b></p>
      <ul>{pieces.map(({ piece, why }, i) => <li key={`${i}${piece}`}><code data-input>{piece}</code> <span data-input>({why})</span></li>)}</ul>
    </>
  );
}
