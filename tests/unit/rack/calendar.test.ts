/** The calendar of the example rack, read by another program (ical.js, an implementation of RFC 5545 and RFC 7265). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { verdictRules } from '../../../src/build/retirement-rules.ts';
import { registerCalendar } from '../../../src/rack/calendar.ts';
import { itemName } from '../../../src/rack/item-words.ts';
import { readRegisterJson } from '../../../src/rack/json-file.ts';
import { addItems, changeItem, emptyRegister, onRack } from '../../../src/rack/register.ts';
import { itemReasons } from '../../../src/rack/sling-history.ts';
import type { Item, Register } from '../../../src/rack/types.ts';
import { readAll } from '../../../src/records/read.ts';
import { ROOT } from '../../support/step.ts';
import { by } from './histories.ts';

const ON = '2026-11-25';
const rules = verdictRules(readAll(ROOT));
const verdictOf = (item: Item) => itemReasons(rules, item, ON)[0]?.asks ?? null;

function example(): Register {
  const read = readRegisterJson(readFileSync(join(ROOT, 'data/demo/rack.json'), 'utf8'));
  if (!read.ok) throw new Error('the example is no register');
  return read.value;
}
function eventsOf(register: Register) {
  const calendar = new ICAL.Component(ICAL.parse(registerCalendar(register, verdictOf, `${ON}T10:00:00Z`, ON) ?? ''));
  return { calendar, events: calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one)) };
}

test('another program finds an event of a whole day for each device on the rack, and nothing else', () => {
  const rack = example();
  const { calendar, events } = eventsOf(rack);
  expect([calendar.name, calendar.getFirstPropertyValue('version')]).toEqual(['vcalendar', '2.0']);
  expect(events.map(({ uid }) => uid).sort()).toEqual(onRack(rack).map(({ id }) => `${id}@second-sling-rack`).sort());
  for (const event of events) {
    const item = rack.items.find(({ id }) => event.uid.startsWith(`${id}@`)) as Item;
    const verdict = verdictOf(item);
    expect(event.startDate.isDate).toBe(true);
    expect(event.startDate.toString()).toBe(verdict?.kind === 'retire-now' ? ON : verdict?.day);
    expect(event.summary).toContain(itemName(item));
    expect(event.summary).toMatch(/^Invented example\. /);
    expect(event.description).toContain('This rack is invented');
  }
});

test('another program reminds two weeks before what is still to come, and not of what is due at once', () => {
  for (const event of eventsOf(example()).events) {
    const alarms = event.component.getAllSubcomponents('valarm');
    expect(alarms).toHaveLength(event.startDate.toString() > ON ? 1 : 0);
    for (const alarm of alarms) expect((alarm.getFirstPropertyValue('trigger') as unknown as { toSeconds: () => number }).toSeconds()).toBe(-14 * 24 * 60 * 60);
  }
});

test('another program reads names and notes as they were written', () => {
  const name = 'Ä "long" name, with; \\ and a very great deal of text that has to be folded more than once, \u{1F9D7} included';
  const added = addItems(emptyRegister(), by('copya'), [{ name: 'x' }]);
  const register = changeItem(added, by('copya'), added.items[0]?.id ?? '', { name, notes: 'one\ntwo; three, four \\n' });
  const [event] = eventsOf(register).events;
  expect(event?.summary).toBe(`Retire now: ${name}`);
  expect(event?.description).toBe('one\ntwo; three, four \\n');
});
