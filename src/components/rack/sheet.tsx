/** The rack on paper: each item a line with what is due and boxes to tick. Drawn only while the page is printed. */
import type { Due } from '../../rack/due.ts';
import { itemName, itemText } from '../../rack/item-words.ts';
import type { Item } from '../../rack/types.ts';
import type { Reason } from '../../retirement/verdict.ts';
import { Day, HeadlineView } from './list.tsx';
import type { RackSetup } from './setup.ts';
import { ruleName } from './words.ts';

export interface SheetProps { due: readonly Due[]; reasonsOf: (item: Item) => readonly Reason[]; on: string; rules: RackSetup['rules']; invented: string | null }

/** The sheet. */
export function Sheet({ due, reasonsOf, on, rules, invented }: SheetProps) {
  return (
    <section class="sheet">
      <h2>Rack register, as of <Day day={on} /></h2>
      {invented && <p><b>Invented example.</b> {invented}</p>}
      <p>The maker’s instruction comes first. What is not known counts against the sling. No sheet sees what an inspection misses.</p>
      <table>
        <thead><tr><th scope="col">Device</th><th scope="col">Rating, sling</th><th scope="col">What is due</th><th scope="col">Nothing found</th><th scope="col">Found something</th><th scope="col">Retired</th><th scope="col">Day, by</th></tr></thead>
        <tbody>
          {due.map(({ item, verdict }) => {
            const [first] = reasonsOf(item);
            return (
              <tr key={item.id}>
                <th scope="row" data-input>{itemName(item)}{item.count > 1 && ` (${item.count} of them)`}</th>
                <td data-input>{itemText(item)}</td>
                <td>{verdict && <HeadlineView of={verdict} on={on} />}{first && <>. {ruleName(first, rules)}{first.unknown.length > 0 && ' (not known)'}</>}</td>
                <td class="box">☐</td><td class="box">☐</td><td class="box">☐</td><td class="write" />
              </tr>
            );
          })}
        </tbody>
      </table>
      {invented && <p><b>Invented example.</b> Not a rack that anybody climbs on.</p>}
    </section>
  );
}
