/**
 * Two copies of one register made one. For each field, a value that the other copy has seen and replaced gives way. Where
 * both copies set a field and neither had seen the other's edit, equal values are one, and different ones are the reader's to
 * choose. No clock decides anything.
 */
import type { FieldKey } from './field-names.ts';
import { fieldOf, fieldsOf, sameValue, withField } from './fields.ts';
import { isUntouched, later, sortedById } from './register.ts';
import { ITEM_SCHEMA } from './schema.ts';
import { inOrder } from './shape.ts';
import { hasSeen, nextStamp, partsOfStamp, seenByEither, stampsOf, withStamps, writeStamps } from './stamps.ts';
import type { By, Item, Register } from './types.ts';

/** A field that both copies changed apart from each other. For `removed`, one copy took the item off and the other went on editing it. */
export interface Conflict {
  item: string;
  /** Names of the item in the two copies, and when it was last edited there; empty where the other does not say. */
  names: { mine: string; theirs: string };
  changed: { mine: string; theirs: string };
  field: FieldKey;
  mine: unknown;
  theirs: unknown;
}
export type Choice = 'mine' | 'theirs';

/** A merge, or why there can be none. Nothing is decided before `settled` is called with a choice for each conflict, in their order. */
export type Merge =
  | { ok: false; why: string }
  | { ok: true; conflicts: readonly Conflict[]; settled: (choices?: readonly Choice[], by?: By) => Register };

export const OTHER_KIND = 'One of the two is an invented example, and examples are not mixed with a real rack. Start an empty register, then import the file.';

type Side = readonly [item: Item, seen: Register['seen']];

function mergedField([mine, mySeen]: Side, [theirs, theirSeen]: Side, field: FieldKey): { value: unknown; stamps: string } | null {
  const [a, b] = [stampsOf(mine, field), stampsOf(theirs, field)];
  const [x, y] = [fieldOf(mine, field), fieldOf(theirs, field)];
  if (sameValue(field, x, y)) {
    // What both have, and what either has that the other never saw.
    const left = [...a.filter((one) => b.includes(one) || !hasSeen(theirSeen, one)), ...b.filter((one) => a.includes(one) || !hasSeen(mySeen, one))];
    return { value: x, stamps: writeStamps(left.length > 0 ? left : [...a, ...b]) };
  }
  const mineIsKnown = a.every((one) => hasSeen(theirSeen, one));
  const theirsIsKnown = b.every((one) => hasSeen(mySeen, one));
  if (mineIsKnown === theirsIsKnown) return null;
  return mineIsKnown ? { value: y, stamps: writeStamps(b) } : { value: x, stamps: writeStamps(a) };
}

/** Whether one copy took the item off without having seen an edit of it that the other copy made. */
function wasRemovedUnseen([remover, removerSeen]: Side, [editor, editorSeen]: Side): boolean {
  if (!remover.removed || editor.removed || stampsOf(remover, 'removed').every((one) => hasSeen(editorSeen, one))) return false;
  return fieldsOf(editor).some((field) => stampsOf(editor, field).some((one) => !hasSeen(removerSeen, one)));
}

function mergedItem(mine: Side, theirs: Side): { item: Item; conflicts: Conflict[] } {
  const [a, b] = [mine[0], theirs[0]];
  const fields = [...new Set([...fieldsOf(a), ...fieldsOf(b)])];
  const conflicts: Conflict[] = [];
  const stamp = writeStamps([a, b].sort((x, y) => (x.stamp < y.stamp ? -1 : 1)).slice(0, 1).flatMap((one) => one.stamp.split(' ')));
  let item: Item = { ...a, stamp, changed: later(a.changed, b.changed) };
  for (const field of fields) {
    const merged = field === 'removed' && (wasRemovedUnseen(mine, theirs) || wasRemovedUnseen(theirs, mine)) ? null : mergedField(mine, theirs, field);
    if (merged) item = withStamps(withField(item, field, merged.value), field, merged.stamps);
    else {
      conflicts.push({
        item: a.id, names: { mine: a.name, theirs: b.name }, changed: { mine: a.changed, theirs: b.changed },
        field, mine: fieldOf(a, field), theirs: fieldOf(b, field),
      });
    }
  }
  return { item: inOrder(ITEM_SCHEMA, item) as Item, conflicts };
}

const byKey = (a: Conflict, b: Conflict): number => (a.item < b.item ? -1 : a.item > b.item ? 1 : a.field < b.field ? -1 : 1);

/**
 * Merges another copy into this one. An item of one copy alone is taken as it is; nothing is ever dropped.
 * @throws RangeError from `settled`, when the choices are not as many as the conflicts, or nobody says who chooses
 */
export function merge(mine: Register, theirs: Register): Merge {
  if (isUntouched(mine)) return { ok: true, conflicts: [], settled: () => theirs };
  if (isUntouched(theirs)) return { ok: true, conflicts: [], settled: () => mine };
  if (mine.invented !== theirs.invented) {
    return { ok: false, why: OTHER_KIND };
  }
  const items = new Map(mine.items.map((item) => [item.id, item]));
  const conflicts: Conflict[] = [];
  for (const item of theirs.items) {
    const own = items.get(item.id);
    const merged = own ? mergedItem([own, mine.seen], [item, theirs.seen]) : { item, conflicts: [] };
    items.set(item.id, merged.item);
    conflicts.push(...merged.conflicts);
  }
  conflicts.sort(byKey);
  const merged: Register = { ...mine, seen: seenByEither(mine.seen, theirs.seen), items: sortedById(items.values()) };
  const settled = (choices: readonly Choice[] = [], by?: By): Register => {
    if (choices.length !== conflicts.length) throw new RangeError(`choices must be one for each of ${conflicts.length} conflicts (got ${choices.length})`);
    if (conflicts.length === 0) return merged;
    if (!by) throw new RangeError('by must say who chooses');
    const stamp = nextStamp(merged, by);
    const { n, copy } = partsOfStamp(stamp);
    // Both values are seen now, so the chosen one gets a new stamp even where it is the one that stands here.
    const chosen = new Map(items);
    for (const [at, { item, field, ...both }] of conflicts.entries()) {
      const now = chosen.get(item) as Item;
      chosen.set(item, { ...withStamps(withField(now, field, both[choices[at] as Choice]), field, stamp), changed: later(now.changed, by.at) });
    }
    const ordered = sortedById(chosen.values()).map((item) => (item === items.get(item.id) ? item : (inOrder(ITEM_SCHEMA, item) as Item)));
    return { ...merged, seen: seenByEither(merged.seen, { [copy]: n }), items: ordered };
  };
  return { ok: true, conflicts, settled };
}
