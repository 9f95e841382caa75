/** A rack's file gives the lines of the form that goes with the devices; a file that cannot be read says where and why. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { handedDevices, handoverOfFile, handoverOfText } from '../../../src/islands/rack-handover.ts';
import { registerJson } from '../../../src/rack/json-file.ts';
import { siteRules } from '../../../src/build/verdict-page.ts';
import { addInspection, addItems, emptyRegister, removeItem } from '../../../src/rack/register.ts';
import { ROOT } from '../../support/step.ts';

const BY = { copy: 'gear', at: '2026-11-25T10:00:00Z' };
const three = addItems(emptyRegister(), BY, [
  { id: 'a', name: 'Cam 1', ratingKn: 12, count: 1, sling: { material: 'hmpe', widthMm: 10, made: { year: 2014, month: 5 } } },
  { id: 'b', name: 'Nut set', count: 5, notes: 'from the old box' },
  { id: 'c', name: 'Gone' },
]);
const register = removeItem(addInspection(three, BY, 'a', { day: '2026-10-01', findings: ['fuzz', 'stitching'], by: 'K', note: 'wire rubbed' }), BY, 'c');

const JUDGE = { rules: siteRules(), on: '2026-11-25' };

test('what is on the rack becomes lines, with what the last look found; what is not known stays empty', () => {
  expect(handedDevices(register, null).map(({ form }) => form)).toEqual([
    { name: 'Cam 1', count: '', rating: '12 kN', made: '2014-05', material: 'HMPE 10 mm', wrong: 'fuzz, or a place worn thin, pulled, worn or broken stitching; wire rubbed' },
    { name: 'Nut set', count: '5', rating: '', made: '', material: '', wrong: 'from the old box' },
  ]);
});

test('what the rules retire now comes first and says so; with no rules at hand no verdict is claimed', () => {
  // Broken stitching retires a sling at once: rules of retirement, from the standards and removal lists that their records name.
  const named = addItems(register, BY, [{ id: 'd', name: 'A new one', sling: { material: 'nylon', made: { year: 2026, month: 10 }, firstUse: { year: 2026, month: 11 }, use: 'weekly', exposures: [], events: [] } }]);
  const judged = handedDevices(named, JUDGE);
  expect(judged.find(({ form }) => form.name === 'Cam 1')).toMatchObject({ isDueNow: true, due: 'Retire now' });
  expect(judged.at(-1)).toMatchObject({ form: { name: 'A new one' }, isDueNow: false });
  expect(handedDevices(named, null).every(({ due, isDueNow }) => due === '' && !isDueNow)).toBe(true);
});

test('text and file of one register give the same', () => {
  const text = registerJson(register);
  expect(handoverOfFile(new TextEncoder().encode(text), JUDGE)).toEqual(handoverOfText(text, JUDGE));
  expect(handoverOfText(text, JUDGE)).toMatchObject({ ok: true, invented: null });
});

test('the invented rack of the project says that it is one', () => {
  const handed = handoverOfText(readFileSync(join(ROOT, 'data/demo/rack.json'), 'utf8'), JUDGE);
  expect(handed.ok && handed.invented).toBeTruthy();
  expect(handed.ok && handed.devices.length).toBeGreaterThan(0);
});

test.each([
  ['', /^line 1: nothing was pasted$/],
  ['{\n "format": "other"\n}', /^line 1: this is no rack register/],
  ['{\n "format": "second-sling-rack",\n "version": 1,\n oops', /^line 4: /],
  [registerJson(register).replace('"ratingKn": 12', '"ratingKn": "twelve"'), /^line \d+, \/items\/0\/ratingKn: /],
])('a faulty text is not taken, and says its line and reason', (text, fault) => {
  const handed = handoverOfText(text, JUDGE);
  expect(handed.ok ? [] : handed.faults[0]).toMatch(fault);
});

test('bytes that are no text say their line', () => {
  expect(handoverOfFile(new Uint8Array([123, 10, 255]), null)).toEqual({ ok: false, faults: ['line 2: the file is not written in UTF-8, or is damaged here'] });
});
