/** Series of breaks as tables: one row a series, and one row a pull with what broke. Invented series are no data and are not handed in. */
import { FORMS, MATERIALS, RIGGINGS, RIGS_PULLED, STANDINGS } from '../../../records/schema.ts';
import type { ShownSeries } from '../../series/page.ts';
import type { NotedPull } from '../../series/pulls.ts';
import { makeTable, spaced, type Table } from '../table.ts';

const FORCES = ['kN', 'N', 'daN', 'kgf', 'lbf'] as const;

/** One row a series. */
export function breakSeriesTable(series: readonly ShownSeries[]): Table {
  return makeTable<ShownSeries>({
    name: 'break-series', title: 'Series of breaks', key: ['id'],
    says: 'One row for each series of breaks of one rig. Its pulls stand in pulls. Invented series are left out.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the series.', of: ({ id }) => id },
      { name: 'what', type: 'string', required: true, says: 'What was broken.', of: ({ record }) => record.what },
      { name: 'part', type: 'string', says: 'Part whose strength the series is about; empty: whatever breaks.', of: ({ record }) => record.part },
      { name: 'figure', type: 'string', refers: 'cells', says: 'Value whose single breaks these are; empty for a series that stands by itself.', of: ({ figure }) => figure },
      { name: 'source', type: 'string', refers: 'sources', says: 'Source of the series.', of: ({ source }) => source },
      { name: 'locator', type: 'string', says: 'Page, table, clause or post in the source; not-recorded where it was not noted down.', of: ({ locator }) => locator },
      { name: 'standing', type: 'string', required: true, among: STANDINGS, says: 'How we know it.', of: ({ standing }) => standing },
      { name: 'breaks', type: 'integer', required: true, unit: 'count', says: 'Pulls in which the part broke.', of: ({ analysis }) => analysis.pulls - analysis.atLeast },
      { name: 'lower_limits', type: 'integer', required: true, unit: 'count', says: 'Pulls in which another part broke first.', of: ({ analysis }) => analysis.atLeast },
      { name: 'rigging', type: 'string', among: RIGGINGS, says: 'How it was rigged: a method, or a configuration that is none.', of: ({ rig }) => rig.method },
      { name: 'form', type: 'string', among: FORMS, says: 'Form of the textile or hardware.', of: ({ rig }) => rig.form },
      { name: 'material', type: 'string', among: MATERIALS, says: 'Fibre or metal.', of: ({ rig }) => rig.material },
      { name: 'pulled_on', type: 'date', says: 'Day of the first pull; empty where it is not recorded, as are the columns that follow.', of: ({ record }) => record.pulled?.on },
      { name: 'machine', type: 'string', says: 'Kind of machine.', of: ({ record }) => record.pulled?.machine },
      { name: 'rate_mm_per_min', type: 'number', unit: 'mm/min', says: 'How fast the ends were drawn apart.', of: ({ record }) => record.pulled?.rateMmPerMin },
      { name: 'load_cell_kn', type: 'number', unit: 'kN', says: 'Greatest force that the load cell is made for.', of: ({ record }) => record.pulled?.loadCell?.capacityKn },
      { name: 'load_cell_calibrated', type: 'date', says: 'Day of its last calibration.', of: ({ record }) => record.pulled?.loadCell?.calibrated },
      { name: 'samples_per_second', type: 'number', unit: 'Hz', says: 'How often the force was recorded.', of: ({ record }) => record.pulled?.samplesPerSecond },
      { name: 'conditioning', type: 'string', says: 'What was done with the pieces before.', of: ({ record }) => record.pulled?.conditioning },
      { name: 'one_lot', type: 'boolean', says: 'Whether all pieces came from one lot.', of: ({ record }) => record.pulled?.oneLot },
      { name: 'rigs', type: 'string', among: RIGS_PULLED, says: 'Whether device and hardware were new for each pull.', of: ({ record }) => record.pulled?.rigs },
      { name: 'beside', type: 'string', list: 'break-series', says: 'Series of the same source that belong beside it.', of: ({ record }) => spaced(record.beside.map(({ series }) => series)) },
      { name: 'note', type: 'string', says: 'Note to the series.', of: ({ record }) => record.note },
    ],
  }, series);
}

interface Row { series: ShownSeries; at: number; pull: NotedPull; printed: number }

/** One row a pull. */
export function pullsTable(all: readonly ShownSeries[]): Table {
  return makeTable<Row>({
    name: 'pulls', title: 'Pulls of series', key: ['series', 'pull'],
    says: 'One row for each pull of each series of breaks, with what broke where that is recorded.',
    columns: [
      { name: 'series', type: 'string', required: true, refers: 'break-series', says: 'Series that it belongs to.', of: ({ series }) => series.id },
      { name: 'pull', type: 'integer', required: true, unit: 'count', says: 'Number of the pull in its series.', of: ({ at }) => at },
      { name: 'force', type: 'number', required: true, unit: { column: 'unit' }, says: 'Force at which it ended, as printed.', of: ({ printed }) => printed },
      { name: 'unit', type: 'string', required: true, among: FORCES, says: 'Unit as printed in the source.', of: ({ series }) => series.printed.unit },
      { name: 'force_kn', type: 'number', required: true, unit: 'kN', says: 'The same in kN.', of: ({ pull }) => pull.force },
      { name: 'at_least', type: 'boolean', required: true, says: 'Whether the part in question did not break: then its strength is no less.', of: ({ pull }) => pull.atLeast },
      { name: 'mode', type: 'string', says: 'How it broke.', of: ({ pull }) => pull.mode || null },
      { name: 'link', type: 'string', says: 'Which part of the load path broke.', of: ({ pull }) => pull.link || null },
      { name: 'note', type: 'string', says: 'Note to the pull.', of: ({ pull }) => pull.note || null },
    ],
  }, all.flatMap((series) => series.pulls.map((pull, i) => ({ series, at: i + 1, pull, printed: series.printed.pulls[i]?.force as number }))));
}
