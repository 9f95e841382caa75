/** Days as a label gives them: a year, a month or a whole day. Pure; the calendar is the Gregorian one, and no day is "today". */

/** A day as far as it is known. A day of the month needs its month. */
export interface PartDay { year: number; month?: number; day?: number }

const WRITTEN = /^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$/;
const two = (value: number): string => String(value).padStart(2, '0');

/** Days of a month, in a leap year as in another. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Whether the calendar has this day. Years from 1950 on: no sling of ours is older than that. */
export function isPartDay({ year, month, day }: PartDay): boolean {
  if (!Number.isInteger(year) || year < 1950 || year > 2199) return false;
  if (month === undefined) return day === undefined;
  if (!Number.isInteger(month) || month < 1 || month > 12) return false;
  return day === undefined || (Number.isInteger(day) && day >= 1 && day <= daysInMonth(year, month));
}

/** Reads `2019`, `2019-04` or `2019-04-17`; null for anything else, also for a day that no calendar has. */
export function parsePartDay(text: string): PartDay | null {
  const [, year, month, day] = WRITTEN.exec(text) ?? [];
  if (year === undefined) return null;
  const read: PartDay = { year: Number(year), ...(month === undefined ? {} : { month: Number(month) }), ...(day === undefined ? {} : { day: Number(day) }) };
  return isPartDay(read) ? read : null;
}

/** `2019-04`: as much as is known, in the order of the standard (ISO 8601). */
export function writePartDay({ year, month, day }: PartDay): string {
  return [String(year), ...(month === undefined ? [] : [two(month)]), ...(day === undefined ? [] : [two(day)])].join('-');
}

/** Whether a text is a whole day, `2019-04-17`. */
export const isDay = (text: string): boolean => parsePartDay(text)?.day !== undefined;

/** Whether a text is a moment in universal time to the second, `2026-11-25T10:00:00Z`. */
export function isMoment(text: string): boolean {
  const [, day = '', hour, minute, second] = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2}):(\d{2})Z$/.exec(text) ?? [];
  return isDay(day) && Number(hour) < 24 && Number(minute) < 60 && Number(second) < 60;
}
