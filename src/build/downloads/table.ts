/** A table of the folder `/data/`: columns with their meaning, and rows. Everything that describes a table is made from its columns. */

export type Cell = string | number | boolean | null;
export type FieldType = 'string' | 'integer' | 'number' | 'boolean' | 'date';

/** One column. Its name is a contract with readers: it is never renamed, and never changes its meaning. */
export interface Field {
  name: string;
  type: FieldType;
  /** What stands in it, in a sentence without digits, which also stands on the page. */
  says: string;
  /** Unit of every number in the column, or the column that says it row by row. Numbers alone have one, and all have. */
  unit?: string | { column: string };
  /** True where no row leaves it empty. */
  required?: true;
  /** The only values that occur. */
  among?: readonly string[];
  /** The table whose key each value is. */
  refers?: string;
  /** Several values, separated by spaces; `true`, or the table whose keys they are. */
  list?: true | string;
}

/** A column with the way to fill it. What gives undefined is empty. */
export interface Column<Item> extends Field {
  of(item: Item): Cell | undefined;
}

/** What a table is, without its rows. */
export interface TableSpec<Item> {
  name: string;
  title: string;
  /** What one row is, and what is left out; without digits. */
  says: string;
  /** Columns that together name a row. */
  key: readonly string[];
  columns: readonly Column<Item>[];
}

export interface Table {
  name: string;
  title: string;
  says: string;
  key: readonly string[];
  fields: readonly Field[];
  rows: readonly (readonly Cell[])[];
}

const FITS: Readonly<Record<FieldType, (cell: Cell) => boolean>> = {
  string: (cell) => typeof cell === 'string' && cell !== '',
  integer: (cell) => Number.isInteger(cell),
  number: (cell) => typeof cell === 'number' && Number.isFinite(cell),
  boolean: (cell) => typeof cell === 'boolean',
  date: (cell) => typeof cell === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(cell),
};

/** What is wrong with a cell, or null. */
function problem(field: Field, cell: Cell): string | null {
  if (cell === null) return field.required ? 'is empty' : null;
  if (!FITS[field.type](cell)) return `is no ${field.type}`;
  if (field.among && !field.among.includes(cell as string)) return `is none of ${field.among.join(', ')}`;
  return null;
}

function byKey(at: readonly number[]): (a: readonly Cell[], b: readonly Cell[]) => number {
  return (a, b) => {
    for (const i of at) {
      const [x, y] = [a[i] as string | number, b[i] as string | number];
      if (x !== y) return x < y ? -1 : 1;
    }
    return 0;
  };
}

/**
 * The table of some items, in the order of its key, so that the same records give the same bytes.
 * Throws a RangeError that names table, column and value where a cell does not fit its column, or two rows have one key.
 */
export function makeTable<Item>(spec: TableSpec<Item>, items: Iterable<Item>): Table {
  const { columns, ...rest } = spec;
  const rows = [...items].map((item) => columns.map((column) => {
    const cell = column.of(item) ?? null;
    const wrong = problem(column, cell);
    if (wrong) throw new RangeError(`table ${spec.name}, column ${column.name}: ${wrong} (got ${JSON.stringify(cell)})`);
    return cell;
  }));
  const at = spec.key.map((name) => columns.findIndex((column) => column.name === name));
  const order = byKey(at);
  rows.sort(order);
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    if (before && order(before, row) === 0) throw new RangeError(`table ${spec.name}: two rows have the key ${at.map((j) => row[j]).join(', ')}`);
  });
  return { ...rest, fields: columns.map(({ of: _of, ...field }) => field), rows };
}

/** Several values as one cell; nothing where there are none. Values of such a column have no spaces. */
export function spaced(values: readonly (string | number)[] | undefined): string | null {
  return values && values.length > 0 ? values.join(' ') : null;
}

/** The meaning of a column in full: what it says, its unit, and what its values refer to. */
export function fieldWords(field: Field): string {
  const unit = field.unit && (typeof field.unit === 'string' ? `Unit: ${field.unit}.` : `Unit: see column ${field.unit.column}.`);
  const list = field.list && (field.list === true ? 'Separated by spaces.' : `Separated by spaces; each is a key of ${field.list}.`);
  const refers = field.refers && `A key of ${field.refers}.`;
  return [field.says, unit, list, refers].filter(Boolean).join(' ');
}
