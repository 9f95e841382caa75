/** Amounts as people write them, whatever their country: decimal point or comma, digits in groups of three, or neither. */

/** An amount, or what is wrong with the text in words that say what to do. */
export type ReadAmount = { ok: true; value: number } | { ok: false; why: string };

export interface AmountRange { low: number; high: number; /** Whether only whole numbers are meant. */ whole?: boolean }

/** Signs between groups of three digits: blanks of any width, and the apostrophes of Switzerland. */
const GROUPING = /(?<=\d)[\s\u00a0\u2009\u202f'\u2019](?=\d{3}(?!\d))/g;
const POINT_AND_COMMA = /^(?:\d{1,3}(?:,\d{3})+\.\d+|\d{1,3}(?:\.\d{3})+,\d+)$/;
/** Two groups or more: no decimal sign stands twice. */
const GROUPS = /^\d{1,3}(?:(?:,\d{3}){2,}|(?:\.\d{3}){2,})$/;
const PLAIN = /^\d{1,12}(?:[.,]\d{1,9})?$/;
/** `1,234` and `1.234`: a thousand and some, or one and a bit. */
const EITHER = /^[1-9]\d{0,2}[.,]\d{3}$/;

/**
 * Reads `9`, `9.50`, `9,50`, `1 234,50`, `1.234,50` or `1'234.50`. What can be two numbers is refused.
 * @param range limits, inclusive; a number outside is refused, not moved to its end
 */
export function readAmount(text: string, { low, high, whole = false }: AmountRange): ReadAmount {
  const digits = text.trim().replace(GROUPING, '');
  const range = `from ${low} to ${high}`;
  if (whole && !/^\d{1,12}$/.test(digits)) return { ok: false, why: `no whole number; write one ${range}` };
  if (EITHER.test(digits) && digits === text.trim()) return { ok: false, why: `can be ${digits.replace(/[.,]/, '')} or ${digits.replace(',', '.')}; write it without the sign, or with two digits behind it` };
  let plain = digits;
  if (POINT_AND_COMMA.test(digits)) plain = digits.replace(/[.,](?=.*[.,])/g, '').replace(',', '.');
  else if (GROUPS.test(digits)) plain = digits.replace(/[.,]/g, '');
  else if (PLAIN.test(digits)) plain = digits.replace(',', '.');
  else return { ok: false, why: `no plain number; write one ${range}` };
  const value = Number(plain);
  return value < low || value > high ? { ok: false, why: `outside ${low} to ${high}` } : { ok: true, value };
}
