/** The link of a plan keeps its meaning. Expected words are written by hand from the grammar; the list of old links only grows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nothingPlanned, PAIRS, PLAN_NUMBERS, type PlanWords, parsePlanLink, serialisePlan, WANTS } from '../../../src/links/plan-link.ts';

const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'plan-links.json'), 'utf8')) as { query: string; words: PlanWords }[];

/** A word that a field takes: no blanks at its ends, not longer than a link takes. */
const word = fc.oneof(fc.constant(''), fc.constantFrom('9', '9,3', '8.2 %', 'abc', '~'), fc.string({ maxLength: 20 }).map((text) => text.trim()));
/** A word of a list: without the sign between two. */
const listed = word.map((text) => text.replaceAll('~', '').trim());
const anyWords: fc.Arbitrary<PlanWords> = fc.record({
  want: fc.constantFrom(...WANTS), pair: fc.constantFrom(...PAIRS), own: fc.tuple(listed, listed),
  numbers: fc.record({ cv: word, short: word, diff: word, power: word, share: word, width: word }),
});

test.each(OLD)('an old link still says what it said: $query', ({ query, words }) => {
  expect(parsePlanLink(query)).toEqual({ words, notUnderstood: [] });
});

test('what is written is read again, also for the questions that are not asked', () => {
  fc.assert(fc.property(anyWords, (words) => {
    expect(parsePlanLink(serialisePlan(words))).toEqual({ words, notUnderstood: [] });
  }), { numRuns: 500 });
});

test('a link writes what moves the answer also where it is the default', () => {
  expect(serialisePlan(nothingPlanned())).toBe('v=1&want=bound&pair=95~95');
});

test('a word as long as a link takes is used, and blanks at its ends are not', () => {
  const longest = '9'.repeat(60);
  expect(parsePlanLink(`cv=${longest}&own=%2095%20~%2090%20`)).toEqual({ words: { ...nothingPlanned(), own: ['95', '90'], numbers: { ...nothingPlanned().numbers, cv: longest } }, notUnderstood: [] });
});

test.each([
  [[' 95 ', ' 9~0 '], '&own=95~9-0'], [['95', ''], '&own=95'], [['', '90'], '&own=~90'], [['', ''], ''],
] as [[string, string], string][])('a pair %j is written as %j, and a number without blanks at its ends', (own, piece) => {
  expect(serialisePlan({ want: 'share', pair: 'own', own, numbers: { ...nothingPlanned().numbers, short: ' 5 ', width: ' ' } })).toBe(`v=1&want=share&pair=own${piece}&short=5`);
});

test('any text is read without an error, and each piece that is listed stands in it', () => {
  const near = fc.array(fc.oneof(fc.constantFrom('want=bound', 'want=x', 'pair=95~95', 'pair=1', 'own=1~2~3', 'cv=%', 'cv=1&cv=2', '__proto__=1', 'constructor=1', '=', '%zz', 'v=2'), fc.string({ maxLength: 8 })), { maxLength: 8 }).map((pieces) => pieces.join('&'));
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (query) => {
    const { words, notUnderstood } = parsePlanLink(query);
    expect(WANTS).toContain(words.want);
    expect(PAIRS).toContain(words.pair);
    expect(Object.keys(words.numbers)).toEqual([...PLAN_NUMBERS]);
    for (const { piece, why } of notUnderstood) expect(query.includes(piece) && why !== '').toBe(true);
  }), { numRuns: 3000 });
});

describe('a piece that is not understood is listed word for word', () => {
  test.each([
    ['bogus=1', 'no question is called "bogus"'],
    ['v=9', 'not a meaning of links that we know; read with meaning 1'],
    ['want=all', 'what to learn is bound, difference, share; not used'],
    ['pair=80~80', 'a pair is 90~95, 95~95, 99~95, own; not used'],
    ['own=90~95~99', 'more than a share and how sure; not used'],
    [`cv=${'9'.repeat(61)}`, 'longer than anything that is asked; not used'],
    [`own=9~${'9'.repeat(61)}`, 'longer than anything that is asked; not used'],
    ['cv=%', 'percent signs that do not decode'],
  ])('%s', (query, why) => {
    expect(parsePlanLink(query)).toEqual({ words: nothingPlanned(), notUnderstood: [{ piece: query, why }] });
  });

  test('and so are two answers to one question', () => {
    expect(parsePlanLink('cv=8&cv=9').notUnderstood.map(({ piece }) => piece)).toEqual(['cv=8', 'cv=9']);
  });
});
