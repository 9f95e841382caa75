/** The address of an analysis: any string gives a page, and what is written is read back. Old links only grow. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORCE_UNITS } from '../../../src/break-tests/table-pulls.ts';
import { MOST_PULLS_IN_LINK, nothingAnalysed, parseAnalysisLink, serialiseAnalysis } from '../../../src/links/analysis-link.ts';

const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'analysis-links.json'), 'utf8')) as { query: string; pulls: number[]; unit: string }[];

test.each(OLD)('an old link still gives its pulls: $query', ({ query, pulls, unit }) => {
  const { words, notUnderstood } = parseAnalysisLink(query, FORCE_UNITS);
  expect(notUnderstood).toEqual([]);
  expect(words?.unit).toBe(unit);
  expect(words?.pulls.map(({ force }) => force)).toEqual(pulls);
});

const parse = (query: string) => parseAnalysisLink(query, FORCE_UNITS);
const pullOf = (force: number) => ({ force, atLeast: false, mode: '', link: '' });
/** Written out: what no key has said. */
const NOTHING = { unit: 'kN', pulls: [], others: [], name: '', other: '', own: ['', ''] as const };
const word = fc.stringMatching(/^[a-z ,&=+%é]{0,20}$/).map((text) => text.trim());
const pull = fc.record({ force: fc.integer({ min: 1, max: 60_000 }).map((n) => n / 1000), atLeast: fc.boolean(), mode: word, link: word });

test('what is written is read back the same', () => {
  fc.assert(fc.property(fc.array(pull, { minLength: 1, maxLength: 20 }), fc.array(pull, { maxLength: 5 }), word, fc.constantFrom(...FORCE_UNITS), (pulls, others, name, unit) => {
    const asked = { ...nothingAnalysed(unit), pulls, others: others.map((one) => ({ ...one, mode: '', link: '' })), name };
    const query = serialiseAnalysis(asked);
    expect(query).not.toBeNull();
    expect(parseAnalysisLink(query ?? '', FORCE_UNITS)).toEqual({ words: asked, notUnderstood: [] });
  }));
});

test('any string gives words or none, and never throws', () => {
  fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[vpmlq]=[~>\d.%a-z]{0,30}(&[vpmlq]=[~>\d.%a-z]{0,30}){0,3}$/)), (query) => {
    const { words } = parseAnalysisLink(query, FORCE_UNITS);
    expect(words === null || words.pulls.every(({ force }) => force > 0)).toBe(true);
  }));
});

test('nothing said is nothing', () => expect(nothingAnalysed('kN')).toEqual(NOTHING));

test('pieces that are not understood are listed word for word', () => {
  const { words, notUnderstood } = parse('p=9~10&m=cut&unit=t&colour=red&q=9~x');
  expect(words).toEqual({ ...NOTHING, pulls: [pullOf(9), pullOf(10)] });
  expect(notUnderstood.map(({ piece }) => piece).sort()).toEqual(['colour=red', 'm=cut', 'q=9~x', 'unit=t']);
});

const FORCES = 'a force is digits with a point, or > before them; none is used';
const LONG = 'longer than anything that is asked; not used';
test.each([
  ['v=2', 'not a meaning of links that we know; read with meaning 1'],
  ['unit=t', 'a unit is kN, N, daN, kgf, lbf; not used'],
  ...['p=', 'p=0', 'p=0.0', 'p=-9', 'p=9,5', 'p=9~', 'p=9>9', 'p=>>9', 'p=x9', 'p=9x', 'p=12345678', 'p=1.', 'p=1.0123456789', 'q=9~x'].map((query) => [query, FORCES]),
  [`p=9${'~9'.repeat(120)}`, 'more than 120 pulls; none is used'],
  [`q=9${'~9'.repeat(120)}`, 'more than 120 pulls; none is used'],
  [`m=cut~${'x'.repeat(81)}`, LONG], [`name=${'x'.repeat(81)}`, LONG], [`other=${'x'.repeat(81)}`, LONG], [`own=9~${'9'.repeat(81)}`, LONG],
  ['own=99~90~1', 'more than a share and how sure; not used'],
  ['colour=red', 'no question is called "colour"'],
  ['p=%', 'percent signs that do not decode'],
  ['m=cut', 'as many words as pulls are needed; not used'], ['l=eye', 'as many words as pulls are needed; not used'],
  ['name=a&name=b', 'the same question twice with different answers; none is used'],
] as [string, string][])('%s is not used, and says why', (query, why) => {
  expect(parse(query)).toEqual({ words: null, notUnderstood: query.split('&').map((piece) => ({ piece, why })) });
});

test('a list of words that is said twice and does not fit is listed twice', () => {
  const why = 'as many words as pulls are needed; not used';
  expect(parse('m=cut&p=9~10&m=cut').notUnderstood).toEqual([{ piece: 'm=cut', why }, { piece: 'm=cut', why }]);
});

test.each([
  ['p=9', { pulls: [pullOf(9)] }],
  ['p=%2012.5%20~%20%3E9999999.123456789', { pulls: [pullOf(12.5), { ...pullOf(9_999_999.123456789), atLeast: true }] }],
  [`p=9${'~9'.repeat(119)}&unit=lbf`, { unit: 'lbf', pulls: Array.from({ length: 120 }, () => pullOf(9)) }],
  ['p=9~10&m=cut~&l=~%20eye%20', { pulls: [{ ...pullOf(9), mode: 'cut' }, { ...pullOf(10), link: 'eye' }] }],
  // In another order, as order carries no meaning.
  ['m=cut&p=9', { pulls: [{ ...pullOf(9), mode: 'cut' }] }],
  [`p=9&q=8~%3E7&name=a~b&other=${'x'.repeat(80)}&own=99~90`, { pulls: [pullOf(9)], others: [pullOf(8), { ...pullOf(7), atLeast: true }], name: 'a~b', other: 'x'.repeat(80), own: ['99', '90'] as const }],
  ['q=8&own=%2095%20', { others: [pullOf(8)], own: ['95', ''] as const }],
])('%s says what it says, and no more', (query, said) => {
  expect(parse(query)).toEqual({ words: { ...NOTHING, ...said }, notUnderstood: [] });
});

test('an address without pulls says nothing of an analysis', () => {
  for (const query of ['', 'v=1', 'unit=lbf', 'name=a&other=b&own=99~90']) expect(parse(query), query).toEqual({ words: null, notUnderstood: [] });
});

describe('a link is written', () => {
  test.each([
    ['v=1&unit=kN&p=9', { pulls: [pullOf(9)] }],
    // No word of three: no list of blanks.
    ['v=1&unit=kN&p=9~30~0.5', { pulls: [pullOf(9), pullOf(30), pullOf(0.5)] }],
    ['v=1&unit=kN&p=9~%3E10&m=cut~&l=~eye', { pulls: [{ ...pullOf(9), mode: ' cut ' }, { force: 10, atLeast: true, mode: '', link: 'eye' }] }],
    ['v=1&unit=kN&p=9&m=a-b', { pulls: [{ ...pullOf(9), mode: 'a~b' }] }],
    ['v=1&unit=lbf&p=9&q=8~%3E7&name=old&other=new&own=99~90', { unit: 'lbf', pulls: [pullOf(9)], others: [pullOf(8), { ...pullOf(7), atLeast: true }], name: ' old ', other: ' new ', own: ['99', '90'] as const }],
    ['v=1&unit=kN&p=9&own=99~', { pulls: [pullOf(9)], own: ['99', ''] as const }],
    ['v=1&unit=kN&p=9&own=~90', { pulls: [pullOf(9)], own: ['', '90'] as const }],
    [`v=1&unit=kN&p=9&m=${'x'.repeat(80)}&name=${'y'.repeat(80)}&other=${'z'.repeat(80)}`, { pulls: [{ ...pullOf(9), mode: 'x'.repeat(81) }], name: 'y'.repeat(81), other: 'z'.repeat(81) }],
    // Nine digits after the point; a force that is whole but for the last bit, as a sum may be, is whole.
    ['v=1&unit=kN&p=0.123456789~3~1200', { pulls: [pullOf(0.1234567891), pullOf(2.9999999999999996), pullOf(1200)] }],
  ])('%s', (query, said) => expect(serialiseAnalysis({ ...NOTHING, ...said })).toBe(query));

  test('a sign of two halves at the end of the longest word goes whole, as half of it has no address', () => {
    // The sign takes the 80th and the 81st place.
    const name = `${'x'.repeat(79)}\u{1F9D7}`;
    expect(serialiseAnalysis({ ...NOTHING, pulls: [{ ...pullOf(9), mode: name }], name })).toBe(`v=1&unit=kN&p=9&m=${'x'.repeat(79)}&name=${'x'.repeat(79)}`);
    expect(serialiseAnalysis({ ...NOTHING, pulls: [pullOf(9)], name: `${'x'.repeat(78)}\u{1F9D7}` })).toBe(`v=1&unit=kN&p=9&name=${'x'.repeat(78)}%F0%9F%A7%97`);
  });

  test('with as many pulls as travel, and with one more none', () => {
    const many = (count: number) => Array.from({ length: count }, () => pullOf(9));
    expect(serialiseAnalysis({ ...NOTHING, pulls: many(MOST_PULLS_IN_LINK), others: many(MOST_PULLS_IN_LINK) })).toBe(`v=1&unit=kN&p=9${'~9'.repeat(119)}&q=9${'~9'.repeat(119)}`);
    for (const [pulls, others] of [[MOST_PULLS_IN_LINK + 1, 0], [1, MOST_PULLS_IN_LINK + 1], [0, 1]] as const) {
      expect(serialiseAnalysis({ ...NOTHING, pulls: many(pulls), others: many(others) }), `${pulls}, ${others}`).toBeNull();
    }
  });
});
