/** A table of breaks as pulls: which column is the force, which says how it broke, and in which unit all of it is. */
import { type ColumnUnit, IN_COMMON } from './column-units.ts';
import type { Pull } from './pulls.ts';
import { type Column, type NumberColumn, readTable, type Table, type TableOptions, type TableReading } from './read-table.ts';

/** Units of force, as a reader may choose one for numbers that have none. */
export const FORCE_UNITS = ['kN', 'N', 'daN', 'kgf', 'lbf'] as const satisfies readonly ColumnUnit[];
export type ForceUnit = (typeof FORCE_UNITS)[number];

/** Which column holds what, from 0; null: none does. */
export interface PullColumns {
  readonly force: number | null;
  readonly mode: number | null;
  readonly link: number | null;
  readonly note: number | null;
}

/** Names of columns, as testers write them; the first that fits counts. */
const NAMES: Readonly<Record<keyof PullColumns, RegExp>> = {
  force: /force|load|peak|strength|break(?:s|ing)?$|\bmax/i,
  mode: /mode|how|fail/i,
  link: /link|part|where|which|broke|location/i,
  note: /note|remark|comment/i,
};
/** Columns that count or time pulls, and are no force. */
const COUNTERS = /^(?:pull|no\.?|nr\.?|#|n|test|sample|specimen|run|id|date|day|time)s?$/i;

const isForceUnit = (unit: ColumnUnit | null): unit is ForceUnit => FORCE_UNITS.some((one) => one === unit);

/** Whether a column may be the force: numbers, in a unit of force or in none. */
export const mayBeForce = (column: Column): column is NumberColumn => column.kind === 'numbers' && (column.unit === null || isForceUnit(column.unit));

/** What the columns of a table are likely to be. `force` is null where several may be it, and none is named so. */
export function likelyColumns({ columns }: Table): PullColumns {
  const at = columns.map((column, index) => ({ column, index }));
  const forces = at.filter(({ column }) => mayBeForce(column) && !COUNTERS.test(column.name));
  const only = (list: typeof at): number | null => (list.length === 1 ? (list[0] as (typeof at)[number]).index : null);
  const inUnit = forces.filter(({ column }) => column.unit !== null);
  const named = forces.filter(({ column }) => NAMES.force.test(column.name));
  const force = only(inUnit) ?? only(named) ?? only(forces) ?? only(at.filter(({ column }) => mayBeForce(column)));
  const taken = new Set<number>();
  const textColumn = (key: 'mode' | 'link' | 'note'): number | null => {
    const found = at.find(({ column, index }) => column.kind === 'text' && !taken.has(index) && NAMES[key].test(column.name));
    if (found) taken.add(found.index);
    return found?.index ?? null;
  };
  return { force, mode: textColumn('mode'), link: textColumn('link'), note: textColumn('note') };
}

/**
 * Reads a table of breaks. Where a column that is named as words (how it broke, which part, a note) has numbers among them,
 * it is read as words.
 */
export function readPullTable(text: string, options: TableOptions = {}): TableReading {
  const words = new Set(options.textColumns ?? []);
  for (;;) {
    const reading = readTable(text, { ...options, textColumns: [...words] });
    if ('table' in reading || !['not-a-number', 'unit-unknown', 'no-number'].includes(reading.stop.reason)) return reading;
    const { column } = reading.stop;
    if (words.has(column)) return reading;
    const asWords = readTable(text, { ...options, textColumns: [...words, column] });
    const head = 'table' in asWords ? asWords.table.columns[column - 1] : undefined;
    if ('table' in asWords && !(asWords.table.hasHead && head && [NAMES.mode, NAMES.link, NAMES.note].some((name) => name.test(head.name)))) return reading;
    if ('stop' in asWords && asWords.stop.column === column) return reading;
    words.add(column);
  }
}

/** A row that gives no pull, with the line of the text on which it stands. */
export interface LeftOutRow { readonly line: number; readonly why: 'no-force' | 'not-positive' }

export interface TablePulls {
  readonly pulls: readonly Pull[];
  readonly notes: readonly string[];
  /** Unit of the forces; null where the table names none. */
  readonly unit: ForceUnit | null;
  readonly leftOut: readonly LeftOutRow[];
}

/**
 * The pulls of a table. A row without a force, or with none above zero, gives none and is listed.
 * @throws RangeError when `columns.force` names no column of numbers in a unit of force or in none.
 */
export function pullsOfTable(table: Table, columns: PullColumns): TablePulls {
  const force = columns.force === null ? undefined : table.columns[columns.force];
  if (!force || !mayBeForce(force)) throw new RangeError(`columns.force must name a column of forces (got ${columns.force}).`);
  const words = (at: number | null, row: number): string => {
    const column = at === null ? undefined : table.columns[at];
    return column?.kind === 'text' ? (column.values[row] as string).trim() : '';
  };
  const pulls: Pull[] = [];
  const notes: string[] = [];
  const leftOut: LeftOutRow[] = [];
  for (const [row, value] of force.values.entries()) {
    const line = table.lines[row] as number;
    if (value === null || !(value > 0)) {
      leftOut.push({ line, why: value === null ? 'no-force' : 'not-positive' });
      continue;
    }
    pulls.push({ force: value, atLeast: force.atLeast[row] as boolean, mode: words(columns.mode, row), link: words(columns.link, row) });
    notes.push(words(columns.note, row));
  }
  return { pulls, notes, unit: isForceUnit(force.unit) ? force.unit : null, leftOut };
}

/** Forces written side by side in one line, with no heading: one pull a cell. Null where the table is something else. */
export function pullsOfRow({ columns, hasHead, lines }: Table): TablePulls | null {
  if (hasHead || lines.length !== 1 || columns.length < 2) return null;
  const cells = columns.filter(mayBeForce);
  const units = new Set(cells.map(({ unit }) => unit));
  if (cells.length < columns.length || units.size > 1) return null;
  const [unit] = units;
  const forces = cells.map(({ values, atLeast }) => ({ force: values[0] ?? 0, atLeast: atLeast[0] as boolean, mode: '', link: '' }));
  const pulls = forces.filter(({ force }) => force > 0);
  const line = lines[0] as number;
  return {
    pulls, notes: pulls.map(() => ''), unit: unit !== undefined && isForceUnit(unit) ? unit : null,
    leftOut: pulls.length < forces.length ? [{ line, why: cells.some(({ values }) => values[0] === null) ? 'no-force' : 'not-positive' }] : [],
  };
}

/** Pulls in another unit, exactly converted. */
export const inUnit = (pulls: readonly Pull[], from: ForceUnit, to: ForceUnit): Pull[] =>
  from === to ? [...pulls] : pulls.map((pull) => ({ ...pull, force: (pull.force * IN_COMMON[from]) / IN_COMMON[to] }));
