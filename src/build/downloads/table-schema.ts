/** What a Data Package says of a table: its columns as Table Schema, version 2. */
import { type Field, fieldWords, type Table } from './table.ts';

export interface TableSchema {
  fields: { name: string; type: string; description: string; constraints?: { required?: true; unique?: true; enum?: readonly string[] } }[];
  missingValues: string[];
  primaryKey: string[];
  foreignKeys?: { fields: string[]; reference: { resource?: string; fields: string[] } }[];
}

function constraintsOf(field: Field, unique: boolean): TableSchema['fields'][number]['constraints'] {
  return { ...(field.required ? { required: true } : {}), ...(unique ? { unique: true } : {}), ...(field.among ? { enum: field.among } : {}) };
}

/** `keys` gives the key of each table that a column may refer to. A reference to the table itself names no other, as the standard asks. */
export function tableSchema(table: Table, keys: ReadonlyMap<string, readonly string[]>): TableSchema {
  const foreignKeys = table.fields.flatMap(({ name, refers }) => {
    if (!refers) return [];
    const key = keys.get(refers);
    if (key?.length !== 1) throw new RangeError(`table ${table.name}, column ${name}: refers to ${refers}, which has no key of one column`);
    return [{ fields: [name], reference: { ...(refers === table.name ? {} : { resource: refers }), fields: [...key] } }];
  });
  return {
    fields: table.fields.map((field) => {
      const constraints = constraintsOf(field, table.key.length === 1 && table.key[0] === field.name);
      return { name: field.name, type: field.type, description: fieldWords(field), ...(Object.keys(constraints ?? {}).length > 0 ? { constraints } : {}) } as TableSchema['fields'][number];
    }),
    missingValues: [''],
    primaryKey: [...table.key],
    ...(foreignKeys.length > 0 ? { foreignKeys } : {}),
  };
}
