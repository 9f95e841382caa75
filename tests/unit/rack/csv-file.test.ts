/** The register as a table. Read back by our reader and by another (papaparse); the characters that start a formula are OWASP's list ("CSV Injection"). */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvMerge, type CsvTable, readRegisterCsv, registerCsv, withCsvRows } from '../../../src/rack/csv-file.ts';
import { faultLine } from '../../../src/rack/json-file.ts';
import { addItems, changeItem, emptyRegister } from '../../../src/rack/register.ts';
import type { Register } from '../../../src/rack/types.ts';
import { register } from './arbitrary-register.ts';
import { acts, by, play } from './histories.ts';

const HEAD = 'id,name,rating_kn,eye,material,width_mm,made,first_use,use,exposures,events,maker_retire_by,maker_years_from_made,maker_years_from_first_use,count,notes,removed,inspections';
const values = ({ items }: Register) => items.map(({ stamp, stamps, changed, ...rest }) => rest);
function rows(text: string) {
  const read = readRegisterCsv(text);
  if (!read.ok) throw new Error(read.faults.map(faultLine).join('\n'));
  return read.value.rows;
}
const refusal = (text: string): string[] => {
  const read = readRegisterCsv(text);
  return read.ok ? ['taken'] : read.faults.map(faultLine);
};
const start = addItems(emptyRegister(), by('copya'), [{ name: 'Red', ratingKn: 12 }, { name: 'Blue' }]);

test('a table read into its own register changes nothing, and into an empty one gives the same items', () => {
  fc.assert(fc.property(register, (one) => {
    const read = rows(registerCsv(one));
    expect(withCsvRows(one, by('copyc'), read)).toBe(one);
    expect(values(withCsvRows(emptyRegister(), by('copyc'), read))).toEqual(values(one));
  }), { numRuns: 400 });
  fc.assert(fc.property(acts, (history) => {
    const one = play(history).registers[0]!;
    expect(values(withCsvRows(emptyRegister(), by('newcopy'), rows(registerCsv(one))))).toEqual(values(one));
  }), { numRuns: 100 });
});

test('another reader of such tables finds the same cells, and no cell that a spreadsheet would run', () => {
  fc.assert(fc.property(register, (one) => {
    const read = Papa.parse<string[]>(registerCsv(one), { delimiter: ',', newline: '\r\n', skipEmptyLines: true });
    expect(read.errors).toEqual([]);
    expect(read.data[0]?.join()).toBe(HEAD);
    expect(read.data.slice(1).map(([id]) => id)).toEqual(one.items.map(({ id }) => id));
    for (const cells of read.data) for (const cell of cells) expect(cell).not.toMatch(/^[=+\-@\t\r\n|%]/);
    const names = read.data.slice(1).map(([, name = '']) => name.replace(/^'(?='*[=+\-@\t\r\n|%])/, ''));
    expect(names).toEqual(one.items.map(({ name }) => name));
  }), { numRuns: 200 });
});

test.each(["=1+1", "'=1+1", "''=1+1", "'plain", "'", '-5', '\tx', '|calc', '%x', '@a', '"', 'a,b', 'a;b', 'two\nlines', ' blank '])('the name %j comes back as it was', (name) => {
  const one = addItems(emptyRegister(), by('copya'), [{ name }]);
  expect(values(withCsvRows(emptyRegister(), by('copyb'), rows(registerCsv(one))))[0]?.name).toBe(name);
});

test('a table from a spreadsheet that parts by semicolons and writes decimal commas is read', () => {
  const read = rows('\uFEFFname;id;rating_kn;made\r\nRed;;12,5;2019-04\r\n;;;\r\n');
  const one = withCsvRows(emptyRegister(), by('copya'), read);
  expect(one.items.map(({ name, ratingKn, sling }) => [name, ratingKn, sling.made])).toEqual([['Red', 12.5, { year: 2019, month: 4 }], ['', null, null]]);
});

test('the table of an example says in each row that it is invented, and a real one has no such column', () => {
  const invented = 'This rack is invented.';
  const example = addItems(emptyRegister(invented), by('demo1'), [{ name: 'A' }, { name: 'B' }]);
  const read = Papa.parse<Record<string, string>>(registerCsv(example), { header: true, skipEmptyLines: true });
  expect(read.data.map((row) => row['invented'])).toEqual([invented, invented]);
  expect(readRegisterCsv(registerCsv(example))).toMatchObject({ ok: true, value: { invented } });
  expect(readRegisterCsv(registerCsv(start))).toMatchObject({ ok: true, value: { invented: null } });
});

test('a table with fewer columns and rows changes only what it names', () => {
  const next = withCsvRows(start, by('copyb'), rows(`id,name\n${start.items[0]!.id},Crimson\n,New\n`));
  expect(next.items.map(({ name, ratingKn }) => [name, ratingKn])).toEqual([['Crimson', 12], ['Blue', null], ['New', null]]);
});

describe('a table that cannot be taken', () => {
  test.each<[string, string, string[]]>([
    ['that is empty', '', [`line 1: this is no table of a rack register: its first line must name the columns ${HEAD.replaceAll(',', ', ')}`]],
    ['of something else', 'a,b\n1,2\n', [`line 1: this is no table of a rack register: its first line must name the columns ${HEAD.replaceAll(',', ', ')}`]],
    ['with a column of its own', 'id,name,price\n,Red,5\n', ['line 1: "price" is no column of a rack register; take it out, or move it into notes']],
    ['with a column twice', 'id,name,name\n', ['line 1: a column is named twice']],
    ['with a row too short', 'id,name,made\n,"two\nlines",2019\n,Red\n', ['line 4: has 2 cells where the first line has 3']],
    ['with an open quote', 'id,name\n,"Red\n\n', ['line 2: a quote is opened and never closed']],
    ['with text after a quote', 'id,name\n,"Red"x\n', ['line 2: something stands after a closing quote']],
    ['with what is no number or day', 'id,name,rating_kn,made\n,Red,twelve,April\n', ['line 2: rating_kn cannot be read (got "twelve")', 'line 2: made cannot be read (got "April")']],
    ['with a number out of range', 'id,name,rating_kn,count\n,Red,55,0\n', ['line 2: rating_kn must be a number from 1 to 40, or null (got 55)', 'line 2: count must be a whole number from 1 to 999 (got 0)']],
    ['with a word that is none', 'id,name,use,exposures\n,Red,often,rain\n', [
      'line 2: use must be one of stored, seldom, monthly, weekly, daily, null (got "often")', 'line 2: exposures must be one of light, wet, salt, chemicals, heat (got "rain")',
    ]],
    ['with an id twice', 'id,name\na,Red\na,Blue\n', ['line 3: a is the id of another row']],
  ])('%s: says where and why', (_, text, messages) => {
    expect(refusal(text)).toEqual(messages);
  });

  test('never throws, whatever it is', () => {
    fc.assert(fc.property(fc.string(), (text) => { refusal(text); refusal(`id,name\n${text}`); refusal(`id,name,events,inspections\n,a,${text}\n`); }), { numRuns: 500 });
  });
});

describe('a table that comes to a register', () => {
  const table = (text: string): CsvTable => {
    const read = readRegisterCsv(text);
    if (!read.ok) throw new Error(read.faults.map(faultLine).join());
    return read.value;
  };
  const id = start.items[0]!.id;
  const merged = (text: string) => {
    const one = csvMerge(start, by('copyb'), table(text));
    if (!one.ok) throw new Error(one.why);
    return one;
  };
  test('asks about every value that differs, fills in what was not known, and adds what is new', () => {
    const one = merged(`id,name,rating_kn,use\n${id},Crimson,12,weekly\n,New,,\n`);
    expect(one.conflicts).toMatchObject([{ item: id, field: 'name', mine: 'Red', theirs: 'Crimson' }]);
    expect(one.settled(['mine']).items.map(({ name, sling }) => [name, sling.use])).toEqual([['Red', 'weekly'], ['Blue', null], ['New', null]]);
    expect(one.settled(['theirs']).items.map(({ name }) => name)).toEqual(['Crimson', 'Blue', 'New']);
    expect(() => one.settled([])).toThrow(new RangeError('choices must be one for each of 1 conflicts (got 0)'));
  });
  test('asks before an empty cell takes a value away', () => {
    expect(merged(`id,name,rating_kn\n${id},Red,\n`).conflicts).toMatchObject([{ field: 'ratingKn', mine: 12, theirs: null }]);
  });
  test('that is the register itself asks nothing and changes nothing', () => {
    fc.assert(fc.property(register, (one) => {
      const same = csvMerge(one, by('copyc'), table(registerCsv(one)));
      expect(same.ok && [same.conflicts, same.settled()]).toEqual([[], one]);
    }), { numRuns: 100 });
  });
  test('of an example is not mixed with a real rack', () => {
    expect(csvMerge(start, by('copyb'), table('id,name,invented\n,Red,Invented.\n'))).toMatchObject({ ok: false });
  });
});

test('rows that were edited apart from the register are merged by the same rules as other edits', () => {
  const there = withCsvRows(emptyRegister(), by('copyb'), rows(registerCsv(changeItem(start, by('copya'), start.items[0]!.id, { name: 'Crimson' }))));
  expect(there.items.map(({ id }) => id)).toEqual(start.items.map(({ id }) => id));
});
