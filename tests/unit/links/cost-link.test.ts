/** The link of a cost keeps its meaning. Expected words are written by hand from the grammar; the list of old links only grows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costAddress } from '../../../src/components/retirement/next-steps.ts';
import { parseCostLink, serialiseCost } from '../../../src/links/cost-link.ts';
import { blankKind, type CostWords, GENERAL_KEYS, MOST_KINDS, nothingWritten, OFFER_FIELDS, WAYS, type Way } from '../../../src/replacement/read-words.ts';

const vocabulary = { general: GENERAL_KEYS, offers: OFFER_FIELDS, ways: WAYS, mostKinds: MOST_KINDS };
const parse = (query: string) => parseCostLink(query, vocabulary);
interface OldLink { query: string; general: CostWords['general']; kinds: CostWords['kinds']; offers: Record<Way, string[]> }
const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'cost-links.json'), 'utf8')) as OldLink[];

/** A word that a field takes: no blanks at its ends, no sign that parts two words, not longer than a link takes. */
const word = fc.oneof(fc.constant(''), fc.constantFrom('9', '9,50', '1.234,50', 'EUR', '€'), fc.string({ maxLength: 20 }).map((text) => text.replaceAll('~', '').trim()));
const anyWords = fc.record({
  general: fc.record(Object.fromEntries(GENERAL_KEYS.map((key) => [key, word]))),
  kinds: fc.array(fc.record({ count: word, name: word, fresh: word, refused: fc.constantFrom('', 'm', 'w', 'mw') }), { minLength: 1, maxLength: MOST_KINDS }),
  offers: fc.record(Object.fromEntries(WAYS.map((way) => [way, fc.record(Object.fromEntries(OFFER_FIELDS.map((field) => [field, word])))]))),
}) as unknown as fc.Arbitrary<CostWords>;

test.each(OLD)('an old link still says what it said: $query', ({ query, general, kinds, offers }) => {
  const { words, notUnderstood } = parse(query);
  expect(notUnderstood).toEqual([]);
  expect(words?.general).toEqual(general);
  expect(words?.kinds).toEqual(kinds);
  for (const way of WAYS) expect(OFFER_FIELDS.map((field) => words?.offers[way][field])).toEqual(OFFER_FIELDS.map((_, at) => offers[way][at] ?? ''));
});

test('what is written is read again', () => {
  fc.assert(fc.property(anyWords, (words) => {
    const link = parse(serialiseCost(words));
    expect(link.notUnderstood).toEqual([]);
    const isEmpty = ({ count, name, fresh, refused }: CostWords['kinds'][number]) => count + name + fresh + refused === '';
    // Kinds of which nothing is said are left out at the end; one always stands.
    const kinds = words.kinds.slice(0, Math.max(1, words.kinds.findLastIndex((kind) => !isEmpty(kind)) + 1));
    if (link.words) expect(link.words).toEqual({ ...words, kinds });
    else expect(serialiseCost(words)).toBe('v=1');
  }), { numRuns: 500 });
});

test('any text is read without an error, and each piece that is listed stands in it', () => {
  const near = fc.array(fc.oneof(fc.constantFrom('kinds=7', 'kinds=1~2~3~4~5~6~7', 'm=9~1', 'm=%', 'w=1~2~3~4~5~6~7~8~9~10~11', 'refused=x', 'v=2', '__proto__=1', 'constructor=1', '=', '%zz', 'cur=EUR&cur=GBP'), fc.string({ maxLength: 8 })), { maxLength: 8 }).map((pieces) => pieces.join('&'));
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (query) => {
    const { words, notUnderstood } = parse(query);
    if (words) {
      expect(Object.keys(words.general)).toEqual([...GENERAL_KEYS]);
      expect(words.kinds.length).toBeGreaterThanOrEqual(1);
      expect(words.kinds.length).toBeLessThanOrEqual(MOST_KINDS);
      for (const way of WAYS) expect(Object.keys(words.offers[way])).toEqual([...OFFER_FIELDS]);
    }
    for (const { piece, why } of notUnderstood) expect(query.includes(piece) && why !== '').toBe(true);
  }), { numRuns: 3000 });
});

describe('a piece that is not understood is listed word for word', () => {
  test.each([
    ['bogus=1', 'no question is called "bogus"'],
    ['v=9', 'not a meaning of links that we know; read with meaning 1'],
    ['refused=everybody', 'who refused is m, w or mw; not used'],
    ['kinds=1~2~3~4~5~6~7', 'more than 6 kinds of device; the rest is not used'],
    ['m=1~2~3~4~5~6~7~8~9~10~11', 'more than the 10 entries of an offer; not used'],
    ['m=9~%', 'percent signs that do not decode'],
    ['cur=%', 'percent signs that do not decode'],
    ['refused=m~x', 'who refused is m, w or mw; not used'],
    [`names=a~${'x'.repeat(61)}`, 'longer than anything that is asked; not used'],
    [`cur=${'x'.repeat(61)}`, 'longer than anything that is asked; not used'],
  ])('%s', (query, why) => expect(parse(query).notUnderstood).toEqual([{ piece: query, why }]));

  test('and so are two answers to one question', () => {
    expect(parse('cur=EUR&cur=GBP').notUnderstood.map(({ piece }) => piece)).toEqual(['cur=EUR', 'cur=GBP']);
  });
});

test.each([
  [{ kind: 'retire-now' } as const, 'now'], [{ kind: 'retire-by', day: '2027-05-01' } as const, '2027-05-01'], [{ kind: 'inspect-by', day: '2027-05-01' } as const, ''],
])('the verdict hands over one device, and when its sling has to go', (verdict, retire) => {
  const { words, notUnderstood } = parse(costAddress(verdict, { base: '/' }).split('?')[1] ?? '');
  expect(notUnderstood).toEqual([]);
  expect([words?.general.retire, words?.kinds[0]?.count]).toEqual([retire, '1']);
});

const NOTHING = nothingWritten();
test.each([
  ['cur=EUR', { ...NOTHING, general: { ...NOTHING.general, cur: 'EUR' } }],
  [`names=%20a%20~${'x'.repeat(60)}`, { ...NOTHING, kinds: [{ ...blankKind(), name: 'a' }, { ...blankKind(), name: 'x'.repeat(60) }] }],
  ['kinds=1~2~3~4~5~6', { ...NOTHING, kinds: ['1', '2', '3', '4', '5', '6'].map((count) => ({ ...blankKind(), count })) }],
  ['refused=~w', { ...NOTHING, kinds: [blankKind(), { ...blankKind(), refused: 'w' }] }],
  ['h=9~~%203%20', { ...NOTHING, offers: { ...NOTHING.offers, home: { ...NOTHING.offers.home, price: '9', back: '3' } } }],
])('%s says what it says, and no more', (query, words) => {
  expect(parse(query)).toEqual({ words, notUnderstood: [] });
});

test('an address that answers no question says nothing', () => {
  for (const query of ['', 'v=1']) expect(parse(query), query).toEqual({ words: null, notUnderstood: [] });
});

test('a link writes what was written and nothing else: no blanks at the ends, no sign that parts two words, no empty end of a list', () => {
  expect(serialiseCost(NOTHING)).toBe('v=1');
  expect(serialiseCost({
    general: { ...NOTHING.general, cur: ' EUR ', retire: 'now' },
    kinds: [{ count: '4', name: ' a~b ', fresh: '', refused: 'mw' }, { ...blankKind(), count: '2' }, blankKind()],
    offers: { ...NOTHING.offers, maker: { ...NOTHING.offers.maker, price: '35', weeks: '3' }, new: { ...NOTHING.offers.new, price: '9,50' } },
  })).toBe('v=1&cur=EUR&retire=now&kinds=4~2&names=a-b&refused=mw&m=35~~~3&n=9%2C50');
});
