/**
 * Lists every constraint of a schema by walking it: required fields, words of a
 * list, forms, limits, refinements, unknown fields. A schema that stands in
 * several places is listed where it is met first. A union of plain values is
 * one constraint; a union with groups of fields is walked into as well.
 */
import type { z } from 'zod';

type Schema = z.core.$ZodType;

interface Def {
  type: string;
  shape?: Record<string, Schema>;
  catchall?: unknown;
  innerType?: Schema;
  element?: Schema;
  options?: Schema[];
  items?: Schema[];
  keyType?: Schema;
  valueType?: Schema;
  entries?: Record<string, string>;
  values?: unknown[];
  format?: string;
  checks?: {
    _zod: { def: { check: string; format?: string; minimum?: number; value?: number; inclusive?: boolean } };
  }[];
}

export interface Constraint {
  id: string;
  /** required, unknown field, enum, ...: the kind of constraint. */
  kind: string;
  /** Path in a record; `{key}` and `{}` stand for the first key of a map and its value. */
  path: (string | number)[];
  schema: Schema;
  /** Unions on the way, with the option that is meant. */
  branches: { path: (string | number)[]; option: Schema }[];
  /** Words of a list, or limits. */
  words: string[];
  limit: number;
  inclusive: boolean;
}

const SCALARS: readonly string[] = ['string', 'number', 'enum', 'literal', 'boolean'];

export const defOf = (schema: Schema): Def => schema._zod.def as unknown as Def;

export function bare(schema: Schema): Schema {
  const inner = defOf(schema).innerType;
  return inner ? bare(inner) : schema;
}

/** Words that an enum, a literal or a union of them allows. */
export function wordsOf(schema: Schema): string[] {
  const def = defOf(bare(schema));
  if (def.entries) return Object.values(def.entries);
  if (def.values) return def.values.map(String);
  if (def.type === 'union') return (def.options ?? []).flatMap(wordsOf);
  return [];
}

export function constraintsOf(name: string, schema: Schema, seen: Set<Schema>): Constraint[] {
  const out: Constraint[] = [];
  walk(name, schema, [], []);
  return out;

  function walk(id: string, here: Schema, path: Constraint['path'], branches: Constraint['branches']): void {
    if (seen.has(here)) return;
    seen.add(here);
    const def = defOf(here);
    const add = (kind: string, more: Partial<Constraint> = {}) => {
      out.push({
        id: `${id} ${kind}`,
        kind,
        path,
        schema: here,
        branches,
        words: wordsOf(here),
        limit: Number.NaN,
        inclusive: true,
        ...more,
      });
    };
    let refinements = 0;
    for (const check of def.checks ?? []) {
      const c = check._zod.def;
      const kind =
        c.check === 'string_format'
          ? `form ${c.format}`
          : c.check === 'custom'
            ? `refinement ${++refinements}`
            : c.check;
      if (kind === 'number_format') continue; // told as the type below
      add(kind, { limit: c.minimum ?? c.value ?? Number.NaN, inclusive: c.inclusive ?? true });
    }
    switch (def.type) {
      case 'object':
        if (def.catchall) add('unknown field');
        for (const [key, part] of Object.entries(def.shape ?? {})) {
          const optional = ['optional', 'default'].includes(defOf(part).type);
          if (!optional)
            out.push({
              id: `${id}.${key} required`,
              kind: 'required',
              path: [...path, key],
              schema: part,
              branches,
              words: wordsOf(part),
              limit: Number.NaN,
              inclusive: true,
            });
          walk(`${id}.${key}`, part, [...path, key], branches);
        }
        break;
      case 'optional':
      case 'default':
        walk(id, def.innerType as Schema, path, branches);
        break;
      case 'array':
        add('list');
        walk(`${id}[]`, def.element as Schema, [...path, 0], branches);
        break;
      case 'union':
        add('union');
        (def.options ?? []).forEach((option, i) => {
          if (!SCALARS.includes(defOf(option).type) || (defOf(option).checks ?? []).length)
            walk(`${id}|${i + 1}`, option, path, [...branches, { path, option }]);
        });
        break;
      case 'tuple':
        add('pair');
        (def.items ?? []).forEach((item, i) => {
          walk(`${id}[]`, item, [...path, i], branches);
        });
        break;
      case 'record':
        add('map');
        walk(`${id}{key}`, def.keyType as Schema, [...path, '{key}'], branches);
        walk(`${id}{}`, def.valueType as Schema, [...path, '{}'], branches);
        break;
      case 'pipe':
        add('value form');
        break;
      case 'enum':
      case 'literal':
      case 'boolean':
        add(def.type);
        break;
      case 'string':
      case 'number':
        add(def.format && def.format !== 'regex' ? def.format : def.type);
        break;
    }
  }
}
