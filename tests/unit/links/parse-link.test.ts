/** What a comparison link is refused for, and how it is said. Rigs and reasons are written by hand from the grammar at the head of rig-keys.ts. */
import { describe, expect, test } from 'vitest';
import { meaningOf, parseLink } from '../../../src/links/parse-link.ts';
import { EXAMPLE_RIG } from '../../../src/links/rig-keys.ts';

const vocabulary = { slings: ['hmpe-8', 'hmpe-10', 'nylon-16'] };
const parse = (query: string) => parseLink(query, vocabulary);
const OLD = { material: 'nylon', ageYears: 8, use: 'daily', light: 'sun' } as const;
/** A rig in which everything is known, and nothing as in the example. */
const KNOWN = { ratingKn: 9, eye: 'bare-wire', bearingMm: 4, sling: 'nylon-16', lengthCm: 30, slingState: 'new', demandKn: 10, old: OLD } as const;

describe('a piece that is not understood is listed word for word, with what may stand there', () => {
  test.each([
    ['rope=9', 'no input is called "rope"'],
    ['v=2', 'not a meaning of links that we know; read with meaning 1'],
    ['rating=nine', 'not a plain number; write one from 1 to 40 kN'],
    ['rating=40.1', 'outside 1 to 40 kN'],
    ['bearing=0.9', 'outside 1 to 40 mm'],
    ['length=501', 'outside 5 to 500 cm'],
    ['demand=61', 'outside 1 to 60 kN'],
    ['oldage=61', 'outside 0 to 60 years'],
    ['eye=wire', 'not a kind of eye; one of bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye, unknown'],
    ['sling=rope', 'not a sling we have; one of hmpe-8, hmpe-10, nylon-16, unknown'],
    ['used=worn', 'not one of new, used, unknown'],
    ['oldsling=hemp', 'not a material we have for old slings; one of hmpe, nylon, polyester, aramid, hmpe-nylon, unknown'],
    ['olduse=often', 'not one of stored, seldom, monthly, weekly, daily, unknown'],
    ['oldlight=shade', 'not one of dark, sun, unknown'],
    ['d=yesterday', 'not an evidence version'],
    ...['x1', '1x', '0', '1234567'].map((number) => [`m=${number}`, 'not a model number']),
    ['unit=N', 'not one of kN, lbf, kgf'],
    ['sort=high', 'not one of low, middle, name'],
    ['rating=%', 'percent signs that do not decode'],
    ['%zz=1', 'percent signs that do not decode'],
  ] as [string, string][])('%s', (query, why) => {
    const { notUnderstood, understood, view, d, m } = parse(query);
    expect(notUnderstood).toEqual([{ piece: query, why }]);
    expect({ understood, view, d, m }).toEqual({ understood: [], view: { unit: 'kN', sort: 'low' }, d: null, m: null });
  });
});

test.each([
  ['rating=1', { ratingKn: 1 }], ['rating=40', { ratingKn: 40 }], ['bearing=1', { bearingMm: 1 }], ['bearing=40', { bearingMm: 40 }],
  ['length=5', { lengthCm: 5 }], ['length=500', { lengthCm: 500 }], ['demand=1', { demandKn: 1 }], ['demand=60', { demandKn: 60 }],
  ['oldage=0', { old: { ...OLD, ageYears: 0 } }], ['oldage=60', { old: { ...OLD, ageYears: 60 } }], ['used=used', { slingState: 'used' }],
  ['oldsling=hmpe-nylon', { old: { ...OLD, material: 'hmpe-nylon' } }], ['olduse=stored', { old: { ...OLD, use: 'stored' } }], ['oldlight=dark', { old: { ...OLD, light: 'dark' } }],
])('both ends of a range and each word are used, and nothing else of the rig moves: %s', (query, change) => {
  expect(parseLink(query, vocabulary, KNOWN)).toMatchObject({ rig: { ...KNOWN, ...change }, understood: [query], notUnderstood: [] });
});

test.each([
  ['rating', { ratingKn: null }], ['eye', { eye: null }], ['bearing', { bearingMm: null }], ['sling', { sling: null }], ['length', { lengthCm: null }],
  // Nothing known of a sling counts against it.
  ['used', { slingState: 'used' }],
  ['demand', { demandKn: null }], ['oldsling', { old: { ...OLD, material: null } }], ['oldage', { old: { ...OLD, ageYears: null } }],
  ['olduse', { old: { ...OLD, use: null } }], ['oldlight', { old: { ...OLD, light: null } }],
])('an input that is said to be unknown, that cannot be read or that is said in two ways is not known: %s', (key, change) => {
  for (const query of [`${key}=unknown`, `${key}=?`, `${key}=%`, `${key}=1&${key}=2`]) {
    expect(parseLink(query, vocabulary, KNOWN).rig, query).toEqual({ ...KNOWN, ...change });
  }
  expect(parse(`${key}=unknown`).notUnderstood).toEqual([]);
});

test('an unmeasured bearing and a demand as high as the rating are words of their own', () => {
  expect(parseLink('bearing=unmeasured&demand=rating', vocabulary, KNOWN)).toMatchObject({ rig: { ...KNOWN, bearingMm: null, demandKn: null }, notUnderstood: [] });
});

test('an old sling of which the last that was known goes is none', () => {
  const base = { ...EXAMPLE_RIG, old: { material: null, ageYears: 8, use: null, light: null } };
  expect(parseLink('oldage=unknown', vocabulary, base).rig).toEqual(EXAMPLE_RIG);
});

test('what a reader wants to see, and what an answer was made with, is read beside the rig', () => {
  expect(parse('?v=1&unit=lbf&sort=name&d=2026-11-25.4&m=123456&t=a&f=b')).toEqual({
    rig: EXAMPLE_RIG, view: { unit: 'lbf', sort: 'name' }, notUnderstood: [], understood: ['v=1', 'unit=lbf', 'sort=name', 'd=2026-11-25.4', 'm=123456', 't=a', 'f=b'], v: 1, d: '2026-11-25.4', m: 123_456,
  });
});

test('the same said twice is used once; two values are both left out', () => {
  expect(parse('rating=9&rating=9')).toMatchObject({ rig: { ratingKn: 9 }, understood: ['rating=9'], notUnderstood: [{ piece: 'rating=9', why: 'said twice; used once' }] });
  const why = 'the same input twice with different values; none is used';
  expect(parseLink('unit=lbf&unit=kgf', vocabulary, KNOWN)).toMatchObject({ rig: KNOWN, view: { unit: 'kN' }, understood: [], notUnderstood: [{ piece: 'unit=lbf', why }, { piece: 'unit=kgf', why }] });
});

test.each([
  ['', 3], ['v=1', 1], ['v=2', 2], ['v=3', 3], ['v=2&v=2', 2], ['rating=1&v=2', 2],
  // Not known, not one, or no number: the newest.
  ['v=4', 3], ['v=0', 3], ['v=01', 3], ['v=2x', 3], ['v=x2', 3], ['v=1&v=2', 3], ['v=', 3], ['m=1', 3],
])('where three meanings are known, %j is read with meaning %j', (query, meaning) => {
  const pieces = query.split('&').map((piece) => ({ key: piece.split('=')[0] ?? '', value: piece.split('=')[1] ?? '', piece }));
  expect(meaningOf(pieces, 3)).toBe(meaning);
});
