/** Words of texts and of searches, and how near two words lie. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance } from '../../../src/records/nearest-name.ts';
import { piecesOf, sentenceWith, stretchesOf, textOf } from '../../../src/search/marked.ts';
import { edits, editsAllowed, nearWords } from '../../../src/search/nearness.ts';
import { wordsOf } from '../../../src/search/words.ts';

test.each([
  ["The fisherman's bends", ['the', 'fisherman', 'bend']],
  ['Lark\u2019s-foot', ['lark', 'foot']],
  ['\u00c9lingue', ['elingue']],
  ['22 kN', ['22kn']],
  ['22kN', ['22kn']],
  ['22.50 kN', ['22.5kn']],
  ['5,5 mm', ['5.5mm']],
  ['1,000 lbs', ['1000lbf']],
  ['9.17 to 11.4 kN', ['9.17kn', '11.4kn']],
  ['3-5 years', ['3years', '5years']],
  ['10 per cent', ['10%']],
  ['EN 12276', ['en', '12276']],
  ['10 knots', ['10', 'knot']],
  ['', []],
  ['***', []],
])('%j is cut into %j', (text, words) => {
  expect(wordsOf(text)).toEqual(words);
});

test('in a text of the site a number also stands by itself', () => {
  expect(wordsOf('22 kN', true)).toEqual(['22', '22kn']);
});

test.each([
  ['girth', 'girht', 1, 'two neighbours swapped'],
  ['webbing', 'webing', 1, 'one letter missing'],
  ['overhand', 'overhhand', 1, 'one doubled'],
  ['nylon', 'nylen', 1, 'one wrong'],
  ['ca', 'abc', 3, 'a swap is not edited again: the textbook case of optimal string alignment'],
  ['kitten', 'sitting', 3, 'the textbook case of Levenshtein'],
])('%s and %s are %i apart (%s)', (a, b, off) => {
  expect(edits(a, b, 5)).toBe(off);
  expect(edits(b, a, 5)).toBe(off);
});

test('what lies further than was asked is infinitely far, and nothing else is', () => {
  const word = fc.stringMatching(/^[abc]{0,9}$/);
  fc.assert(fc.property(word, word, fc.integer({ min: 0, max: 4 }), (a, b, most) => {
    const all = editDistance(a, b);
    expect(edits(a, b, most)).toBe(all <= most ? all : Number.POSITIVE_INFINITY);
  }));
});

test('short words and numbers may not be off', () => {
  expect(['eye', 'kn', '22kn', '566', 'pa6'].map(editsAllowed)).toEqual([0, 0, 0, 0, 0]);
  expect(['tape', 'webbing', 'overhand'].map(editsAllowed)).toEqual([1, 1, 2]);
  expect(nearWords('eyy', ['eye'])).toEqual([]);
});

test('a text with a figure and the name of a standard falls into its pieces', () => {
  const text = 'It broke at {a/b#c|9.9 kN|read}, as {|EN 566} says.';
  expect(piecesOf(text)).toEqual([
    { kind: 'text', words: 'It broke at ' }, { kind: 'figure', id: 'a/b#c', words: '9.9 kN', standing: 'read' }, { kind: 'text', words: ', as ' },
    { kind: 'name', words: 'EN 566' }, { kind: 'text', words: ' says.' },
  ]);
  expect(textOf(text)).toBe('It broke at 9.9 kN, as EN 566 says.');
});

test('the sentence with most of the words is shown', () => {
  const text = 'A sling is old. The girth hitch chokes the wire. A wire is thin.\nA girth hitch can slip.';
  expect(sentenceWith(text, new Set(['girth', 'wire']))).toBe('The girth hitch chokes the wire.');
  expect(sentenceWith(text, new Set(['slip']))).toBe('A girth hitch can slip.');
  expect(sentenceWith(text, new Set(['nothing']))).toBe('A sling is old.');
  // What a figure says may be several sentences: it stays whole.
  expect(sentenceWith('The label says: {a/b|The sling is part. It was tested.|quoted} Read it.', new Set(['tested']))).toBe('The label says: {a/b|The sling is part. It was tested.|quoted}');
});

test('marking what was found loses no letter and adds none', () => {
  const text = fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[ a-z0-9.,'{}|<>&-]{0,40}$/));
  fc.assert(fc.property(text, fc.array(fc.stringMatching(/^[a-z]{1,3}$/)), (words, found) => {
    expect(stretchesOf(words, new Set(found)).map((each) => each.words).join('')).toBe(words);
  }));
  expect(stretchesOf("The fisherman's bend", new Set(['fisherman']))).toEqual([{ words: 'The ', isFound: false }, { words: "fisherman's", isFound: true }, { words: ' bend', isFound: false }]);
});
