/** What is due as a calendar file (RFC 5545). Pure: the moment of writing is given, and the same register gives the same bytes. */
import type { Headline } from '../retirement/verdict.ts';
import { byDue, type Due, type VerdictOf } from './due.ts';
import { itemName } from './item-words.ts';
import { isMoment } from './part-day.ts';
import type { Register } from './types.ts';

/** Octets of a line without its end, at most (RFC 5545, 3.1). */
const LONGEST = 75;

/** Octets of a character in UTF-8. */
const octets = (character: string): number => {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
};

/** A content line in pieces of at most 75 octets; a piece after the first begins with a blank. No character is cut. */
export function folded(line: string): string {
  let [text, length] = ['', 0];
  for (const character of line) {
    const size = octets(character);
    if (length + size > LONGEST) {
      text += '\r\n ';
      length = 1;
    }
    text += character;
    length += size;
  }
  return `${text}\r\n`;
}

/** Text as a value (RFC 5545, 3.3.11): four characters are escaped, and other control characters have no place in it. */
export function calendarText(text: string): string {
  const escaped = text.toWellFormed().replace(/[\\;,]/g, (one) => `\\${one}`).replace(/\r\n|\n|\r/g, '\\n');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the standard forbids just these
  return escaped.replace(/[\u0000-\u0008\u000a-\u001f\u007f]/g, '');
}

const compact = (day: string): string => day.replaceAll('-', '');

/** What has to be done on the day of the event. */
function sayOf(verdict: Headline, on: string): string {
  if (verdict.kind === 'retire-now') return 'Retire now';
  if (verdict.kind === 'retire-by') return 'Retire by this day';
  return verdict.day <= on ? 'Inspect before the next use' : 'Inspect again by this day';
}

/**
 * The calendar of a register: one event of a whole day for each item of which a rule speaks, with a reminder before it. What
 * is to be retired now stands on the day of writing. An item keeps its event's UID, so a later file moves the event.
 * @param at moment of writing, universal time
 * @param on day of writing where the reader is
 * @param remindDays days before the event on which a calendar reminds; null for no reminder
 * @returns null where nothing is due: the standard has no calendar without an event
 * @throws RangeError when `at` is no moment or `remindDays` no whole number from 0
 */
export function registerCalendar(register: Register, verdictOf: VerdictOf, at: string, on = at.slice(0, 10), remindDays: number | null = 14): string | null {
  if (!isMoment(at)) throw new RangeError(`at must be a moment such as 2026-11-25T10:00:00Z (got ${at})`);
  if (remindDays !== null && !(Number.isInteger(remindDays) && remindDays >= 0 && remindDays <= 366)) throw new RangeError(`remindDays must be a whole number from 0 to 366 (got ${remindDays})`);
  const stamp = `${compact(at.slice(0, 10))}T${at.slice(11, 19).replaceAll(':', '')}Z`;
  const event = ({ item, verdict }: Due): string[] => {
    if (!verdict) return [];
    const summary = calendarText(`${register.invented ? 'Invented example. ' : ''}${sayOf(verdict, on)}: ${itemName(item)}${item.count > 1 ? ` (${item.count} of them)` : ''}`);
    const day = verdict.kind === 'retire-now' ? on : verdict.day;
    const notes = [register.invented, item.notes].filter(Boolean).join('\n');
    return [
      'BEGIN:VEVENT', `UID:${item.id}@second-sling-rack`, `DTSTAMP:${stamp}`, `DTSTART;VALUE=DATE:${compact(day)}`, `SUMMARY:${summary}`,
      ...(notes ? [`DESCRIPTION:${calendarText(notes)}`] : []),
      'TRANSP:TRANSPARENT',
      // Counted from the first moment of the day.
      ...(remindDays === null || day <= on ? [] : ['BEGIN:VALARM', 'ACTION:DISPLAY', `DESCRIPTION:${summary}`, `TRIGGER:${remindDays === 0 ? 'PT0S' : `-P${remindDays}D`}`, 'END:VALARM']),
      'END:VEVENT',
    ];
  };
  const events = byDue(register, verdictOf).flatMap(event);
  if (events.length === 0) return null;
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Second Sling//Rack register//EN', 'CALSCALE:GREGORIAN', ...events, 'END:VCALENDAR'].map(folded).join('');
}
