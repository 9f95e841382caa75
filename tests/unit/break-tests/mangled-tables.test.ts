/**
 * Clean tables written down in 10,000 ways, some of them damaged (fixed seed). Each comes back as the known values or as a
 * stop that names row and column; never as other values.
 */
import { expect, it } from 'vitest';
import { readTable, type TableReading } from '../../../src/break-tests/read-table.ts';
import { seeded } from './near.ts';

type Written = { kind: 'numbers'; name: string; unit: string | null; values: (number | null)[]; decimals: number; minus: boolean } | { kind: 'text'; name: string; values: string[] };

const random = seeded(20261125);
const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
const chance = (p: number): boolean => random() < p;

const MODES = ['bond', 'wire', 'sling', 'knot slipped', 'broke, slowly', 'clamp; first', 'third "try"'];
const NAMES = ['force', 'Peak', 'load at break', 'Kraft', 'series A'];

function cleanTable(): Written[] {
  const rows = 1 + Math.floor(random() * 7);
  const columns: Written[] = [];
  const forces = (): Written => {
    const decimals = pick([0, 1, 2, 2, 3]);
    const unit = pick([null, 'kN', 'kN', 'N', 'daN', 'kgf', 'lbf']);
    const top = unit === 'N' ? 30000 : unit === 'kN' || unit === null ? 30 : 3000;
    const values = Array.from({ length: rows }, () => Number((random() * top + 0.5).toFixed(decimals)));
    return { kind: 'numbers', name: pick(NAMES), unit, values: values.map((v, r) => (r > 0 && chance(0.03) ? null : v)), decimals, minus: false };
  };
  if (chance(0.5)) columns.push({ kind: 'numbers', name: pick(['pull', 'no', 'time']), unit: null, values: Array.from({ length: rows }, (_, i) => i + 1), decimals: 0, minus: false });
  columns.push(forces());
  if (chance(0.25)) {
    const offset = { kind: 'numbers', name: 'offset', unit: null, values: Array.from({ length: rows }, () => Number((random() * 2 - 1).toFixed(2))), decimals: 2, minus: true } as const;
    columns.push({ ...offset, values: [...offset.values] });
  }
  if (chance(0.5)) columns.push({ kind: 'text', name: 'mode', values: Array.from({ length: rows }, () => pick(MODES)) });
  return columns;
}

/** Writes a table in some way, and perhaps damages it. */
function write(columns: readonly Written[]): { text: string; damaged: string | null; hasHead: boolean } {
  const delimiter = pick([',', ';', '\t', ' ', ', ', '; ']);
  const decimal = pick(['.', '.', ',']);
  const group = pick(['', '', '', '\u2009', '\u202f', '\u00a0', "'", decimal === '.' ? ',' : '.']);
  const hasHead = chance(0.7);
  const quoteAll = chance(0.1);
  const unitInCells = chance(0.15);
  const unitRow = chance(0.1) && !unitInCells && columns.some((column) => column.kind === 'numbers' && column.unit !== null);
  const end = pick(['\n', '\n', '\r\n', '\r']);
  const trailing = chance(0.05) && delimiter.trim() !== '';
  const quote = (text: string): string => `"${text.replace(/"/g, '""')}"`;
  const cell = (text: string): string => {
    const mustQuote = text.includes(delimiter.trim() || delimiter) || text.includes('"') || (delimiter === ' ' && /\s/.test(text));
    // Now and then what ought to be quoted is not. Below a head it must stop, or read right all the same; words alone,
    // without a head, are then two cells that nobody can tell from one.
    const forgotten = chance(0.1) && ((hasHead && delimiter !== ' ') || !/\p{L}/u.test(text));
    return quoteAll || (mustQuote && !forgotten) ? quote(text) : text;
  };
  const number = (value: number | null, column: Extract<Written, { kind: 'numbers' }>): string => {
    // An empty cell alone in its line would be an empty line, and between blanks no cell at all.
    if (value === null) return pick([columns.length > 1 && delimiter !== ' ' ? '' : '--', '-', 'NA', 'n/a']);
    let [whole = '', part = ''] = Math.abs(value).toFixed(column.decimals).split('.');
    if (group !== '') whole = whole.replace(/\B(?=(\d{3})+$)/g, group);
    const body = part ? `${whole}${decimal}${part}` : whole;
    part = '';
    const sign = value < 0 ? pick(['-', '\u2212']) : '';
    return `${sign}${body}${unitInCells && column.unit ? `${pick(['', ' ', '\u2009'])}${column.unit}` : ''}`;
  };
  const heads = columns.map((column) => {
    if (column.kind === 'text' || column.unit === null || unitInCells || unitRow) return column.name;
    return pick([`${column.name} (${column.unit})`, `${column.name} [${column.unit}]`, `${column.name}/${column.unit}`, `${column.name}, ${column.unit}`, `${column.name}_${column.unit}`]);
  });
  const rowCount = (columns[0] as Written).values.length;
  const grid: string[][] = [];
  if (hasHead) grid.push(heads.map(cell));
  if (hasHead && unitRow) grid.push(columns.map((column) => (column.kind === 'numbers' && column.unit && !unitInCells ? column.unit : '-')));
  for (let r = 0; r < rowCount; r++) {
    grid.push(columns.map((column) => cell(column.kind === 'text' ? (column.values[r] as string) : number(column.values[r] as number | null, column))));
  }
  let damaged: string | null = null;
  const first = hasHead ? 1 : 0;
  const place = (): [number, number] => [Math.min(grid.length - 1, first + Math.floor(random() * Math.max(1, grid.length - first))), Math.floor(random() * columns.length)];
  if (chance(0.2)) {
    // Damage that leaves a trace: one row alone has nothing to differ from, and a line without its only cell is no row.
    const kinds = ['quote opened'];
    if (columns.length > 1 && rowCount > 1) kinds.push('cell dropped', 'row cut off', 'cell added');
    const [r, c] = place();
    if (columns[c]?.kind === 'numbers') kinds.push('letter in number', ...(rowCount > 1 ? ['mark doubled'] : []));
    // Where the only mark is that of a group, or no other row shows the mark, the other one makes another number of it,
    // as another digit would.
    if (columns[c]?.kind === 'numbers' && columns[c].decimals > 0 && rowCount > 1) kinds.push('other mark');
    damaged = pick(kinds);
    const row = grid[r] as string[];
    const now = row[c] as string;
    if (damaged === 'cell dropped') row.splice(c, 1);
    if (damaged === 'cell added') row.splice(c, 0, now === '' ? '1' : now);
    if (damaged === 'quote opened') row[c] = `"${now.replace(/^"/, '')}`.replace(/"$/, '');
    if (damaged === 'letter in number') row[c] = now.replace(/\d/, (digit) => `${digit}x`);
    if (damaged === 'mark doubled') row[c] = now.replace(/[.,]/, (mark) => mark + mark);
    if (damaged === 'other mark') row[c] = now.replace(/[.,]/, (mark) => (mark === '.' ? ',' : '.'));
    if (damaged === 'row cut off') (grid[grid.length - 1] as string[]).splice(-1, 1);
  }
  // A row of which nothing is left is an empty line: no row.
  if (grid.some((row) => row.join('').trim() === '')) return write(columns);
  const lines = grid.map((row) => `${chance(0.05) ? '  ' : ''}${row.join(delimiter)}${trailing ? delimiter.trim() : ''}${chance(0.05) ? ' ' : ''}`);
  if (chance(0.1)) lines.splice(Math.floor(random() * (lines.length + 1)), 0, pick(['# slow pulls, new, dry', '# 1;2,3', '', '   ']));
  const text = `${chance(0.15) ? '\ufeff' : ''}${lines.join(end)}${chance(0.7) ? end : ''}`;
  return { text, damaged, hasHead };
}

/** What a reading says that was not written; null where all of it is right. */
function wrong(reading: Extract<TableReading, { table: unknown }>, columns: readonly Written[], hasHead: boolean): string | null {
  const { table } = reading;
  if (table.columns.length !== columns.length) return `${table.columns.length} columns for ${columns.length}`;
  for (const [i, column] of columns.entries()) {
    const read = table.columns[i] as (typeof table.columns)[number];
    if (column.kind === 'text') {
      if (read.kind !== 'text') return `column ${i + 1} read as numbers`;
      const off = column.values.findIndex((value, r) => read.values[r] !== value);
      if (off >= 0 || read.values.length !== column.values.length) return `column ${i + 1}: ${read.values[off]} for ${column.values[off]}`;
      continue;
    }
    if (read.kind !== 'numbers') {
      if (column.values.every((value) => value === null)) continue;
      return `column ${i + 1} read as text`;
    }
    if (read.values.length !== column.values.length) return `column ${i + 1} has ${read.values.length} rows`;
    const off = column.values.findIndex((value, r) => read.values[r] !== value);
    if (off >= 0) return `column ${i + 1}: ${read.values[off]} for ${column.values[off]}`;
    if (read.unit !== null && read.unit !== column.unit) return `column ${i + 1} has unit ${read.unit}`;
    if (hasHead && read.unit === null && column.unit !== null) return `column ${i + 1} lost its unit`;
  }
  return null;
}

/** Where the code is changed to see what notices, it runs slowly: a tenth of them is enough there. */
const ROUNDS = 'MUTATED_ROOM' in process.env ? 1000 : 10_000;

it('10,000 mangled tables give the known values or a stop that names row and column', () => {
  let read = 0;
  let stopped = 0;
  let whole = 0;
  let wholeRead = 0;
  const reasons = new Map<string, number>();
  const faults: string[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const columns = cleanTable();
    const { text, damaged, hasHead } = write(columns);
    if (!damaged) whole++;
    const reading = readTable(text);
    if ('stop' in reading) {
      stopped++;
      const { stop } = reading;
      reasons.set(stop.reason, (reasons.get(stop.reason) ?? 0) + 1);
      const lines = text.split(/\r\n|\r|\n/).length;
      if (!(stop.row >= 1 && stop.row <= lines && stop.column >= 1 && stop.message.startsWith(`Row ${stop.row}, column ${stop.column} `))) {
        faults.push(`${JSON.stringify(text)}: stop without a place: ${stop.message}`);
      }
      continue;
    }
    read++;
    if (!damaged) wholeRead++;
    const fault = wrong(reading, columns, hasHead);
    if (fault) faults.push(`${damaged ?? 'whole'}: ${JSON.stringify(text)}: ${fault}`);
  }
  console.log(`${read} read, ${stopped} stopped (${[...reasons].sort((a, b) => b[1] - a[1]).map(([reason, count]) => `${reason} ${count}`).join(', ')}); of ${whole} undamaged ones ${wholeRead} read`);
  expect(faults.length, faults.slice(0, 12).join('\n')).toBe(0);
  expect(read + stopped).toBe(ROUNDS);
  expect(read).toBeGreaterThan(0.3 * ROUNDS);
  expect(stopped).toBeGreaterThan(0.1 * ROUNDS);
});
