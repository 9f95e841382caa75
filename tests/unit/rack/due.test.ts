/** The order of what is due, and the calendar of it. The calendar is read by a reader of RFC 5545's grammar that stands in this test. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendarText, folded, registerCalendar } from '../../../src/rack/calendar.ts';
import { byDue, byName, type VerdictOf } from '../../../src/rack/due.ts';
import { addItems, emptyRegister, removeItem } from '../../../src/rack/register.ts';
import type { Item } from '../../../src/rack/types.ts';
import type { Headline } from '../../../src/retirement/verdict.ts';
import { register, text } from './arbitrary-register.ts';
import { by } from './histories.ts';

const AT = '2026-11-25T10:00:00Z';
const verdicts: Readonly<Record<string, Headline>> = {
  'Nut 10': { kind: 'inspect-by', day: '2027-01-01' }, 'nut 9': { kind: 'inspect-by', day: '2027-01-01' }, Old: { kind: 'retire-now' },
  Late: { kind: 'inspect-by', day: '2026-01-01' }, Retire: { kind: 'retire-by', day: '2027-01-01' }, Gone: { kind: 'retire-now' },
};
const verdictOf: VerdictOf = ({ name }) => verdicts[name] ?? null;
const added = addItems(emptyRegister(), by('copya'), [...Object.keys(verdicts), 'Quiet'].map((name) => ({ name })));
const rack = removeItem(added, by('copya'), added.items.find(({ name }) => name === 'Gone')!.id);

describe('the order', () => {
  test('is at once, then by day, on one day retirement first, then by name with numbers as numbers; what no rule speaks of is last', () => {
    expect(byDue(rack, verdictOf).map(({ item }) => item.name)).toEqual(['Old', 'Late', 'Retire', 'nut 9', 'Nut 10', 'Quiet']);
  });

  test('is one order whatever comes first: of any three names', () => {
    fc.assert(fc.property(text, text, text, (a, b, c) => {
      expect(Math.sign(byName(a, b))).toBe(-Math.sign(byName(b, a)) || 0);
      expect(byName(a, a)).toBe(0);
      if (byName(a, b) <= 0 && byName(b, c) <= 0) expect(byName(a, c)).toBeLessThanOrEqual(0);
    }), { numRuns: 2000 });
  });

  test('refuses a day that is none', () => {
    expect(() => byDue(rack, () => ({ kind: 'retire-by', day: 'soon' }))).toThrow(new RangeError('day must be a day such as 2026-11-25 (got soon)'));
  });
});

interface Property { name: string; params: string; value: string }
interface Component { name: string; properties: Property[]; parts: Component[] }

/** Reads a calendar by the grammar of RFC 5545: lines (3.1), components (3.6), TEXT (3.3.11). Throws at what the grammar does not allow. */
function parseCalendar(file: string): Component {
  expect(file.endsWith('\r\n')).toBe(true);
  expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  for (const line of file.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  const root: Component = { name: '', properties: [], parts: [] };
  const open = [root];
  for (const line of file.replaceAll('\r\n ', '').split('\r\n').slice(0, -1)) {
    // contentline = name *(";" param) ":" value; a value has no control character but HTAB.
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the grammar forbids just these
    const [, name = '', params = '', value = ''] = /^([A-Z0-9-]+)((?:;[A-Z0-9-]+=[^\u0000-\u001f";:,]+)*):([^\u0000-\u0008\u000a-\u001f\u007f]*)$/u.exec(line) ?? [];
    expect(name, line).not.toBe('');
    if (name === 'BEGIN') {
      const part: Component = { name: value, properties: [], parts: [] };
      open.at(-1)!.parts.push(part);
      open.push(part);
    } else if (name === 'END') expect(open.pop()!.name).toBe(value);
    else open.at(-1)!.properties.push({ name, params, value });
  }
  expect(open).toEqual([root]);
  expect(root.parts.map(({ name }) => name)).toEqual(['VCALENDAR']);
  return root.parts[0]!;
}
const the = (component: Component, name: string): Property => {
  const found = component.properties.filter((one) => one.name === name);
  expect(found, `${name} once in ${component.name}`).toHaveLength(1);
  return found[0]!;
};
/** A TEXT value without its escapes; anything else after a backslash is no TEXT, and neither is a bare comma or semicolon. */
function textValue(value: string): string {
  expect(value).toMatch(/^(?:[^\\;,]|\\[\\;,Nn])*$/u);
  return value.replace(/\\(.)/gu, (_, one: string) => (one.toLowerCase() === 'n' ? '\n' : one));
}

function checkCalendar(calendar: Component): Component[] {
  expect(the(calendar, 'VERSION').value).toBe('2.0');
  expect(the(calendar, 'PRODID').value).toBe('-//Second Sling//Rack register//EN');
  expect(calendar.parts.length).toBeGreaterThan(0);
  for (const event of calendar.parts) {
    expect(event.name).toBe('VEVENT');
    expect(the(event, 'DTSTAMP').value).toMatch(/^\d{8}T\d{6}Z$/);
    expect(the(event, 'DTSTART')).toMatchObject({ params: ';VALUE=DATE', value: expect.stringMatching(/^\d{8}$/) as string });
    the(event, 'UID');
    for (const alarm of event.parts) {
      expect(alarm.name).toBe('VALARM');
      expect(the(alarm, 'ACTION').value).toBe('DISPLAY');
      expect(the(alarm, 'TRIGGER').value).toMatch(/^-P\d+D$|^PT0S$/);
      textValue(the(alarm, 'DESCRIPTION').value);
    }
  }
  const uids = calendar.parts.map((event) => the(event, 'UID').value);
  expect(new Set(uids).size).toBe(uids.length);
  return calendar.parts;
}

describe('the calendar', () => {
  test('has one event for each item of which a rule speaks, on its day, and what is due at once on the day of writing', () => {
    const events = checkCalendar(parseCalendar(registerCalendar(rack, verdictOf, AT)!));
    expect(events.map((event) => [textValue(the(event, 'SUMMARY').value), the(event, 'DTSTART').value, event.parts.length])).toEqual([
      ['Retire now: Old', '20261125', 0],
      ['Inspect before the next use: Late', '20260101', 0],
      ['Retire by this day: Retire', '20270101', 1],
      ['Inspect again by this day: nut 9', '20270101', 1],
      ['Inspect again by this day: Nut 10', '20270101', 1],
    ]);
    expect(the(events[0]!, 'DTSTAMP').value).toBe('20261125T100000Z');
    expect(the(events[2]!.parts[0]!, 'TRIGGER').value).toBe('-P14D');
  });

  test('keeps the UID of an item when its day moves, so that the calendar moves the event', () => {
    const uids = (of: VerdictOf) => checkCalendar(parseCalendar(registerCalendar(rack, of, AT)!)).map((event) => the(event, 'UID').value).sort();
    expect(uids(() => ({ kind: 'retire-by', day: '2030-02-28' }))).toEqual(uids(() => ({ kind: 'inspect-by', day: '2027-02-28' })));
  });

  test('gives back every name and note, whatever they are written with', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a TEXT cannot have these
    const control = /[\u0000-\u0008\u000b-\u001f\u007f]/gu;
    fc.assert(fc.property(register, (one) => {
      const of = (item: Item): Headline => ({ kind: 'inspect-by', day: item.inspections[0]?.day ?? '2027-05-04' });
      const file = registerCalendar(one, of, AT);
      if (one.items.length === 0) return void expect(file).toBeNull();
      const events = checkCalendar(parseCalendar(file!));
      for (const { id, name, notes } of one.items) {
        const event = events.find((candidate) => the(candidate, 'UID').value === `${id}@second-sling-rack`)!;
        if (name.trim()) expect(textValue(the(event, 'SUMMARY').value)).toContain(name.trim().replace(control, ''));
        if (notes) expect(textValue(the(event, 'DESCRIPTION').value)).toBe(notes.replace(control, ''));
      }
    }), { numRuns: 300 });
  });

  test('of an example says in each event that it is invented', () => {
    const example = addItems(emptyRegister('This rack is invented.'), by('demo1'), [{ ratingKn: 12, count: 3, sling: { material: 'hmpe', widthMm: 10 } }]);
    const [event] = checkCalendar(parseCalendar(registerCalendar(example, () => ({ kind: 'retire-now' }), AT)!));
    expect(textValue(the(event!, 'DESCRIPTION').value)).toBe('This rack is invented.');
    expect(textValue(the(event!, 'SUMMARY').value)).toBe('Invented example. Retire now: Device, 12 kN, HMPE 10 mm (3 of them)');
  });

  test('counts what is due from the day where the reader is, which may not yet be that of universal time', () => {
    const events = checkCalendar(parseCalendar(registerCalendar(rack, verdictOf, AT, '2026-11-24')!));
    expect(the(events[0]!, 'DTSTART').value).toBe('20261124');
  });

  test('where nothing is due is none, for the standard has no calendar without an event', () => {
    expect(registerCalendar(rack, () => null, AT)).toBeNull();
  });

  test('can do without a reminder, and refuses what is no moment or no number of days', () => {
    expect(registerCalendar(rack, verdictOf, AT, '2026-11-25', null)).not.toContain('VALARM');
    expect(() => registerCalendar(rack, verdictOf, '2026-11-25')).toThrow(new RangeError('at must be a moment such as 2026-11-25T10:00:00Z (got 2026-11-25)'));
    expect(() => registerCalendar(rack, verdictOf, AT, '2026-11-25', 1.5)).toThrow(new RangeError('remindDays must be a whole number from 0 to 366 (got 1.5)'));
  });
});

test('a long line is folded at 75 octets, and no character is cut in two', () => {
  // Two octets each: 37 fit into the first line; a later one has its blank and 37 more.
  expect(folded('ü'.repeat(80)).split('\r\n').map((line) => line.length)).toEqual([37, 38, 7, 0]);
  expect(folded('a'.repeat(75))).toBe(`${'a'.repeat(75)}\r\n`);
});

test('lines of any length are folded so that none is over 75 octets, and unfolding gives them back', () => {
  fc.assert(fc.property(fc.string({ unit: fc.constantFrom('a', 'ü', '\u2028', '\u{1F9D7}'), maxLength: 400, size: 'max' }), (line) => {
    const lines = folded(line);
    for (const one of lines.split('\r\n')) expect(new TextEncoder().encode(one).length).toBeLessThanOrEqual(75);
    expect(lines.replaceAll('\r\n ', '')).toBe(`${line}\r\n`);
  }));
});

test('the example of RFC 5545, 3.3.11, is escaped as it stands there', () => {
  expect(calendarText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe('Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.');
  expect(calendarText('a;b,c\\d')).toBe('a\\;b\\,c\\\\d');
});
