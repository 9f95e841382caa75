/**
 * A register as a table (RFC 4180) and back. The table has what a reader knows of each item. It lacks the counts of edits, so
 * reading it is an edit of the register: rows change or add items, and an item without a row stays as it is.
 */
import type { FieldKey, FieldName } from './field-names.ts';
import { fieldOf, inspectionKey, withField } from './fields.ts';
import { parsePartDay, type PartDay, writePartDay } from './part-day.ts';
import type { FileFault, Imported } from './json-file.ts';
import { type Conflict, type Merge, OTHER_KIND } from './merge.ts';
import { addItems, BLANK, isUntouched, itemFaults, type Write, writeFields, writesTo } from './register.ts';
import { INSPECTION_SCHEMA } from './schema.ts';
import { shapeFaults } from './shape.ts';
import type { By, Inspection, Item, ItemDraft, RackEvent, Register } from './types.ts';

/** Characters that make a spreadsheet run a cell. An apostrophe in front of them is doubled, so that reading takes one off. */
const RUNS = /^'*[=+\-@\t\r\n|%]/;

/** One cell: no formula, quoted where it must be. */
function cell(text: string): string {
  const plain = RUNS.test(text) ? `'${text}` : text;
  return /[",\r\n;]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** Text of a cell without the apostrophe that `cell` put there. */
const uncell = (text: string): string => (text.startsWith("'") && RUNS.test(text.slice(1)) ? text.slice(1) : text);

/** How a field stands in a cell: its text, and the value back from it; undefined where the text is none. */
interface Column { name: string; field: FieldName | 'inspections'; write: (value: never) => string; read: (text: string) => unknown }

const words = (name: string, field: FieldName): Column => ({ name, field, write: (value: string) => value, read: (text) => text });
const oneWord = (name: string, field: FieldName): Column => ({ name, field, write: (value: string | null) => value ?? '', read: (text) => text.trim() || null });
const number = (name: string, field: FieldName, empty: number | null): Column => ({
  name, field,
  write: (value: number | null) => (value === null ? '' : String(value)),
  read: (text) => {
    const trimmed = text.trim();
    if (trimmed === '') return empty;
    return /^-?\d{1,15}(?:[.,]\d{1,15})?(?:e-?\d{1,3})?$/.test(trimmed) ? Number(trimmed.replace(',', '.')) : undefined;
  },
});
const partDay = (name: string, field: FieldName): Column => ({
  name, field,
  write: (value: PartDay | null) => (value ? writePartDay(value) : ''),
  read: (text) => (text.trim() === '' ? null : (parsePartDay(text.trim()) ?? undefined)),
});
const NONE = 'none';
const several = (text: string): string[] => (text.trim() === NONE ? [] : text.split(';').map((one) => one.trim()));

function readEvents(text: string): unknown {
  if (text.trim() === '') return null;
  const events = several(text).map((one): RackEvent | undefined => {
    const [kind = '', day, ...more] = one.split(/\s+/);
    const when = day === undefined ? null : parsePartDay(day);
    return more.length > 0 || (day !== undefined && when === null) ? undefined : { kind: kind as RackEvent['kind'], when };
  });
  return events.includes(undefined) ? undefined : events;
}

function readInspections(text: string): unknown {
  if (text.trim() === '') return [];
  try {
    const read = JSON.parse(text) as unknown;
    return Array.isArray(read) && read.every((one) => shapeFaults(INSPECTION_SCHEMA, one).length === 0) ? read : undefined;
  } catch {
    return undefined;
  }
}

const COLUMNS: readonly Column[] = [
  words('name', 'name'),
  number('rating_kn', 'ratingKn', null),
  oneWord('eye', 'eye'),
  oneWord('material', 'sling.material'),
  number('width_mm', 'sling.widthMm', null),
  partDay('made', 'sling.made'),
  partDay('first_use', 'sling.firstUse'),
  oneWord('use', 'sling.use'),
  {
    name: 'exposures', field: 'sling.exposures',
    write: (value: readonly string[] | null) => (value === null ? '' : value.join('; ') || NONE),
    read: (text) => (text.trim() === '' ? null : several(text)),
  },
  {
    name: 'events', field: 'sling.events',
    write: (value: readonly RackEvent[] | null) => (value === null ? '' : value.map(({ kind, when }) => (when ? `${kind} ${writePartDay(when)}` : kind)).join('; ') || NONE),
    read: readEvents,
  },
  partDay('maker_retire_by', 'sling.maker.retireBy'),
  number('maker_years_from_made', 'sling.maker.yearsFromMade', null),
  number('maker_years_from_first_use', 'sling.maker.yearsFromFirstUse', null),
  number('count', 'count', 1),
  words('notes', 'notes'),
  { name: 'removed', field: 'removed', write: (value: boolean) => (value ? 'yes' : 'no'), read: (text) => ({ yes: true, no: false, '': false })[text.trim().toLowerCase()] },
  { name: 'inspections', field: 'inspections', write: (value: readonly Inspection[]) => (value.length > 0 ? JSON.stringify(value) : ''), read: readInspections },
];
const HEAD = ['id', ...COLUMNS.map(({ name }) => name)];

const cellValue = (item: Item, { field }: Column): unknown => (field === 'inspections' ? item.inspections : fieldOf(item, field));

/** Says in each row of an example that it is one; a real register has no such column. */
const INVENTED = 'invented';

/** The table of a register, with its head and with the line ends of the standard. */
export function registerCsv({ items, invented }: Register): string {
  const label = (text: string): string[] => (invented === null ? [] : [text]);
  const lines = items.map((item) => [item.id, ...COLUMNS.map((column) => column.write(cellValue(item, column) as never)), ...label(invented ?? '')]);
  return [[...HEAD, ...label(INVENTED)], ...lines].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

/** One row of a table, from which line it is, and its cells. */
interface Row { line: number; cells: string[] }

/** Splits a table into rows. A line end inside quotes is part of the cell. */
function rowsOf(text: string, delimiter: string): Row[] | FileFault {
  const rows: Row[] = [];
  const plain = new RegExp(`[^"\\r\\n${delimiter}][^\\r\\n${delimiter}]*`, 'y');
  let [at, line] = [0, 1];
  const fault = (why: string): FileFault => ({ line, pointer: null, why });
  while (at < text.length) {
    const row: Row = { line, cells: [] };
    for (;;) {
      let value = '';
      if (text[at] === '"') {
        const begun = line;
        for (at += 1; ; ) {
          const quote = text.indexOf('"', at);
          if (quote < 0) return { line: begun, pointer: null, why: 'a quote is opened and never closed' };
          const piece = text.slice(at, quote);
          line += piece.split(/\r\n|\n|\r/).length - 1;
          value += piece;
          at = quote + 1;
          if (text[at] !== '"') break;
          value += '"';
          at += 1;
        }
        if (at < text.length && text[at] !== delimiter && text[at] !== '\r' && text[at] !== '\n') return fault('something stands after a closing quote');
      } else {
        plain.lastIndex = at;
        value = plain.exec(text)?.[0] ?? '';
        at += value.length;
      }
      row.cells.push(value);
      if (text[at] !== delimiter) break;
      at += 1;
    }
    if (text.startsWith('\r\n', at)) at += 2;
    else if (at < text.length) at += 1;
    line += 1;
    rows.push(row);
  }
  return rows;
}

/** A table as it was read. `invented`: the sentence of an example, or null. */
export interface CsvTable { invented: string | null; rows: readonly CsvRow[] }

/** One row as it was read: what it says of an item, by field. */
export interface CsvRow { line: number; id: string | null; values: ReadonlyMap<FieldName | 'inspections', unknown> }

/** A row put onto a blank item, to be checked like one. */
function asItem({ id, values }: CsvRow): Item {
  return [...values].reduce((item, [field, value]) => withField(item, field as FieldKey, value), { ...BLANK, id: id ?? BLANK.id });
}

const columnAt = (pointer: string): string =>
  COLUMNS.find(({ field }) => `${pointer}/`.startsWith(`/${field.replaceAll('.', '/')}/`))?.name ?? 'id';

/**
 * Reads a table as `registerCsv` writes it, also with its columns in another order, without some, or parted by semicolons.
 * Total: never throws. A table with one fault is not taken at all.
 */
export function readRegisterCsv(file: string): Imported<CsvTable> {
  const text = file.replace(/^\uFEFF/, '');
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const rows = rowsOf(text, firstLine.includes(';') && !firstLine.includes(',') ? ';' : ',');
  if (!Array.isArray(rows)) return { ok: false, faults: [rows] };
  const head = rows[0]?.cells.map((name) => name.trim()) ?? [];
  const at = (line: number, why: string): FileFault => ({ line, pointer: null, why });
  const refused = (why: string): Imported<never> => ({ ok: false, faults: [at(1, why)] });
  if (!head.includes('id') || !head.includes('name')) return refused(`this is no table of a rack register: its first line must name the columns ${HEAD.join(', ')}`);
  const unknown = head.find((name) => name !== INVENTED && !HEAD.includes(name));
  if (unknown !== undefined) return refused(`"${unknown}" is no column of a rack register; take it out, or move it into notes`);
  if (new Set(head).size < head.length) return refused('a column is named twice');
  const faults: FileFault[] = [];
  const ids = new Set<string>();
  const read: CsvRow[] = [];
  let invented: string | null = null;
  for (const { line, cells } of rows.slice(1)) {
    if (cells.length === 1 && cells[0] === '') continue;
    if (cells.length !== head.length) {
      faults.push(at(line, `has ${cells.length} cells where the first line has ${head.length}`));
      continue;
    }
    const texts = new Map(head.map((name, index) => [name, uncell(cells[index] ?? '')]));
    const row = { line, id: texts.get('id')?.trim() || null, values: new Map<FieldName | 'inspections', unknown>() };
    invented ??= texts.get(INVENTED)?.trim() || null;
    let isRead = true;
    for (const column of COLUMNS) {
      const written = texts.get(column.name);
      if (written === undefined) continue;
      const value = column.read(written);
      if (value === undefined) {
        faults.push(at(line, `${column.name} cannot be read (got ${JSON.stringify(written)})`));
        isRead = false;
      } else row.values.set(column.field, value);
    }
    if (!isRead) continue;
    faults.push(...itemFaults(asItem(row)).map(({ pointer, why }) => at(line, `${columnAt(pointer)} ${why}`)));
    if (row.id !== null && ids.has(row.id)) faults.push(at(line, `${row.id} is the id of another row`));
    if (row.id !== null) ids.add(row.id);
    const looks = (row.values.get('inspections') ?? []) as Inspection[];
    if (new Set(looks.map(({ id }) => id)).size < looks.length) faults.push(at(line, 'two inspections have the same id'));
    read.push(row);
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: { invented, rows: read } };
}

/**
 * Writes the rows of a table into a register: one edit for what changes, one for what is new. An inspection that a row
 * lacks stays; nothing is taken out.
 */
export function withCsvRows(register: Register, by: By, rows: readonly CsvRow[]): Register {
  const known = new Set(register.items.map(({ id }) => id));
  const inspectionsOf = (row: CsvRow): Write[] =>
    ((row.values.get('inspections') ?? []) as Inspection[]).map((one) => ({ item: row.id as string, field: inspectionKey(one.id), value: one }));
  const changed = rows.filter(({ id }) => id !== null && known.has(id));
  const writes = changed.flatMap((row): Write[] => [
    ...[...row.values].filter(([field]) => field !== 'inspections').map(([field, value]) => ({ item: row.id as string, field: field as FieldKey, value })),
    ...inspectionsOf(row),
  ]);
  const rewritten = writeFields(register, by, writes);
  // Rows without an id get one here, so that their inspections can be written after them.
  const nextNumber = (Object.hasOwn(rewritten.seen, by.copy) ? rewritten.seen[by.copy] ?? 0 : 0) + 1;
  const added = rows.filter(({ id }) => id === null || !known.has(id)).map((row, at): CsvRow => ({ ...row, id: row.id ?? `${by.copy}-${nextNumber}-${at + 1}` }));
  const drafts = added.map((row): ItemDraft & { id: string } => {
    const { name, ratingKn, eye, sling, count, notes, id } = asItem(row);
    return { id, name, ratingKn, eye, sling, count, notes };
  });
  const rest = added.flatMap((row): Write[] => [...(row.values.get('removed') === true ? [{ item: row.id as string, field: 'removed' as const, value: true }] : []), ...inspectionsOf(row)]);
  return writeFields(addItems(rewritten, by, drafts), by, rest);
}

/**
 * A table as a merge. It does not say which value is newer, so every one that differs is the reader's to choose; what it
 * gives where the register knows nothing is filled in, and new rows are added.
 */
export function csvMerge(register: Register, by: By, { invented, rows }: CsvTable): Merge {
  if (!isUntouched(register) && invented !== register.invented) return { ok: false, why: OTHER_KIND };
  const known = new Set(register.items.map(({ id }) => id));
  const mine = new Map(register.items.map((item) => [item.id, item]));
  const next = withCsvRows(register, by, rows.filter(({ id }) => id !== null && known.has(id)));
  const theirs = new Map(next.items.map((item) => [item.id, item]));
  const writes = writesTo(register, next);
  const isNew = ({ item, field }: Write): boolean => [null, ''].includes(fieldOf(mine.get(item) as Item, field) as string | null);
  const asked = writes.filter((write) => !isNew(write));
  const conflicts = asked.map(({ item, field, value }): Conflict => {
    const [a, b] = [mine.get(item) as Item, theirs.get(item) as Item];
    // A table does not say when it was edited.
    return { item, names: { mine: a.name, theirs: b.name }, changed: { mine: a.changed, theirs: '' }, field, mine: fieldOf(a, field), theirs: value };
  });
  const settled: (Merge & { ok: true })['settled'] = (choices = []) => {
    if (choices.length !== conflicts.length) throw new RangeError(`choices must be one for each of ${conflicts.length} conflicts (got ${choices.length})`);
    const chosen = writeFields(register, by, [...writes.filter(isNew), ...asked.filter((_, at) => choices[at] === 'theirs')]);
    return withCsvRows(chosen, by, rows.filter(({ id }) => id === null || !known.has(id)));
  };
  return { ok: true, conflicts, settled };
}
