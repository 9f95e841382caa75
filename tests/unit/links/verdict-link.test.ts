/** The link of a verdict keeps its meaning. Expected answers are written by hand from the grammar; the list of old links only grows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseVerdictLink, serialiseVerdict } from '../../../src/links/verdict-link.ts';
import { type HistoryWords, nothingKnown, QUESTIONS, WORD_KEYS } from '../../../src/retirement/read-history.ts';

const vocabulary = { keys: WORD_KEYS, questions: QUESTIONS };
const parse = (query: string) => parseVerdictLink(query, vocabulary);
const listed = (asked: HistoryWords | null, answer: string) => Object.entries(asked?.answers ?? {}).filter(([, one]) => one === answer).map(([id]) => id).sort();
interface OldLink { query: string; words: Record<string, string>; yes: string[]; no: string[]; on: string | null }
const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'verdict-links.json'), 'utf8')) as OldLink[];

const anyAsked: fc.Arbitrary<HistoryWords> = fc.record({
  // No answer that a form takes begins or ends with a blank, says "unknown", or is longer than a link takes.
  words: fc.record(Object.fromEntries(WORD_KEYS.map((key) => [key, fc.oneof(fc.constant(''), fc.string({ maxLength: 30 }).map((text) => text.trim()).filter((text) => text !== 'unknown'))]))),
  answers: fc.record(Object.fromEntries(QUESTIONS.map((id) => [id, fc.constantFrom('yes', 'no', 'unknown')]))),
}) as fc.Arbitrary<HistoryWords>;

test.each(OLD)('an old link still says what it said: $query', ({ query, words, yes, no, on }) => {
  const link = parse(query);
  expect(link.notUnderstood).toEqual([]);
  expect(link.asked?.words).toEqual(words);
  expect(listed(link.asked, 'yes')).toEqual([...yes].sort());
  expect(listed(link.asked, 'no')).toEqual([...no].sort());
  expect(link.on).toBe(on);
});

test('what is written is read again', () => {
  fc.assert(fc.property(anyAsked, (asked) => {
    const link = parse(serialiseVerdict(asked, '2026-11-25', '2026-11-25.3'));
    expect(link).toEqual({ asked, on: '2026-11-25', d: '2026-11-25.3', notUnderstood: [] });
  }), { numRuns: 500 });
});

test('any text is read without an error, and nothing but known answers comes out', () => {
  const near = fc.array(fc.oneof(fc.constantFrom('material=hmpe', 'yes=light', 'yes=light.zzz', 'no=light', 'on=2026-13-01', 'on=2026-11-25', 'v=2', 'd=x', '%zz=1', 'made=%', 'yes=__proto__', '__proto__=1', 'constructor=1', '=', 'made=2019&made=2020'), fc.string({ maxLength: 8 })), { maxLength: 8 }).map((pieces) => pieces.join('&'));
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (query) => {
    const { asked, on, notUnderstood } = parse(query);
    if (asked) {
      expect(Object.keys(asked.words)).toEqual([...WORD_KEYS]);
      expect(Object.keys(asked.answers)).toEqual([...QUESTIONS]);
      for (const answer of Object.values(asked.answers)) expect(['yes', 'no', 'unknown']).toContain(answer);
    }
    expect(on === null || /^\d{4}-\d{2}-\d{2}$/.test(on)).toBe(true);
    for (const { piece, why } of notUnderstood) expect(query.includes(piece) && why !== '').toBe(true);
  }), { numRuns: 3000 });
});

describe('a piece that is not understood is listed word for word', () => {
  test.each([
    ['bogus=1', 'no question is called "bogus"'],
    ['yes=light.rust', 'no question is called rust; it counts as not known'],
    ['on=yesterday', 'not a day like 2026-11-24'],
    ['v=9', 'not a meaning of links that we know; read with meaning 1'],
    ['yes=light.rust.mould', 'no question is called rust, mould; it counts as not known'],
    ...['2026-00-10', '2026-13-10', '2026-11-00', '2026-11-32', '2026-11-40', 'x2026-11-24', '2026-11-24x', '2026-1-24'].map((day) => [`on=${day}`, 'not a day like 2026-11-24']),
    ['d=yesterday', 'not an evidence version'],
    [`made=${'x'.repeat(201)}`, 'longer than any answer; it counts as not known'],
    ['made=%', 'percent signs that do not decode'],
  ] as [string, string][])('%s', (query, why) => expect(parse(query)).toMatchObject({ on: null, d: null, notUnderstood: [{ piece: query, why }] }));

  test('and so are two answers to one question', () => {
    expect(parse('made=2019&made=2020').notUnderstood.map(({ piece }) => piece)).toEqual(['made=2019', 'made=2020']);
    const both = parse('yes=cut&no=cut.light');
    expect(both.notUnderstood.map(({ piece }) => piece)).toEqual(['yes=cut', 'no=cut.light']);
    expect(both.asked?.answers).toMatchObject({ cut: 'unknown', light: 'no' });
    // Only what says yes or no is listed, with all that is said in both ways.
    const why = 'both yes and no for light, cut; it counts as not known';
    expect(parse('made=2019&no=cut.light&yes=cut.light').notUnderstood).toEqual([{ piece: 'no=cut.light', why }, { piece: 'yes=cut.light', why }]);
  });
});

const NOTHING = nothingKnown();
test.each([
  [`made=${'x'.repeat(200)}`, { ...NOTHING, words: { ...NOTHING.words, made: 'x'.repeat(200) } }],
  ['made=unknown', NOTHING], ['yes=', NOTHING], ['no=none', NOTHING],
  // An id said twice with one answer has that answer.
  ['yes=cut.cut&no=light', { ...NOTHING, answers: { ...NOTHING.answers, cut: 'yes', light: 'no' } }],
] as [string, HistoryWords][])('%s says what it says, and no more', (query, asked) => {
  expect(parse(query)).toEqual({ asked, on: null, d: null, notUnderstood: [] });
});

test.each(['2026-01-01', '2026-09-09', '2026-10-10', '2026-12-31'])('a day is read, and alone says nothing of a sling: %s', (on) => {
  expect(parse(`?v=1&on=${on}&d=2026-11-25.4`)).toEqual({ asked: null, on, d: '2026-11-25.4', notUnderstood: [] });
});

test('a link writes every question, words without blanks at their ends, and a version only where there is one', () => {
  const asked = { words: { ...NOTHING.words, material: ' hmpe ', made: ' ' }, answers: { ...NOTHING.answers, cut: 'yes', light: 'yes' } } as HistoryWords;
  const query = 'v=1&material=hmpe&width=unknown&made=unknown&first=unknown&inspected=unknown&use=unknown&makerdate=unknown&makermade=unknown&makerused=unknown&yes=light.cut&no=none&on=2026-11-25';
  expect(serialiseVerdict(asked, '2026-11-25')).toBe(query);
  expect(serialiseVerdict(asked, '2026-11-25', '2026-11-25.3')).toBe(`${query}&d=2026-11-25.3`);
});
