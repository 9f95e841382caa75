/** Edits of a register, undo and redo. Every item is invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_STEPS, recorded, redone, startHistory, undone } from '../../../src/rack/history.ts';
import { readRegisterJson, registerJson } from '../../../src/rack/json-file.ts';
import { daysInMonth, isMoment, parsePartDay, writePartDay } from '../../../src/rack/part-day.ts';
import {
  addInspection, addItems, changeInspection, changeItem, editsSince, emptyRegister, isUntouched, onRack, removeItem, splitItem, writeFields, writesTo,
} from '../../../src/rack/register.ts';
import type { Register } from '../../../src/rack/types.ts';
import { EYES, MATERIALS, OLD_USES } from '../../../src/records/schema.ts';
import { RACK_EYES, RACK_MATERIALS, RACK_USES } from '../../../src/rack/types.ts';
import { partDay } from './arbitrary-register.ts';
import { acts, by, play } from './histories.ts';

const ME = by('copya');
const start = addItems(emptyRegister(), ME, [{ name: 'Red', ratingKn: 12, sling: { material: 'hmpe', widthMm: 10, made: { year: 2019, month: 4 } } }, { name: 'Blue', count: 3 }]);
const [red, blue] = start.items.map(({ id }) => id) as [string, string];
/** Values without the counts of edits: what a reader sees. */
const values = ({ items }: Register) => items.map(({ stamp, stamps, changed, ...rest }) => rest);

describe('an edit', () => {
  test('leaves the old register as it was, and shares with it what it did not touch', () => {
    const next = changeItem(start, ME, red, { name: 'Crimson', sling: { widthMm: 11 } });
    expect([start.items[0]?.name, next.items[0]?.name]).toEqual(['Red', 'Crimson']);
    expect(next.items[0]?.sling).toEqual({ ...start.items[0]?.sling, widthMm: 11 });
    expect(next.items[1]).toBe(start.items[1]);
  });

  test('that changes nothing is none: the register is the same one', () => {
    expect(changeItem(start, ME, red, { name: 'Red', sling: { made: { month: 4, year: 2019 } } })).toBe(start);
    expect(addItems(start, ME, [])).toBe(start);
    expect(writeFields(start, ME, [])).toBe(start);
    expect(isUntouched(emptyRegister())).toBe(true);
  });

  test('is counted once, however many items it touches, and export knows how many came since', () => {
    expect(start.seen).toEqual({ copya: 1 });
    const next = writeFields(start, by('copyb'), [red, blue].map((item) => ({ item, field: 'sling.use', value: 'weekly' })));
    expect(next.seen).toEqual({ copya: 1, copyb: 1 });
    expect([editsSince(next, start.seen), editsSince(next, next.seen), editsSince(next, {})]).toEqual([1, 0, 2]);
  });

  test('that takes an item off the rack keeps it in the register, and it can come back', () => {
    const off = removeItem(start, ME, red);
    expect([off.items.length, onRack(off).map(({ id }) => id)]).toEqual([2, [blue]]);
    expect(values(removeItem(off, ME, red, false))).toEqual(values(start));
  });

  test('adds, changes and takes out inspections, in the order of their days', () => {
    const second = addInspection(start, ME, red, { day: '2026-05-01', findings: ['fuzz'], by: 'A', note: '' });
    const first = addInspection(second, ME, red, { day: '2025-05-01', findings: [], by: 'A', note: '' });
    const looks = first.items[0]!.inspections;
    expect(looks.map(({ day }) => day)).toEqual(['2025-05-01', '2026-05-01']);
    const later = changeInspection(first, ME, red, looks[0]!.id, { ...looks[0]!, day: '2026-06-01' });
    expect(later.items[0]!.inspections.map(({ day }) => day)).toEqual(['2026-05-01', '2026-06-01']);
    expect(changeInspection(first, ME, red, looks[0]!.id, null).items[0]!.inspections).toHaveLength(1);
  });

  test('takes one of several alike into an item of their own, with all that was known of them', () => {
    const looked = addInspection(start, ME, blue, { day: '2026-05-01', findings: ['fuzz'], by: 'A', note: '' });
    const next = splitItem(looked, ME, blue, 1);
    const [old, taken] = [next.items.find(({ id }) => id === blue)!, next.items.find(({ id }) => !looked.items.some((one) => one.id === id))!];
    expect([old.count, taken.count]).toEqual([2, 1]);
    const { id: _a, count: _b, stamp: _c, stamps: _d, changed: _e, ...was } = looked.items.find(({ id }) => id === blue)!;
    expect(taken).toMatchObject(was);
    expect(next.seen).toEqual({ copya: 3 });
    expect(readRegisterJson(registerJson(next))).toEqual({ ok: true, value: next });
    const back = undone(recorded(startHistory(looked), next, 'Split'), ME)!;
    expect(onRack(back.register).map(({ name, count }) => [name, count])).toEqual([['Red', 1], ['Blue', 3]]);
    for (const n of [0, 3, 1.5]) expect(() => splitItem(start, ME, blue, n)).toThrow(new RangeError(`n must be a whole number from 1 to 2 (got ${n})`));
  });

  test('keeps text with one kind of line end and no half characters', () => {
    expect(changeItem(start, ME, red, { notes: 'a\r\nb\rc\ud800' }).items[0]?.notes).toBe('a\nb\nc\ufffd');
  });

  test.each<[string, () => unknown, string]>([
    ['a rating that no device has', () => changeItem(start, ME, red, { ratingKn: 0 }), 'item copya-1-1/ratingKn must be a number from 1 to 40, or null (got 0)'],
    ['no number', () => changeItem(start, ME, red, { ratingKn: Number.NaN }), 'item copya-1-1/ratingKn must be a number from 1 to 40, or null (got null)'],
    ['a day that no calendar has', () => changeItem(start, ME, red, { sling: { made: { year: 2019, month: 2, day: 30 } } }), 'item copya-1-1/sling/made is no day of the calendar'],
    ['an item that is not there', () => changeItem(start, ME, 'nobody', { name: 'x' }), 'item nobody is not in the register'],
    ['an inspection that is not there', () => changeInspection(start, ME, red, 'nothing', null), 'inspection nothing is not in the register'],
    ['a copy without a proper name', () => changeItem(start, { ...ME, copy: 'A B' }, red, { name: 'x' }), 'copy must be 4 to 16 small letters and digits, a letter first (got A B)'],
    ['a moment that is none', () => changeItem(start, { ...ME, at: 'now' }, red, { name: 'x' }), 'at must be a moment such as 2026-11-25T10:00:00Z (got now)'],
    ['an id that is taken', () => addItems(start, ME, [{ id: red, name: 'x' }]), 'item copya-1-1 is in the register already'],
  ])('refuses %s', (_, edit, message) => {
    expect(edit).toThrow(new RangeError(message));
  });
});

test('words for eyes, materials and use are those of the records', () => {
  expect(RACK_EYES).toEqual(EYES);
  expect(RACK_USES).toEqual(OLD_USES);
  expect(RACK_MATERIALS.filter((one) => !MATERIALS.includes(one))).toEqual([]);
});

describe('undo', () => {
  test('takes edits back one by one, and does them again', () => {
    const steps = ['Crimson', 'Scarlet'].reduce((now, name) => recorded(now, changeItem(now.register, ME, red, { name }), `Name ${name}`), startHistory(start));
    const back = undone(steps, ME)!;
    expect([back.register.items[0]?.name, back.undo.length, back.redo.map(({ label }) => label)]).toEqual(['Crimson', 1, ['Name Scarlet']]);
    expect(undone(back, ME)!.register.items[0]?.name).toBe('Red');
    expect(redone(back, ME)!.register.items[0]?.name).toBe('Scarlet');
    expect([undone(startHistory(start), ME), redone(startHistory(start), ME)]).toEqual([null, null]);
  });

  test('takes added items off the rack again, and a new edit ends what could be done again', () => {
    const added = recorded(startHistory(start), addItems(start, ME, [{ name: 'New' }]), 'Add');
    const back = undone(added, ME)!;
    expect(onRack(back.register).map(({ name }) => name)).toEqual(['Red', 'Blue']);
    expect(onRack(redone(back, ME)!.register)).toHaveLength(3);
    expect(recorded(back, changeItem(back.register, ME, red, { name: 'X' }), 'Name').redo).toEqual([]);
    expect(recorded(back, back.register, 'Nothing')).toBe(back);
  });

  test('is bounded: the oldest steps go first', () => {
    const names = Array.from({ length: MOST_STEPS + 5 }, (_, at) => `name ${at}`);
    const history = names.reduce((now, name) => recorded(now, changeItem(now.register, ME, red, { name }), name), startHistory(start));
    expect([history.undo.length, history.undo[0]?.label]).toEqual([MOST_STEPS, 'name 5']);
  });

  test('of any edit, import or merge gives back what the reader saw before, and redo what came after', () => {
    fc.assert(fc.property(acts, (history) => {
      const [before, after] = [play(history.slice(0, Math.floor(history.length / 2))), play(history)].map(({ registers }) => registers[0]!) as [Register, Register];
      const done = recorded(startHistory(before), after, 'Merge');
      if (done.undo.length === 0) return;
      const back = undone(done, by('copyc'))!;
      const known = new Set(before.items.map(({ id }) => id));
      expect(values(back.register).filter(({ id }) => known.has(id))).toEqual(values(before));
      expect(onRack(back.register).every(({ id }) => known.has(id))).toBe(true);
      expect(values(redone(back, by('copyc'))!.register)).toEqual(values(after));
    }), { numRuns: 200 });
  });

  test('writes nothing between registers that are the same', () => {
    expect(writesTo(start, start)).toEqual([]);
  });
});

describe('a day as far as it is known', () => {
  test.each(['2019', '2019-04', '2019-04-17', '2024-02-29', '2000-02-29'])('%s is read and written the same', (written) => {
    expect(writePartDay(parsePartDay(written)!)).toBe(written);
  });
  test.each(['', '19', '2019-4', '2019-13', '2019-00', '2019-02-29', '1900-02-29', '2019-04-31', '1949', '2200', '2019-04-17T00', ' 2019'])('%j is none', (written) => {
    expect(parsePartDay(written)).toBeNull();
  });
  test('months have the days that the language\u2019s own calendar gives them', () => {
    fc.assert(fc.property(fc.integer({ min: 1950, max: 2199 }), fc.integer({ min: 1, max: 12 }), (year, month) => {
      expect(daysInMonth(year, month)).toBe(new Date(Date.UTC(year, month, 0)).getUTCDate());
    }));
    fc.assert(fc.property(partDay, (day) => { expect(parsePartDay(writePartDay(day))).toEqual(day); }));
  });
  test('a moment is in universal time, to the second', () => {
    expect(['2026-11-25T10:00:00Z', '2026-11-25T24:00:00Z', '2026-11-31T10:00:00Z', '2026-11-25T10:00:00+01:00', '2026-11-25'].map(isMoment)).toEqual([true, false, false, false, false]);
  });
});
