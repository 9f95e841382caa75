/** Every table of the folder `/data/`, in the order in which its page lists them. */
import type { FigureBook } from '../figures/figures.ts';
import type { SiteRecords } from '../records.ts';
import type { ShownSeries } from '../series/page.ts';
import type { Table } from './table.ts';
import { breakSeriesTable, pullsTable } from './tables/break-series.ts';
import { classesTable, classFiguresTable, factorFiguresTable, factorsTable } from './tables/factors.ts';
import { cellsTable, figuresTable, seriesTable } from './tables/figures.ts';
import { gapBlocksTable, gapsTable } from './tables/gaps.ts';
import { linksTable, methodsTable, reasonsTable, slingsTable } from './tables/methods.ts';
import { rulesTable } from './tables/rules.ts';
import { sourcesTable } from './tables/sources.ts';

/** @param series published series of breaks */
export function allTables(records: SiteRecords, book: FigureBook, series: readonly ShownSeries[]): Table[] {
  return [
    cellsTable(records, book), figuresTable(records, book), seriesTable(records, book), sourcesTable(records),
    methodsTable(records), linksTable(records), reasonsTable(records), slingsTable(records),
    factorsTable(records), factorFiguresTable(records), classesTable(records), classFiguresTable(records),
    gapsTable(records), gapBlocksTable(records), rulesTable(records),
    breakSeriesTable(series), pullsTable(series),
  ];
}
