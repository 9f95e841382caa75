/** Days of the calendar as texts, `2026-11-24`, which sort as they follow each other. No clock and no time zone. */

const LABEL = /^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$/;
const pad = (n: number, width: number): string => String(n).padStart(width, '0');

/** Gregorian: every fourth year, but of the hundreds only every fourth. */
function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * The earliest day that a label can mean: "2019" is the first of January, "2019-05" the first of May.
 * @throws RangeError when the label is no year, month or day
 */
export function earliestDay(label: string): string {
  const [, year, month = '01', day = '01'] = LABEL.exec(label) ?? [];
  const isDay = year !== undefined && +month >= 1 && +month <= 12 && +day >= 1 && +day <= daysInMonth(+year, +month);
  if (!isDay) throw new RangeError(`label must be a year, month or day like 2019, 2019-05 or 2019-05-31 (got ${label})`);
  return `${year}-${month}-${day}`;
}

/** True where the first label lies before the second whatever days they mean: 2019 before 2020-05, but not before 2019-05. */
export function isSurelyBefore(a: string, b: string): boolean {
  return a < b.slice(0, a.length);
}

/**
 * The same day so many months later; in a shorter month its last day, so that no limit comes later for it.
 * @throws RangeError when months is no whole number from 0, or the year would need more than four digits
 */
export function addMonths(day: string, months: number): string {
  if (!Number.isInteger(months) || months < 0) throw new RangeError(`months must be a whole number from 0 (got ${months})`);
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const count = year * 12 + (month - 1) + months;
  const then = { year: Math.floor(count / 12), month: (count % 12) + 1 };
  if (then.year > 9999) throw new RangeError(`months must not lead past the year 9999 (got ${months})`);
  return `${pad(then.year, 4)}-${pad(then.month, 2)}-${pad(Math.min(date, daysInMonth(then.year, then.month)), 2)}`;
}
