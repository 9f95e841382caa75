/** What an older link is told. The small versions and their lists are made by hand; real versions are held against the frozen files. */
import { expect, test } from 'vitest';
import { EXAMPLE_RIG } from '../../../src/links/rig-keys.ts';
import { thenOf } from '../../../src/links/then.ts';
import { siteThen, thenIndex, thenVersion } from '../../../src/build/versions/then.ts';
import { type FrozenVersion, readVersion, versionIndex } from '../../../src/build/versions/versions.ts';
import type { Rig } from '../../../src/strength/types.ts';
import { comparison, row } from '../../support/comparison-fixture.ts';

const index = thenIndex();
const VERSION = { answers: { '12/sleeved-wire/hmpe-10': [['basket-overhand', 'ranked', '10.0', '13.0', '17.0'], ['gone', 'apart', '5.0', '6.0', '7.0']] }, withdrawn: [], factors: ['basket-over-eye'], slings: ['nylon-16'] } as const;

/** Today's comparison of the fixture, for another rig where one is given. */
const today = (rig: Partial<Rig> = {}, ...rows: Parameters<typeof row>[0][]) => ({ ...comparison(rows.map((change) => row(change))), rig: { ...EXAMPLE_RIG, ...rig } });

test('a rig with a page of its own gets the answer shown then beside today\'s, and what has moved', () => {
  // The fixture's row is 10, 13 and 17 kN, ranked: as it was. A row of then that has no number today has moved, and so has a new one.
  expect(thenOf(VERSION, index, today({}, {}, { method: 'new', name: 'New', attachment: { low: 1, middle: 2, high: 3 } })).rows).toEqual([
    { method: 'basket-overhand', name: 'Basket, overhand at the clip end', was: VERSION.answers['12/sleeved-wire/hmpe-10'][0], now: ['basket-overhand', 'ranked', '10.0', '13.0', '17.0'], isMoved: false },
    { method: 'gone', name: null, was: VERSION.answers['12/sleeved-wire/hmpe-10'][1], now: null, isMoved: true },
    { method: 'new', name: 'New', was: null, now: ['new', 'ranked', '1.0', '2.0', '3.0'], isMoved: true },
  ]);
  // What had no number then and has none today is no row.
  expect(thenOf({ ...VERSION, answers: { '12/sleeved-wire/hmpe-10': [] } }, index, today({}, { attachment: null })).rows).toEqual([]);
  // Ends, middle and place on the page each count by themselves, to the digit shown.
  const moved = (change: object) => thenOf(VERSION, index, today({}, change)).rows?.[0]?.isMoved;
  expect([moved({ attachment: { low: 10.04, middle: 13, high: 17 } }), moved({ attachment: { low: 10, middle: 13, high: 17.06 } }), moved({ group: 'unranked' })]).toEqual([false, true, true]);
});

test('any other rig gets no answer of then, but the inputs behind today\'s numbers that have changed', () => {
  for (const rig of [{ bearingMm: 3.8 }, { lengthCm: 120 }, { slingState: 'used' as const }, { demandKn: 14 }, { ratingKn: 12.5 }, { old: { material: 'nylon' as const, ageYears: 8, use: null, light: null } }]) {
    const told = thenOf(VERSION, index, today(rig, {}));
    expect(told.rows, JSON.stringify(rig)).toBeNull();
    // Of the row's two factors, the device's has not changed.
    expect(told.inputs).toEqual([{ method: 'basket-overhand', name: 'Basket, overhand at the clip end', factors: ['basket-over-eye'] }]);
    expect(told.isSlingChanged).toBe(false);
  }
  expect(thenOf({ ...VERSION, slings: ['hmpe-8', 'nylon-16'] }, index, today({ sling: 'nylon-16' }, {})).isSlingChanged).toBe(true);
  expect(thenOf(VERSION, index, today({ sling: null }, {})).isSlingChanged).toBe(false);
  // A row whose inputs read as they did is not named.
  expect(thenOf({ ...VERSION, factors: [] }, index, today({}, {})).inputs).toEqual([]);
});

test('a withdrawn figure is told with its reason and the methods that it fed; a factor counts as changed where its class did', () => {
  const collections = { gaps: {}, rules: {}, slings: {}, methods: { basket: { name: 'Basket', links: [{ factors: ['f'] }] }, other: { name: 'Other', links: [{ factors: ['g'] }] } } };
  const factors = (from: string[]) => ({ f: { class: 'k', from }, g: { class: 'same', from: [] } });
  const then = { evidence: { ...collections, version: 'a', model: 1, figures: { 'lab/x#a': { id: 'lab/x#a', source: 'lab' } }, factors: factors(['lab/x#a']), classes: { k: { cv: 0.1 }, same: { cv: 0.2 } } }, answers: {} };
  const now = { evidence: { ...collections, version: 'b', model: 2, figures: {}, factors: factors(['lab/x#a']), classes: { k: { cv: 0.15 }, same: { cv: 0.2 } } }, answers: {}, gone: { 'lab/x': { kind: 'withdrawn', on: '2026-12-01', why: 'Load cell out of order.', was: 'breaking force' } } };
  const told = thenVersion({ version: '2026-01-01.1', model: 1, sha256: 'h' }, then as unknown as FrozenVersion, now as unknown as FrozenVersion, [
    { version: '2026-01-03.1', model: 2, words: { model: 'Pins count apart.', says: [] } }, { version: '2026-01-02.1', model: 1, words: { says: ['More breaks.'] } },
  ]);
  expect(told).toMatchObject({ day: '2026-01-01', withdrawn: [{ id: 'lab/x', on: '2026-12-01', why: 'Load cell out of order.', methods: ['basket'] }], factors: ['f'], models: [{ version: '2026-01-03.1', says: 'Pins count apart.' }] });
});

test('every frozen version is told to the last digit that it showed, under its own model number', () => {
  const all = siteThen();
  expect(index.versions.map(({ version, model }) => ({ version, model }))).toEqual(versionIndex().map(({ version, model }) => ({ version, model })));
  for (const { version, model } of versionIndex()) {
    const { answers } = readVersion(version);
    const told = all.get(version);
    expect(told?.model).toBe(model);
    expect(Object.keys(told?.answers ?? {})).toEqual(Object.keys(answers));
    for (const [path, rows] of Object.entries(answers)) {
      expect(told?.answers[path], `${version} ${path}`).toEqual(rows.filter(({ attachment }) => attachment !== null).map(({ method, group, attachment }) => [method, group, ...(attachment ?? [])]));
    }
  }
});
