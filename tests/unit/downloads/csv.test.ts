/** One table as CSV. Expected lines are the examples of RFC 4180, section 2; the characters that start a formula are OWASP's list ("CSV Injection"). */
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvCell, csvText } from '../../../src/build/downloads/csv.ts';
import { jsonText } from '../../../src/build/downloads/json.ts';
import { makeTable } from '../../../src/build/downloads/table.ts';

const OWASP = ['=', '+', '-', '@', '\t', '\r', '\n'];

describe('a cell', () => {
  test('with a comma, a quote or a line end stands in quotes, and a quote inside is doubled (RFC 4180, 2.6 and 2.7)', () => {
    expect(csvCell('b\r\nbb')).toBe('"b\r\nbb"');
    expect(csvCell('a,b')).toBe('"a,b"');
    expect(csvCell('b"bb')).toBe('"b""bb"');
    expect(csvCell('plain words')).toBe('plain words');
  });

  test.each(OWASP)('that begins with %j is text to a spreadsheet', (head) => {
    const read = Papa.parse<string[]>(`${csvCell(`${head}1+1`)}\r\n`, { newline: '\r\n' }).data[0]?.[0];
    expect(read).toBe(`'${head}1+1`);
  });

  test('that is a number stays a number, also below zero; empty is empty', () => {
    expect([csvCell(-30), csvCell(0.093), csvCell(true), csvCell(null)]).toEqual(['-30', '0.093', 'true', '']);
  });
});

const spec = {
  name: 'example', title: 'Example', says: 'An example.', key: ['id'],
  columns: [
    { name: 'id', type: 'string' as const, required: true as const, says: 'Id.', of: (row: { id: string; force?: number | string }) => row.id },
    { name: 'force', type: 'number' as const, unit: 'kN', says: 'Force.', of: (row: { id: string; force?: number | string }) => row.force },
  ],
};

describe('a table', () => {
  test('has a head, closes each line with CR LF, and stands in the order of its key', () => {
    expect(csvText(makeTable(spec, [{ id: 'b', force: 2 }, { id: 'a' }]))).toBe('id,force\r\na,\r\nb,2\r\n');
  });

  test('is in JSON the same rows, with null for empty', () => {
    expect(JSON.parse(jsonText(makeTable(spec, [{ id: 'b', force: 2 }, { id: 'a' }])))).toEqual([{ id: 'a', force: null }, { id: 'b', force: 2 }]);
    expect(JSON.parse(jsonText(makeTable(spec, [])))).toEqual([]);
  });

  test.each([
    [[{ id: 'a', force: '22' }], 'table example, column force: is no number (got "22")'],
    [[{ id: 'a', force: Number.NaN }], 'table example, column force: is no number (got null)'],
    [[{ id: '' }], 'table example, column id: is no string (got "")'],
    [[{ id: 'a' }, { id: 'a' }], 'table example: two rows have the key a'],
  ])('is not made from what does not fit: %j', (rows, message) => {
    expect(() => makeTable(spec, rows)).toThrow(new RangeError(message));
  });
});
