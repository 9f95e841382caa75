/** Figures as tables: records, their values one row an address, and the single breaks behind them. */
import { FORCE_UNITS } from '../../../records/units.ts';
import { toModelUnit } from '../../../evidence/force.ts';
import { certaintyOf, stepsDown } from '../../../records/certainty.ts';
import { pullsOf } from '../../../records/numbers.ts';
import {
  bearing, DENOMINATORS, type FigureRecord, FORMS, KINDS, MATERIALS, RANGE_KINDS, RIGGINGS, STANDINGS, type Single, type Table as FigureTable, UNITS, type Unit, type Value, type Withdrawn,
} from '../../../records/schema.ts';
import { type FigureBook, isOrdinary, loweringSteps, type ShownFigure, valuesOf } from '../../figures/figures.ts';
import type { SiteRecords } from '../../records.ts';
import { exactProduct } from '../exact-product.ts';
import { type Column, makeTable, spaced, type Table } from '../table.ts';

/** A number printed in a unit of force, in kN; undefined where the unit is no force. */
function inKn(number: number | undefined, unit: Unit | undefined): number | undefined {
  const factor = unit && FORCE_UNITS.has(unit) ? toModelUnit(unit) : null;
  return number === undefined || factor === null ? undefined : exactProduct(number, factor);
}

const stepsInWords = (figure: Pick<ShownFigure, 'lowered' | 'locator'>): string | null =>
  loweringSteps(figure).map(({ by, steps, why }) => `${by} ${steps}: ${why}`).join('; ') || null;

/** A record, and itself where it has values. */
interface RecordRow { id: string; record: FigureRecord | Withdrawn; ordinary: Single | FigureTable | null; values: number }

function recordColumns({ sources }: SiteRecords): Column<RecordRow>[] {
  return [
    { name: 'id', type: 'string', required: true, says: 'Id of the record: source and result.', of: ({ id }) => id },
    { name: 'source', type: 'string', refers: 'sources', says: 'Source that prints it; empty for rules of the trade and for what the model assumes.', of: ({ id }) => ownSource(id, sources) },
    { name: 'what', type: 'string', says: 'What was measured, required or ruled; what it said, where it was withdrawn. Empty where the record moved.', of: ({ record, ordinary }) => ordinary?.what ?? ('was' in record ? record.was : null) },
    { name: 'kind', type: 'string', required: true, among: [...KINDS, 'moved', 'split', 'withdrawn'], says: 'Measured, required by a standard, a rule, a constant, or assumed for the model. A record that moved, was split or was withdrawn has no values.', of: ({ record }) => record.kind },
    { name: 'values', type: 'integer', required: true, unit: 'count', says: 'How many values it has, which are the rows of cells with this figure.', of: ({ values }) => values },
    { name: 'study', type: 'string', says: 'Laboratory or lineage; two figures of one study count once in a pool.', of: ({ id, ordinary }) => ordinary && (ordinary.study ?? (id.split('/')[0] as string)) },
    { name: 'standing', type: 'string', among: STANDINGS, says: 'How we know it: read in the source, quoted by another text, recalled, common practice, derived, assumed.', of: ({ ordinary }) => ordinary?.standing },
    { name: 'locator', type: 'string', says: 'Page, table, clause or post in the source; not-recorded where it was not noted down.', of: ({ ordinary }) => ordinary?.locator },
    { name: 'checked', type: 'date', says: 'Day on which the source was last looked at.', of: ({ ordinary }) => ordinary?.checked },
    { name: 'lowered', type: 'string', says: 'Why its certainty is below high, for all its values: cause, steps, reason.', of: ({ ordinary }) => ordinary && stepsInWords({ lowered: ordinary.lowered ?? [], locator: ordinary.locator }) },
    { name: 'formula', type: 'string', says: 'How a derived value is computed from its inputs.', of: ({ ordinary }) => ordinary?.derived?.formula },
    { name: 'inputs', type: 'string', list: true, says: 'Inputs of the formula: a name, an equals sign, an address in cells.', of: ({ ordinary }) => spaced(Object.entries(ordinary?.derived?.inputs ?? {}).map(([name, of]) => `${name}=${of}`)) },
    { name: 'why', type: 'string', says: 'Reason for an assumed value, for a move, or for a withdrawal.', of: ({ record }) => record.why },
    { name: 'note', type: 'string', says: 'Note to the whole record.', of: ({ ordinary }) => ordinary?.note },
    { name: 'moved_to', type: 'string', list: 'cells', says: 'Where a record that moved or was split stands now.', of: ({ record }) => ('to' in record ? spaced([record.to].flat()) : null) },
    { name: 'gone_on', type: 'date', says: 'Day on which it moved, was split or was withdrawn.', of: ({ record }) => ('on' in record ? record.on : null) },
  ];
}

function ownSource(id: string, sources: SiteRecords['sources']): string | null {
  const folder = id.split('/')[0] as string;
  return sources.has(folder) ? folder : null;
}

/** One row a record: what one place in one source prints. */
export function figuresTable(records: SiteRecords, book: FigureBook): Table {
  return makeTable({
    name: 'figures', title: 'Figures', key: ['id'],
    says: 'One row for each record: what one place in one source prints. Its numbers stand in cells.',
    columns: recordColumns(records),
  }, [
    ...[...book.records].map(([id, record]): RecordRow => {
      const ordinary = isOrdinary(record) ? record : null;
      return { id, record, ordinary, values: ordinary ? valuesOf(id, ordinary).length : 0 };
    }),
    ...[...records.withdrawn].map(([id, record]): RecordRow => ({ id, record, ordinary: null, values: 0 })),
  ]);
}

const FORMS_OF_VALUE = ['one number', 'tests', 'mean', 'range', 'at least', 'at most', 'statement'] as const;

function formOf(value: Value | undefined): (typeof FORMS_OF_VALUE)[number] | undefined {
  if (value === undefined) return undefined;
  if (typeof value === 'number') return 'one number';
  if ('tests' in value) return 'tests';
  if ('mean' in value) return 'mean';
  if ('low' in value) return 'range';
  return 'atLeast' in value ? 'at least' : 'atMost' in value ? 'at most' : 'statement';
}

/** The numbers of a value by column. A lower bound is a low end without a high one, an upper bound the other way round. */
function numbersOf(value: Value | undefined): { value?: number | undefined; low?: number | undefined; high?: number | undefined; mean?: number | undefined; sd?: number | undefined; cv?: number | undefined } {
  if (value === undefined) return {};
  if (typeof value === 'number') return { value };
  if ('mean' in value) return { mean: value.mean, sd: value.sd, cv: value.cv };
  if ('low' in value) return { low: value.low, high: value.high };
  if ('atLeast' in value) return { low: value.atLeast };
  return 'atMost' in value ? { high: value.atMost } : {};
}

const pulled = (value: Value | undefined) => (typeof value === 'object' && 'tests' in value ? value : null);
const isAddress = (of: string | undefined): of is string => of?.includes('/') ?? false;

/** What a number is a share of, how it is known and how sure it is: on every row with a number. */
function denominatorColumns<Item>(figureOf: (item: Item) => ShownFigure): Column<Item>[] {
  return [
    { name: 'of', type: 'string', among: DENOMINATORS, says: 'What a share is a share of, or a force is compared with, where that has a name.', of: (item) => { const { of } = figureOf(item); return isAddress(of) ? null : of; } },
    { name: 'of_address', type: 'string', refers: 'cells', says: 'The same, where it is another figure.', of: (item) => { const { of } = figureOf(item); return isAddress(of) ? of : null; } },
  ];
}

function standingColumns<Item>(figureOf: (item: Item) => ShownFigure): Column<Item>[] {
  return [
    { name: 'standing', type: 'string', required: true, among: STANDINGS, says: 'How we know it: read in the source, quoted by another text, recalled, common practice, derived, assumed.', of: (item) => figureOf(item).standing },
    { name: 'certainty', type: 'string', among: ['high', 'moderate', 'low', 'very low'], says: 'How sure it is; only what is measured has a certainty.', of: (item) => certaintyOf(figureOf(item)) },
  ];
}

const unitColumn = <Item>(figureOf: (item: Item) => ShownFigure): Column<Item> =>
  ({ name: 'unit', type: 'string', among: UNITS, says: 'Unit as printed in the source.', of: (item) => figureOf(item).unit });

/** Printed number and, for a force, the same in kN. */
function numberColumns(): Column<ShownFigure>[] {
  const printed = (name: 'value' | 'low' | 'high' | 'mean' | 'sd', says: string): Column<ShownFigure> =>
    ({ name, type: 'number', unit: { column: 'unit' }, says, of: ({ value }) => numbersOf(value)[name] });
  const force = (name: 'value' | 'low' | 'high' | 'mean' | 'sd', says: string): Column<ShownFigure> =>
    ({ name: `${name}_kn`, type: 'number', unit: 'kN', says, of: ({ value, unit }) => inKn(numbersOf(value)[name], unit) });
  return [
    printed('value', 'The one number that is printed.'),
    printed('low', 'Low end of a range; the bound itself where the form is at least.'),
    printed('high', 'High end of a range; the bound itself where the form is at most.'),
    printed('mean', 'Mean that is printed. We compute none: single breaks stand in series.'),
    printed('sd', 'Standard deviation that is printed.'),
    { name: 'cv', type: 'number', unit: 'ratio', says: 'Coefficient of variation that is printed, as a share of one.', of: ({ value }) => numbersOf(value).cv },
    { name: 'n', type: 'integer', unit: 'count', says: 'Pulls that broke it; empty where the source does not say.', of: ({ value }) => pullsOf(value) },
    { name: 'range_kind', type: 'string', among: RANGE_KINDS, says: 'How a range is meant.', of: ({ value }) => (typeof value === 'object' && 'low' in value ? value.kind : null) },
    { name: 'tests', type: 'string', list: true, says: 'Single breaks in the printed unit and order, which also stand in series.', of: ({ value }) => spaced(pulled(value)?.tests) },
    { name: 'censored', type: 'string', list: true, says: 'Pulls in which something else gave way first: the strength is at least this.', of: ({ value }) => spaced(pulled(value)?.censored) },
    { name: 'statement', type: 'string', says: 'What the source says where it prints no number.', of: ({ value }) => (typeof value === 'object' && 'statement' in value ? value.statement : null) },
    unitColumn((figure) => figure),
    force('value', 'The number in kN where it is a force.'),
    force('low', 'The low end in kN where it is a force.'),
    force('high', 'The high end in kN where it is a force.'),
    force('mean', 'The mean in kN where it is a force.'),
    force('sd', 'The standard deviation in kN where it is a force.'),
  ];
}

/** How a test was rigged; what is empty the source does not say. */
function rigColumns(): Column<ShownFigure>[] {
  const age = (end: 'from' | 'to') => ({ rig: { ageYears } }: ShownFigure) => (typeof ageYears === 'number' ? ageYears : ageYears?.[end]);
  return [
    { name: 'rigging', type: 'string', among: RIGGINGS, says: 'How it was rigged: a method, or a configuration that is none.', of: ({ rig }) => rig.method },
    { name: 'form', type: 'string', among: FORMS, says: 'Form of the textile or hardware.', of: ({ rig }) => rig.form },
    { name: 'material', type: 'string', among: MATERIALS, says: 'Fibre or metal.', of: ({ rig }) => rig.material },
    { name: 'width_mm', type: 'number', unit: 'mm', says: 'Width of tape.', of: ({ rig }) => rig.widthMm },
    { name: 'diameter_mm', type: 'number', unit: 'mm', says: 'Diameter of cord, rope or wire.', of: ({ rig }) => rig.diameterMm },
    { name: 'bearing', type: 'string', among: bearing.options, says: 'What the textile was loaded over.', of: ({ rig }) => rig.bearing },
    { name: 'bearing_mm', type: 'number', unit: 'mm', says: 'Diameter that the textile or wire bore on.', of: ({ rig }) => rig.bearingMm },
    { name: 'legs', type: 'integer', unit: 'count', says: 'Strands that carry the load to the bearing or knot.', of: ({ rig }) => rig.legs },
    { name: 'state', type: 'string', among: ['new', 'used', 'wet', 'frozen', 'exposed'], says: 'State of the piece.', of: ({ rig }) => rig.state },
    { name: 'pull', type: 'string', among: ['slow', 'drop', 'cyclic'], says: 'How it was loaded.', of: ({ rig }) => rig.pull },
    { name: 'age_from_years', type: 'number', unit: 'years', says: 'Age at which the group begins, or the one age.', of: age('from') },
    { name: 'age_to_years', type: 'number', unit: 'years', says: 'Age at which the group closes, or the one age.', of: age('to') },
    { name: 'rig_note', type: 'string', says: 'Further words on the rig.', of: ({ rig }) => rig.note },
  ];
}

/** One row an address. */
export function cellsTable({ sources }: SiteRecords, book: FigureBook): Table {
  const self = (figure: ShownFigure): ShownFigure => figure;
  return makeTable<ShownFigure>({
    name: 'cells', title: 'Values', key: ['address'],
    says: 'One row for each value with an address of its own: a figure with one number, or one cell of a table.',
    columns: [
      { name: 'address', type: 'string', required: true, says: 'Address of the value, which lasts.', of: ({ id }) => id },
      { name: 'figure', type: 'string', required: true, refers: 'figures', says: 'Record that it stands in.', of: ({ record }) => record },
      { name: 'cell', type: 'string', says: 'Name of the cell in a record with a table.', of: ({ cell }) => cell },
      { name: 'source', type: 'string', refers: 'sources', says: 'Source that prints it; empty for rules of the trade and for what the model assumes.', of: ({ id }) => ownSource(id, sources) },
      { name: 'what', type: 'string', required: true, says: 'What was measured, required or ruled.', of: ({ what }) => what },
      { name: 'kind', type: 'string', required: true, among: KINDS, says: 'Measured, required by a standard, a rule, a constant, or assumed for the model.', of: ({ kind }) => kind },
      { name: 'value_form', type: 'string', among: FORMS_OF_VALUE, says: 'How the value is meant, which says what number columns it fills.', of: ({ value }) => formOf(value) },
      ...numberColumns(),
      ...denominatorColumns(self),
      ...rigColumns(),
      { name: 'study', type: 'string', required: true, says: 'Laboratory or lineage; two figures of one study count once in a pool.', of: ({ study }) => study },
      ...standingColumns(self),
      { name: 'steps_down', type: 'integer', unit: 'count', says: 'Steps by which its certainty is below high.', of: (figure) => (figure.kind === 'measured' ? stepsDown(figure) : null) },
      { name: 'lowered', type: 'string', says: 'The reasons for those steps: cause, steps, reason.', of: stepsInWords },
      { name: 'locator', type: 'string', says: 'Page, table, clause or post in the source; not-recorded where it was not noted down.', of: ({ locator }) => locator },
      { name: 'checked', type: 'date', required: true, says: 'Day on which the source was last looked at.', of: ({ checked }) => checked },
      { name: 'as_printed', type: 'string', says: 'The number letter by letter, where a number cannot keep it.', of: ({ asPrinted }) => asPrinted },
      { name: 'why', type: 'string', says: 'Reason for an assumed value.', of: ({ why }) => why },
      { name: 'note', type: 'string', says: 'Note to this value.', of: ({ note }) => note },
    ],
  }, book.values.values());
}

interface Pull { figure: ShownFigure; pull: number; ended: 'broke' | 'other part first'; value: number }

function pullsOfFigure(figure: ShownFigure): Pull[] {
  const value = pulled(figure.value);
  const row = (ended: Pull['ended']) => (number: number) => ({ figure, ended, value: number });
  return [...(value?.tests ?? []).map(row('broke')), ...(value?.censored ?? []).map(row('other part first'))].map((each, i) => ({ ...each, pull: i + 1 }));
}

/** One row a pull, of every value that the source gives as single breaks. */
export function seriesTable({ sources }: SiteRecords, book: FigureBook): Table {
  const figureOf = ({ figure }: Pull): ShownFigure => figure;
  return makeTable<Pull>({
    name: 'series', title: 'Single breaks', key: ['address', 'pull'],
    says: 'One row for each pull, of every value that its source gives as single breaks.',
    columns: [
      { name: 'address', type: 'string', required: true, refers: 'cells', says: 'Value that the pull belongs to.', of: ({ figure }) => figure.id },
      { name: 'pull', type: 'integer', required: true, unit: 'place', says: 'Place in the series, in the order of the record; pulls that did not break it come last.', of: ({ pull }) => pull },
      { name: 'ended', type: 'string', required: true, among: ['broke', 'other part first'], says: 'Whether it broke, or another part gave way first, so that its strength is at least this.', of: ({ ended }) => ended },
      { name: 'value', type: 'number', required: true, unit: { column: 'unit' }, says: 'What was read, in the printed unit.', of: ({ value }) => value },
      { ...unitColumn(figureOf), required: true },
      { name: 'value_kn', type: 'number', unit: 'kN', says: 'The same in kN where it is a force.', of: ({ figure, value }) => inKn(value, figure.unit) },
      ...denominatorColumns(figureOf),
      { name: 'source', type: 'string', refers: 'sources', says: 'Source that prints it.', of: ({ figure }) => ownSource(figure.id, sources) },
      { name: 'study', type: 'string', required: true, says: 'Laboratory or lineage.', of: ({ figure }) => figure.study },
      ...standingColumns(figureOf),
    ],
  }, [...book.values.values()].flatMap(pullsOfFigure));
}
