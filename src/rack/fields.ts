/** Reading and writing one field of an item, and telling whether two values are the same. */
import { FIELD_NAMES, type FieldKey } from './field-names.ts';
import { ITEM_SCHEMA, type Schema } from './schema.ts';
import { inOrder } from './shape.ts';
import type { Inspection, Item } from './types.ts';

const INSPECTIONS = 'inspections/';

export const isInspectionKey = (field: FieldKey): field is `inspections/${string}` => field.startsWith(INSPECTIONS);
export const inspectionKey = (id: string): FieldKey => `${INSPECTIONS}${id}`;
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Value of a field; null for an inspection that is not there. */
export function fieldOf(item: Item, field: FieldKey): unknown {
  if (isInspectionKey(field)) return item.inspections.find(({ id }) => id === field.slice(INSPECTIONS.length)) ?? null;
  return field.split('.').reduce<unknown>((now, key) => (now as Record<string, unknown>)[key], item);
}

/** A copy of an object with another value at the end of a path. */
function put<T extends object>(object: T, [key = '', ...rest]: readonly string[], value: unknown): T {
  return { ...object, [key]: rest.length > 0 ? put((object as Record<string, object>)[key] as object, rest, value) : value };
}

/** A copy of the item with another value in one field. The stamps are left to the caller. */
export function withField(item: Item, field: FieldKey, value: unknown): Item {
  if (isInspectionKey(field)) {
    const others = item.inspections.filter(({ id }) => id !== field.slice(INSPECTIONS.length));
    const inspections = value === null ? others : [...others, value as Inspection].sort((a, b) => byText(a.day, b.day) || byText(a.id, b.id));
    return { ...item, inspections };
  }
  return put(item, field.split('.'), value);
}

/** Every field of an item: the fixed ones, and inspections that are there or were. */
export function fieldsOf(item: Item): FieldKey[] {
  const keys = new Set<FieldKey>(FIELD_NAMES);
  for (const { id } of item.inspections) keys.add(inspectionKey(id));
  for (const key of Object.keys(item.stamps)) keys.add(key as FieldKey);
  return [...keys];
}

function schemaOf(field: FieldKey): Schema {
  if (isInspectionKey(field)) return ITEM_SCHEMA.properties?.['inspections']?.items ?? {};
  return field.split('.').reduce<Schema>((now, key) => now.properties?.[key] ?? {}, ITEM_SCHEMA);
}

/** Text as it is kept: line ends are one character, and no half of a character stands alone. */
const cleanText = (text: string): string => text.toWellFormed().replaceAll('\r\n', '\n').replaceAll('\r', '\n');

function clean(value: unknown): unknown {
  if (typeof value === 'string') return cleanText(value);
  if (Array.isArray(value)) return value.map(clean);
  // A key without a value is the same as no key.
  if (typeof value === 'object' && value !== null) return Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined).map(([key, one]) => [key, clean(one)]));
  return value;
}

/** A value as the register keeps it: clean text, keys in their order. */
export const tidied = (field: FieldKey, value: unknown): unknown => inOrder(schemaOf(field), clean(value));

/** Whether two values of a field are the same, whatever the order of their keys. */
export function sameValue(field: FieldKey, a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const schema = schemaOf(field);
  return JSON.stringify(inOrder(schema, a)) === JSON.stringify(inOrder(schema, b));
}
