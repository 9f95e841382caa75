/** One cell of a table: a number as people and machines write it, perhaps with its unit, or none. */

/** Which mark stands before the decimals. */
export type DecimalMark = '.' | ',';

/** What a cell looks like, before the decimal mark of the table is known. */
export interface NumberCell {
  /** Digits with their marks: `1 234,5`, grouping by thin blanks or apostrophes already taken out. */
  readonly digits: string;
  readonly sign: 1 | -1;
  /** `e-3` and the like; empty where there is none. */
  readonly exponent: string;
  /** What stands behind the number; empty where nothing does. */
  readonly unit: string;
  /** Written as a lower limit: `>12`, `>=12`, `12+`. */
  readonly atLeast: boolean;
}

/** What one number says of the decimal mark: the mark it proves, a contradiction in itself, or nothing. */
export type MarkEvidence = DecimalMark | 'open' | 'none' | 'broken';

/** Thin and non-breaking blanks: the only ones that may group digits. */
const GROUPING_BLANK = /[\u00a0\u2009\u202f\u2007]/;
const NUMBER =
  /^(>=|≥|>)?\s*([+\-\u2212]?)\s*((?:\d[\d.,'\u2019\u00a0\u2009\u202f\u2007]*|[.,]\d+))(?:[eE]([+\-\u2212]?\d+))?\s*(\+)?\s*([^\d\s+\-.,;'][^\d]*)?$/;

const PLAIN = /^-?\d+(?:[.,]\d+)?$/;
/** Groups of three by one mark, the whole cell. */
const GROUPED = { '.': /^\d{1,3}(?:\.\d{3})+$/, ',': /^\d{1,3}(?:,\d{3})+$/ } as const;

/** Words for a value that is not there. */
const MISSING = new Set(['', '-', '--', '\u2013', '\u2014', 'na', 'n/a', 'nan', 'null', 'none', '?']);

/** Whether a cell says that there is no value. */
export function isMissing(text: string): boolean {
  const code = text.charCodeAt(0);
  if (code >= 48 && code <= 57) return false;
  return MISSING.has(text.trim().toLowerCase());
}

/** Reads a cell as a number; null where it is none. Groups by thin blanks and apostrophes must be of three digits. */
export function readNumberCell(text: string): NumberCell | null {
  // Long records have little else.
  if (PLAIN.test(text)) {
    const negative = text.startsWith('-');
    return { digits: negative ? text.slice(1) : text, sign: negative ? -1 : 1, exponent: '', unit: '', atLeast: false };
  }
  const match = NUMBER.exec(text.trim());
  if (!match) return null;
  const [, limit = '', sign = '', body = '', exponent = '', plus = '', unit = ''] = match;
  const trimmed = body.replace(/[\u00a0\u2009\u202f\u2007]+$/, '');
  let digits = trimmed;
  if (/['\u2019]/.test(trimmed) || GROUPING_BLANK.test(trimmed)) {
    const whole = /^(\d{1,3}(?:(['\u2019\u00a0\u2009\u202f\u2007])\d{3})(?:\2\d{3})*)(?:[.,]\d+)?$/.exec(trimmed);
    if (!whole) return null;
    digits = trimmed.replace(/['\u2019\u00a0\u2009\u202f\u2007]/g, '');
  }
  if (/[.,]$/.test(digits)) return null;
  return {
    digits,
    sign: sign === '-' || sign === '\u2212' ? -1 : 1,
    exponent: exponent.replace('\u2212', '-'),
    unit,
    atLeast: limit !== '' || plus !== '',
  };
}

/** What these digits prove of the decimal mark of their table. */
export function markEvidence({ digits, exponent }: NumberCell): MarkEvidence {
  const marks = digits.replace(/\d/g, '');
  if (marks === '') return 'none';
  const first = marks[0] as DecimalMark;
  const last = marks.at(-1) as DecimalMark;
  if (first !== last) {
    // Groups, then the decimals: one mark of the second kind, at the end.
    const [whole = ''] = digits.split(last);
    const ok = marks.indexOf(last) === marks.length - 1 && GROUPED[first].test(whole);
    return ok ? last : 'broken';
  }
  if (marks.length > 1) return GROUPED[first].test(digits) ? (first === '.' ? ',' : '.') : 'broken';
  // One mark: three digits behind it and one to three before it may be a group, unless they start with 0.
  if (exponent === '' && GROUPED[first].test(digits) && !digits.startsWith('0')) return 'open';
  return first;
}

/** The value with the decimal mark known; null where the digits contradict it. */
export function decimalValue(cell: NumberCell, mark: DecimalMark): number | null {
  const other = mark === '.' ? ',' : '.';
  if (cell.exponent === '' && !cell.digits.includes(other) && cell.digits.indexOf(mark) === cell.digits.lastIndexOf(mark)) {
    const value = cell.sign * Number(mark === '.' ? cell.digits : cell.digits.replace(',', '.'));
    return Number.isFinite(value) ? value : null;
  }
  const [whole = '', ...rest] = cell.digits.split(mark);
  if (rest.length > 1) return null;
  if (whole.includes(other) && !GROUPED[other].test(whole)) return null;
  // A group behind the decimal mark is no number.
  const value = cell.sign * Number(`${whole.split(other).join('')}.${rest[0] ?? ''}e${cell.exponent || '0'}`);
  return Number.isFinite(value) ? value : null;
}
