/** Answers as people write them. Expected labels are read by hand; the forms of a date are those of ISO 8601 and of everyday writing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EVENTS, EXPOSURES, FINDINGS } from '../../../src/records/schema.ts';
import { SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS } from '../../../src/retirement/answers.ts';
import { earliestDay } from '../../../src/retirement/days.ts';
import { type HistoryWords, nothingKnown, QUESTIONS, readHistory, type WordKey } from '../../../src/retirement/read-history.ts';
import { readLabel } from '../../../src/retirement/read-label.ts';
import { verdictOn } from '../../../src/retirement/verdict.ts';
import { ON, RULES, UNKNOWN } from './history.ts';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const withWords = (words: Partial<Record<WordKey, string>>): HistoryWords => ({ ...nothingKnown(), words: { ...nothingKnown().words, ...words } });

describe('a date', () => {
  test.each([
    ['2019', '2019'], ['2019-05', '2019-05'], ['2019-05-31', '2019-05-31'], [' 2019 ', '2019'], ['2019/5', '2019-05'], ['5/2019', '2019-05'], ['05.2019', '2019-05'],
    ['31.5.2019', '2019-05-31'], ['31/5/2019', '2019-05-31'], ['5/31/2019', '2019-05-31'], ['4/4/2019', '2019-04-04'], ['May 2019', '2019-05'], ['3 sept 2019', '2019-09-03'],
    ['2020-02-29', '2020-02-29'], ['1950', '1950'], ['12.11.2019', '2019-11-12'], ['13/12/2019', '2019-12-13'], ['12/13/2019', '2019-12-13'], ['12/12/2019', '2019-12-12'], ['31-12-2019', '2019-12-31'], ['12. May 2019', '2019-05-12'], ['12  May.  2019', '2019-05-12'],
    ...MONTHS.flatMap((name, at) => [name, name.slice(0, 3), name.toUpperCase()].map((word) => [`${word} 2019`, `2019-${String(at + 1).padStart(2, '0')}`] as [string, string])),
  ])('%s is read as %s', (text, label) => expect(readLabel(text)).toEqual({ ok: true, label }));

  test.each([
    ['', /no date; write it like 2019/], ['old', /no date/], ['19', /no date/], ['5/19', /no date/], ['2019-13', /no day of the calendar/], ['2019-02-29', /no day of the calendar/],
    ['4/5/2019', /can be two days; write the year first/], ['1066', /before 1950/], ['2019-05-31-1', /no date/], ['ma 2019', /no date/], ['-2019', /no date/],
    ['1949', /before 1950; write the year with four digits/], ['11/12/2019', /can be two days; write the year first, as in 2019-04-17/], ['12/5/2019', /can be two days/], ['5/12/2019', /can be two days/], ['5.31.2019', /no day of the calendar/], ['31/4/2019', /no day of the calendar/],
    ['x5/2019', /no date/], ['5/2019x', /no date/], ['131.5.2019', /no date/], ['31.5.20190', /no date/], ['31.5/2019', /no date/], ['x May 2019', /no date/], ['12.5 May 2019', /no date/], ['May 2019 or so', /no date/], ['Mai 2019', /no date/], ['May2019', /no date/],
  ])('%s is refused', (text, why) => {
    const read = readLabel(text);
    expect(!read.ok && read.why).toMatch(why);
  });

  test('of any text is a label that the calendar has, or a reason', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9./ -]{1,12}$/)), (text) => {
      const read = readLabel(text);
      if (read.ok) expect(earliestDay(read.label)).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      else expect(read.why).not.toBe('');
    }), { numRuns: 2000 });
  });
});

describe('answers', () => {
  test('that are all open are a sling of which nothing is known', () => {
    expect(readHistory(nothingKnown(), ON)).toEqual({ history: UNKNOWN, faults: {} });
  });

  test('ask everything that the rules speak of', () => {
    expect([SLING_EXPOSURES, SLING_EVENTS, SLING_FINDINGS].map((ids) => [...ids].sort())).toEqual([EXPOSURES, EVENTS, FINDINGS].map((ids) => [...ids].sort()));
    expect(new Set(QUESTIONS).size).toBe(QUESTIONS.length);
  });

  test('are read with decimal commas and days in any order', () => {
    const { history, faults } = readHistory(withWords({ material: 'hmpe', width: '10,5', made: '05/2019', first: '1.6.2019', use: 'weekly', makermade: '7,5', makerdate: '2030' }), ON);
    expect(faults).toEqual({});
    expect(history).toMatchObject({ material: 'hmpe', widthMm: 10.5, made: '2019-05', firstUse: '2019-06-01', use: 'weekly', maker: { yearsFromMade: 7.5, retireBy: '2030' } });
  });

  test.each<[string, Partial<Record<WordKey, string>>, WordKey, RegExp]>([
    ['a width that is no number', { width: 'ten' }, 'width', /no plain number; write one from 1 to 60 mm/],
    ['a width outside', { width: '200' }, 'width', /outside 1 to 60 mm/],
    ['a width with an exponent', { width: '1e1' }, 'width', /no plain number/],
    ['a material we do not know', { material: 'hemp' }, 'material', /^not one of hmpe, nylon, polyester, aramid, hmpe-nylon$/],
    ['an inspection that is no day', { made: '2019-05', inspected: 'then' }, 'inspected', /no date/],
    ['a day still to come', { made: '2026-11-25' }, 'made', /still to come on 2026-11-24/],
    ['an inspection before manufacture', { made: '2019-05', inspected: '2018-01-01' }, 'inspected', /before the sling was made/],
    ['a life of no years', { makermade: '0' }, 'makermade', /outside 0.5 to 60 years/],
    ['a day of the maker that is none', { makerdate: 'never' }, 'makerdate', /no date/],
  ])('with %s say so and count as not known', (_name, words, key, why) => {
    const { history, faults } = readHistory(withWords(words), ON);
    expect(Object.keys(faults)).toEqual([key]);
    expect(faults[key]).toMatch(why);
    // What cannot be used is never an error of the verdict.
    expect(() => verdictOn(RULES, history, ON)).not.toThrow();
  });

  test('at the ends of what is asked for are read, with blanks around them', () => {
    const { history, faults } = readHistory(withWords({ width: '1', made: ON, inspected: ON, use: ' weekly ', makermade: '60', makerused: '0,50' }), ON);
    expect(faults).toEqual({});
    expect(history).toMatchObject({ widthMm: 1, made: ON, inspected: ON, use: 'weekly' });
    expect(history.maker).toEqual({ yearsFromMade: 60, yearsFromFirstUse: 0.5 });
    expect(readHistory(withWords({ width: '60' }), ON).history.widthMm).toBe(60);
    // What contradicts nothing is kept beside a date of making that is not known.
    expect(readHistory(withWords({ inspected: '2018' }), ON)).toMatchObject({ history: { inspected: '2018' }, faults: {} });
  });

  test('that contradict each other are both not believed', () => {
    const { history, faults } = readHistory(withWords({ made: '2019-05', first: '2018' }), ON);
    expect(faults).toEqual({ first: 'before the sling was made (2019-05); look at both', made: 'after its first use (2018); look at both' });
    expect([history.made, history.firstUse]).toEqual([null, null]);
  });

  test('of any kind give a verdict', () => {
    const text = fc.oneof(fc.string(), fc.constantFrom('', '2019', '2019-05', '2031', '10', '0', 'hmpe', 'daily', '1,5', '1950', '9999'));
    const keys = Object.keys(nothingKnown().words) as WordKey[];
    fc.assert(fc.property(fc.tuple(...keys.map(() => text)), fc.array(fc.constantFrom('yes', 'no', 'unknown') as fc.Arbitrary<'yes' | 'no' | 'unknown'>, { minLength: QUESTIONS.length, maxLength: QUESTIONS.length }), (texts, said) => {
      const words = Object.fromEntries(keys.map((key, at) => [key, texts[at] as string])) as HistoryWords['words'];
      const answers = Object.fromEntries(QUESTIONS.map((id, at) => [id, said[at]])) as HistoryWords['answers'];
      const { history } = readHistory({ words, answers }, ON);
      expect(verdictOn(RULES, history, ON).reasons.length).toBeGreaterThan(0);
    }), { numRuns: 500 });
  });
});
