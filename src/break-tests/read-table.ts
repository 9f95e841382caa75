/**
 * A table of pulls or samples as somebody pasted it: columns with their units, or a stop that names row and column. What
 * can be read in two ways is a stop, never a guess; the reader's answer comes back as an option.
 */
import { type ColumnUnit, readHeading, readUnit } from './column-units.ts';
import { type DecimalMark, isMissing, markEvidence, type NumberCell, readNumberCell, decimalValue } from './read-number.ts';
import { type Cell, type Delimiter, plainText, type SplitRow, splitTable } from './split-table.ts';

export interface NumberColumn {
  readonly kind: 'numbers';
  /** As the head says it, without the unit; "column 1" and so on where there is no head. */
  readonly name: string;
  readonly unit: ColumnUnit | null;
  /** As written, in the column's unit; null where the cell says that there is none. */
  readonly values: readonly (number | null)[];
  /** True where a cell is written as a lower limit: `>12`, `12+`. */
  readonly atLeast: readonly boolean[];
}

export interface TextColumn {
  readonly kind: 'text';
  readonly name: string;
  readonly unit: null;
  readonly values: readonly string[];
}

export type Column = NumberColumn | TextColumn;

export interface Table {
  readonly delimiter: Delimiter;
  /** Null where no number has decimals or groups. */
  readonly decimal: DecimalMark | null;
  readonly hasHead: boolean;
  readonly columns: readonly Column[];
  /** Line of the text at which each row of values stands, from 1. */
  readonly lines: readonly number[];
}

/** Why reading stopped. The caller has words for each. */
export type StopReason =
  | 'empty'
  | 'quote'
  | 'cells-missing'
  | 'cells-too-many'
  | 'no-number'
  | 'decimal-mark-open'
  | 'decimal-marks-clash'
  | 'delimiter-open'
  | 'unit-alone'
  | 'unit-of-mass'
  | 'units-clash'
  | 'unit-unknown'
  | 'not-a-number'
  | 'no-numbers-at-all';

export interface TableStop {
  readonly reason: StopReason;
  /** Line of the text, from 1. */
  readonly row: number;
  /** Cell in that line, from 1. */
  readonly column: number;
  /** What stands there. */
  readonly cell: string;
  /** One sentence: what is wrong and what to do. */
  readonly message: string;
}

/** Answers to what a stop asks. */
export interface TableOptions {
  readonly delimiter?: Delimiter;
  readonly decimal?: DecimalMark;
  /** Columns (from 1) that are words, also where some cells are numbers. */
  readonly textColumns?: readonly number[];
}

export type TableReading = { readonly table: Table } | { readonly stop: TableStop };

/** What to do about each stop. */
const ADVICE: Readonly<Record<StopReason, string>> = {
  empty: 'there is nothing to read. Paste at least one row.',
  quote: 'a quotation mark is not closed, or text follows one. Close it, or take it out.',
  'cells-missing': 'this row has fewer cells than the first. Fill the row, or write - for a missing value.',
  'cells-too-many': 'this row has more cells than the first. Check for a decimal comma between commas, or quote the cell.',
  'no-number': 'this is not a well-formed number. Write it with one decimal mark.',
  'decimal-mark-open': 'this may be a decimal mark or a group of thousands. Say which mark stands before the decimals.',
  'decimal-marks-clash': 'this number has another decimal mark than the rest. Use one mark throughout.',
  'delimiter-open': 'this can be split into cells in two ways. Say what stands between the cells.',
  'unit-alone': 'this is a unit apart from the numbers that it belongs to. Write it in brackets behind the name of their column.',
  'unit-of-mass': 'this is a unit of mass. Say kgf or lbf if it is a force.',
  'units-clash': 'this unit is not that of the column. Use one unit in a column.',
  'unit-unknown': 'what stands behind this number is no unit that is known. Use kN, N, daN, kgf or lbf.',
  'not-a-number': 'this is no number, and others in the column are. Correct it, write - for a missing value, or call the column text.',
  'no-numbers-at-all': 'no column has numbers. Paste the forces, too.',
};

function stopAt(reason: StopReason, row: number, column: number, cell: string): { stop: TableStop } {
  const plain = cell.replace(/\s+/g, ' ').trim();
  const shown = plain.length > 40 ? `${plain.slice(0, 40)}...` : plain;
  return { stop: { reason, row, column, cell, message: `Row ${row}, column ${column} ("${shown}"): ${ADVICE[reason]}` } };
}

/** Dates and times of day: words, although they are made of digits. */
const looksDated = (text: string): boolean => /^\d{1,4}([-./])\d{1,2}\1\d{1,4}(?:[ T].*)?$|^\d{1,2}:\d{2}/.test(text);
const looksNumeric = (text: string): boolean => /\d/.test(text) && !looksDated(text) && readNumberCell(text) !== null;
/** Begins like a number and is none: what a wrong delimiter or a slip leaves of one. */
const looksTorn = (text: string): boolean => /^[>\u2265]?=?\s*[+\-\u2212.,]*\d/.test(text) && !looksDated(text) && readNumberCell(text) === null;

/** Unread columns with their heads, or a stop. */
interface Frame {
  readonly head: SplitRow | null;
  readonly units: readonly (ColumnUnit | null)[];
  readonly names: readonly string[];
  readonly body: readonly SplitRow[];
  readonly width: number;
}

/** Text of a cell; empty where the row has none there. */
const textAt = (row: SplitRow | null | undefined, i: number): string => row?.cells[i]?.text ?? '';

/** Between blanks, a unit in brackets belongs to the name before it. */
function withUnitsJoined(row: SplitRow): SplitRow {
  const cells: Cell[] = [];
  for (const cell of row.cells) {
    const last = cells.at(-1);
    if (last && /^(?:\(.*\)|\[.*\])$/.test(cell.text) && readUnit(cell.text) !== null) {
      cells[cells.length - 1] = { ...last, text: `${last.text} ${cell.text}` };
    } else cells.push(cell);
  }
  return { line: row.line, cells };
}

/**
 * Whether the first row names columns: no cell of it is a number, and at least one column of numbers has a name over it.
 * A name of numbers begins with a letter or a bracket, so that a number with a slip in it is not taken for one.
 */
function isHeadOf(texts: readonly string[], below: readonly SplitRow[]): boolean {
  let named = false;
  for (const [i, text] of texts.entries()) {
    if (looksNumeric(text) || looksTorn(text)) return false;
    if (!below.some((row) => looksNumeric(textAt(row, i))) || isMissing(text)) continue;
    if (!/^[\p{L}([]/u.test(text)) return false;
    named = true;
  }
  // Words over words alone, and nothing below: still a head, of a table without numbers.
  return named || below.length === 0;
}

/** Finds head and units and checks that rows are equally long. */
function frameOf(given: readonly SplitRow[], delimiter: Delimiter): { frame: Frame } | { stop: TableStop } {
  const [top] = given;
  if (!top) return stopAt('empty', 1, 1, '');
  const first = delimiter === 'blanks' ? withUnitsJoined(top) : top;
  const rows = [first, ...given.slice(1)];
  // A delimiter at the end of every row makes an empty last cell in each: it is left out.
  const trailing = first.cells.length > 1 && rows.every((row) => row.cells.length === first.cells.length && row.cells.at(-1)?.text === '');
  const width = first.cells.length - (trailing ? 1 : 0);
  for (const row of rows) {
    const length = row.cells.length - (trailing ? 1 : 0);
    if (length < width) return stopAt('cells-missing', row.line, length + 1, '');
    if (length > width) return stopAt('cells-too-many', row.line, width + 1, textAt(row, width));
  }
  const texts = first.cells.slice(0, width).map((cell) => cell.text);
  const isHead = isHeadOf(texts, rows.slice(1));
  const names: string[] = [];
  const units: (ColumnUnit | null)[] = [];
  let body = rows;
  if (!isHead) {
    for (let i = 0; i < width; i++) {
      names.push(`column ${i + 1}`);
      units.push(null);
    }
    return { frame: { head: null, names, units, body, width } };
  }
  body = rows.slice(1);
  const headings = texts.map(readHeading);
  const second = body[0];
  const unitRow = second?.cells.slice(0, width).every((cell) => readUnit(cell.text) !== null || isMissing(cell.text));
  const belowUnits = unitRow && second?.cells.some((cell) => readUnit(cell.text) !== null) ? second : null;
  if (belowUnits) body = body.slice(1);
  const alone = headings.map((_, i) => readUnit(texts[i] as string) !== null);
  for (let i = 0; i < width; i++) {
    const text = texts[i] as string;
    const { name, unit } = headings[i] as ReturnType<typeof readHeading>;
    if (alone[i] && !alone.every(Boolean)) return stopAt('unit-alone', first.line, i + 1, text);
    const below = belowUnits ? readUnit((belowUnits.cells[i] as { text: string }).text) : null;
    if (unit === 'mass') return stopAt('unit-of-mass', first.line, i + 1, text);
    if (below === 'mass') return stopAt('unit-of-mass', belowUnits?.line ?? 1, i + 1, textAt(belowUnits, i));
    if (unit && below && unit !== below) return stopAt('units-clash', belowUnits?.line ?? 1, i + 1, textAt(belowUnits, i));
    names.push(name === '' ? `column ${i + 1}` : name);
    units.push(unit ?? below);
  }
  return { frame: { head: first, names, units, body, width } };
}

/** The decimal mark of a table from all its numbers, or where it stops. */
function decimalOf(
  frame: Frame,
  parsed: readonly (readonly (NumberCell | null)[] | null)[],
  asked: DecimalMark | undefined,
): { mark: DecimalMark | null } | { stop: TableStop } {
  let mark = asked ?? null;
  const open: { row: SplitRow; column: number; mark: string }[] = [];
  for (const [r, row] of frame.body.entries()) {
    for (let i = 0; i < frame.width; i++) {
      const number = parsed[i]?.[r];
      if (!number) continue;
      const cell = row.cells[i] as { text: string };
      const evidence = markEvidence(number);
      if (evidence === 'none') continue;
      if (evidence === 'broken') return stopAt('no-number', row.line, i + 1, cell.text);
      if (evidence === 'open') open.push({ row, column: i, mark: /[.,]/.exec(number.digits)?.[0] ?? '' });
      else if (mark === null) mark = evidence;
      else if (mark !== evidence) return stopAt('decimal-marks-clash', row.line, i + 1, cell.text);
    }
  }
  // With the mark known from other cells, one followed by three digits is its own decimals; the other mark there would be
  // a group of thousands, or a slip of the pen that makes a force a thousand times as large.
  const doubtful = asked === undefined ? open.find((each) => each.mark !== mark) : undefined;
  if (doubtful) {
    const cell = doubtful.row.cells[doubtful.column] as { text: string };
    return stopAt('decimal-mark-open', doubtful.row.line, doubtful.column + 1, cell.text);
  }
  return { mark };
}

/** Where a table split by commas or blanks may be one of decimal commas or grouped digits after all. */
function doubtOf(frame: Frame, delimiter: Delimiter): { stop: TableStop } | null {
  const whole = (row: SplitRow, i: number): boolean => {
    const cell = row.cells[i];
    return cell !== undefined && !cell.quoted && /^\d+$/.test(cell.text);
  };
  const [first] = frame.body;
  if (!first) return null;
  const isNumber = (text: string): boolean => looksNumeric(text) && readNumberCell(text)?.unit === '';
  if (delimiter === 'none' && frame.head === null) {
    // One number a line with a comma looks like two numbers a line.
    const comma = frame.body.find(({ cells: [cell] }) => {
      const number = cell?.quoted === false && cell.text.includes(',') ? readNumberCell(cell.text) : null;
      return number !== null && markEvidence(number) !== 'broken';
    });
    if (comma && frame.body.every(({ cells: [cell] }) => looksNumeric(cell?.text ?? '') || isMissing(cell?.text ?? ''))) return stopAt('delimiter-open', comma.line, 1, textAt(comma, 0));
  }
  if (delimiter === 'comma' && frame.body.some((row) => row.cells.some(({ text, quoted }) => quoted && text.includes(',') && looksNumeric(text)))) {
    // Quoted numbers have commas of their own: where a number follows another without quotes or blank, they may be one.
    for (const row of frame.body) {
      for (let i = 1; i < row.cells.length; i++) {
        const left = row.cells[i - 1] as Cell;
        const right = row.cells[i] as Cell;
        if (left.quoted || right.quoted || right.spaced || !isNumber(left.text) || !/^\d/.test(right.text)) continue;
        return stopAt('delimiter-open', row.line, i, `${left.text},${right.text}`);
      }
    }
  }
  if (delimiter === 'comma') {
    for (let i = 1; i < frame.width; i++) {
      // Blanks behind this comma in some rows and none in others: there it may be part of a number.
      if (!frame.body.some((row) => row.cells[i]?.spaced)) continue;
      const close = frame.body.find((row) => {
        const [left, right] = [row.cells[i - 1] as Cell, row.cells[i] as Cell];
        return !left.quoted && !right.quoted && !right.spaced && isNumber(left.text) && /^\d/.test(right.text);
      });
      if (close) return stopAt('delimiter-open', close.line, i, `${textAt(close, i - 1)},${textAt(close, i)}`);
    }
  }
  for (let i = 1; i < frame.width; i++) {
    const bare = frame.head === null || (frame.head.cells[i]?.spaced === true && delimiter === 'comma');
    if (!bare) continue;
    if (delimiter === 'comma') {
      // Whole numbers on both sides of every comma, no blank behind it: decimal commas look the same.
      const same = frame.body.every((row) => /^[+\-\u2212>]?\d[\d\u00a0\u2009\u202f'\u2019]*$/.test(textAt(row, i - 1)) && /^\d+/.test(textAt(row, i)) && row.cells[i]?.spaced === false && row.cells[i]?.quoted === false);
      if (same) return stopAt('delimiter-open', first.line, i, `${textAt(first, i - 1)},${textAt(first, i)}`);
    }
    if (delimiter === 'blanks' && frame.body.every((row) => whole(row, i - 1) && (row.cells[i - 1]?.text.length ?? 9) <= 3 && /^\d{3}(?!\d)/.test(textAt(row, i)))) {
      return stopAt('delimiter-open', first.line, i, `${textAt(first, i - 1)} ${textAt(first, i)}`);
    }
  }
  return null;
}

function readWith(plain: string, delimiter: Delimiter, options: TableOptions): TableReading {
  const split = splitTable(plain, delimiter);
  if ('fault' in split) return stopAt('quote', split.fault.line, split.fault.column, split.fault.text);
  const framed = frameOf(split.rows, delimiter);
  if ('stop' in framed) return framed;
  const { frame } = framed;
  if (delimiter === 'blanks' || delimiter === 'none') {
    for (const row of frame.body) {
      const torn = row.cells.findIndex(({ text, quoted }) => !quoted && text.includes('"'));
      if (torn >= 0) return stopAt('quote', row.line, torn + 1, textAt(row, torn));
    }
  }
  const strange = frame.head?.cells.findIndex(({ text, quoted }) => {
    if (quoted) return false;
    const marks = delimiter === 'none' || delimiter === 'blanks' ? /[;\t,"]/ : delimiter === 'comma' ? /[;\t]/ : /\t/;
    // "force, kN" over one column is a name with its unit.
    const [, unit, ...more] = text.split(',');
    return marks.test(text) && (unit === undefined || more.length > 0 || readUnit(unit) === null);
  });
  if (frame.head && strange !== undefined && strange >= 0 && options.delimiter === undefined) {
    // Other marks than the one tried stand in the head: its rows lack cells.
    return stopAt('cells-missing', frame.body[0]?.line ?? frame.head.line, strange + 2, '');
  }
  const asText = new Set(options.textColumns ?? []);
  const numeric: boolean[] = [];
  for (let i = 0; i < frame.width; i++) {
    const cells = frame.body.map((row) => (row.cells[i] as { text: string }).text);
    numeric.push(!asText.has(i + 1) && cells.some(looksNumeric));
    if (asText.has(i + 1) || numeric[i]) continue;
    // Between blanks, a word with a comma and digits is more likely two cells.
    const joined = (text: string): boolean => delimiter === 'blanks' && /,.*\d|\d.*,/.test(text);
    const torn = frame.body.find((row) => {
      const { text, quoted } = row.cells[i] as Cell;
      return looksTorn(text) || (!quoted && joined(text));
    });
    if (torn) return stopAt('no-number', torn.line, i + 1, (torn.cells[i] as { text: string }).text);
    const filled = cells.filter((text) => !isMissing(text));
    if (filled.length > 0 && filled.every((text) => readUnit(text) !== null)) {
      // Split by blanks, the unit was torn off its number; between other marks it is a column whose numbers lack it.
      return stopAt(delimiter === 'blanks' ? 'no-number' : 'unit-alone', frame.body[0]?.line ?? 1, i + 1, cells[0] ?? '');
    }
  }
  const [top] = split.rows;
  if (!numeric.some(Boolean)) return stopAt('no-numbers-at-all', frame.body[0]?.line ?? top?.line ?? 1, 1, (frame.body[0] ?? top)?.cells[0]?.text ?? '');
  const doubt = options.delimiter === undefined ? doubtOf(frame, delimiter) : null;
  if (doubt) return doubt;
  const parsed = numeric.map((is, i) => (is ? frame.body.map((row) => readNumberCell((row.cells[i] as Cell).text)) : null));
  const decimal = decimalOf(frame, parsed, options.decimal);
  if ('stop' in decimal) return decimal;
  const mark = decimal.mark ?? '.';
  const columns: Column[] = [];
  for (let i = 0; i < frame.width; i++) {
    const name = frame.names[i] as string;
    if (!numeric[i]) {
      columns.push({ kind: 'text', name, unit: null, values: frame.body.map((row) => (row.cells[i] as { text: string }).text) });
      continue;
    }
    const values: (number | null)[] = [];
    const atLeast: boolean[] = [];
    let unit = frame.units[i] ?? null;
    const hadHeadUnit = unit !== null;
    let bare: { line: number; text: string } | null = null;
    for (const [r, row] of frame.body.entries()) {
      const { text } = row.cells[i] as { text: string };
      if (isMissing(text)) {
        values.push(null);
        atLeast.push(false);
        continue;
      }
      const cell = parsed[i]?.[r];
      if (!cell) return stopAt(looksTorn(text) ? 'no-number' : 'not-a-number', row.line, i + 1, text);
      const value = decimalValue(cell, mark);
      if (value === null) return stopAt('no-number', row.line, i + 1, text);
      if (cell.unit !== '') {
        const found = readUnit(cell.unit);
        if (found === 'mass') return stopAt('unit-of-mass', row.line, i + 1, text);
        if (found === null) return stopAt('unit-unknown', row.line, i + 1, text);
        if (unit !== null && unit !== found) return stopAt('units-clash', row.line, i + 1, text);
        if (unit === null && bare) return stopAt('units-clash', bare.line, i + 1, bare.text);
        unit = found;
      } else {
        bare ??= { line: row.line, text };
        // Some cells with a unit and some without, and a head that has none: nobody can tell.
        if (unit !== null && !hadHeadUnit) return stopAt('units-clash', row.line, i + 1, text);
      }
      values.push(value);
      atLeast.push(cell.atLeast);
    }
    columns.push({ kind: 'numbers', name, unit, values, atLeast });
  }
  return { table: { delimiter, decimal: decimal.mark, hasHead: frame.head !== null, columns, lines: frame.body.map((row) => row.line) } };
}

/** Whether a stop means that the delimiter does not fit, rather than that the reader must decide something. */
function isMisfit(stop: TableStop): boolean {
  return ['cells-missing', 'cells-too-many', 'no-number', 'no-numbers-at-all', 'not-a-number', 'quote', 'unit-unknown'].includes(stop.reason);
}

function sameReading(a: Table, b: Table): boolean {
  return JSON.stringify(a.columns.map((c) => c.values)) === JSON.stringify(b.columns.map((c) => c.values));
}

/** The first fifty lines of a longer text; null where there are no more. */
function firstLines(plain: string): string | null {
  let at = -1;
  for (let line = 0; line < 50; line++) {
    at = plain.indexOf('\n', at + 1);
    if (at < 0) return null;
  }
  return plain.slice(0, at);
}

/**
 * Reads a table. Tabs are tried first, then semicolons; then commas, blanks and one cell a line, of which exactly one must
 * fit. Lines that begin with # are notes. A first row of words is the head; a row of units may follow it.
 */
export function readTable(text: string, options: TableOptions = {}): TableReading {
  const plain = plainText(text);
  if (options.delimiter !== undefined) return readWith(plain, options.delimiter, options);
  const content = plain.split('\n').filter((line) => line.trim() !== '' && !/^\s*#/.test(line));
  let misfit: TableReading | null = null;
  for (const delimiter of ['tab', 'semicolon'] as const) {
    const mark = delimiter === 'tab' ? '\t' : ';';
    if (!content.some((line) => line.includes(mark))) continue;
    const reading = readWith(plain, delimiter, options);
    if ('table' in reading ? reading.table.columns.length > 1 : !isMisfit(reading.stop)) return reading;
    // A tab is hardly ever part of a cell; a semicolon may be.
    if (delimiter === 'tab' || content.every((line) => line.includes(mark))) return reading;
    misfit ??= reading;
  }
  const candidates: Delimiter[] = ['none'];
  if (content.some((line) => /\S[ \t]+\S/.test(line))) candidates.unshift('blanks');
  if (content.some((line) => line.includes(','))) candidates.unshift('comma');
  const beginning = firstLines(plain);
  const readings = candidates.map((delimiter) => {
    // Rows of unequal length stay so, however long the record: most candidates fall by their first lines.
    const early = beginning === null ? null : readWith(beginning, delimiter, options);
    if (early && 'stop' in early && ['cells-missing', 'cells-too-many'].includes(early.stop.reason)) return early;
    return readWith(plain, delimiter, options);
  });
  const fits = readings.filter((reading) => 'table' in reading || !isMisfit(reading.stop));
  const [first, second] = fits;
  if (first && !second) return first;
  if (first && second) {
    const stop = fits.find((reading) => 'stop' in reading);
    if (stop) return stop;
    const tables = fits.flatMap((reading) => ('table' in reading ? [reading.table] : []));
    if (tables.every((table) => sameReading(table, tables[0] as Table))) return first;
    const line = (tables[0] as Table).lines[0] ?? 1;
    return stopAt('delimiter-open', line, 1, plain.split('\n')[line - 1]?.trim() ?? '');
  }
  return misfit ?? (readings[0] as TableReading);
}
