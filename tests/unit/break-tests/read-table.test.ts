import { describe, expect, it } from 'vitest';
import { readHeading, readUnit } from '../../../src/break-tests/column-units.ts';
import { markEvidence, readNumberCell } from '../../../src/break-tests/read-number.ts';
import { readTable, type TableOptions } from '../../../src/break-tests/read-table.ts';

/** Columns of a text as name, unit and values; fails where it stops. */
function columns(text: string, options?: TableOptions) {
  const reading = readTable(text, options);
  if ('stop' in reading) throw new Error(reading.stop.message);
  return reading.table.columns.map(({ name, unit, values }) => [name, unit, values]);
}

/** Message of the stop; fails where there is none. */
function stop(text: string, options?: TableOptions): string {
  const reading = readTable(text, options);
  if ('table' in reading) throw new Error(`read: ${JSON.stringify(reading.table.columns)}`);
  return reading.stop.message;
}

describe('what is read', () => {
  it('one number a line', () => expect(columns('21.3\n22.1\n20.4')).toEqual([['column 1', null, [21.3, 22.1, 20.4]]]));
  it('one number a line under a head, with decimal commas', () => expect(columns('force (kN)\n21,3\n22')).toEqual([['force', 'kN', [21.3, 22]]]));
  it('semicolons with decimal commas, Windows line ends and a byte-order mark', () => {
    expect(columns('\ufeffpull;force [kN];mode\r\n1;21,3;bond\r\n2;19,85;wire\r\n')).toEqual([
      ['pull', null, [1, 2]],
      ['force', 'kN', [21.3, 19.85]],
      ['mode', null, ['bond', 'wire']],
    ]);
  });
  it('commas with points, quoted words and doubled quotes', () => {
    expect(columns('pull,force/kN,mode\n1,21.3,"broke, ""slowly"""')).toEqual([
      ['pull', null, [1]],
      ['force', 'kN', [21.3]],
      ['mode', null, ['broke, "slowly"']],
    ]);
  });
  it('tabs, and digits grouped by thin blanks', () => expect(columns('pull\tforce (N)\n1\t21\u2009345\n2\t22\u202f001')).toEqual([['pull', null, [1, 2]], ['force', 'N', [21345, 22001]]]));
  it('blanks with decimal commas, and a unit in brackets', () => expect(columns('pull force (kN)\n1 21,3\n2  22,45')).toEqual([['pull', null, [1, 2]], ['force', 'kN', [21.3, 22.45]]]));
  it('a row of units below the head', () => expect(columns('time;force\ns;kN\n0,0;0,1\n0,002;0,2')).toEqual([['time', 's', [0, 0.002]], ['force', 'kN', [0.1, 0.2]]]));
  it('units behind the numbers', () => expect(columns('21.3 kN\n22.1 kN')).toEqual([['column 1', 'kN', [21.3, 22.1]]]));
  it('notes and empty lines are left out, and lines are counted with them', () => {
    const reading = readTable('# slow pulls\n\nforce (daN)\n2130\n# one more\n1990\n');
    expect('table' in reading && reading.table.lines).toEqual([4, 6]);
  });
  it('lower limits', () => {
    const reading = readTable('>21.3\n20.1\n19+\n≥18');
    expect('table' in reading && reading.table.columns[0]).toMatchObject({ values: [21.3, 20.1, 19, 18], atLeast: [true, false, true, true] });
  });
  it('missing values, a true minus, powers of ten', () => expect(columns('a;b\n-;\u22120.5\nNA;1.5e-3')).toEqual([['a', null, ['-', 'NA']], ['b', null, [-0.5, 0.0015]]]));
  it('dates are words', () => expect(columns('day,force\n2026-11-24,21.3\n2026-11-25,22.1')).toEqual([['day', null, ['2026-11-24', '2026-11-25']], ['force', null, [21.3, 22.1]]]));
  it('groups with decimals settle the mark', () => expect(columns('1.234,5;2\n2.100,7;3')).toEqual([['column 1', null, [1234.5, 2100.7]], ['column 2', null, [2, 3]]]));
  it('answers of the reader', () => {
    expect(columns('21,345\n22,001', { delimiter: 'none', decimal: ',' })).toEqual([['column 1', null, [21.345, 22.001]]]);
    expect(columns('21,345\n22,001', { delimiter: 'none', decimal: '.' })).toEqual([['column 1', null, [21345, 22001]]]);
    expect(columns('21,3\n22,1', { delimiter: 'comma' })).toEqual([['column 1', null, [21, 22]], ['column 2', null, [3, 1]]]);
    expect(columns('force;note\n21.3;2\n20.1;slow', { textColumns: [2] })).toEqual([['force', null, [21.3, 20.1]], ['note', null, ['2', 'slow']]]);
  });
});

describe('what stops, word for word', () => {
  it.each([
    ['', 'Row 1, column 1 (""): there is nothing to read. Paste at least one row.'],
    ['only words', 'Row 1, column 1 ("only"): no column has numbers. Paste the forces, too.'],
    ['21,3\n22,1', 'Row 1, column 1 ("21,3"): this can be split into cells in two ways. Say what stands between the cells.'],
    ['21.345\n22.001', 'Row 1, column 1 ("21.345"): this may be a decimal mark or a group of thousands. Say which mark stands before the decimals.'],
    ['a;b\n21,3;1\n20.4;2', 'Row 3, column 1 ("20.4"): this number has another decimal mark than the rest. Use one mark throughout.'],
    ['a;b\n1;2\n3', 'Row 3, column 2 (""): this row has fewer cells than the first. Fill the row, or write - for a missing value.'],
    ['pull,force\n1,21,3', 'Row 2, column 3 ("3"): this row has more cells than the first. Check for a decimal comma between commas, or quote the cell.'],
    ['Force, kN\n21,3\n22,1', 'Row 1, column 2 ("kN"): this is a unit apart from the numbers that it belongs to. Write it in brackets behind the name of their column.'],
    ['force (kg)\n21.5', 'Row 1, column 1 ("force (kg)"): this is a unit of mass. Say kgf or lbf if it is a force.'],
    ['force (N);x\n21.5 kN;1', 'Row 2, column 1 ("21.5 kN"): this unit is not that of the column. Use one unit in a column.'],
    ['force;x\n21.5 kip;1', 'Row 2, column 1 ("21.5 kip"): what stands behind this number is no unit that is known. Use kN, N, daN, kgf or lbf.'],
    ['force;x\n21.5;1\nbroken;2', 'Row 3, column 1 ("broken"): this is no number, and others in the column are. Correct it, write - for a missing value, or call the column text.'],
    ['force;x\n2..5;1', 'Row 2, column 1 ("2..5"): this is not a well-formed number. Write it with one decimal mark.'],
    ['a;b\n1;"x', 'Row 2, column 2 ("x"): a quotation mark is not closed, or text follows one. Close it, or take it out.'],
  ])('%j', (text, message) => expect(stop(text)).toBe(message));

  it('a number without quotes among quoted decimal commas may have lost them', () => {
    expect(columns('1,"12,0"\n2,"6,5"')).toEqual([['column 1', null, [1, 2]], ['column 2', null, [12, 6.5]]]);
    expect(stop('1,"12,0"\n26,6')).toBe('Row 2, column 1 ("26,6"): this can be split into cells in two ways. Say what stands between the cells.');
    expect(stop('123 345\n132 222')).toBe('Row 1, column 1 ("123 345"): this can be split into cells in two ways. Say what stands between the cells.');
    expect(columns('1234 345\n132 222')).toEqual([['column 1', null, [1234, 132]], ['column 2', null, [345, 222]]]);
  });

  it('what a cell, a head or a row lacks', () => {
    expect(stop('pull; force\n1')).toContain('column 2');
    expect(stop('a\tb\n1\t2\n3')).toContain('Row 3, column 2');
    expect(stop('x,unit\n21.3,kN')).toContain('apart from the numbers');
    expect(stop('force;x\n5x8;1')).toBe('Row 2, column 1 ("5x8"): this is not a well-formed number. Write it with one decimal mark.');
    expect(stop('n/a,"21,3"\n5,20')).toContain('column');
    expect(columns(',force\n1,21.3\n2,22.2')).toEqual([['column 1', null, [1, 2]], ['force', null, [21.3, 22.2]]]);
    expect(columns('-;bond\n21.5;wire')).toEqual([['column 1', null, [null, 21.5]], ['column 2', null, ['bond', 'wire']]]);
  });

  it('a grouped integer beside decimals may be a slip that makes a force a thousand times as large', () => {
    expect(stop('force (kN);x\n18.35;1\n19,686;2')).toContain('Row 3, column 1 ("19,686")');
  });
});

describe('cells', () => {
  it.each([
    ['1.5', '.'], ['1,5', ','], ['12', 'none'], ['1.234', 'open'], ['0.234', '.'], ['1234.567', '.'], ['1.234.567', ','], ['1,234.5', '.'], ['1.234,5', ','], ['1.2.3', 'broken'], ['1,23.4', 'broken'], ['1.234e3', '.'],
  ])('%s proves %s', (text, evidence) => expect(markEvidence(readNumberCell(text)!)).toBe(evidence));

  it.each([['kN', 'kN'], ['[lbf]', 'lbf'], ['(DAN)', 'daN'], ['kg', 'mass'], ['knots', null]])('unit %s is %s', (text, unit) => expect(readUnit(text)).toBe(unit));

  it.each([
    ['force (kN)', 'force', 'kN'], ['force [N]', 'force', 'N'], ['force/kgf', 'force', 'kgf'], ['force_lbf', 'force', 'lbf'], ['peak force kN', 'peak force', 'kN'], ['series N', 'series N', null], ['force, N', 'force', 'N'],
  ])('head %s', (text, name, unit) => expect(readHeading(text)).toEqual({ name, unit }));
});
