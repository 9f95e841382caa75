/**
 * Lists every constraint of a schema by walking it: required fields, words of a
 * list, forms, limits, refinements, unknown fields. A schema that stands in
 * several places is listed where it is met first.
 */
import type { z } from 'zod';

interface Def {
  type: string;
  shape?: Record<string, z.core.$ZodType>;
  catchall?: unknown;
  innerType?: z.core.$ZodType;
  element?: z.core.$ZodType;
  options?: z.core.$ZodType[];
  items?: z.core.$ZodType[];
  keyType?: z.core.$ZodType;
  valueType?: z.core.$ZodType;
  in?: z.core.$ZodType;
  format?: string;
  checks?: { _zod: { def: { check: string; format?: string } } }[];
}

export function constraintsOf(name: string, schema: z.core.$ZodType, seen: Set<z.core.$ZodType>): string[] {
  if (seen.has(schema)) return [];
  seen.add(schema);
  const def = schema._zod.def as unknown as Def;
  const own: string[] = [];
  const inner = (step: string, part: z.core.$ZodType) => own.push(...constraintsOf(`${name}${step}`, part, seen));
  for (const check of def.checks ?? []) own.push(`${name} ${check._zod.def.check}${check._zod.def.format ? ` ${check._zod.def.format}` : ''}`);
  switch (def.type) {
    case 'object':
      if (def.catchall) own.push(`${name} unknown field`);
      for (const [key, part] of Object.entries(def.shape ?? {})) {
        if (part._zod.optin !== 'optional') own.push(`${name}.${key} required`);
        inner(`.${key}`, part);
      }
      break;
    case 'optional':
    case 'default':
      inner('', def.innerType as z.core.$ZodType);
      break;
    case 'array':
      own.push(`${name} list`);
      inner('[]', def.element as z.core.$ZodType);
      break;
    case 'union':
      own.push(`${name} union`);
      (def.options ?? []).forEach((option, i) => { inner(`|${i}`, option); });
      break;
    case 'tuple':
      own.push(`${name} pair`);
      (def.items ?? []).forEach((item) => { inner('[]', item); });
      break;
    case 'record':
      inner('{key}', def.keyType as z.core.$ZodType);
      inner('{}', def.valueType as z.core.$ZodType);
      break;
    case 'pipe':
      own.push(`${name} form`);
      break;
    case 'enum':
    case 'literal':
    case 'boolean':
      own.push(`${name} ${def.type}`);
      break;
    case 'string':
    case 'number':
      own.push(`${name} ${def.format ?? def.type}`);
      break;
  }
  return own;
}
