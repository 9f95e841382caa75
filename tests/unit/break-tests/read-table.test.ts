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

/** The reading as columns, or the reason and place of the stop: `units-clash 3:1 22`. */
function told(text: string, options?: TableOptions): unknown {
  const reading = readTable(text, options);
  if ('table' in reading) return reading.table.columns.map(({ name, unit, values }) => [name, unit, ...values]);
  const { reason, row, column, cell } = reading.stop;
  return `${reason} ${row}:${column} ${cell}`;
}

describe('each rule from both sides', () => {
  it.each<[string, string, unknown]>([
    // Delimiters at the end of rows.
    ['an empty last cell in every row is none', 'a;b;\n1;2;\n3;4;', [['a', null, 1, 3], ['b', null, 2, 4]]],
    ['an empty last cell in some rows is a cell', 'a;b;c\n1;2;\n3;4;5', [['a', null, 1, 3], ['b', null, 2, 4], ['c', null, null, 5]]],
    ['a row without it lacks a cell', 'a;b;\n1;2;\n3;4', 'cells-missing 3:3 '],
    ['a row with one more has too many', 'a;b;\n1;2;\n3;4;5;6', 'cells-too-many 3:4 6'],
    // Units below the head.
    ['units in brackets below the head', 'time;force\n(ms);[lbf]\n0;1', [['time', 'ms', 0], ['force', 'lbf', 1]]],
    ['a column without one', 'pull;force\n-;kN\n1;2', [['pull', null, 1], ['force', 'kN', 2]]],
    ['a row of nothing is no row of units', 'pull;force\n-;-\n1;2', [['pull', null, null, 1], ['force', null, null, 2]]],
    ['the same unit in head and below', 'time (s);force\ns;kN\n0;1', [['time', 's', 0], ['force', 'kN', 1]]],
    ['another unit below', 'time (ms);force\ns;kN\n0;1', 'units-clash 2:1 s'],
    ['a mass below', 'time;force\ns;kg\n0;1', 'unit-of-mass 2:2 kg'],
    ['a mass in the head', 'time;load (lb)\n0;1', 'unit-of-mass 1:2 load (lb)'],
    ['units for all heads are names', 'kN;s\n1;2', [['kN', 'kN', 1], ['s', 's', 2]]],
    ['a unit for one head is torn off a name', 'pull;kN\n1;2', 'unit-alone 1:2 kN'],
    // Units behind numbers.
    ['a unit in the head and behind some numbers', 'force (kN);x\n21.3 kN;1\n22;2', [['force', 'kN', 21.3, 22], ['x', null, 1, 2]]],
    ['a unit behind the first alone', 'force;x\n21.3 kN;1\n22;2', 'units-clash 3:1 22'],
    ['a unit behind the second alone', 'force;x\n21.3;1\n22 kN;2', 'units-clash 2:1 21.3'],
    ['two units', 'force;x\n21 kN;1\n22 N;2', 'units-clash 3:1 22 N'],
    ['a mass behind a number', 'force;x\n21 kg;1', 'unit-of-mass 2:1 21 kg'],
    ['a missing value among numbers with a unit', 'force;x\n21 kN;1\n-;2\n20 kN;3', [['force', 'kN', 21, null, 20], ['x', null, 1, 2, 3]]],
    // Heads.
    ['no head: numbers in the first row', '1;a\n2;b', [['column 1', null, 1, 2], ['column 2', null, 'a', 'b']]],
    ['a name over words only is no head', '1;mode\n2;b', [['column 1', null, 1, 2], ['column 2', null, 'mode', 'b']]],
    ['a name over numbers is one', 'no;mode\n1;a\n2;b', [['no', null, 1, 2], ['mode', null, 'a', 'b']]],
    ['a name may begin with a bracket', '[kN];mode\n1;a', 'unit-alone 1:1 [kN]'],
    ['a name of another mark is none', '#1;x\n3;4', [['column 1', null, 3], ['column 2', null, 4]]],
    ['what looks like a slip of a number is no name', '2..5;x\n3;4', 'no-number 1:1 2..5'],
    ['a head alone', 'force;mode', 'no-numbers-at-all 1:1 force'],
    ['names are kept as they are written, blanks run together', 'peak   force (kN);my mode\n1;a', [['peak force', 'kN', 1], ['my mode', null, 'a']]],
    // Dates and times are words.
    ['days', 'on;force\n24.11.2026;1\n25.11.2026;2', [['on', null, '24.11.2026', '25.11.2026'], ['force', null, 1, 2]]],
    ['days and times', 'on;force\n2026-11-24 10:30;1\n11/24/2026;2', [['on', null, '2026-11-24 10:30', '11/24/2026'], ['force', null, 1, 2]]],
    ['times of day', 'at;force\n10:30;1\n9:05:11;2', [['at', null, '10:30', '9:05:11'], ['force', null, 1, 2]]],
    ['a day with two kinds of marks is a slip', 'on;force\n2026-11/24;1', 'no-number 2:1 2026-11/24'],
    // Numbers.
    ['a word among numbers', 'force;x\n21;1\nlost;2', 'not-a-number 3:1 lost'],
    ['a slip among numbers', 'force;x\n21;1\n2x1;2', 'no-number 3:1 2x1'],
    ['a contradiction in itself', 'force;x\n1,2,3;1', 'no-number 2:1 1,2,3'],
    ['another mark than the rest', 'force;x\n1.5;1\n1,5;2', 'decimal-marks-clash 3:1 1,5'],
    ['three digits behind the mark of the rest are decimals', 'force;x\n1.5;1\n1.234;2', [['force', null, 1.5, 1.234], ['x', null, 1, 2]]],
    ['three digits behind the other mark may be a group or a slip', 'force;x\n1.5;1\n1,234;2', 'decimal-mark-open 3:1 1,234'],
    ['nothing in the table tells', 'force;x\n1,234;1\n2,345;2', 'decimal-mark-open 2:1 1,234'],
    ['a zero before the mark tells', 'force;x\n0,234;1\n2,345;2', [['force', null, 0.234, 2.345], ['x', null, 1, 2]]],
    ['lower limits keep the mark', 'force;x\n>21,5;1\n20,1+;2', [['force', null, 21.5, 20.1], ['x', null, 1, 2]]],
    ['only units in a column', 'force;unit\n21;kN\n22;kN', 'unit-alone 2:2 kN'],
    ['missing values alone are words', 'force;x\n21;-\n22;NA', [['force', null, 21, 22], ['x', null, '-', 'NA']]],
    // Commas.
    ['whole numbers between commas, with a head', 'a,b\n1,2\n3,4', [['a', null, 1, 3], ['b', null, 2, 4]]],
    ['whole numbers between commas, without', '1,2\n3,4', 'delimiter-open 1:1 1,2'],
    ['with a blank behind each comma', '1, 2\n3, 4', [['column 1', null, 1, 3], ['column 2', null, 2, 4]]],
    ['with a blank behind some', '1, 2\n3,4', 'delimiter-open 2:1 3,4'],
    ['with a blank behind some, under a head', 'a, b\n1, 2\n3,4', 'delimiter-open 3:1 3,4'],
    ['decimals on both', '1.5,2.5\n3.5,4.5', [['column 1', null, 1.5, 3.5], ['column 2', null, 2.5, 4.5]]],
    ['one number a line with a comma among words', 'a,1\nb,2', [['column 1', null, 'a', 'b'], ['column 2', null, 1, 2]]],
    ['a decimal comma under a head of one name', 'force\n21,3\n22,1', [['force', null, 21.3, 22.1]]],
    ['quoted decimal commas', 'a,b\n"1,5",2\n"2,5",3', [['a', null, 1.5, 2.5], ['b', null, 2, 3]]],
    ['a name with its unit behind a comma, over one column', 'force, kN\n21.3\n22.1', [['force', 'kN', 21.3, 22.1]]],
    ['one number a line with a comma, and one without', '21,3\n22', 'delimiter-open 1:1 21,3'],
    ['one number a line with a comma, and none in one', '21,3\n-', 'delimiter-open 1:1 21,3'],
    ['three whole numbers a line, without a head', '1,2,3\n4,5,6', 'delimiter-open 1:1 1,2'],
    ['with signs', '+1,2,3\n>4,5,6', 'delimiter-open 1:1 +1,2'],
    ['with several digits and groups', "12,34,5\n1'234,56,7", 'delimiter-open 1:1 12,34'],
    ['whole numbers in one row and decimals in another', '1,2,3\n1.5,2.5,3.5', [['column 1', null, 1, 1.5], ['column 2', null, 2, 2.5], ['column 3', null, 3, 3.5]]],
    ['decimals first and whole numbers behind', '1.5,2,3\n2.5,4,5', 'delimiter-open 1:2 2,3'],
    ['a blank behind the comma of the head alone', 'a, b\n1,2\n3,4', 'delimiter-open 2:1 1,2'],
    ['a blank behind some semicolons', '1; 2\n3;4', [['column 1', null, 1, 3], ['column 2', null, 2, 4]]],
    ['a blank behind one comma and quotes behind the other', '1, 2\n3,"4"', [['column 1', null, 1, 3], ['column 2', null, 2, 4]]],
    ['quoted decimal commas between semicolons', '1;"12,0"\n26;6', [['column 1', null, 1, 26], ['column 2', null, 12, 6]]],
    ['a quoted whole number', '1,"12"\n26,6', [['column 1', null, 1, 26], ['column 2', null, 12, 6]]],
    ['a word behind a number among quoted decimal commas', '1,"12,0"\n26,x6', 'not-a-number 2:2 x6'],
    // Quotes inside cells.
    ['a quote inside a cell between blanks', 'x"y 1\nz 2', 'quote 1:1 x"y'],
    ['a quote inside the second cell', '1 x"y\n2 z', 'quote 1:2 x"y'],
    ['a quote inside a cell between commas', 'x"y,1.5\nz,2.5', [['column 1', null, 'x"y', 'z'], ['column 2', null, 1.5, 2.5]]],
    ['a quoted cell with a quote between blanks', '"x""y" 1.5\nz 2.5', [['column 1', null, 'x"y', 'z'], ['column 2', null, 1.5, 2.5]]],
    ['a quote inside one number a line', 'force\n2"1\n3', 'quote 2:1 2"1'],
    // Notes and blank lines have marks of their own.
    ['a tab in a note', '# a\tb\n  # c\td\nx,y\n1.5,2.5', [['x', null, 1.5], ['y', null, 2.5]]],
    ['a tab in an empty line', ' \t \nx,y\n1.5,2.5', [['x', null, 1.5], ['y', null, 2.5]]],
    ['two blanks between all cells', 'a  b\n1  2', [['a', null, 1], ['b', null, 2]]],
    ['another mark inside a quoted name', '"a;b",c\n1.5,2.5', [['a;b', null, 1.5], ['c', null, 2.5]]],
    ['units in brackets between blanks', 'force (kN) time (s)\n1 2', [['force', 'kN', 1], ['time', 's', 2]]],
    ['a unit in brackets between other marks', 'force;(kN)\n1;2', 'unit-alone 1:2 (kN)'],
    // Words with commas between blanks.
    ['a word, a comma and a digit', 'x,1 2.5\ny,2 3.5', 'no-number 1:2 1 2.5'],
    ['a comma with a digit further on', 'x,ab1 2.5\ny,ab2 3.5', 'no-numbers-at-all 1:1 x'],
    ['a digit with a comma further on', 'a1b,x 2.5\na2b,y 3.5', 'no-numbers-at-all 1:1 a1b'],
    ['the same in quotes', '"x,1" 2.5\n"y,2" 3.5', [['column 1', null, 'x,1', 'y,2'], ['column 2', null, 2.5, 3.5]]],
    ['letters and a comma without a digit', 'ab,x 2.5\ncd,y 3.5', [['column 1', null, 'ab,x', 'cd,y'], ['column 2', null, 2.5, 3.5]]],
    ['a digit with a comma far behind it', 'a1bcd,x 2.5\na2bcd,y 3.5', 'no-numbers-at-all 1:1 a1bcd'],
    ['the same between semicolons', 'x,1;2.5\ny,2;3.5', [['column 1', null, 'x,1', 'y,2'], ['column 2', null, 2.5, 3.5]]],
    ['a quoted decimal comma, one a line', '"21,3"\n"22"', [['column 1', null, 21.3, 22]]],
    ['a comma beside a word, one a line', '21,3\nx', 'cells-missing 2:2 '],
    ['a letter and a digit behind a comma and a blank', '1, 2\n3,x4', 'not-a-number 2:2 x4'],
    ['a letter and a digit behind each comma', '1,x4\n2,y5', [['column 1', null, 1, 2], ['column 2', null, 'x4', 'y5']]],
    ['three digits between semicolons', '12;345\n13;456', [['column 1', null, 12, 13], ['column 2', null, 345, 456]]],
    ['units as heads, and a delimiter at the end', 'kN;s;\n1;2;', [['kN', 'kN', 1], ['s', 's', 2]]],
    ['units of two letters in square brackets between blanks', 'force [kN] time [ms]\n1 2', [['force', 'kN', 1], ['time', 'ms', 2]]],
    ['a number before a day', 'on;force\n5 2026-11-24;1', 'no-number 2:1 5 2026-11-24'],
    // Units and numbers.
    ['units and missing values in a column', 'force;unit\n21;kN\n22;-', 'unit-alone 2:2 kN'],
    ['units and words in a column', 'force;unit\n21;kN\n22;word', [['force', null, 21, 22], ['unit', null, 'kN', 'word']]],
    ['a unit in the head and behind the second number', 'force (kN);x\n22;1\n21.3 kN;2', [['force', 'kN', 22, 21.3], ['x', null, 1, 2]]],
    ['a number beyond all bounds', 'force;x\n1e999;1', 'no-number 2:1 1e999'],
    // Slips.
    ['a day with a letter behind it', 'on;force\n24.11.2026x;1', 'no-number 2:1 24.11.2026x'],
    ['a day of one digit with a time', 'on;force\n2026-11-4 10:30;1', [['on', null, '2026-11-4 10:30'], ['force', null, 1]]],
    ['a time with one digit of minutes', 'at;force\n10:3;1', 'no-number 2:1 10:3'],
    ['a time behind something else', 'at;force\n2x10:30;1', 'no-number 2:1 2x10:30'],
    ['words with digits inside', 'force;x\n21;a5x\n22;ab5x', [['force', null, 21, 22], ['x', null, 'a5x', 'ab5x']]],
    ['a unit without brackets between blanks', 'a N\n1 2', 'unit-alone 1:2 N'],
    ['a name that begins with a star', '*a;x\n3;4', 'not-a-number 1:1 *a'],
    ['a row that ends with a delimiter and lacks a cell', 'a;b;\n1;2;\n3;', 'cells-missing 3:3 '],
    // Blanks.
    ['quoted whole numbers before three digits', '"12" 345\n"13" 456', [['column 1', null, 12, 13], ['column 2', null, 345, 456]]],
    ['words that end in digits before three digits', 'a12 345\nb13 456', [['column 1', null, 'a12', 'b13'], ['column 2', null, 345, 456]]],
    ['four digits behind the blank', '12 3456\n13 4567', [['column 1', null, 12, 13], ['column 2', null, 3456, 4567]]],
    ['runs of blanks and tabs', 'pull  force\n1   21.5\n2 20', [['pull', null, 1, 2], ['force', null, 21.5, 20]]],
    ['groups of three by a plain blank', '12 345\n13 456', 'delimiter-open 1:1 12 345'],
    ['more digits before the blank', '1234 345\n1345 456', [['column 1', null, 1234, 1345], ['column 2', null, 345, 456]]],
    ['other than three behind it', '12 34\n13 45', [['column 1', null, 12, 13], ['column 2', null, 34, 45]]],
    ['groups under a head of two names', 'a b\n12 345\n13 456', [['a', null, 12, 13], ['b', null, 345, 456]]],
    ['a bracket that is no unit', 'force (peak)\n1 2', [['force', null, 1], ['(peak)', null, 2]]],
    // Tabs and semicolons come first.
    ['a tab before all else', 'a\tb\n1,5\t2\n2,5\t3', [['a', null, 1.5, 2.5], ['b', null, 2, 3]]],
    ['a semicolon before commas', 'a;b\n1,5;2\n2,5;3', [['a', null, 1.5, 2.5], ['b', null, 2, 3]]],
    ['a tab in some rows', 'a\tb\n1\t2\n3', 'cells-missing 3:2 '],
    ['a semicolon in a note behind a comma', 'force,note\n21.5,"a; b"\n20.1,c', [['force', null, 21.5, 20.1], ['note', null, 'a; b', 'c']]],
    ['nothing but notes', '# a\n\n# b', 'empty 1:1 '],
    ['nothing but blanks', ' \n\t\n', 'empty 1:1 '],
  ])('%s', (_, text, expected) => expect(told(text)).toEqual(expected));

  it('what the reader says of marks and words goes before what the text looks like', () => {
    expect(told('a;b,c\n1.5,2.5', { delimiter: 'comma' })).toEqual([['a;b', null, 1.5], ['c', null, 2.5]]);
    expect(told('force;note\n21.3;2x1\n20.1;slow', { textColumns: [2] })).toEqual([['force', null, 21.3, 20.1], ['note', null, '2x1', 'slow']]);
    expect(stop('force;x\n21;1\n" lost ";2')).toContain('("lost")');
    const holed = readTable('force;x\n>21;1\n-;2');
    expect('table' in holed && holed.table.columns[0]).toMatchObject({ values: [21, null], atLeast: [true, false] });
  });

  it('the cell that is shown has one blank for many, and ends after forty letters', () => {
    const forty = 'x'.repeat(40);
    const shown = (cell: string): string => stop(`force;x\n21;1\n${cell};2`);
    expect(shown(forty)).toContain(`("${forty}")`);
    expect(shown(`${forty}y`)).toContain(`("${forty}...")`);
    expect(shown('so   much')).toContain('("so much")');
  });

  it('delimiter, decimal mark, head and lines are told', () => {
    const table = (text: string, options?: TableOptions) => {
      const reading = readTable(text, options);
      return 'table' in reading ? { ...reading.table, columns: reading.table.columns.length } : null;
    };
    expect(table('a;b\n# note\n1,5;2\n\n2;3')).toEqual({ delimiter: 'semicolon', decimal: ',', hasHead: true, columns: 2, lines: [3, 5] });
    expect(table('1.5\n2')).toEqual({ delimiter: 'none', decimal: '.', hasHead: false, columns: 1, lines: [1, 2] });
    expect(table('1 22\n3 4')).toEqual({ delimiter: 'blanks', decimal: null, hasHead: false, columns: 2, lines: [1, 2] });
    expect(table('1,2\n3,4', { delimiter: 'comma' })).toEqual({ delimiter: 'comma', decimal: null, hasHead: false, columns: 2, lines: [1, 2] });
    expect(table('1\t2\n3\t4')).toEqual({ delimiter: 'tab', decimal: null, hasHead: false, columns: 2, lines: [1, 2] });
  });

  it('a long record is read to its last line, and a slip there is found', () => {
    const rows = Array.from({ length: 120 }, (_, i) => `${i}.5, ${i * 2}.25`);
    const [time, force] = told(['time, force', ...rows].join('\n')) as [unknown[], unknown[]];
    expect(time.slice(-1)).toEqual([119.5]);
    expect(force.slice(-1)).toEqual([238.25]);
    expect(told(['time, force', ...rows, '120.5, 2x1'].join('\n'))).toBe('no-number 122:2 2x1');
    expect(told(['time, force', ...rows, '120.5'].join('\n'))).toBe('cells-missing 122:2 ');
  });

  it('answers of the reader override what the text would say', () => {
    expect(told('1,2\n3,4', { delimiter: 'none' })).toEqual([['column 1', null, 1.2, 3.4]]);
    expect(told('force;x\n1,234;1\n2,345;2', { decimal: ',' })).toEqual([['force', null, 1.234, 2.345], ['x', null, 1, 2]]);
    expect(told('force;x\n1,234;1\n2,345;2', { decimal: '.' })).toEqual([['force', null, 1234, 2345], ['x', null, 1, 2]]);
    expect(told('force;x\n1,5;1', { decimal: '.' })).toBe('decimal-marks-clash 2:1 1,5');
    expect(told('force;note\n21;12\n22;slow', { textColumns: [2] })).toEqual([['force', null, 21, 22], ['note', null, '12', 'slow']]);
    expect(told('force;note\n21;12', { textColumns: [1, 2] })).toBe('no-numbers-at-all 2:1 21');
  });
});
