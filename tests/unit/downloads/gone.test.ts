/** Records that moved, were split or were withdrawn: each keeps a row in figures, with no values. The records are made up; their shapes are those of the record check. */
import { expect, test } from 'vitest';
import { figuresTable } from '../../../src/build/downloads/tables/figures.ts';
import type { FigureBook } from '../../../src/build/figures/figures.ts';
import type { SiteRecords } from '../../../src/build/records.ts';
import { movedFigure, splitFigure, withdrawnFigure } from '../../../src/records/schema.ts';

const moved = movedFigure.parse({ kind: 'moved', to: 'new/place', on: '2026-12-01', why: 'Another edition.' });
const split = splitFigure.parse({ kind: 'split', to: ['new/one', 'new/two#cell'], on: '2026-12-02', why: 'Two series.' });
const withdrawn = withdrawnFigure.parse({ kind: 'withdrawn', on: '2026-12-03', why: 'Misread.', was: 'A pull' });

test('a record that is gone keeps its row, its reason and its day, and points to what follows it', () => {
  const records = { sources: new Map([['old', {}]]), withdrawn: new Map([['old/c', withdrawn]]) } as unknown as SiteRecords;
  const book = { records: new Map<string, unknown>([['old/a', moved], ['old/b', split]]) } as unknown as FigureBook;
  const { fields, rows } = figuresTable(records, book);
  const shown = rows.map((row) => Object.fromEntries(fields.map(({ name }, i) => [name, row[i]]).filter(([, cell]) => cell !== null)));
  expect(shown).toEqual([
    { id: 'old/a', source: 'old', kind: 'moved', values: 0, why: 'Another edition.', moved_to: 'new/place', gone_on: '2026-12-01' },
    { id: 'old/b', source: 'old', kind: 'split', values: 0, why: 'Two series.', moved_to: 'new/one new/two#cell', gone_on: '2026-12-02' },
    { id: 'old/c', source: 'old', what: 'A pull', kind: 'withdrawn', values: 0, why: 'Misread.', gone_on: '2026-12-03' },
  ]);
});
