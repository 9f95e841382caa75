/** Checks a value against a schema of ours and puts its keys into the schema's order. Total: any value gives faults or none. */
import type { Schema } from './schema.ts';

/** Where a value does not fit, as a JSON pointer (RFC 6901), and why. */
export interface ShapeFault { pointer: string; why: string }

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** One step of a pointer. */
export const pointerStep = (key: string | number): string => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;

/** A value in words, short enough for a message. */
export function shortly(value: unknown): string {
  const text = Array.isArray(value) ? 'a list' : isObject(value) ? 'an object' : JSON.stringify(value) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function hasType(value: unknown, type: string): boolean {
  if (type === 'null') return value === null;
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return isObject(value);
  if (type === 'integer') return Number.isInteger(value);
  return typeof value === type;
}

const listed = (values: readonly (string | null)[]): string => values.map((value) => value ?? 'null').join(', ');

/** What a place wants, in words. */
function wanted(schema: Schema): string {
  if (schema.const !== undefined) return `must be ${JSON.stringify(schema.const)}`;
  if (schema.enum) return `must be one of ${listed(schema.enum)}`;
  return `must be ${schema.title ?? 'as the schema says'}`;
}

const patterns = new Map<string, RegExp>();
function matches(pattern: string, text: string): boolean {
  const known = patterns.get(pattern) ?? new RegExp(pattern, 'u');
  patterns.set(pattern, known);
  return known.test(text);
}

/** Characters as JSON Schema counts them: code points. */
const lengthOf = (text: string, most: number): number => (text.length <= most ? text.length : [...text].length);

/** Whether a value that is no list and no object fits, or a list or object fits by itself, its parts aside. */
function fits(schema: Schema, value: unknown): boolean {
  if (schema.const !== undefined) return value === schema.const;
  if (schema.enum) return schema.enum.includes(value as string | null);
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? []);
  if (types.length > 0 && !types.some((type) => hasType(value, type))) return false;
  if (typeof value === 'string') {
    // Half a character alone is no text: no file could keep it.
    return value.isWellFormed() && (schema.maxLength === undefined || lengthOf(value, schema.maxLength) <= schema.maxLength) && (!schema.pattern || matches(schema.pattern, value));
  }
  if (typeof value === 'number') return value >= (schema.minimum ?? -Infinity) && value <= (schema.maximum ?? Infinity);
  return true;
}

/** All places where a value does not fit, in the value's own order. */
export function shapeFaults(schema: Schema, value: unknown, pointer = ''): ShapeFault[] {
  if (!fits(schema, value)) return [{ pointer, why: `${wanted(schema)} (got ${shortly(value)})` }];
  if (Array.isArray(value)) {
    const faults: ShapeFault[] = [];
    if (value.length > (schema.maxItems ?? Infinity)) faults.push({ pointer, why: `must have at most ${schema.maxItems} entries (got ${value.length})` });
    if (schema.uniqueItems && new Set(value).size < value.length) faults.push({ pointer, why: 'must name nothing twice' });
    const { items } = schema;
    return items ? faults.concat(value.flatMap((one, at) => shapeFaults(items, one, pointer + pointerStep(at)))) : faults;
  }
  if (!isObject(value)) return [];
  const faults: ShapeFault[] = (schema.required ?? []).filter((key) => !Object.hasOwn(value, key)).map((key) => ({ pointer, why: `lacks "${key}"` }));
  for (const [key, one] of Object.entries(value)) {
    const at = pointer + pointerStep(key);
    const known = schema.properties && Object.hasOwn(schema.properties, key) ? schema.properties[key] : undefined;
    if (known) faults.push(...shapeFaults(known, one, at));
    else if (!schema.additionalProperties) faults.push({ pointer: at, why: 'is not a key of this format' });
    else {
      if (schema.propertyNames && !fits(schema.propertyNames, key)) faults.push({ pointer: at, why: `${shortly(key)} is not ${schema.propertyNames.title}` });
      faults.push(...shapeFaults(schema.additionalProperties, one, at));
    }
  }
  return faults;
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A copy with its keys in the order of the schema; keys that the schema does not list in the order of their letters. */
export function inOrder(schema: Schema, value: unknown): unknown {
  if (Array.isArray(value)) return schema.items ? value.map((one) => inOrder(schema.items as Schema, one)) : [...value];
  if (!isObject(value)) return value;
  const { properties = {}, additionalProperties } = schema;
  const listedKeys = Object.keys(properties).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !Object.hasOwn(properties, key)).sort(byText);
  return Object.fromEntries([
    ...listedKeys.map((key) => [key, inOrder(properties[key] as Schema, value[key])]),
    ...others.map((key) => [key, additionalProperties ? inOrder(additionalProperties, value[key]) : value[key]]),
  ]);
}
