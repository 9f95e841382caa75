/** Random edit histories of several copies of a register, with a record of who knew of which edit. The record is kept as plain sets, not as counters, and judges merges apart from the code under test. */
import fc from 'fast-check';
import type { FieldKey } from '../../../src/rack/field-names.ts';
import { fieldOf } from '../../../src/rack/fields.ts';
import { type Choice, merge } from '../../../src/rack/merge.ts';
import { addInspection, addItems, emptyRegister, writeFields } from '../../../src/rack/register.ts';
import type { By, Item, Register } from '../../../src/rack/types.ts';

/** What must be there. */
function the<T>(one: T | undefined): T {
  if (one === undefined) throw new RangeError('the history names something that is not there');
  return one;
}
export const itemOf = (register: Register, id: string): Item => the(register.items.find((one) => one.id === id));

export const COPIES = ['copya', 'copyb', 'copyc'] as const;
export const by = (copy: string, minute = 0): By => ({ copy, at: `2026-11-25T10:${String(minute % 60).padStart(2, '0')}:00Z` });

const FIELDS = ['name', 'count', 'sling.exposures', 'sling.made', 'removed'] as const;
const VALUES: Readonly<Record<(typeof FIELDS)[number], readonly unknown[]>> = {
  name: ['a', 'b', 'ü "c", d'], count: [1, 2, 3], 'sling.exposures': [null, [], ['light', 'salt']], 'sling.made': [null, { year: 2019 }, { year: 2019, month: 4 }], removed: [false, true],
};

export type Act =
  | { act: 'add'; copy: number; n: number }
  | { act: 'write'; copy: number; item: number; field: (typeof FIELDS)[number]; value: number }
  | { act: 'inspect'; copy: number; item: number }
  | { act: 'reinspect'; copy: number; item: number; inspection: number; out: boolean }
  | { act: 'sync'; copy: number; from: number; choices: Choice[] };

const copy = fc.nat({ max: COPIES.length - 1 });
const item = fc.nat({ max: 5 });
export const choices = fc.array(fc.constantFrom<Choice>('mine', 'theirs'), { minLength: 60, maxLength: 60 });
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 1, arbitrary: fc.record({ act: fc.constant('add' as const), copy, n: fc.integer({ min: 1, max: 2 }) }) },
  { weight: 6, arbitrary: fc.record({ act: fc.constant('write' as const), copy, item, field: fc.constantFrom(...FIELDS), value: fc.nat({ max: 2 }) }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('inspect' as const), copy, item }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('reinspect' as const), copy, item, inspection: fc.nat({ max: 3 }), out: fc.boolean() }) },
  { weight: 3, arbitrary: fc.record({ act: fc.constant('sync' as const), copy, from: copy, choices }) },
);
export const acts = fc.array(act, { minLength: 1, maxLength: 50, size: 'max' });

/** One edit of one field. `knew`: the edits that its copy knew then. */
interface Edit { id: number; item: string; field: FieldKey; value: unknown; knew: ReadonlySet<number> }
export interface World { registers: Register[]; knows: Set<number>[]; edits: Edit[] }

/** Three copies that began as the same two items. */
function begin(): World {
  const start = addItems(emptyRegister(), by(COPIES[0]), [{ name: 'first' }, { name: 'second' }]);
  const edits: Edit[] = [];
  for (const { id } of start.items) for (const field of FIELDS) edits.push({ id: edits.length, item: id, field, value: undefined, knew: new Set() });
  return { registers: COPIES.map(() => start), knows: COPIES.map(() => new Set(edits.map(({ id }) => id))), edits };
}

/** Notes down every field in which two states of one copy differ, as an edit that knew of all before. */
function note(world: World, at: number, next: Register, keys: readonly (readonly [string, FieldKey])[]): void {
  const knew = new Set(world.knows[at]);
  for (const [id, field] of keys) {
    const edit: Edit = { id: world.edits.length, item: id, field, value: fieldOf(itemOf(next, id), field), knew };
    world.edits.push(edit);
    the(world.knows[at]).add(edit.id);
  }
  world.registers[at] = next;
}

/** What a merge of two copies should give for each field: its value, or that the reader must choose. */
export function expected(world: World, a: number, b: number): Map<string, { conflict: boolean; values: unknown[] }> {
  const known = new Set([...the(world.knows[a]), ...the(world.knows[b])]);
  const groups = Map.groupBy(world.edits.filter(({ id }) => known.has(id)), ({ item: of, field }) => `${of} ${field}`);
  const result = new Map<string, { conflict: boolean; values: unknown[] }>();
  for (const [key, edits] of groups) {
    const last = edits.filter(({ id }) => !edits.some(({ knew }) => knew.has(id)));
    const distinct = new Map(last.map(({ value }) => [JSON.stringify(value), value]));
    result.set(key, { conflict: distinct.size > 1, values: [...distinct.values()] });
  }
  // One copy took the item off, and the other, which had not heard of it, made an edit of it that the first had not heard of.
  for (const [x, y] of [[a, b], [b, a]] as const) {
    for (const { id, removed } of the(world.registers[x]).items) {
      if (!removed || the(world.registers[y]).items.find((one) => one.id === id)?.removed !== false) continue;
      const about = world.edits.filter((edit) => edit.item === id);
      const mine = about.filter((edit) => edit.field === 'removed' && the(world.knows[x]).has(edit.id));
      const removals = mine.filter((edit) => !mine.some(({ knew }) => knew.has(edit.id)));
      const isUnheard = removals.some((edit) => !the(world.knows[y]).has(edit.id));
      const isEdited = about.some((edit) => the(world.knows[y]).has(edit.id) && !the(world.knows[x]).has(edit.id));
      if (isUnheard && isEdited) result.set(`${id} removed`, { conflict: true, values: [true, false] });
    }
  }
  return result;
}

/** Plays a history. @param own whether each copy edits only what it added itself, so that nothing can conflict */
export function play(history: readonly Act[], own = false): World {
  const world = begin();
  for (const [minute, one] of history.entries()) {
    const at = one.copy;
    const register = the(world.registers[at]);
    const me = the(COPIES[at]);
    const who = by(me, minute);
    const mayEdit = own ? register.items.filter(({ id }) => id.startsWith(`${me}-`)) : register.items;
    if (one.act === 'add') {
      const next = addItems(register, who, Array.from({ length: one.n }, (_, index) => ({ name: `new ${index}` })));
      const ids = next.items.filter(({ id }) => !register.items.some((old) => old.id === id)).map(({ id }) => id);
      note(world, at, next, ids.flatMap((id) => FIELDS.map((field) => [id, field] as const)));
    } else if (one.act === 'sync') {
      const merged = merge(register, the(world.registers[one.from]));
      if (!merged.ok) throw new Error(merged.why);
      const next = merged.settled(one.choices.slice(0, merged.conflicts.length), who);
      for (const id of the(world.knows[one.from])) the(world.knows[at]).add(id);
      note(world, at, next, merged.conflicts.map(({ item: id, field }) => [id, field] as const));
    } else if (mayEdit.length > 0) {
      const target = the(mayEdit[one.item % mayEdit.length]);
      if (one.act === 'write') {
        const next = writeFields(register, who, [{ item: target.id, field: one.field, value: VALUES[one.field][one.value % VALUES[one.field].length] }]);
        if (next !== register) note(world, at, next, [[target.id, one.field]]);
      } else if (one.act === 'inspect') {
        const next = addInspection(register, who, target.id, { day: '2026-11-25', findings: ['fuzz'], by: me, note: `at ${minute}` });
        const fresh = the(itemOf(next, target.id).inspections.find(({ id }) => !target.inspections.some((old) => old.id === id)));
        note(world, at, next, [[target.id, `inspections/${fresh.id}`]]);
      } else if (target.inspections.length > 0) {
        const old = the(target.inspections[one.inspection % target.inspections.length]);
        const field: FieldKey = `inspections/${old.id}`;
        const next = writeFields(register, who, [{ item: target.id, field, value: one.out ? null : { ...old, note: `again ${minute % 2}` } }]);
        if (next !== register) note(world, at, next, [[target.id, field]]);
      }
    }
  }
  return world;
}
