/** Edits of a rack register. Each is a pure function to a new register; what it does not touch is shared with the old one. */
import type { FieldKey, FieldName } from './field-names.ts';
import { fieldOf, fieldsOf, inspectionKey, sameValue, tidied, withField } from './fields.ts';
import { isDay, isMoment, isPartDay } from './part-day.ts';
import { ITEM_SCHEMA } from './schema.ts';
import { inOrder, type ShapeFault, shapeFaults } from './shape.ts';
import { nextStamp, partsOfStamp, seenByEither, withStamps } from './stamps.ts';
import { type By, FORMAT, type Inspection, type Item, type ItemDraft, type RackSling, type Register, VERSION } from './types.ts';

/** One value to write into one field of one item. */
export interface Write { item: string; field: FieldKey; value: unknown }

/** New values for fields of an item, and for an inspection by its id: null takes it out. */
export type Changes = ItemDraft & { removed?: boolean };

/** An item of which nothing is known and that nobody has put into a register. */
export const BLANK: Item = {
  id: 'blank', name: '', ratingKn: null, eye: null,
  sling: { material: null, widthMm: null, made: null, firstUse: null, use: null, exposures: null, events: null, maker: { retireBy: null, yearsFromMade: null, yearsFromFirstUse: null } },
  count: 1, notes: '', inspections: [], changed: '2000-01-01T00:00:00Z', removed: false, stamp: '1@blank', stamps: {},
};

/** New values field by field, also the parts of the sling and of its maker's limits. What is not said is left out. */
function valuesIn({ sling: { maker = {}, ...sling } = {}, ...more }: Changes): [FieldName, unknown][] {
  const under = (path: string, values: object): [string, unknown][] => Object.entries(values).map(([key, value]) => [path + key, value]);
  const all = [...under('', more), ...under('sling.', sling), ...under('sling.maker.', maker)];
  return all.filter(([, value]) => value !== undefined) as [FieldName, unknown][];
}

/** A register with nothing in it. @param invented a sentence, where it is to hold an example */
export const emptyRegister = (invented: string | null = null): Register => ({ format: FORMAT, version: VERSION, invented, seen: {}, items: [] });

/** Whether nothing was ever written into a register. */
export const isUntouched = ({ items, seen }: Register): boolean => items.length === 0 && Object.keys(seen).length === 0;

const byId = (a: Item, b: Item): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Items in the order of the register. */
export const sortedById = (items: Iterable<Item>): Item[] => [...items].sort(byId);

/** Days of an item that no calendar has, with where they stand. */
export function dayFaults(item: Item): ShapeFault[] {
  const none = 'is no day of the calendar';
  const faults: ShapeFault[] = [];
  const part = (pointer: string, value: RackSling['made']): void => {
    if (value !== null && !isPartDay(value)) faults.push({ pointer, why: none });
  };
  part('/sling/made', item.sling.made);
  part('/sling/firstUse', item.sling.firstUse);
  part('/sling/maker/retireBy', item.sling.maker.retireBy);
  for (const [at, { when }] of (item.sling.events ?? []).entries()) part(`/sling/events/${at}/when`, when);
  for (const [at, { day }] of item.inspections.entries()) if (!isDay(day)) faults.push({ pointer: `/inspections/${at}/day`, why: none });
  if (!isMoment(item.changed)) faults.push({ pointer: '/changed', why: 'is no moment of the calendar' });
  return faults;
}

/** Everything that is wrong with one item by itself. */
export function itemFaults(item: Item): ShapeFault[] {
  const faults = shapeFaults(ITEM_SCHEMA, item);
  return faults.length > 0 ? faults : dayFaults(item);
}

function assertItem(item: Item): void {
  const [fault] = itemFaults(item);
  if (fault) throw new RangeError(`item ${item.id}${fault.pointer} ${fault.why}`);
}

function assertBy({ copy, at }: By): void {
  if (!/^[a-z][a-z0-9]{3,15}$/.test(copy)) throw new RangeError(`copy must be 4 to 16 small letters and digits, a letter first (got ${copy})`);
  if (!isMoment(at)) throw new RangeError(`at must be a moment such as 2026-11-25T10:00:00Z (got ${at})`);
}

/** The register after one edit of a copy. */
function edited(register: Register, stamp: string, items: readonly Item[]): Register {
  const { n, copy } = partsOfStamp(stamp);
  return { ...register, seen: seenByEither(register.seen, { [copy]: n }), items };
}

/** The later of two moments: a clock that was set back does not take an item's last edit back. */
export const later = (a: string, b: string): string => (a > b ? a : b);

/** Writes a value and its stamp into an item; the same item where nothing changes. */
function written(item: Item, { field, value }: Omit<Write, 'item'>, stamp: string, at: string): Item {
  const kept = tidied(field, value);
  if (sameValue(field, fieldOf(item, field), kept)) return item;
  return { ...withStamps(withField(item, field, kept), field, stamp), changed: later(item.changed, at) };
}

/** What a reader says of an item, put onto a blank one. */
export const drafted = (draft: ItemDraft, blank: Item = BLANK): Item => valuesIn(draft).reduce((now, [field, value]) => withField(now, field, tidied(field, value)), blank);

/**
 * Adds items, all in one edit. Their ids are made from the copy and the number of the edit.
 * @throws RangeError when a value is none that the register takes
 */
export function addItems(register: Register, by: By, drafts: readonly (ItemDraft & { id?: string })[]): Register {
  assertBy(by);
  if (drafts.length === 0) return register;
  const stamp = nextStamp(register, by);
  const { n, copy } = partsOfStamp(stamp);
  const taken = new Set(register.items.map(({ id }) => id));
  const added = drafts.map(({ id = null, ...more }, at): Item => {
    const blank: Item = { ...BLANK, id: id ?? `${copy}-${n}-${at + 1}`, changed: by.at, stamp };
    const item = drafted(more, blank);
    assertItem(item);
    if (taken.has(item.id)) throw new RangeError(`item ${item.id} is in the register already`);
    taken.add(item.id);
    return inOrder(ITEM_SCHEMA, item) as Item;
  });
  return edited(register, stamp, sortedById([...register.items, ...added]));
}

/**
 * Writes values into fields, all in one edit. A value that stands there already is no edit; where none is, the register is returned as it is.
 * @throws RangeError when an item is not there, or a value is none that the register takes
 */
export function writeFields(register: Register, by: By, writes: readonly Write[]): Register {
  assertBy(by);
  const stamp = nextStamp(register, by);
  const wanted = new Map<string, Write[]>();
  for (const write of writes) wanted.set(write.item, [...(wanted.get(write.item) ?? []), write]);
  let changes = 0;
  const items = register.items.map((item) => {
    const next = (wanted.get(item.id) ?? []).reduce((now, write) => written(now, write, stamp, by.at), item);
    wanted.delete(item.id);
    if (next === item) return item;
    assertItem(next);
    changes += 1;
    return inOrder(ITEM_SCHEMA, next) as Item;
  });
  for (const id of wanted.keys()) throw new RangeError(`item ${id} is not in the register`);
  return changes === 0 ? register : edited(register, stamp, items);
}

/** Changes fields of one item. @throws RangeError as `writeFields` */
export function changeItem(register: Register, by: By, item: string, changes: Changes): Register {
  return writeFields(register, by, valuesIn(changes).map(([field, value]) => ({ item, field, value })));
}

/**
 * Takes some of several alike into an item of their own, which begins as they were: one of three had a fall. One edit.
 * @param n how many; at least one stays
 * @throws RangeError when the item is not there, or has not more than `n`
 */
export function splitItem(register: Register, by: By, item: string, n: number): Register {
  assertBy(by);
  const from = register.items.find(({ id }) => id === item);
  if (!from) throw new RangeError(`item ${item} is not in the register`);
  if (!Number.isInteger(n) || n < 1 || n >= from.count) throw new RangeError(`n must be a whole number from 1 to ${from.count - 1} (got ${n})`);
  const stamp = nextStamp(register, by);
  const { n: number, copy } = partsOfStamp(stamp);
  const rest = written(from, { field: 'count', value: from.count - n }, stamp, by.at);
  const stamps = Object.fromEntries(from.inspections.map(({ id }) => [inspectionKey(id), stamp]));
  const taken = inOrder(ITEM_SCHEMA, { ...from, id: `${copy}-${number}-1`, count: n, changed: by.at, stamp, stamps }) as Item;
  const others = register.items.filter(({ id }) => id !== item);
  return edited(register, stamp, sortedById([...others, inOrder(ITEM_SCHEMA, rest) as Item, taken]));
}

/** Takes an item off the rack, or puts it back. It stays in the register. */
export const removeItem = (register: Register, by: By, item: string, removed = true): Register => changeItem(register, by, item, { removed });

/** Adds one inspection; its id is made from the copy and the number of the edit. @throws RangeError as `writeFields` */
export function addInspection(register: Register, by: By, item: string, inspection: Omit<Inspection, 'id'>): Register {
  assertBy(by);
  const { n, copy } = partsOfStamp(nextStamp(register, by));
  const id = `${copy}-${n}`;
  return writeFields(register, by, [{ item, field: inspectionKey(id), value: { ...inspection, id } }]);
}

/** Puts another inspection in the place of one, or takes it out with null. @throws RangeError as `writeFields`, or where there is no such inspection */
export function changeInspection(register: Register, by: By, item: string, id: string, inspection: Omit<Inspection, 'id'> | null): Register {
  const known = register.items.find((one) => one.id === item)?.inspections.some((one) => one.id === id);
  if (known === false) throw new RangeError(`inspection ${id} is not in the register`);
  return writeFields(register, by, [{ item, field: inspectionKey(id), value: inspection && { ...inspection, id } }]);
}

/** Items that are on the rack. */
export const onRack = (register: Register): Item[] => register.items.filter(({ removed }) => !removed);

/** What to write into `from` so that its values become those of `to`. An item that `to` does not know yet is taken off. */
export function writesTo(from: Register, to: Register): Write[] {
  const known = new Map(to.items.map((item) => [item.id, item]));
  return from.items.flatMap((item): Write[] => {
    const other = known.get(item.id);
    if (other === item) return [];
    if (!other) return item.removed ? [] : [{ item: item.id, field: 'removed', value: true }];
    const fields = [...new Set([...fieldsOf(item), ...fieldsOf(other)])];
    return fields.flatMap((field) => {
      const value = fieldOf(other, field);
      return sameValue(field, fieldOf(item, field), value) ? [] : [{ item: item.id, field, value }];
    });
  });
}

/** How many edits a register holds that an earlier one did not: what an export made then lacks. @param then `seen` of the register that was exported */
export function editsSince(register: Register, then: Register['seen']): number {
  return Object.entries(register.seen).reduce((sum, [copy, n]) => sum + Math.max(0, n - (Object.hasOwn(then, copy) ? then[copy] ?? 0 : 0)), 0);
}
