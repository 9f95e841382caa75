/** Days of the calendar. Leap years and lengths of months are those of the Gregorian calendar; dates beside were counted on one. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addMonths, earliestDay, isSurelyBefore } from '../../../src/retirement/days.ts';

test.each([['2019', '2019-01-01'], ['2019-05', '2019-05-01'], ['2019-05-31', '2019-05-31'], ['2020-02-29', '2020-02-29'], ['2000-02-29', '2000-02-29']])('the label %s counts from %s', (label, day) => {
  expect(earliestDay(label)).toBe(day);
});

test.each(['', '19', '2019-13', '2019-00', '2019-5', '2019-04-31', '2019-02-29', '1900-02-29', '2019-05-00', '2019-05-01T00:00', 'May 2019'])('"%s" is no label', (label) => {
  expect(() => earliestDay(label)).toThrow(`label must be a year, month or day like 2019, 2019-05 or 2019-05-31 (got ${label})`);
});

test.each([
  ['2019-05-31', 0, '2019-05-31'], ['2019-05-31', 1, '2019-06-30'], ['2019-12-15', 1, '2020-01-15'], ['2020-02-29', 12, '2021-02-28'],
  ['2020-02-29', 48, '2024-02-29'], ['2019-11-30', 3, '2020-02-29'], ['2018-11-30', 3, '2019-02-28'], ['2016-11-24', 120, '2026-11-24'],
])('%s and %d months is %s', (day, months, then) => {
  expect(addMonths(day, months)).toBe(then);
});

test.each([-1, 0.5, Number.NaN, Infinity])('%d is no number of months', (months) => {
  expect(() => addMonths('2019-05-31', months)).toThrow(RangeError);
});

test('no day lies past the year 9999', () => {
  expect(addMonths('9999-01-01', 11)).toBe('9999-12-01');
  expect(() => addMonths('9999-01-01', 12)).toThrow('months must not lead past the year 9999 (got 12)');
});

test('a later day is never earlier after the same months, and more months never come first', () => {
  const day = fc.date({ min: new Date('1980-01-01'), max: new Date('2080-01-01'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10));
  fc.assert(fc.property(day, day, fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 400 }), (a, b, m, n) => {
    const [first, second] = a < b ? [a, b] : [b, a];
    expect(addMonths(first, m) <= addMonths(second, m)).toBe(true);
    expect(addMonths(a, Math.min(m, n)) <= addMonths(a, Math.max(m, n))).toBe(true);
    // The machine's own calendar agrees that the result is a day.
    const then = addMonths(a, m);
    expect(new Date(then).toISOString().slice(0, 10)).toBe(then);
  }));
});

test.each([['2019', '2020', true], ['2019', '2019-05', false], ['2019-04', '2019-05-02', true], ['2019-05', '2019-05-02', false], ['2020', '2019-05', false]])('%s is surely before %s: %j', (a, b, is) => {
  expect(isSurelyBefore(a, b)).toBe(is);
});
