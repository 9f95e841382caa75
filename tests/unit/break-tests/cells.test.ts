/** Cells, their numbers and their units, one by one; whole tables are in read-table.test.ts. */
import { describe, expect, it } from 'vitest';
import { type ColumnUnit, IN_COMMON, readHeading, readUnit } from '../../../src/break-tests/column-units.ts';
import { decimalValue, isMissing, markEvidence, type NumberCell, readNumberCell } from '../../../src/break-tests/read-number.ts';
import { plainText, splitTable } from '../../../src/break-tests/split-table.ts';

const value = (text: string, mark: '.' | ','): number | null | 'no number' => {
  const cell = readNumberCell(text);
  return cell ? decimalValue(cell, mark) : 'no number';
};

describe('numbers', () => {
  it.each([
    ['12', '.', 12], ['12', ',', 12], ['-12', '.', -12], ['+12', '.', 12], ['\u22121,5', ',', -1.5], ['- 3', '.', -3], ['0', '.', 0], ['007', '.', 7],
    ['1.5', '.', 1.5], ['1,5', ',', 1.5], ['.5', '.', 0.5], [',5', ',', 0.5], ['-.5', '.', -0.5], [' 2.5 ', '.', 2.5],
    ['1.5e3', '.', 1500], ['1,5E-2', ',', 0.015], ['2e+1', '.', 20], ['2e\u22121', '.', 0.2], ['1.234e3', '.', 1234], ['1,234e3', '.', 1234000],
    ['1,234', '.', 1234], ['1.234', ',', 1234], ['1.234', '.', 1.234], ['1,234', ',', 1.234], ['1,234.5', '.', 1234.5], ['1.234,5', ',', 1234.5], ['12.345.678', ',', 12345678], ['12,345,678.25', '.', 12345678.25],
    ["1'234", '.', 1234], ["1'234'567.5", '.', 1234567.5], ['1\u2019234,5', ',', 1234.5], ['1\u00a0234', '.', 1234], ['12\u2009345\u2009678', '.', 12345678], ['1\u202f234,5', ',', 1234.5], ['1\u2007234', '.', 1234],
    ['21.3 kN', '.', 21.3], ['21.3kN', '.', 21.3], ['>12', '.', 12], ['>= 12', '.', 12], ['\u226512.5', '.', 12.5], ['12+', '.', 12], ['12.5 +', '.', 12.5], ['12\u00a0kN', '.', 12], ['12\u00a0\u2009kN', '.', 12], [' >12 ', '.', 12], ["1'234.56", '.', 1234.56],
  ] as const)('%s with the mark %s is %d', (text, mark, expected) => expect(value(text, mark)).toBe(expected));

  it.each(['', 'a', 'kN 12', '1 234', '1.', '1,', '1..2', "1'23", "1'2345", "1234'567", "12'34.5", '1\u2009 23', '1\u200923', "1'234\u2009567", '--1', '+-1', '1e1.5', '5x8', '1-2', '1.5.', '\u2009', '>', '12 kN 3', '1;2'])('%j is no number', (text) => {
    const cell = readNumberCell(text);
    const either = cell === null ? null : [markEvidence(cell), decimalValue(cell, '.'), decimalValue(cell, ',')];
    if (either) expect(either).toEqual(['broken', null, null]);
  });

  it.each([
    ['1,5', '.', null], ['1,23', '.', null], ['1.23', ',', null], ['12,34.5', '.', null], ['1,234.5', ',', null], ['1.234,5', '.', null], ['1234,567', '.', null], ['1.5.2', '.', null], ['1,234,5', '.', null], ['0,234', '.', 234], ['1e999', '.', null], [`${'9'.repeat(400)}`, '.', null],
  ] as const)('%s with the mark %s is %s', (text, mark, expected) => expect(value(text, mark)).toBe(expected));

  it('says limits, signs, units and powers of ten apart', () => {
    const all = (text: string): NumberCell | null => readNumberCell(text);
    expect(all('>= \u2212 1\u2009234,5e\u22122 kN')).toEqual({ digits: '1234,5', sign: -1, exponent: '-2', unit: 'kN', atLeast: true });
    expect(all('12+')).toEqual({ digits: '12', sign: 1, exponent: '', unit: '', atLeast: true });
    expect(all('12 + kN')).toEqual({ digits: '12', sign: 1, exponent: '', unit: 'kN', atLeast: true });
    expect(all('12 (kN) ')).toEqual({ digits: '12', sign: 1, exponent: '', unit: '(kN)', atLeast: false });
    expect(all('+3e4')).toEqual({ digits: '3', sign: 1, exponent: '4', unit: '', atLeast: false });
    expect(all('-0.25')).toEqual({ digits: '0.25', sign: -1, exponent: '', unit: '', atLeast: false });
  });

  it.each([
    ['1', 'none'], ['1.5', '.'], ['1,25', ','], ['12.345', 'open'], ['123,456', 'open'], ['1234.567', '.'], ['0,234', ','], ['.123', '.'], ['1.2345', '.'], ['1.234e2', '.'],
    ['1.234.567', ','], ['1,234,567', '.'], ['1.23.456', 'broken'], ['1234,567,890', 'broken'], ['1.234,5', ','], ['12.34,5', 'broken'], ['1,234.567,8', 'broken'], ['1,234.5.6', 'broken'], ['1.234.567,8', ','], ['1,234,567.8', '.'],
  ] as const)('%s proves %s', (text, evidence) => expect(markEvidence(readNumberCell(text) as NumberCell)).toBe(evidence));

  it.each(['', ' ', '-', '--', '\u2013', '\u2014', 'na', 'N/A', ' NaN ', 'null', 'None', '?'])('%j says that there is no value', (text) => expect(isMissing(text)).toBe(true));
  it.each(['0', '9', '5', '-1', 'x', 'nothing', '---', '??'])('%j does not', (text) => expect(isMissing(text)).toBe(false));
});

describe('units', () => {
  it.each([
    ['kN', 'kN'], ['KN', 'kN'], ['n', 'N'], ['dan', 'daN'], ['kgf', 'kgf'], ['kp', 'kgf'], ['lbf', 'lbf'], ['s', 's'], ['sec', 's'], ['Seconds', 's'], ['ms', 'ms'], ['mm', 'mm'], ['m', 'm'], ['(kN)', 'kN'], ['[kN]', 'kN'], ['( kN )', 'kN'], [' lbf ', 'lbf'], [' (kN) ', 'kN'],
    ['kg', 'mass'], ['lb', 'mass'], ['lbs', 'mass'], ['pound', 'mass'], ['pounds', 'mass'], ['t', 'mass'], ['g', 'mass'], ['(kg)', 'mass'],
    ['', null], ['knots', null], ['kN/m', null], ['constructor', null], ['((kN))', null], ['k(N', null], ['k)N', null], ['force', null],
  ] as const)('%j is %s', (text, unit) => expect(readUnit(text)).toBe(unit));

  // NIST SP 811, appendix B: 1 kgf = 9.80665 N, 1 lbf = 4.448 221 615 260 5 N, both exact.
  it.each([['kN', 1], ['N', 0.001], ['daN', 0.01], ['kgf', 0.00980665], ['lbf', 0.0044482216152605], ['s', 1], ['ms', 0.001], ['mm', 1], ['m', 1000]] as const)('one %s is %d of the common unit', (unit: ColumnUnit, share) => expect(IN_COMMON[unit]).toBe(share));

  it.each([
    ['force (kN)', 'force', 'kN'], ['force[kN]', 'force', 'kN'], ['force ( kN )', 'force', 'kN'], ['force / kN', 'force', 'kN'], ['force, kN', 'force', 'kN'], ['force,kN', 'force', 'kN'], ['force_kN', 'force', 'kN'], ['force kN', 'force', 'kN'], ['peak   force\tkN', 'peak force', 'kN'], ['  time (s) ', 'time', 's'],
    ['kN', 'kN', 'kN'], ['[s]', '[s]', 's'], ['kg', 'kg', 'mass'], ['load (kg)', 'load', 'mass'], ['load lb', 'load', 'mass'], ['F_N', 'F', 'N'], ['F/N', 'F', 'N'], ['t, s', 't', 's'],
    ['series N', 'series N', null], ['peak/valley series N', 'peak/valley series N', null], ['/kN', '/kN', null], ['mode s', 'mode s', null], ['force (peak)', 'force (peak)', null], ['force', 'force', null], ['', '', null], ['(peak) force', '(peak) force', null], ['force (kN) peak', 'force (kN) peak', null], ['load cell', 'load cell', null],
  ] as const)('the head %j is %j in %s', (text, name, unit) => expect(readHeading(text)).toEqual({ name, unit }));
});

describe('rows and cells', () => {
  const cells = (text: string, delimiter: Parameters<typeof splitTable>[1]) => {
    const split = splitTable(text, delimiter);
    return 'fault' in split ? split.fault : split.rows.map((row) => [row.line, ...row.cells.map((cell) => `${cell.spaced ? '_' : ''}${cell.quoted ? '"' : ''}${cell.text}`)]);
  };

  it('line ends of any kind are one, and only a byte-order mark at the start is dropped', () => {
    expect(plainText('\ufeffa\r\nb\rc\n\ufeffd')).toBe('a\nb\nc\n\ufeffd');
    expect(plainText('a\r\r\nb')).toBe('a\n\nb');
    expect(plainText('a\ufeffb')).toBe('a\ufeffb');
  });

  it('each delimiter splits by its own mark alone', () => {
    const line = 'a\tb;c, d e';
    expect(cells(line, 'tab')).toEqual([[1, 'a', 'b;c, d e']]);
    expect(cells(line, 'semicolon')).toEqual([[1, 'a\tb', 'c, d e']]);
    expect(cells(line, 'comma')).toEqual([[1, 'a\tb;c', '_d e']]);
    expect(cells(line, 'blanks')).toEqual([[1, 'a', 'b;c,', 'd', 'e']]);
    expect(cells(line, 'none')).toEqual([[1, 'a\tb;c, d e']]);
  });

  it('with quotes in the line it splits the same (RFC 4180: quoted marks and line ends belong to the cell, doubled quotes are one)', () => {
    expect(cells('a\t"b;c"\td', 'tab')).toEqual([[1, 'a', '"b;c', 'd']]);
    expect(cells('"a;1";b; "c" ', 'semicolon')).toEqual([[1, '"a;1', 'b', '_"c']]);
    expect(cells('x, y,"a ""b"" c",', 'comma')).toEqual([[1, 'x', '_y', '"a "b" c', '']]);
    expect(cells('  a  "b c"\t d ', 'blanks')).toEqual([[1, 'a', '"b c', 'd']]);
    expect(cells('"a b"', 'blanks')).toEqual([[1, '"a b']]);
    expect(cells(' "a, b" ', 'none')).toEqual([[1, '_"a, b']]);
    expect(cells('a, "b"', 'none')).toEqual([[1, 'a, "b"']]);
    expect(cells('1,"two\nlines"\n3,4', 'comma')).toEqual([[1, '1', '"two\nlines'], [3, '3', '4']]);
    expect(cells('"",""\n', 'comma')).toEqual([[1, '"', '"']]);
    expect(cells(',"a"', 'comma')).toEqual([[1, '', '"a']]);
    expect(cells('a,\t"b"', 'comma')).toEqual([[1, 'a', '_"b']]);
    expect(cells('a\t"b"\tc', 'blanks')).toEqual([[1, 'a', '"b', 'c']]);
    expect(cells('"a b" \n"c" d', 'blanks')).toEqual([[1, '"a b'], [2, '"c', 'd']]);
    expect(cells('a"b,c', 'comma')).toEqual([[1, 'a"b', 'c']]);
  });

  it('notes and empty lines are left out and counted, with quotes about or without', () => {
    expect(cells('# note\n\na,b\n  # "quoted" note\n \t\n"c",d\n', 'comma')).toEqual([[3, 'a', 'b'], [6, '"c', 'd']]);
    expect(cells('', 'comma')).toEqual([]);
    expect(cells('a #b', 'comma')).toEqual([[1, 'a #b']]);
  });

  it('a quote that is not closed, or text behind one, is a fault with its place', () => {
    expect(cells('a,b\nc,"d\ne', 'comma')).toEqual({ line: 2, column: 2, text: 'd\ne' });
    expect(cells('a,b\n\nc, "d" e,f', 'comma')).toEqual({ line: 3, column: 2, text: ' "d" e' });
    expect(cells('"a', 'semicolon')).toEqual({ line: 1, column: 1, text: 'a' });
    expect(cells('"a\nb";"c"d', 'semicolon')).toEqual({ line: 1, column: 2, text: '"c"d' });
  });
});
