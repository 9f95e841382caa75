/** Reading a number that a person typed or that stands in a link. */
import type { InputRange } from './rig-keys.ts';

/** A number, or what is wrong with the text in words that say what to do. */
export type ReadNumber = { ok: true; value: number } | { ok: false; why: string };

/** Digits with at most one decimal point or decimal comma. */
const PLAIN = /^\d{1,20}(?:[.,]\d{1,400})?$/;

/**
 * Reads `12`, `12.5` or `12,5`. A number outside the range is refused, not moved to its end.
 * @param text as typed; blanks around it do not matter
 * @param range limits of this input, inclusive
 */
export function readNumber(text: string, range: InputRange): ReadNumber {
  const trimmed = text.trim();
  const { low, high, unit } = range;
  if (!PLAIN.test(trimmed)) return { ok: false, why: `not a plain number; write one from ${low} to ${high} ${unit}` };
  const value = Number(trimmed.replace(',', '.'));
  if (value < low || value > high) return { ok: false, why: `outside ${low} to ${high} ${unit}` };
  return { ok: true, value };
}

/**
 * Writes a number so that `readNumber` gives back the same one: never with an exponent.
 * @param value not negative
 */
export function writeNumber(value: number): string {
  if (!(value >= 0) || value > 1e15) throw new RangeError(`writeNumber: value must be between 0 and 1e15 (got ${value})`);
  const short = String(value);
  if (!short.includes('e')) return short;
  const [digits, exponent] = short.split('e-') as [string, string];
  return `0.${'0'.repeat(Number(exponent) - 1)}${digits.replace('.', '')}`;
}
