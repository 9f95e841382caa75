/** A series as its page shows it: record, figure and pulls joined, in kN, with everything that the statistics say. */
import { analyse, type Analysis } from '../../break-tests/analysis.ts';
import { compareSeries, type SeriesCompared } from '../../break-tests/compare-series.ts';
import { IN_COMMON } from '../../break-tests/column-units.ts';
import type { Pull } from '../../break-tests/pulls.ts';
import { roundTicks } from '../../charts/round-ticks.ts';
import type { Lowered, RigConditions, SeriesRecord, Standing } from '../../records/schema.ts';
import { exactProduct } from '../downloads/exact-product.ts';
import { pageEvidence } from '../comparator/page.ts';
import { figure } from '../figures/figures.ts';
import { type SiteSeries, siteRecords } from '../records.ts';
import { seriesModel, type SeriesModel } from './model.ts';
import { type NotedPull, readPulls, type SeriesPulls } from './pulls.ts';

/** A series with what its figure lends it. */
export interface ShownSeries {
  id: string;
  record: SeriesRecord;
  invented: boolean;
  standing: Standing;
  /** Address of the figure that it is, or null. */
  figure: string | null;
  /** Id of the source; null for an invented series. */
  source: string | null;
  locator: string | null;
  rig: RigConditions;
  lowered: readonly Lowered[];
  /** As printed. */
  printed: SeriesPulls;
  /** In kN. */
  pulls: readonly NotedPull[];
  analysis: Analysis;
  csv: string;
}

function shown(id: string, { record, csv, invented }: SiteSeries): ShownSeries {
  const reading = readPulls(csv);
  if (!('series' in reading)) throw new RangeError(`series ${id}: its pulls cannot be read: run npm run check`);
  const { unit, pulls } = reading.series;
  const inKn = pulls.map((pull) => ({ ...pull, force: exactProduct(pull.force, IN_COMMON[unit]) }));
  const own = 'figure' in record ? figure(record.figure) : record;
  return {
    id, record, invented, csv, printed: reading.series, pulls: inKn, analysis: analyse(inKn),
    standing: own.standing,
    figure: 'figure' in record ? record.figure : null,
    source: 'figure' in record ? figure(record.figure).source : (record.source ?? null),
    locator: own.locator ?? null,
    rig: own.rig,
    lowered: own.lowered ?? [],
  };
}

let all: ReadonlyMap<string, ShownSeries> | undefined;

/** Every series of the site by its id. */
export function allSeries(): ReadonlyMap<string, ShownSeries> {
  all ??= new Map([...siteRecords().series].sort(([a], [b]) => (a < b ? -1 : 1)).map(([id, series]) => [id, shown(id, series)]));
  return all;
}

/** The series that is a figure, by the figure's address; null where none is. */
export const seriesOfFigure = (address: string): string | null => {
  for (const [id, { record }] of siteRecords().series) if ('figure' in record && record.figure === address) return id;
  return null;
};

/** One series beside another. */
export interface BesideSeries { other: ShownSeries; why: string; compared: SeriesCompared }

/** The series that a record names beside itself, each compared with it. */
export function besideSeries({ record, pulls }: ShownSeries): BesideSeries[] {
  return record.beside.flatMap(({ series, why }) => {
    const other = allSeries().get(series);
    return other ? [{ other, why, compared: compareSeries(pulls, other.pulls) }] : [];
  });
}

/** The model's answer for a series. */
export const modelOfSeries = ({ rig }: Pick<ShownSeries, 'rig'>): SeriesModel => seriesModel(rig, pageEvidence());

/** Ticks of the axis of a drawing that reaches to a force, kN. */
export const axisOf = (reach: number): number[] => roundTicks(reach, 6);

/** Pulls without their notes, for the statistics. */
export const plainPulls = (pulls: readonly NotedPull[]): Pull[] => pulls.map(({ note: _note, ...pull }) => pull);
