/** A table of samples as one pull over time: which column is time, which force, which travel, and in which unit each is. */
import { type ColumnUnit, IN_COMMON } from './column-units.ts';
import type { Column, NumberColumn, Table } from './read-table.ts';
import { FORCE_UNITS, type ForceUnit } from './table-pulls.ts';
import type { Samples } from './trace.ts';

export interface TraceColumns {
  /** Null: the samples stand at equal steps of time, and their rate is said. */
  readonly time: number | null;
  readonly force: number;
  readonly travel: number | null;
}

/** What a table does not say. */
export interface TraceUnits {
  /** For a column of forces without a unit. */
  readonly force: ForceUnit;
  /** For a column of times without a unit. */
  readonly time: 's' | 'ms';
  /** Samples a second, for a table without times. */
  readonly hz: number;
}

/** From so many rows on a table is taken for samples of one pull, not for a list of pulls. */
export const SAMPLES_FROM = 40;

const NAMES = { time: /^(?:t|time|zeit|temps|seconds?|s|ms)\b/i, force: /force|load|kraft|last|f\b/i, travel: /travel|displacement|extension|elongation|position|stroke|weg|course/i } as const;
const TIMES: readonly (ColumnUnit | null)[] = ['s', 'ms'];
const TRAVELS: readonly (ColumnUnit | null)[] = ['mm', 'm'];

/** Whether the numbers of a column rise from row to row, as times do. */
function rises({ values }: NumberColumn): boolean {
  let last = Number.NEGATIVE_INFINITY;
  // The first value is no step.
  let steps = -1;
  for (const value of values) {
    if (value === null) continue;
    if (value < last) return false;
    if (value > last) steps += 1;
    last = value;
  }
  return steps > 0.9 * (values.length - 1);
}

/** What the columns are; null where it is no record of a pull, or nobody can tell which column is the force. */
export function traceColumns({ columns, lines }: Table): TraceColumns | null {
  if (lines.length < SAMPLES_FROM) return null;
  const numbers = columns.flatMap((column, index) => (column.kind === 'numbers' ? [{ column, index }] : []));
  const by = (units: readonly (ColumnUnit | null)[], name: RegExp) => numbers.find(({ column }) => units.includes(column.unit)) ?? numbers.find(({ column }) => column.unit === null && name.test(column.name));
  const time = by(TIMES, NAMES.time) ?? (numbers.length > 1 ? numbers.find(({ column }) => column.unit === null && /^column \d+$/.test(column.name) && rises(column)) : undefined);
  const rest = numbers.filter(({ index }) => index !== time?.index);
  const isTravel = ({ column }: { column: Column }): boolean => (column.unit === null ? NAMES.travel.test(column.name) : TRAVELS.includes(column.unit));
  const travel = rest.find(isTravel);
  const forces = rest.filter((one) => one !== travel && (one.column.unit === null || FORCE_UNITS.some((unit) => unit === one.column.unit)));
  const inUnit = forces.filter(({ column }) => column.unit !== null);
  const named = forces.filter(({ column }) => NAMES.force.test(column.name));
  const force = [inUnit, named, forces].find((list) => list.length === 1)?.[0];
  return force ? { time: time?.index ?? null, force: force.index, travel: travel?.index ?? null } : null;
}

/** Samples of one pull in s, kN and mm. A missing value is no number, as `readTrace` expects. */
export interface TraceSamples { readonly timeS: Samples; readonly forceKn: Samples; readonly displacementMm?: Samples }

function scaled({ values }: NumberColumn, factor: number): Float64Array {
  const samples = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) samples[i] = values[i] === null ? Number.NaN : (values[i] as number) * factor;
  return samples;
}

/**
 * The samples of a table.
 * @throws RangeError when a column is none of numbers, or hz is not positive where there are no times.
 */
export function samplesOf(table: Table, columns: TraceColumns, units: TraceUnits): TraceSamples {
  const numbers = (at: number, name: string): NumberColumn => {
    const column = table.columns[at];
    if (column?.kind !== 'numbers') throw new RangeError(`columns.${name} must name a column of numbers (got ${at}).`);
    return column;
  };
  const force = numbers(columns.force, 'force');
  const forceKn = scaled(force, IN_COMMON[force.unit ?? units.force]);
  const travel = columns.travel === null ? null : numbers(columns.travel, 'travel');
  let timeS: Float64Array;
  if (columns.time === null) {
    if (!(units.hz > 0 && units.hz < Infinity)) throw new RangeError(`units.hz must be positive (got ${units.hz}).`);
    timeS = Float64Array.from({ length: forceKn.length }, (_, i) => i / units.hz);
  } else {
    const time = numbers(columns.time, 'time');
    timeS = scaled(time, IN_COMMON[time.unit ?? units.time]);
  }
  return { timeS, forceKn, ...(travel && { displacementMm: scaled(travel, IN_COMMON[travel.unit ?? 'mm']) }) };
}
