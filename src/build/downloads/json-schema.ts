/** JSON Schemas: of each table's rows, made from its columns, and of each kind of record, made from the shapes that the record check uses. */
import { z } from 'zod';
import {
  factor, factorClass, gap, law, method, movedFigure, ownSeries, publishedSeries, rackMaterial, replacement, rule, singleFigure, sling, source, splitFigure, tableFigure, value, valueBranches, withdrawnFigure,
} from '../../records/schema.ts';
import { type Field, fieldWords, type Table } from './table.ts';

const DIALECT = 'https://json-schema.org/draft/2020-12/schema';
export type JsonSchema = Readonly<Record<string, unknown>>;

function typeOf(field: Field): JsonSchema {
  const type = field.type === 'date' ? 'string' : field.type;
  return {
    description: fieldWords(field),
    type: field.required ? type : [type, 'null'],
    ...(field.type === 'date' ? { format: 'date' } : {}),
    ...(field.among ? { enum: field.required ? field.among : [...field.among, null] } : {}),
  };
}

/** Schema of a table's JSON file. Every row has every column. */
export function tableJsonSchema(table: Table): JsonSchema {
  return {
    $schema: DIALECT,
    title: table.title,
    description: table.says,
    type: 'array',
    items: {
      type: 'object',
      properties: Object.fromEntries(table.fields.map((field) => [field.name, typeOf(field)])),
      required: table.fields.map(({ name }) => name),
      additionalProperties: false,
    },
  };
}

/** Kinds of record by the name of their schema. */
const RECORDS: Readonly<Record<string, { title: string; shape: z.ZodType }>> = {
  factor: { title: 'A factor: what stands between figures and the model', shape: factor },
  'factor-class': { title: 'A class of factors', shape: factorClass },
  figure: { title: 'A figure with one value', shape: singleFigure },
  'figure-moved': { title: 'A figure that has another address', shape: movedFigure },
  'figure-split': { title: 'A figure that was split into several', shape: splitFigure },
  'figure-table': { title: 'A figure with a table of values', shape: tableFigure },
  'figure-withdrawn': { title: 'A figure that we no longer stand behind', shape: withdrawnFigure },
  gap: { title: 'A question that no published figure answers', shape: gap },
  law: { title: 'What the law of one region says', shape: law },
  material: { title: 'A material on the rack', shape: rackMaterial },
  method: { title: 'A way of attaching a sling to an eye', shape: method },
  replacement: { title: 'A way to get a new sling, or to do without one', shape: replacement },
  rule: { title: 'A rule of retirement', shape: rule },
  series: { title: 'A series of breaks that is a figure', shape: publishedSeries },
  'series-by-itself': { title: 'A series of breaks that stands by itself', shape: ownSeries },
  sling: { title: 'A sling that a reader may have', shape: sling },
  source: { title: 'A source', shape: source },
};

const SAYS = 'Shape of a record as it is written in the folder data of the repository. The record check asks for more: what compares two fields, or two records, is not in this schema.';

/** A value is chosen by its own words, which a schema cannot see: it is written out as its branches. */
function writtenOut(ctx: { zodSchema: unknown; jsonSchema: Record<string, unknown> }): void {
  if (ctx.zodSchema !== value) return;
  const branches = Object.values(valueBranches).map((branch) => {
    const { $schema: _, ...plain } = z.toJSONSchema(branch, { io: 'input' });
    return plain;
  });
  ctx.jsonSchema['anyOf'] = [{ type: 'number' }, ...branches];
}

/** Schema of each kind of record, by name. */
export function recordJsonSchemas(): Map<string, JsonSchema> {
  return new Map(Object.entries(RECORDS).map(([name, { title, shape }]) => {
    const { $schema: _, ...plain } = z.toJSONSchema(shape, { io: 'input', unrepresentable: 'any', override: writtenOut as never });
    return [name, { $schema: DIALECT, title, description: SAYS, ...plain }];
  }));
}
