/** A table as JSON: a list of rows, each an object with every column, in which numbers are numbers and empty is null. */
import type { Table } from './table.ts';

/** One row a line, so that two versions can be compared line by line. */
export function jsonText({ fields, rows }: Pick<Table, 'fields' | 'rows'>): string {
  const lines = rows.map((row) => JSON.stringify(Object.fromEntries(fields.map(({ name }, i) => [name, row[i]]))));
  return lines.length === 0 ? '[]\n' : `[\n${lines.join(',\n')}\n]\n`;
}
