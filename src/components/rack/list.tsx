/** The rack as a list: what is due first, grouped by what has to be done. Each name leads to its item. */
import type { Due } from '../../rack/due.ts';
import { itemName, itemText } from '../../rack/item-words.ts';
import type { Item } from '../../rack/types.ts';
import type { Headline, Reason } from '../../retirement/verdict.ts';
import { dayWords, headlineWords } from '../retirement/words.ts';
import type { RackSetup } from './setup.ts';
import { openText, ruleName } from './words.ts';

/** Rows of a group that are shown before the reader asks for more. */
export const ROWS_AT_ONCE = 100;

export const GROUPS = ['now', 'look', 'later'] as const;
export type GroupName = (typeof GROUPS)[number];
const TITLES: Readonly<Record<GroupName, string>> = { now: 'Retire now', look: 'Inspect before the next use', later: 'Due later, by day' };

/** The group of a verdict. */
export function groupOf(verdict: Headline | null, on: string): GroupName {
  if (verdict?.kind === 'retire-now') return 'now';
  return verdict?.kind === 'inspect-by' && verdict.day <= on ? 'look' : 'later';
}

/** A day as a `<time>`. */
export const Day = ({ day }: { day: string }) => <time dateTime={day}>{dayWords(day)}</time>;

/** What has to be done, with its day. */
export function HeadlineView({ of, on }: { of: Headline; on: string }) {
  const { says, day } = headlineWords(of, on);
  return <b>{says}{day && [' ', <Day key="day" day={day} />]}</b>;
}

/** Address of an item's view on this page. */
export const itemHash = (id: string): string => `#item-${id}`;

/** Several alike as "3 of them"; nothing for one. */
export const Count = ({ of }: { of: number }) => (of > 1 ? <span class="count" data-input> {of} of them</span> : null);

interface RowProps { item: Item; reasons: readonly Reason[]; on: string; rules: RackSetup['rules'] }

/** One item. Its second line is the strictest reason, and the earliest day on which it has to be retired. */
function Row({ item, reasons, on, rules }: RowProps) {
  const [first] = reasons;
  const retire = first?.asks.kind === 'inspect-by' ? reasons.find(({ asks }) => asks.kind === 'retire-by') : undefined;
  return (
    <li class="row">
      <span class="name"><a href={itemHash(item.id)} id={`row-${item.id}`} data-input>{itemName(item)}</a><Count of={item.count} /></span>
      <span class="sling" data-input>{itemText(item)}</span>
      {first && (
        <span class="due">
          <HeadlineView of={first.asks} on={on} />
          <span class="why">
            {ruleName(first, rules)}
            {first.unknown.length > 0 && <span class="soft"> (not known: {openText(first.unknown)})</span>}.
            {retire && <> <HeadlineView of={retire.asks} on={on} />.</>}
          </span>
        </span>
      )}
    </li>
  );
}

export interface ListProps {
  due: readonly Due[];
  reasonsOf: (item: Item) => readonly Reason[];
  on: string;
  rules: RackSetup['rules'];
  shown: Readonly<Record<GroupName, number>>;
  onMore: (group: GroupName) => void;
}

/** The groups of the list; a group without an item says nothing. */
export function RackList({ due, reasonsOf, on, rules, shown, onMore }: ListProps) {
  return (
    <>
      {GROUPS.map((group) => {
        const rows = due.filter(({ verdict }) => groupOf(verdict, on) === group);
        const left = rows.length - shown[group];
        return rows.length === 0 ? null : (
          <section key={group} class={`group ${group}`}>
            <h3>{TITLES[group]} <span class="count" data-input>{rows.length}</span></h3>
            <ol class="rows">{rows.slice(0, shown[group]).map(({ item }) => <Row key={item.id} item={item} reasons={reasonsOf(item)} on={on} rules={rules} />)}</ol>
            {left > 0 && <p><button type="button" onClick={() => onMore(group)}>Show <span data-input>{Math.min(left, ROWS_AT_ONCE)}</span> more of <span data-input>{left}</span></button></p>}
          </section>
        );
      })}
    </>
  );
}
