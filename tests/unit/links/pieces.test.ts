/** The pieces of a query as a browser gives them, and each key read once. Expected pieces are written by hand. */
import { describe, expect, test } from 'vitest';
import { EVIDENCE_VERSION, oneOf, piecesOf, UNDECODED } from '../../../src/links/pieces.ts';
import { readEach } from '../../../src/links/read-each.ts';

const WHY = 'percent signs that do not decode';

describe('a query is parted at its first equals signs and decoded, and each piece kept as it stands', () => {
  test.each([
    ['', []],
    ['?', []],
    ['&&', []],
    ['kg=80', [['kg', '80']]],
    ['?kg=80&up=2,5', [['kg', '80'], ['up', '2,5']]],
    // Only the first question mark is punctuation.
    ['??kg=80', [['?kg', '80']]],
    ['kg?=8?0', [['kg?', '8?0']]],
    ['rig=v=1', [['rig', 'v=1']]],
    ['name=a+b%20c%2Bd', [['name', 'a b c+d']]],
    ['a+b=1', [['a b', '1']]],
    ['kg=%20+80+', [['kg', '80']]],
    ['kg', [['kg', '']]],
    ['kg=', [['kg', '']]],
    ['=80', [['', '80']]],
    ['kg=%', [['kg', UNDECODED]]],
  ] as [string, [string, string][]][])('%j', (query, said) => {
    const { pieces, unreadable } = piecesOf(query);
    expect(pieces.map(({ key, value }) => [key, value])).toEqual(said);
    expect(pieces.map(({ piece }) => piece).join('&')).toBe(query.replace(/^\?|^&&/, ''));
    expect(unreadable).toEqual([]);
  });
});

test('a key that does not decode has no name: its piece is listed, and the next is read', () => {
  expect(piecesOf('%zz=1&kg=80')).toEqual({ pieces: [{ key: 'kg', value: '80', piece: 'kg=80' }], unreadable: [{ piece: '%zz=1', why: WHY }] });
});

test.each([
  ['2026-11-25.4', true], ['2026-11-25.1234', true], ['2026-11-25.12345', false], ['2026-11-25.', false], ['2026-11-25', false],
  ['x2026-11-25.4', false], ['2026-11-25.4x', false], ['2026-1-25.4', false], ['2026-11-5.4', false], ['226-11-25.4', false], ['2026-11-25-4', false],
])('%j is a version of the evidence: %j', (text, is) => expect(EVIDENCE_VERSION.test(text)).toBe(is));

test('a word is one of a list only if it is one of its own', () => {
  expect([oneOf(['a', 'b'], 'b'), oneOf(['a', 'b'], 'ab'), oneOf([], 'toString')]).toEqual(['b', undefined, undefined]);
});

test('each key is handed on once; every piece of one that is not used is listed with the reason', () => {
  const handed: string[] = [];
  const listed = readEach(piecesOf('a=1&b=2&a=1&c=3&c=4&b=2').pieces, (key, value) => {
    handed.push(`${key}=${value}`);
    return key === 'b' ? 'no b' : null;
  });
  expect(handed).toEqual(['a=1', 'b=2']);
  const twice = 'the same question twice with different answers; none is used';
  expect(listed).toEqual([{ piece: 'b=2', why: 'no b' }, { piece: 'b=2', why: 'no b' }, { piece: 'c=3', why: twice }, { piece: 'c=4', why: twice }]);
});
