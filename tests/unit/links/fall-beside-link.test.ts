/** A fall beside a comparison: what is written is read back, and any string gives a fall or a reason. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseFallBeside, serialiseFallBeside } from '../../../src/links/fall-beside-link.ts';
import { besideOf } from '../../../src/links/serialise-link.ts';

test('loads to ten newtons and the query of the fall come back, whatever the query holds', () => {
  fc.assert(fc.property(fc.integer({ min: 10, max: 4000 }), fc.integer({ min: 1, max: 4000 }), fc.string(), (low, more, query) => {
    const fall = { lowKn: low / 100, highKn: (low + more) / 100, query };
    expect(parseFallBeside(serialiseFallBeside(fall))).toEqual({ fall });
  }));
});

test.each([['', 'the lower load is not a plain number; write one from 0.1 to 100 kN'], ['5', 'the upper load is not a plain number; write one from 0.1 to 100 kN'], ['9~8~v=1', 'the upper load must lie above the lower one'], ['5~5', 'the upper load must lie above the lower one'], ['0.09~5', 'the lower load is outside 0.1 to 100 kN'], ['1~200', 'the upper load is outside 0.1 to 100 kN']])('%j is not used, and says why', (value, why) => {
  expect(parseFallBeside(value)).toEqual({ why });
});

test.each([
  [{ lowKn: 4, highKn: 9, query: '' }, '4~9'], [{ lowKn: 4.126, highKn: 9.5, query: 'v=1&kg=80~90' }, '4.13~9.5~v=1&kg=80~90'], [{ lowKn: 0.1, highKn: 100, query: '' }, '0.1~100'],
])('%j is written as %j', (fall, value) => {
  expect(serialiseFallBeside(fall)).toBe(value);
  expect(parseFallBeside(value)).toEqual({ fall: { ...fall, lowKn: Number(fall.lowKn.toFixed(2)) } });
});

test('what stands beside a comparison goes along with every rig, word for word, and nothing else does', () => {
  expect(besideOf('?v=1&t=a~b&rating=9&f=1~2~x%3D1&left=t')).toBe('&t=a~b&f=1~2~x%3D1');
  expect(besideOf('?f=1~2')).toBe('&f=1~2');
  expect(besideOf('')).toBe('');
});
