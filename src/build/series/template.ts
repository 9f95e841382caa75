/** The table in which pulls are written down: an empty one to fill, and what its columns mean, as Table Schema. */
import { csvText } from '../downloads/csv.ts';
import type { Field, Table } from '../downloads/table.ts';
import { type TableSchema, tableSchema } from '../downloads/table-schema.ts';

/** Columns in their order. Their names are a contract with readers: never renamed. */
export const BREAK_FIELDS: readonly Field[] = [
  { name: 'pull', type: 'integer', says: 'Number of the pull, in the order in which they were made. No number is left out or used twice.', required: true },
  { name: 'force_kN', type: 'string', says: 'Highest force of the pull, in kilonewtons. Where the part in question did not break, the sign > stands before it: the force is a lower limit.' },
  { name: 'mode', type: 'string', says: 'How it broke, in a word or two that stay the same from pull to pull: torn, cut, melted, seam opened, slipped, nothing broke.' },
  { name: 'link', type: 'string', says: 'Which part broke: sling at the eye, knot, seam, sling at the connector, eye, device, connector, machine.' },
  { name: 'note', type: 'string', says: 'What else somebody may want to know: the mark of the piece, its lot, slip, a second part that was damaged.' },
];

/** Lines of the empty table, and of the form: as many as stand on one sheet. */
export const TEMPLATE_PULLS = 10;

const TABLE: Table = {
  name: 'breaks', title: 'Pulls of one rig', says: 'One row for each pull of one rig, also where something else gave way.', key: ['pull'], fields: BREAK_FIELDS,
  rows: Array.from({ length: TEMPLATE_PULLS }, (_, i) => [i + 1, null, null, null, null]),
};

/** The empty table: its head, and numbered lines. */
export const templateCsv = (): string => csvText(TABLE);

/** A force, or a lower limit; a decimal comma is read, too. */
const FORCE = '^(>\\s*)?[0-9]+([.,][0-9]+)?$';

/** What the columns mean, for programs. */
export function templateSchema(): Omit<TableSchema, 'fields'> & { $schema: string; fields: (TableSchema['fields'][number] & { constraints?: { pattern?: string } })[] } {
  const { fields, ...rest } = tableSchema(TABLE, new Map());
  return {
    $schema: 'https://datapackage.org/profiles/2.0/tableschema.json',
    ...rest,
    fields: fields.map((field) => (field.name === 'force_kN' ? { ...field, constraints: { ...field.constraints, pattern: FORCE } } : field)),
  };
}
