/** Pasted lines. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPasted } from '../../../src/rack/paste.ts';
import { addItems, emptyRegister } from '../../../src/rack/register.ts';
import type { ItemDraft } from '../../../src/rack/types.ts';
import { by } from './histories.ts';

const FULL: ItemDraft = { ratingKn: 12, count: 3, sling: { material: 'hmpe', widthMm: 10, made: { year: 2019, month: 4 } } };

describe('a line that is understood', () => {
  test.each<[string, ItemDraft]>([
    ['12, HMPE 10, 2019-04, 3', FULL],
    ['12 kN; HMPE 10; 2019-04; 3', FULL],
    ['12\thmpe 10mm\t4/2019\t3x', FULL],
    ['12kN,10 mm HMPE,Apr 2019,x3', FULL],
    ['12 kN, UHMWPE sling 10, April 2019, 3 pcs', FULL],
    ['12.0, HMPE 10.0, 04.2019, 3', FULL],
    ['HMPE 10; 12 kN; 2019-04; 3', FULL],
    ['Red 3; 12; HMPE 10; 2019-04; 3', { ...FULL, name: 'Red 3' }],
    ['12,5; HMPE 10,5; 2019', { ratingKn: 12.5, sling: { material: 'hmpe', widthMm: 10.5, made: { year: 2019 } } }],
    ['12,5, HMPE 10, 2019', { ratingKn: 12.5, sling: { material: 'hmpe', widthMm: 10, made: { year: 2019 } } }],
    ['12,5, HMPE 10, 2019,3', { ratingKn: 12.5, count: 3, sling: { material: 'hmpe', widthMm: 10, made: { year: 2019 } } }],
    ['14, nylon 16 mm, 17.4.2019', { ratingKn: 14, sling: { material: 'nylon', widthMm: 16, made: { year: 2019, month: 4, day: 17 } } }],
    ['14, polyamide, 17/4/2019', { ratingKn: 14, sling: { material: 'nylon', made: { year: 2019, month: 4, day: 17 } } }],
    ['14, polyester, 4/17/2019', { ratingKn: 14, sling: { material: 'polyester', made: { year: 2019, month: 4, day: 17 } } }],
    ['?, HMPE, unknown, 3', { count: 3, sling: { material: 'hmpe' } }],
    ['9', { ratingKn: 9 }],
  ])('%s', (line, draft) => {
    expect(readPasted(line)).toEqual([{ line: 1, text: line, kind: 'item', draft }]);
  });
});

describe('a line that is not', () => {
  const TWO = 'a comma between two digits can be read in two ways; write semicolons between the pieces';
  test.each<[string, string]>([
    ['12,5,HMPE 10,2019', TWO],
    ['1,2,3,4,5,6,7,8,9', TWO],
    ['3/4/2019; 12 kN', '3/4/2019: can be two days; write the year first, as in 2019-04-17'],
    ['12 kN; 2019-02-30', '2019-02-30: no day of the calendar'],
    ['12; HMEP 10; 2019', '"HMEP 10" is no rating, sling, date or count'],
    ['1200 kg; HMPE 10', '"1200 kg" is no rating, sling, date or count'],
    ['55 kN', 'a rating is from 1 to 40 kN (got 55)'],
    ['12; HMPE 99', 'a width is from 1 to 60 mm (got 99)'],
    ['12; HMPE 10; 0', 'a count is a whole number from 1 to 999 (got 0)'],
    ['12; HMPE 10; 2,5', '"2,5" is a number without a unit; write kN or mm after it'],
    ['12; 14 kN', 'two pieces give a rating; the second is "14 kN"'],
    ['12; HMPE 10; nylon 16', 'two pieces give a sling; the second is "nylon 16"'],
    ['12; 2019; 2020', 'two pieces give a date; the second is "2020"'],
    ['12; HMPE 10; 3; 4', 'two pieces give a count; the second is "4"'],
    ['12; HMPE 10 11 mm', 'HMPE 10 11 mm has two widths'],
    ['?; ?', 'says nothing of a device; write its rating, sling, date and count'],
    ['constructor', '"constructor" is no rating, sling, date or count'],
  ])('%s: says why', (line, why) => {
    expect(readPasted(line)).toEqual([{ line: 1, text: line, kind: 'not-understood', why }]);
  });
});

test('headings and blank lines are told apart, and lines keep their numbers', () => {
  expect(readPasted('rating, sling, made, count\r\n\r\n12\nnonsense').map(({ line, kind }) => [line, kind])).toEqual([[1, 'heading'], [2, 'blank'], [3, 'item'], [4, 'not-understood']]);
});

test('any text gives a line back for each line, word for word, and the register takes every item that was read', () => {
  const piece = fc.constantFrom('12', '12,5', '12 kN', 'HMPE 10', 'nylon', '2019', '4/2019', '3', 'x2', '?', 'Red 5', '10 mm', 'constructor', '\u{1F9D7}', '2019-02-30', ' ', '999', '40', '41');
  const line = fc.tuple(fc.array(piece, { maxLength: 6 }), fc.constantFrom(',', ', ', ';', '\t')).map(([pieces, mark]) => pieces.join(mark));
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.array(line, { maxLength: 4 }).map((lines) => lines.join('\n'))), (pasted) => {
    const read = readPasted(pasted);
    expect(read.map(({ text }) => text).join('\n')).toBe(pasted.replaceAll('\r\n', '\n').replaceAll('\r', '\n'));
    const drafts = read.flatMap((one) => (one.kind === 'item' ? [one.draft] : []));
    expect(addItems(emptyRegister(), by('copya'), drafts).items).toHaveLength(drafts.length);
    expect(read.every((one) => one.kind !== 'not-understood' || one.why.length > 0)).toBe(true);
  }), { numRuns: 2000 });
});
