/**
 * Two readings of the same sources must agree. `second-reading.csv` was read from the collected evidence with only the
 * addresses, descriptions, kinds and locators of the figures in view, and was complete before the two were compared;
 * where they differed, the evidence was read again and decided. The two constants are those of NIST Special
 * Publication 811, Appendix B.8. Figures of fall loads that are no part of that collection were read again in the texts
 * that their sources name. What is common practice has no source to read, only the trade's rule.
 *
 * `values` are in the printed unit, joined by spaces; an empty field means that the source does not say. `of` is
 * filled where the source prints a share. Of a figure that is corrected, a reading is of what its source prints.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readAll, type PlacedFigure } from '../../src/records/read.ts';
import type { RigConditions, Value } from '../../src/records/schema.ts';

const COLUMNS = ['address', 'branch', 'values', 'unit', 'of', 'n', 'sd', 'material', 'widthMm', 'bearingMm'] as const;
type Field = Exclude<(typeof COLUMNS)[number], 'address'>;
/** One figure as read: every field as text, empty where nothing is said. */
type Reading = Record<Field, string>;

const NUMERIC = ['values', 'n', 'sd', 'widthMm', 'bearingMm'] as const;
const CONDITIONS = ['material', 'widthMm', 'bearingMm'] as const;
/** Endings of cells that print the spread, share or rating of the cell they are named after. */
const COMPANION = /-(?:range|efficiency|rating)$/;
/** Conditions that the source does not print and the record reads into it. Its note must say so. */
const READ_INTO: ReadonlyMap<string, { field: Field; record: string }> = new Map([
  ['nelhams-2010/sewn-knots#hmpe-8-doubled', { field: 'bearingMm', record: '10' }],
  ['nelhams-2010/sewn-knots#hmpe-11-doubled', { field: 'bearingMm', record: '10' }],
]);

const records = readAll(fileURLToPath(new URL('../..', import.meta.url)));
const readings = secondReading(readFileSync(new URL('./second-reading.csv', import.meta.url), 'utf8'));

function secondReading(text: string): Map<string, Reading> {
  const [head, ...lines] = text.trimEnd().split('\n');
  if (head !== COLUMNS.join(',')) throw new RangeError(`second-reading.csv: the columns are ${head}`);
  const found = new Map<string, Reading>();
  for (const line of lines) {
    const [address, ...fields] = line.split(',');
    if (!address || fields.length !== COLUMNS.length - 1) {
      throw new RangeError(`second-reading.csv: cannot read ${line}`);
    }
    if (found.has(address)) throw new RangeError(`second-reading.csv: ${address} stands twice`);
    const reading = Object.fromEntries(COLUMNS.slice(1).map((column, i) => [column, fields[i]])) as Reading;
    // Numbers compare as numbers, so that 5.0 as printed is 5.
    for (const column of NUMERIC) reading[column] = numbers(address, reading[column]);
    found.set(address, reading);
  }
  return found;
}

function numbers(address: string, text: string): string {
  const parts = text.split(' ').filter(Boolean).map(Number);
  if (!parts.every(Number.isFinite)) throw new RangeError(`second-reading.csv: ${address} has no number in ${text}`);
  return parts.join(' ');
}

/** A record's value in the terms of the reading. */
function inReadingTerms(value: Value | undefined): Pick<Reading, 'branch' | 'values' | 'n' | 'sd'> {
  const terms = (branch: string, values: number[] = [], n?: number, sd?: number) => ({
    branch, values: values.join(' '), n: `${n ?? ''}`, sd: `${sd ?? ''}`,
  });
  if (value === undefined) return terms('none');
  if (typeof value === 'number') return terms('exact', [value]);
  if ('tests' in value) {
    const pulls = [...value.tests, ...(value.censored ?? [])];
    return terms('tests', pulls, pulls.length);
  }
  if ('mean' in value) return terms('mean', [value.mean], value.n, value.sd);
  if ('low' in value) return terms('range', [value.low, value.high], value.n);
  if ('atLeast' in value) return terms('atLeast', [value.atLeast], value.n);
  if ('atMost' in value) return terms('atMost', [value.atMost], value.n);
  return terms('statement');
}

/** The conditions of a figure; a cell named after another takes what it lacks from that one. */
function conditionsOf(address: string, placed: PlacedFigure): RigConditions {
  const parent = COMPANION.test(address) ? records.cells.get(address.replace(COMPANION, '')) : undefined;
  return { ...parent?.figure.rig, ...placed.figure.rig };
}

function recorded(address: string, placed: PlacedFigure): Reading {
  const rig = conditionsOf(address, placed);
  const { value, unit = '', of = '' } = placed.figure;
  const said = (field: (typeof CONDITIONS)[number]) => `${rig[field] ?? ''}`;
  return {
    ...inReadingTerms(value), unit, of,
    material: said('material'), widthMm: said('widthMm'), bearingMm: said('bearingMm'),
  };
}

/** A bare number and a mean without more are both one printed number; which it is, sources often leave open. */
function branchesAgree(a: string, b: string): boolean {
  const point = (branch: string) => (branch === 'exact' || branch === 'mean' ? 'one number' : branch);
  return point(a) === point(b);
}

const corrected = new Set([...records.corrections.values()].map(({ data }) => data.figure));
const numbersIn = (printed: string): string => (printed.match(/\d+(?:\.\d+)?/g) ?? []).map(Number).join(' ');

/** What the two readings of one figure do not agree on. */
function differences(address: string, reading: Reading, placed: PlacedFigure, isCorrected = corrected.has(address)): string[] {
  const record = recorded(address, placed);
  if (isCorrected) record.values = numbersIn(placed.figure.asPrinted ?? record.values);
  const said = (field: Field) => {
    const [ours, second] = [record[field], reading[field]].map((text) => text || 'nothing');
    return `${address}: ${field} is ${ours} in the record and ${second} in the second reading`;
  };
  const found: string[] = [];
  if (!branchesAgree(reading.branch, record.branch)) found.push(said('branch'));
  // A record may compare a force with another figure; a share says of what it is a share.
  if (reading.of && reading.of !== record.of) found.push(said('of'));
  for (const field of ['values', 'unit', 'n', 'sd', ...CONDITIONS] as const) {
    const allowed = READ_INTO.get(address);
    const expected = allowed?.field === field ? allowed.record : reading[field];
    if (record[field] !== expected) found.push(said(field));
  }
  return found;
}

test('every figure has a second reading, and every second reading a figure', () => {
  const addresses = [...records.cells].filter(([, { figure }]) => figure.value !== undefined).map(([id]) => id);
  const unread = addresses.filter((id) => !readings.has(id)).map((id) => `${id}: has no line in second-reading.csv`);
  const strays = [...readings.keys()].filter((id) => !records.cells.has(id)).map((id) => `${id}: is in no record`);
  expect(addresses.length).toBeGreaterThan(0);
  expect([...unread, ...strays]).toEqual([]);
});

test('the two readings agree on values, n, sd, unit, material, width and bearing', () => {
  const found: string[] = [];
  for (const [address, reading] of readings) {
    const placed = records.cells.get(address);
    if (placed) found.push(...differences(address, reading, placed));
  }
  expect(found).toEqual([]);
});

test('a condition that a record reads into its source is said to be so in its note', () => {
  for (const [address, { field }] of READ_INTO) {
    const read = readings.get(address)?.[field];
    const note = records.cells.get(address)?.figure.note;
    expect(read, `${address}: the second reading has a ${field}, so the record reads nothing into it`).toBe('');
    expect(note, `${address}: ${field} is not printed in the source, and no note says so`).toMatch(/not printed/);
  }
});

test('of a figure that is corrected, what its source prints is compared, not what is used in its place', () => {
  const [address, placed] = [...records.cells].find(([, { figure }]) => typeof figure.value === 'object' && 'mean' in figure.value) as [string, PlacedFigure];
  const reading = readings.get(address) as Reading;
  const mended = { ...placed, figure: { ...placed.figure, asPrinted: `${reading.values} or so`, value: { ...(placed.figure.value as object), mean: 99.5 } as Value } };
  expect(differences(address, reading, mended, true)).toEqual([]);
  expect(differences(address, { ...reading, values: '99.5' }, mended, true)).toHaveLength(1);
  expect(differences(address, reading, mended)).toEqual([`${address}: values is 99.5 in the record and ${reading.values} in the second reading`]);
});
