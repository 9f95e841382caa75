/** What pages print of a figure whose source is in error. The records are made by hand. */
import { expect, test } from 'vitest';
import { withoutMisprints } from '../../../src/build/records.ts';
import { figureWords } from '../../../src/build/words.ts';
import type { CorrectionRecord, FigureRecord, Single, Table } from '../../../src/records/schema.ts';

const COMMON = { what: 'A pull', kind: 'measured', unit: 'kN', standing: 'read', locator: 'table 1', checked: '2026-01-05' } as const;
const SINGLE: Single = { ...COMMON, value: 22, asPrinted: '2.20' };
const TABLE: Table = { ...COMMON, cells: { wide: { value: 23, asPrinted: '23.0' }, narrow: { value: 22, asPrinted: '2.20' } } };
const FIGURES = new Map<string, FigureRecord>([['lab-a/x', SINGLE], ['lab-a/table', TABLE], ['lab-a/old', { kind: 'moved', to: 'lab-a/x', on: '2026-01-05', why: 'renamed' }]]);
const correction = (figure: string): CorrectionRecord => ({ figure, printed: '2.20', used: 22, reason: 'The point slipped.', status: 'open', on: '2026-01-05', expect: { printed: '2.20' } });
const corrected = (...addresses: string[]) => withoutMisprints(FIGURES, new Map(addresses.map((address, i) => [`c-${i}`, correction(address)])));
// A no-break space stands between a number and its unit.
const said = (record: Pick<Single, 'value' | 'asPrinted'>) => figureWords({ ...COMMON, ...record }).replaceAll('\u00a0', ' ');

test('without a correction a figure is printed as its source prints it', () => {
  expect(said(corrected().get('lab-a/x') as Single)).toBe('2.20 kN');
});

test('with one the value that is used is printed', () => {
  expect(said(corrected('lab-a/x').get('lab-a/x') as Single)).toBe('22 kN');
});

test('of a table only the corrected cell changes', () => {
  const { cells } = corrected('lab-a/table#narrow').get('lab-a/table') as Table;
  expect(cells).toEqual({ wide: { value: 23, asPrinted: '23.0' }, narrow: { value: 22 } });
});

test('the records that were read stay as they are, and so does every other figure', () => {
  const figures = corrected('lab-a/x', 'lab-a/table#narrow', 'lab-a/table#other', 'lab-a/old', 'lab-a/none');
  expect([...figures.keys()]).toEqual([...FIGURES.keys()]);
  expect(figures.get('lab-a/old')).toBe(FIGURES.get('lab-a/old'));
  expect(SINGLE.asPrinted).toBe('2.20');
  expect(TABLE.cells['narrow']?.asPrinted).toBe('2.20');
});
