/** The link of a told fall keeps its meaning. Expected words are written by hand from the grammar; the list of old links only grows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FALL_CHOICES, FALL_FIELDS, type FallWords } from '../../../src/falls/read-fall.ts';
import { parseFallLink, rigOfAddress, rigWithFall, rigWithLoad, serialiseFall } from '../../../src/links/fall-link.ts';

const vocabulary = { fields: FALL_FIELDS, choices: FALL_CHOICES };
const parse = (query: string) => parseFallLink(query, vocabulary);
const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'fall-links.json'), 'utf8')) as { query: string; words: FallWords }[];
const CHOICES: Readonly<Record<string, readonly string[]>> = FALL_CHOICES;

const anyWords = fc.record(Object.fromEntries(FALL_FIELDS.map((field) => [
  field, CHOICES[field] ? fc.constantFrom(...CHOICES[field]) : fc.oneof(fc.constantFrom('', '2,5', '180 lb', "30'"), fc.string({ maxLength: 20 }).map((text) => text.trim())),
]))) as unknown as fc.Arbitrary<FallWords>;

test.each(OLD)('an old link still says what it said: $query', ({ query, words }) => {
  expect(parse(query)).toMatchObject({ words, notUnderstood: [] });
});

/** As the comparator writes it, with a reader's own test at the end. */
const RIG = 'v=1&rating=12&eye=bare-wire&bearing=4&sling=hmpe-10&length=30&used=new&demand=rating&t=girth-hitch*18.2~19.1';

test('what is written is read again, with the version of the evidence and the comparison that it came from', () => {
  fc.assert(fc.property(anyWords, fc.constantFrom(null, RIG), (words, rig) => {
    expect(parse(serialiseFall(words, vocabulary, { d: '2026-11-25.4', rig }))).toEqual({ words, rig, d: '2026-11-25.4', notUnderstood: [] });
  }), { numRuns: 500 });
});

test('the way to the comparator takes the load along, and leaves all else of the rig as it stood', () => {
  expect(rigWithLoad(null, 7.4449)).toBe('v=1&demand=7.4');
  expect(rigWithLoad(`${RIG}&d=2026-11-25.4&m=2&f=1~2`, 10)).toBe('v=1&rating=12&eye=bare-wire&bearing=4&sling=hmpe-10&length=30&used=new&t=girth-hitch*18.2~19.1&demand=10');
});

test('a fall beside the comparison takes the place of an earlier one, and what must be borne stays', () => {
  expect(rigWithFall(null, '4~9~v=1&kg=80')).toBe('v=1&f=4~9~v%3D1%26kg%3D80');
  expect(rigWithFall(`${RIG}&m=2&f=1~2`, '4~9')).toBe(`${RIG}&f=4~9`);
});

test('an address of the comparator says its rig, in its query or in its path; another page says none', () => {
  for (const fall of ['', '&f=4~9~v%3D1%26kg%3D80']) expect(rigOfAddress('/compare/', `?${RIG}${fall}`)).toBe(RIG);
  expect(rigOfAddress('/folder/compare/12/bare-wire/hmpe-10/', '')).toBe('v=1&rating=12&eye=bare-wire&sling=hmpe-10');
  // As "Copy link" writes it: three inputs in the path, the rest behind.
  expect(rigOfAddress('/compare/9/bare-wire/hmpe-8/', '?v=1&bearing=4&length=60&d=2026-11-25.4&m=2&f=4~9')).toBe('v=1&rating=9&eye=bare-wire&sling=hmpe-8&bearing=4&length=60&d=2026-11-25.4&m=2');
  expect(rigOfAddress('/compare/9/bare-wire/hmpe-8/', '?v=1&rating=10')).toBe('v=1&eye=bare-wire&sling=hmpe-8&rating=10');
  // The meaning of the keys stands first, wherever the address says it.
  expect(rigOfAddress('/compare/9/bare-wire/hmpe-8/', '?bearing=4&v=2')).toBe('v=2&rating=9&eye=bare-wire&sling=hmpe-8&bearing=4');
  for (const [path, search] of [['/compare/more/', '?v=1&rating=12'], ['/compare/9/bare-wire/hmpe-8/more/', ''], ['/compare/', ''], ['/methods/basket/', '?v=1&rating=12'], ['/compare/', '?rating=12']] as const) expect(rigOfAddress(path, search)).toBeNull();
});

test('every choice is written, also where it is the first: a changed default must not change an old link', () => {
  const words = Object.fromEntries(FALL_FIELDS.map((field) => [field, ''])) as FallWords;
  expect(serialiseFall(words, vocabulary)).toBe('v=1&onto=piece&rope=single&belay=unknown&route=unknown&state=unknown');
});

test('a word and a rig as long as a link takes are used, and a choice that is left open is an answer', () => {
  expect(parse(`up=${'1'.repeat(40)}`).words?.up).toBe('1'.repeat(40));
  expect(parse(`rig=v=1${'x'.repeat(2000)}`)).toEqual({ words: null, rig: `v=1${'x'.repeat(2000)}`, d: null, notUnderstood: [] });
  expect(parse('onto=')).toMatchObject({ words: { onto: '' }, notUnderstood: [] });
});

test('a number is written without blanks at its ends, one that is not said not at all', () => {
  const words = { ...Object.fromEntries(FALL_FIELDS.map((field) => [field, ''])), kg: ' 80 ', up: ' ', belay: ' ' } as FallWords;
  expect(serialiseFall(words, vocabulary, { rig: 'v=1' })).toBe('v=1&kg=80&onto=piece&rope=single&belay=unknown&route=unknown&state=unknown&rig=v%3D1');
});

test('any text is read without an error, and each piece that is listed stands in it', () => {
  const near = fc.array(fc.oneof(fc.constantFrom('kg=80', 'kg=90', 'onto=rock', 'v=2', 'd=x', '__proto__=1', 'constructor=1', '=', '%zz', 'up=%', `out=${'9'.repeat(41)}`), fc.string({ maxLength: 8 })), { maxLength: 8 }).map((pieces) => pieces.join('&'));
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (query) => {
    const { words, notUnderstood } = parse(query);
    if (words) expect(Object.keys(words)).toEqual([...FALL_FIELDS]);
    for (const { piece, why } of notUnderstood) expect(query.includes(piece) && why !== '').toBe(true);
  }), { numRuns: 3000 });
});

describe('a piece that is not understood is listed word for word', () => {
  test.each([
    ['bogus=1', 'no question is called "bogus"'],
    ['v=9', 'not a meaning of links that we know; read with meaning 1'],
    ['onto=rock', 'none of piece, belay; not used'],
    ['d=yesterday', 'not an evidence version'],
    ...['rating', 'x%26v=1', 'v=', 'v=x', 'v=1%23top', 'v=1%20x', `v=1${'x'.repeat(2001)}`].map((rig) => [`rig=${rig}`, 'not a link of the comparator; there is no way back to it']),
    ['kg=%', 'percent signs that do not decode'],
    [`up=${'1'.repeat(41)}`, 'longer than any answer; not used'],
  ] as [string, string][])('%s', (query, why) => expect(parse(query).notUnderstood).toEqual([{ piece: query, why }]));

  test('and so are two answers to one question', () => {
    expect(parse('kg=80&kg=90')).toMatchObject({ words: null, notUnderstood: [{ piece: 'kg=80' }, { piece: 'kg=90' }] });
  });
});
