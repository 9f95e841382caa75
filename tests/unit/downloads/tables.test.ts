/**
 * The tables of `/data/`, read back as a stranger would: CSV with a reader of its own (papaparse), JSON beside it, and the
 * records of the project read here from their YAML.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { downloads } from '../../../src/build/downloads/all-files.ts';
import { type Cell, type Field, fieldWords, type Table } from '../../../src/build/downloads/table.ts';
import { figureBook } from '../../../src/build/figures/figures.ts';
import { ROOT } from '../../support/step.ts';
import { filesUnder } from '../../support/tree.ts';

const { tables, files } = downloads();
type Row = Record<string, Cell>;

const text = (path: string): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(files.get(path)?.bytes);
const json = (name: string): Row[] => JSON.parse(text(`${name}.json`)) as Row[];
const byName = (name: string): Table => tables.find((table) => table.name === name) as Table;
const csv = (name: string) => Papa.parse<Record<string, string>>(text(`${name}.csv`).replace(/\r\n$/, ''), { header: true, newline: '\r\n', delimiter: ',' });

/** A cell as its column's type says; the apostrophe in front of a would-be formula is taken off. */
function typed(field: Field, cell: string): Cell {
  if (cell === '') return null;
  if (field.type === 'boolean') return cell === 'true' ? true : cell === 'false' ? false : cell;
  if (field.type === 'integer' || field.type === 'number') return Number(cell);
  return cell.replace(/^'(?=[=+\-@\t\r\n|%])/, '');
}

describe.each(tables.map((table) => [table.name, table] as const))('%s', (name, table) => {
  const { data, errors, meta } = csv(name);

  test('its CSV is read without one complaint, has no mark at its head, and no line end of another kind', () => {
    expect(errors).toEqual([]);
    expect(text(`${name}.csv`).charCodeAt(0)).not.toBe(0xfeff);
    expect(text(`${name}.csv`).endsWith('\r\n')).toBe(true);
    expect(text(`${name}.csv`).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(meta.fields).toEqual(table.fields.map((field) => field.name));
    expect(data.length).toBe(table.rows.length);
    expect(data.length).toBeGreaterThan(0);
  });

  test('its CSV and its JSON say the same, cell by cell', () => {
    const rows = json(name);
    expect(data.map((row) => Object.fromEntries(table.fields.map((field) => [field.name, typed(field, row[field.name] as string)])))).toEqual(rows);
  });

  test('every cell has the type of its column', () => {
    const is: Record<Field['type'], RegExp> = {
      string: /[\s\S]/, integer: /^-?\d+$/, number: /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/, boolean: /^(?:true|false)$/, date: /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/,
    };
    const wrong = data.flatMap((row) => table.fields.filter(({ name: column, type }) => row[column] !== '' && !is[type].test(row[column] as string)).map(({ name: column }) => `${column}: ${row[column]}`));
    expect(wrong).toEqual([]);
  });

  test('no text begins as a formula does', () => {
    const texts = table.fields.filter(({ type }) => type === 'string');
    expect(data.flatMap((row) => texts.map((field) => row[field.name] as string)).filter((cell) => /^[=+\-@\t\r\n]/.test(cell))).toEqual([]);
  });

  test('every number has a unit: its own, or one in a column of the same row', () => {
    for (const field of table.fields) {
      const isNumber = field.type === 'number' || field.type === 'integer';
      expect(field.unit !== undefined, `${field.name}: a number has a unit, and nothing else has`).toBe(isNumber);
      if (typeof field.unit !== 'object') continue;
      const { column } = field.unit;
      expect(json(name).filter((row) => row[field.name] !== null && row[column] === null), `${field.name} without ${column}`).toEqual([]);
    }
  });

  test('its words are plain: no digit, sentences of at most twenty-eight words', () => {
    const words = [table.says, ...table.fields.map(fieldWords)];
    expect(words.filter((line) => /\d/.test(line))).toEqual([]);
    expect(words.flatMap((line) => line.split(/(?<=[.!?]) /)).filter((sentence) => sentence.split(/\s+/).length > 28)).toEqual([]);
  });

  test('every key that a cell names is there, also in lists', () => {
    const keys = (other: string): Set<Cell | undefined> => new Set(json(other).map((row) => row[byName(other).key[0] as string]));
    const missing = table.fields.flatMap(({ name: column, refers, list }) => {
      const other = refers ?? (typeof list === 'string' ? list : undefined);
      if (!other) return [];
      const known = keys(other);
      return json(name).flatMap((row) => {
        const cell = row[column];
        if (cell === null || cell === undefined) return [];
        return (list ? String(cell).split(' ') : [cell]).filter((key) => !known.has(key)).map((key) => `${column}: ${key}`);
      });
    });
    expect(missing).toEqual([]);
  });
});

/** Addresses as the files of the records give them: the path, and the names of cells. */
function addressesOnDisk(): string[] {
  return filesUnder('data/figures').flatMap((file) => {
    const id = file.replace(/^data\/figures\//, '').replace(/\.yaml$/, '');
    const record = parse(readFileSync(join(ROOT, file), 'utf8')) as { kind: string; cells?: object };
    if (['moved', 'split', 'withdrawn'].includes(record.kind)) return [];
    return record.cells ? Object.keys(record.cells).map((cell) => `${id}#${cell}`) : [id];
  });
}

describe('figures', () => {
  const cells = json('cells');
  const addresses = cells.map(({ address }) => address as string);

  test('every address of a record stands once, and all others are assumed', () => {
    expect(new Set(addresses).size).toBe(addresses.length);
    const onDisk = addressesOnDisk();
    expect(addresses.filter((address) => !address.startsWith('assumed/') || onDisk.includes(address)).sort()).toEqual(onDisk.sort());
    expect(addresses.filter((address) => address.startsWith('assumed/')).length).toBeGreaterThan(0);
  });

  test('every value that has a page is a row, and every row has a page', () => {
    expect([...addresses].sort()).toEqual([...figureBook().values.keys()].sort());
  });

  test('a row with a number says its unit and how it is known, and a measured share says what it is of', () => {
    const numbered = cells.filter((row) => ['value', 'low', 'high', 'mean', 'tests'].some((column) => row[column] !== null));
    expect(numbered.length).toBeGreaterThan(100);
    expect(numbered.filter((row) => row['unit'] === null || row['standing'] === null).map(({ address }) => address)).toEqual([]);
    const shares = numbered.filter((row) => row['kind'] === 'measured' && row['unit'] === 'ratio');
    expect(shares.filter((row) => row['of'] === null && row['of_address'] === null).map(({ address }) => address)).toEqual([]);
  });

  test('each form of value fills its own columns and no other', () => {
    const filled: Record<string, readonly string[]> = {
      'one number': ['value'], tests: ['tests'], mean: ['mean'], range: ['low', 'high', 'range_kind'], 'at least': ['low'], 'at most': ['high'], statement: ['statement'],
    };
    const all = ['value', 'low', 'high', 'mean', 'tests', 'range_kind', 'statement'];
    const wrong = cells.filter((row) => all.some((column) => (row[column] !== null) !== (filled[row['value_form'] as string] ?? []).includes(column)));
    expect(wrong.map(({ address, value_form }) => `${address}: ${value_form}`)).toEqual([]);
  });

  test('a force is given in kN too, by the definitions of the units (NIST SP 811), and nothing else is', () => {
    const perKn: Record<string, number> = { kN: 1, N: 1 / 1000, daN: 1 / 100, kgf: 9.80665 / 1000, lbf: (0.45359237 * 9.80665) / 1000 };
    const columns = ['value', 'low', 'high', 'mean', 'sd'];
    for (const row of [...cells, ...json('series')]) {
      for (const column of columns) {
        const [printed, force] = [row[column] ?? null, row[`${column}_kn`] ?? null];
        const factor = perKn[row['unit'] as string];
        if (printed === null || factor === undefined) expect(force, `${row['address']} ${column}`).toBeNull();
        else expect(Math.abs(Number(force) / (Number(printed) * factor) - 1), `${row['address']} ${column}`).toBeLessThan(1e-14);
      }
    }
    expect(cells.some((row) => row['unit'] === 'lbf') && cells.some((row) => row['unit'] === 'kgf')).toBe(true);
  });

  test('the series has each printed break once, in the order of the record', () => {
    const printed = filesUnder('data/figures').flatMap((file) => {
      const id = file.replace(/^data\/figures\//, '').replace(/\.yaml$/, '');
      type Value = { tests?: number[]; censored?: number[] } | undefined;
      const record = parse(readFileSync(join(ROOT, file), 'utf8')) as { value?: Value; cells?: Record<string, { value: Value }> };
      const of = (address: string, value: Value): string[] => [...(value?.tests ?? []), ...(value?.censored ?? [])].map((number, i) => `${address} ${i + 1} ${number}`);
      return [...of(id, record.value), ...Object.entries(record.cells ?? {}).flatMap(([cell, { value }]) => of(`${id}#${cell}`, value))];
    });
    expect(printed.length).toBeGreaterThan(50);
    expect(json('series').map(({ address, pull, value }) => `${address} ${pull} ${value}`).sort()).toEqual(printed.sort());
  });
});

test('every kind of record has as many rows as files', () => {
  for (const [table, folder] of [['sources', 'sources'], ['methods', 'methods'], ['slings', 'slings'], ['gaps', 'gaps'], ['rules', 'rules'], ['classes', 'factors/class']] as const) {
    expect(json(table).map(({ id }) => `data/${folder}/${id}.yaml`).sort(), table).toEqual(filesUnder(`data/${folder}`));
  }
  expect(json('factors').map(({ id }) => `data/factors/${id}.yaml`).sort()).toEqual(filesUnder('data/factors').filter((file) => !file.includes('/class/')));
});

test('what a factor leaves out stands with its reason', () => {
  const left = filesUnder('data/factors').flatMap((file) => (parse(readFileSync(join(ROOT, file), 'utf8')) as { leftOut?: { figure: string; why: string }[] }).leftOut ?? []);
  expect(left.length).toBeGreaterThan(0);
  expect(json('factor-figures').filter(({ role }) => role === 'left out').map(({ figure, why }) => `${figure} ${why}`).sort()).toEqual(left.map(({ figure, why }) => `${figure} ${why}`).sort());
});
