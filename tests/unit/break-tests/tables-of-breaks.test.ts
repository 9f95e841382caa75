/** Pasted tables and records of force over time: what each column is, in which unit, and what is left out. Cases by hand. */
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../../src/break-tests/decode-text.ts';
import { boundWithMore } from '../../../src/break-tests/further-pulls.ts';
import { readTable, type Table } from '../../../src/break-tests/read-table.ts';
import { inUnit, likelyColumns, pullsOfRow, pullsOfTable, readPullTable } from '../../../src/break-tests/table-pulls.ts';
import { samplesOf, traceColumns } from '../../../src/break-tests/table-trace.ts';
import { pullsAsTyped, writePulls } from '../../../src/break-tests/write-pulls.ts';
import { plainTicks } from '../../../src/charts/plain-ticks.ts';

function table(text: string): Table {
  const read = readPullTable(text);
  if ('stop' in read) throw new Error(read.stop.message);
  return read.table;
}
const pulls = (text: string) => pullsOfTable(table(text), likelyColumns(table(text)));

describe('a table of breaks', () => {
  test('forces alone, one a line, have no unit of their own', () => {
    expect(pulls('11.2\n9.2\n>11.4')).toMatchObject({ unit: null, pulls: [{ force: 11.2, atLeast: false }, { force: 9.2 }, { force: 11.4, atLeast: true }] });
  });
  test('the force is known by its unit, and words by the names of their columns', () => {
    const got = pulls('No;Diameter (mm);Peak load (kN);Failure mode;Part;Remark\n1;3,8;11,2;cut;sling;\n2;3,8;9,2;slipped;knot;slow');
    expect(got.unit).toBe('kN');
    expect(got.pulls).toEqual([{ force: 11.2, atLeast: false, mode: 'cut', link: 'sling' }, { force: 9.2, atLeast: false, mode: 'slipped', link: 'knot' }]);
    expect(got.notes).toEqual(['', 'slow']);
  });
  test('a row without a force, and one of nothing, are left out and named by their line', () => {
    expect(pulls('force (lbf)\n2500\n-\n0\n2600').leftOut).toEqual([{ line: 3, why: 'no-force' }, { line: 4, why: 'not-positive' }]);
  });
  test('of two columns that may be the force none is guessed', () => {
    expect(likelyColumns(table('first (kN);second (kN)\n1;2\n3;4')).force).toBeNull();
  });
  test.each(['11.2, 9.3, >10.4', '11,2; 9,3; >10,4', '11.2 9.3 >10.4'])('forces in one line are one pull a cell: %s', (text) => {
    expect(pullsOfRow(table(text))?.pulls.map(({ force, atLeast }) => [force, atLeast])).toEqual([[11.2, false], [9.3, false], [10.4, true]]);
  });
  test('two lines of numbers, or a line with a heading, are a table and no row of pulls', () => {
    expect(pullsOfRow(table('11.2; 9.3\n10.4; 8.8'))).toBeNull();
    expect(pullsOfRow(table('first;second\n10.4;8.8'))).toBeNull();
  });
  test('a number among notes is a note', () => {
    expect(pulls('force (kN),note\n11.2,17\n9.2,wet').notes).toEqual(['17', 'wet']);
  });
  test('a thousand pound-force is 4.4482216152605 kN (NIST SP 811, appendix B)', () => {
    expect(inUnit([{ force: 1000, atLeast: false, mode: '', link: '' }], 'lbf', 'kN')[0]?.force).toBeCloseTo(4.4482216152605, 12);
  });
  test('what is written is read back: limits, commas, quotes and all', () => {
    const series = [{ force: 11.25, atLeast: false, mode: 'cut, at the "edge"', link: 'sling' }, { force: 12, atLeast: true, mode: '', link: 'eye' }];
    const text = writePulls(series, 'kN', ['first', '']);
    expect(text).toBe('pull,force_kN,mode,link,note\n1,11.25,"cut, at the ""edge""",sling,first\n2,>12,,eye,\n');
    expect(pulls(text)).toMatchObject({ unit: 'kN', pulls: series, notes: ['first', ''] });
    // Blanks inside need no quotes, those at an end do (RFC 4180 keeps them); a line end inside a cell becomes a blank.
    expect(writePulls([{ force: 1, atLeast: false, mode: 'cut off', link: 'a\r\nb' }, { force: 2, atLeast: false, mode: ' cut', link: 'cut ' }], 'N')).toBe('pull,force_N,mode,link,note\n1,1,cut off,"a b",\n2,2," cut","cut ",\n');
    for (const word of ['mode', 'link'] as const) {
      const typed = series.map((one, i) => ({ ...one, mode: '', link: '', ...(i === 0 && { [word]: 'x' }) }));
      expect(pullsAsTyped(typed, 'kN')).toBe(writePulls(typed, 'kN'));
    }
    expect(pullsAsTyped(series.map((one) => ({ ...one, mode: '', link: '' })), 'kN')).toBe('11.25\n>12');
  });
});

describe('what the columns of breaks are likely to be', () => {
  const forceOf = (head: string, rows = ['11;12', '9;10']) => likelyColumns(table([head, ...rows].join('\n'))).force;
  test.each(['pull', 'pulls', 'no', 'no.', 'nr', 'nr.', 'test', 'tests', 'sample', 'samples', 'specimen', 'run', 'id', 'date', 'day', 'time'])('%s counts pulls and is no force', (name) => {
    expect(forceOf(`x;${name}`)).toBe(0);
    expect(forceOf(`${name};x`)).toBe(1);
  });
  test.each([
    ['x (kN);y', 0], ['y;x (kN)', 1], ['peak;x', 0], ['x;break', 1], ['x;breaks', 1], ['x;breaking', 1], ['x;max', 1], ['travel (mm);x', 1],
    ['x;overrun', null], ['x;test kind', null], ['x;breakfast', null], ['x;xmax', null], ['x;y', null], ['travel (mm);stretch (mm)', null],
  ])('under %s the force is %j', (head, force) => expect(forceOf(head)).toBe(force));

  test('a counter alone is the force after all, also beside words', () => {
    expect(forceOf('no', ['11', '9'])).toBe(0);
    expect(forceOf('how;no', ['cut;11', 'cut;9'])).toBe(1);
  });

  test('words are known by their names, each column once, and numbers are no words', () => {
    const found = (text: string) => likelyColumns(table(text));
    expect(found('how;force\ncut;11\nwet;9')).toEqual({ force: 1, mode: 0, link: null, note: null });
    expect(found('failed part;force\nsling;11\nknot;9')).toEqual({ force: 1, mode: 0, link: null, note: null });
    expect(found('remark;which;force\nwet;sling;11\ndry;knot;9')).toEqual({ force: 2, mode: null, link: 1, note: 0 });
    expect(found('mode;force\n1;11\n2;9')).toEqual({ force: 1, mode: null, link: null, note: null });
  });

  test('numbers among words are words under a name for words, and a stop under any other or none', () => {
    const stop = (text: string) => {
      const read = readPullTable(text);
      return 'stop' in read ? [read.stop.reason, read.stop.column] : null;
    };
    expect(pulls('force (kN);how\n11;2 bolts\n9;cut').pulls.map(({ mode }) => mode)).toEqual(['2 bolts', 'cut']);
    expect(stop('force;x\n11;2\n12;wet')).toEqual(['not-a-number', 2]);
    expect(stop('11;2\n12;wet')).toEqual(['not-a-number', 2]);
    const asked = readPullTable('a;b\n1;2\n3;4', { textColumns: [1] });
    expect('table' in asked && asked.table.columns.map(({ kind }) => kind)).toEqual(['text', 'numbers']);
  });
});

describe('pulls of a table or a row', () => {
  const none = { force: null, mode: null, link: null, note: null };
  test('a column that is none of forces is refused by name', () => {
    const read = table('how;force\ncut;11\nwet;9');
    for (const force of [null, 0, 2]) expect(() => pullsOfTable(read, { ...none, force })).toThrow(`columns.force must name a column of forces (got ${force}).`);
  });
  test('words are trimmed, and empty where no column has them', () => {
    const read = table('force;mode;note\n11;" cut ";wet\n9;torn;');
    expect(pullsOfTable(read, { force: 0, mode: 1, link: null, note: 2 })).toEqual({ pulls: [{ force: 11, atLeast: false, mode: 'cut', link: '' }, { force: 9, atLeast: false, mode: 'torn', link: '' }], notes: ['wet', ''], unit: null, leftOut: [] });
    expect(pullsOfTable(read, { ...none, force: 0 })).toMatchObject({ pulls: [{ mode: '' }, { mode: '' }], notes: ['', ''] });
  });
  test('a row in one unit has it; in two it is no row of pulls, nor is a single cell or one with words', () => {
    const row = (text: string) => pullsOfRow(table(text));
    expect(row('11 kN; 9 kN')).toEqual({ pulls: [{ force: 11, atLeast: false, mode: '', link: '' }, { force: 9, atLeast: false, mode: '', link: '' }], notes: ['', ''], unit: 'kN', leftOut: [] });
    expect(row('11; 9')).toMatchObject({ unit: null });
    expect(row('11 kN; 900 N')).toBeNull();
    expect(row('11.2')).toBeNull();
    const words = { kind: 'text', name: 'column 3', values: ['wet'] };
    const made = table('11; 9');
    expect(pullsOfRow({ ...made, columns: [...made.columns, words] as typeof made.columns })).toBeNull();
    expect(pullsOfRow({ ...made, columns: made.columns.map((column) => ({ ...column, unit: 'mm' })) as typeof made.columns })).toBeNull();
  });
  test('a cell of nothing, or without a number, is left out of a row and told', () => {
    expect(pullsOfRow(table('11; 0; 9'))).toMatchObject({ pulls: [{ force: 11 }, { force: 9 }], notes: ['', ''], leftOut: [{ line: 1, why: 'not-positive' }] });
    const made = table('11; 10; 9');
    const holed = { ...made, columns: made.columns.map((column, i) => (i === 1 ? { ...column, values: [null] } : column)) as typeof made.columns };
    expect(pullsOfRow(holed)).toMatchObject({ pulls: [{ force: 11 }, { force: 9 }], leftOut: [{ line: 1, why: 'no-force' }] });
  });
  test('in another unit: 4.4482216152605 kN are a thousand pound-force, and kilonewtons stay kilonewtons', () => {
    const series = [{ force: 4.4482216152605, atLeast: false, mode: '', link: '' }];
    expect(inUnit(series, 'kN', 'lbf')[0]?.force).toBeCloseTo(1000, 9);
    expect(inUnit(series, 'kN', 'kN')).toEqual(series);
  });
});

describe('a record of force over time', () => {
  const rows = Array.from({ length: 50 }, (_, i) => i);
  test('time, force and travel are known by their units, and converted', () => {
    const read = readTable(`time (ms);force (N);extension (mm)\n${rows.map((i) => `${i * 10};${i * 100};${i}`).join('\n')}`);
    if ('stop' in read) throw new Error(read.stop.message);
    const columns = traceColumns(read.table);
    expect(columns).toEqual({ time: 0, force: 1, travel: 2 });
    const { timeS, forceKn, displacementMm } = samplesOf(read.table, columns as NonNullable<typeof columns>, { force: 'kN', time: 's', hz: 1 });
    expect([timeS[49], forceKn[49], displacementMm?.[49]]).toEqual([0.49, 4.9, 49]);
  });
  test('two bare columns are time and force where the first rises', () => {
    const read = readTable(rows.map((i) => `${i / 500}\t${Math.sin(i / 10)}`).join('\n'));
    if ('stop' in read) throw new Error(read.stop.message);
    expect(traceColumns(read.table)).toEqual({ time: 0, force: 1, travel: null });
  });
  test('one bare column is the force at equal steps; a handful of rows is a list of pulls', () => {
    const read = readTable(rows.map((i) => String(i + 1)).join('\n'));
    if ('stop' in read) throw new Error(read.stop.message);
    expect(traceColumns(read.table)).toEqual({ time: null, force: 0, travel: null });
    expect(samplesOf(read.table, { time: null, force: 0, travel: null }, { force: 'kN', time: 's', hz: 500 }).timeS[1]).toBe(0.002);
    expect(traceColumns(table('11.2\n9.2'))).toBeNull();
  });

  /** A table of so many rows, each made from its place, under a heading or none. */
  const record = (head: string, row: (i: number) => string, count = 50): Table => {
    const read = readTable([...(head === '' ? [] : [head]), ...Array.from({ length: count }, (_, i) => row(i))].join('\n'));
    if ('stop' in read) throw new Error(read.stop.message);
    return read.table;
  };
  /** Two forces that do not rise, so that neither is a time. */
  const wave = (i: number): number => (i * 7) % 11;

  test('forty rows are samples of one pull, thirty-nine are a list', () => {
    expect(traceColumns(record('time (s);force (kN)', (i) => `${i};${wave(i)}`, 40))).toEqual({ time: 0, force: 1, travel: null });
    expect(traceColumns(record('time (s);force (kN)', (i) => `${i};${wave(i)}`, 39))).toBeNull();
  });

  test.each([
    ['force (kN);time (s)', { time: 1, force: 0, travel: null }],
    ['time;F', { time: 0, force: 1, travel: null }],
    ['Zeit;Weg;Kraft', { time: 0, force: 2, travel: 1 }],
    ['time (ms);stroke (m);force (N)', { time: 0, force: 2, travel: 1 }],
    ['t (kN);time', { time: 1, force: 0, travel: null }],
    ['time (s);extension;x', { time: 0, force: 2, travel: 1 }],
    ['time (s);delay (ms);x', { time: 0, force: 2, travel: null }],
    ['time (s);a (kN);b', { time: 0, force: 1, travel: null }],
    ['time (s);Kraft;x', { time: 0, force: 1, travel: null }],
    ['time (s);x (mm);force (kN)', { time: 0, force: 2, travel: 1 }],
    ['time (s);a;b', null],
    ['a;b', null],
  ])('under %s', (head, columns) => {
    const cells = head.split(';').length;
    expect(traceColumns(record(head, (i) => Array.from({ length: cells }, (_, c) => (c === 0 ? i : wave(i + c))).join(';')))).toEqual(columns);
  });

  test('a column of words is none of them', () => {
    expect(traceColumns(record('time (s);force note;x', (i) => `${i};wet;${wave(i)}`))).toEqual({ time: 0, force: 2, travel: null });
    expect(traceColumns(record('time (s);note;force (kN)', (i) => `${i};wet;${wave(i)}`))).toEqual({ time: 0, force: 2, travel: null });
  });

  test('of columns without a name the first that rises is the time: values may be missing or stand still once, but never fall', () => {
    const found = (first: (i: number) => string | number, second: (i: number) => string | number = wave, count = 50) => traceColumns(record('', (i) => `${first(i)};${second(i)}`, count));
    expect(found(wave, (i) => i)).toEqual({ time: 1, force: 0, travel: null });
    expect(found((i) => (i === 20 ? '' : i))).toEqual({ time: 0, force: 1, travel: null });
    expect(found((i) => (i === 20 ? 15 : i), (i) => i)).toEqual({ time: 1, force: 0, travel: null });
    expect(found((i) => Math.floor(i / 2))).toBeNull();
    // Of fifty steps over nine in ten have to rise: 46 do, 45 do not.
    expect(found((i) => (i < 5 ? 0 : i), wave, 51)).toEqual({ time: 0, force: 1, travel: null });
    expect(found((i) => (i < 6 ? 0 : i), wave, 51)).toBeNull();
    // One in a unit of force is none, nor one with a name of its own.
    expect(found((i) => `${i} kN`, (i) => i / 10)).toEqual({ time: 1, force: 0, travel: null });
    for (const name of ['my column 2', 'column 2 b']) expect(traceColumns(record(`x;${name}`, (i) => `${wave(i)};${i}`))).toBeNull();
    expect(traceColumns(record('', (i) => ['5 kN', 1, 2, 3, 4, 5, 6, 7, 8, i].join(';')))).toEqual({ time: 9, force: 0, travel: null });
  });

  test('what is missing is no number, and a travel without a unit is in mm', () => {
    const read = record('time (s);force (kN);extension', (i) => `${i};${i === 7 ? '' : wave(i)};${i / 2}`);
    const { forceKn, displacementMm } = samplesOf(read, { time: 0, force: 1, travel: 2 }, { force: 'kN', time: 's', hz: 1 });
    expect([forceKn[6], forceKn[7], displacementMm?.[3]]).toEqual([9, Number.NaN, 1.5]);
    expect(forceKn).toHaveLength(50);
  });

  test('columns that hold no numbers, and rates that are none, are refused by name', () => {
    const read = record('time (s);force (kN);note', (i) => `${i};${wave(i)};wet`);
    const units = { force: 'kN', time: 's', hz: 1 } as const;
    for (const at of [2, 3]) {
      expect(() => samplesOf(read, { time: 0, force: at, travel: null }, units)).toThrow(`columns.force must name a column of numbers (got ${at}).`);
      expect(() => samplesOf(read, { time: at, force: 1, travel: null }, units)).toThrow(`columns.time must name a column of numbers (got ${at}).`);
      expect(() => samplesOf(read, { time: 0, force: 1, travel: at }, units)).toThrow(`columns.travel must name a column of numbers (got ${at}).`);
    }
    for (const hz of [0, -1, Infinity, Number.NaN]) expect(() => samplesOf(read, { time: null, force: 1, travel: null }, { ...units, hz })).toThrow(`units.hz must be positive (got ${hz}).`);
  });
});

test.each([
  ['UTF-8', new TextEncoder().encode('Kraft (kN)\n11,2 é')],
  ['windows-1252', Uint8Array.from([0x4b, 0xe9, 0x0a, 0x31])],
  ['UTF-16LE', Uint8Array.from([0xff, 0xfe, 0x31, 0, 0x32, 0])],
  ['UTF-16BE', Uint8Array.from([0, 0x31, 0, 0x32, 0, 0x33, 0, 0x0a])],
  ['UTF-16LE', Uint8Array.from([0x31, 0, 0x32, 0, 0x33, 0, 0x0a, 0])],
] as const)('bytes of %s are read as what they are', (encoding, bytes) => {
  const decoded = decodeText(bytes);
  expect(decoded.encoding).toBe(encoding);
  expect(decoded.text).toMatch(/1|é/);
  expect(decoded.text).not.toContain('\u0000');
});

describe('bytes without a mark', () => {
  const bytesOf = (text: string, big = false): Uint8Array => Uint8Array.from([...text].flatMap((letter) => (big ? [0, letter.charCodeAt(0)] : [letter.charCodeAt(0), 0])));
  test.each([
    ['two letters are enough', Uint8Array.from([0x31, 0, 0x32, 0]), 'UTF-16LE', '12'],
    ['two letters are enough', Uint8Array.from([0, 0x31, 0, 0x32]), 'UTF-16BE', '12'],
    ['one is not: it may as well be UTF-8 with an empty byte', Uint8Array.from([0x31, 0]), 'UTF-8', '1\u0000'],
    ['one is not: it may as well be UTF-8 with an empty byte', Uint8Array.from([0, 0x31]), 'UTF-8', '\u00001'],
    ['two of five letters beyond Latin leave three empty bytes', Uint8Array.from([0x31, 0, 0x32, 0, 0x33, 0, 0x34, 0x04, 0x35, 0x04]), 'UTF-16LE', '123\u0434\u0435'],
    ['empty bytes in both places are no UTF-16', Uint8Array.from([0x31, 0, 0x32, 0, 0, 0]), 'UTF-8', '1\u00002\u0000\u0000\u0000'],
    ['empty bytes in both places are no UTF-16', Uint8Array.from([0, 0x31, 0, 0x32, 0, 0]), 'UTF-8', '\u00001\u00002\u0000\u0000'],
    ['empty bytes in two of ten pairs are no UTF-16', Uint8Array.from([0x31, 0, 0x32, 0, ...new Array<number>(16).fill(0x33)]), 'UTF-8', `1\u00002\u0000${'3'.repeat(16)}`],
    ['empty bytes in two of five pairs are no UTF-16', Uint8Array.from([0x31, 0, 0x32, 0, ...new Array<number>(6).fill(0x33)]), 'UTF-8', '1\u00002\u0000333333'],
    ['empty bytes in two of five pairs are no UTF-16', Uint8Array.from([0, 0x31, 0, 0x32, ...new Array<number>(6).fill(0x33)]), 'UTF-8', '\u00001\u00002333333'],
    ['a long file is looked at from its start', bytesOf('12'.repeat(3000)), 'UTF-16LE', '12'.repeat(3000)],
    ['a long file is looked at from its start', bytesOf('12'.repeat(3000), true), 'UTF-16BE', '12'.repeat(3000)],
  ] as const)('%s (%#)', (_, bytes, encoding, text) => expect(decodeText(bytes)).toEqual({ encoding, text }));

  test('a mark decides, whatever follows: U+0434 is 34 04 or 04 34 (Unicode Standard, table 3-4), and half a mark is none', () => {
    expect(decodeText(Uint8Array.from([0xff, 0xfe, 0x34, 0x04]))).toEqual({ encoding: 'UTF-16LE', text: '\u0434' });
    expect(decodeText(Uint8Array.from([0xfe, 0xff, 0x04, 0x34]))).toEqual({ encoding: 'UTF-16BE', text: '\u0434' });
    // Half of a pair that stands alone is shown as U+FFFD (Encoding Standard, shared UTF-16 decoder).
    expect(decodeText(Uint8Array.from([0xff, 0xfe, 0x00, 0xd8, 0x31, 0]))).toEqual({ encoding: 'UTF-16LE', text: '\ufffd1' });
    for (const bytes of [[0xff, 0x31], [0xfe, 0x31], [0x31, 0xfe], [0x31, 0xff]]) expect(decodeText(Uint8Array.from(bytes)).encoding).toBe('windows-1252');
  });
});

test('more pulls of the same scatter raise the bound as the factor falls', () => {
  // k(5, 0.95, 0.95) = 4.203, k(10) = 2.911: NIST/SEMATECH e-Handbook 7.2.6.3 and its tables (Natrella, table A-7).
  const five = [9, 10, 10, 11, 12.5];
  expect(boundWithMore(five, 0, { coverage: 0.95, confidence: 0.95 }).k).toBeCloseTo(4.203, 2);
  const ten = boundWithMore(five, 5, { coverage: 0.95, confidence: 0.95 });
  expect(ten.n).toBe(10);
  expect(ten.k).toBeCloseTo(2.911, 2);
  // exp(2.345204 - 2.911 x 0.123386) = 7.285.
  expect(ten.bound).toBeCloseTo(7.285, 2);
});

test('ticks of an axis go from nothing by ones, twos and fives to beyond the largest', () => {
  expect(plainTicks(11.4)).toEqual([0, 2, 4, 6, 8, 10, 12]);
  expect(plainTicks(0.9)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  for (const most of [0.013, 1, 7, 29.9, 30, 31, 4448]) {
    const ticks = plainTicks(most);
    expect(ticks.at(-1)).toBeGreaterThanOrEqual(most);
    expect(ticks.length).toBeGreaterThan(3);
    expect(ticks.length).toBeLessThan(10);
  }
  expect(() => plainTicks(0)).toThrow('most must be positive');
});
