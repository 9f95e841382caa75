/** A table as comma-separated values: RFC 4180, line ends CR LF, UTF-8 without a mark at its head. */
import type { Cell, Table } from './table.ts';

/** Characters at the head of a text that spreadsheets take for a formula. */
const FORMULA = /^[=+\-@\t\r\n|%]/;

/** One cell. A text that a spreadsheet would run gets an apostrophe in front; a number stays a number, also below zero. */
export function csvCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell !== 'string') return String(cell);
  const plain = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** The table with its head. */
export function csvText({ fields, rows }: Pick<Table, 'fields' | 'rows'>): string {
  return [fields.map((field) => field.name), ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}
