/** What a link showed when it was made, where that was with older evidence or another model. Loaded for such a link alone. */
import { render } from 'preact';
import { thenOf } from '../links/then.ts';
import { ThenPart } from '../components/comparator/then-part.tsx';
import type { ThenIndex, ThenVersion } from '../build/versions/then.ts';
import type { ShownComparison } from './beside.tsx';

const NOTE = 'then-note';
/** The newest comparison: an answer that arrives for an earlier one is dropped. */
let newest: ShownComparison | null = null;

async function read<Read>(address: string): Promise<Read> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.json();
}

/** Shows the part for an older link, and takes it away for any other question. */
export async function showThen(shown: ShownComparison): Promise<void> {
  newest = shown;
  const root = document.getElementById('then-root');
  const { state: { older, comparison }, props: { setup, evidence } } = shown;
  if (!root) return;
  root.hidden = !older;
  document.getElementById(NOTE)?.remove();
  if (!older) return render(null, root);
  let content = <p>That did not arrive. Load the page again.</p>;
  try {
    const index = await read<ThenIndex>((document.querySelector('[rel=prefetch]') as HTMLLinkElement).href.replace('/evidence', '/then'));
    const known = index.versions.find(({ version }) => version === older.d);
    const then = known && (older.m === null || known.model === older.m) ? await read<ThenVersion>(`${setup.base}compare/${known.file}`) : null;
    content = <ThenPart asked={older} index={index} told={then && thenOf(then, index, comparison)} evidence={evidence} base={setup.base} />;
  } catch (fault) {
    console.error(fault);
  }
  if (newest !== shown) return;
  render(<><h2 id="then">When this link was made</h2>{content}</>, root);
  const note = document.createElement('p');
  note.id = NOTE;
  render(<a href="#then">Made with older evidence: what it showed stands below the table</a>, note);
  document.getElementById('results-root')?.before(note);
}

addEventListener('comparison-shown', (event) => {
  const { detail } = event as CustomEvent<ShownComparison>;
  // A question without an older link is not handed over.
  if (!detail.state.older) showThen(detail);
});
