/** Several items from pasted lines. What is understood is shown before it is added; what is not stays in the box, word for word. */
import { itemName, itemText } from '../../rack/item-words.ts';
import type { PastedLine } from '../../rack/paste.ts';
import { readPasted } from '../../rack/paste.ts';
import { drafted } from '../../rack/register.ts';
import type { ItemDraft } from '../../rack/types.ts';

/** Lines that are shown; the others are counted. */
const MOST_SHOWN = 200;

export interface AddProps { text: string; onText: (text: string) => void; onAdd: (drafts: readonly ItemDraft[], left: string) => void }

const lines = (n: number): string => (n === 1 ? 'line' : 'lines');

/** The view. */
export function AddView({ text, onText, onAdd }: AddProps) {
  const read = readPasted(text);
  const good = read.filter((one): one is PastedLine & { kind: 'item' } => one.kind === 'item');
  const bad = read.filter((one): one is PastedLine & { kind: 'not-understood' } => one.kind === 'not-understood');
  const more = (n: number) => n > MOST_SHOWN && <li>and <span data-input>{n - MOST_SHOWN}</span> more</li>;
  return (
    <section class="add">
      <p><a href="#rack">Back to the rack</a></p>
      <h2 id="add-title" tabIndex={-1}>Add several</h2>
      <label for="in-lines">One line for each: rating, sling, made, count. A name may stand first. Write <q>?</q> for what you do not know.</label>
      <textarea id="in-lines" rows={7} value={text} onInput={({ currentTarget }) => onText(currentTarget.value)} />
      <p class="hint" data-input>For example: Red small; 12 kN; HMPE 10 mm; 2019-04; 3</p>
      {bad.length > 0 && (
        <div class="not-understood">
          <h3><span data-input>{bad.length}</span> {lines(bad.length)} not understood</h3>
          <p>Mend them in the box, or leave them there.</p>
          <ul>{bad.slice(0, MOST_SHOWN).map(({ line, text: words, why }) => <li key={line} data-input>line {line}: <q>{words}</q>: {why}</li>)}{more(bad.length)}</ul>
        </div>
      )}
      {good.length > 0 && (
        <div class="understood">
          <h3><span data-input>{good.length}</span> {lines(good.length)} understood</h3>
          <p><button type="button" class="main" onClick={() => onAdd(good.map(({ draft }) => draft), bad.map(({ text: words }) => words).join('\n'))}>Add {good.length === 1 ? 'this item' : <>these <span data-input>{good.length}</span> items</>}</button></p>
          <ul>
            {good.slice(0, MOST_SHOWN).map(({ line, draft }) => {
              const item = drafted(draft);
              return <li key={line} data-input><b>{itemName(item)}</b>: {itemText(item)}{item.count > 1 && `, ${item.count} of them`}</li>;
            })}
            {more(good.length)}
          </ul>
        </div>
      )}
    </section>
  );
}
