/** Factors and their classes as tables, with the figures that feed them and those that were left out. */
import { DENOMINATORS, type Compared, type FactorClassRecord, type FactorRecord } from '../../../records/schema.ts';
import type { SiteRecords } from '../../records.ts';
import { makeTable, spaced, type Table } from '../table.ts';

type Factor = FactorRecord & { id: string };

const assumesANumber = ({ assumed, times, bridge, taken }: FactorRecord): boolean => Boolean(assumed ?? times ?? bridge) || taken.length > 0;
const rows = <T extends object>(records: ReadonlyMap<string, T>): (T & { id: string })[] => [...records].map(([id, record]) => ({ id, ...record }));

/** One row a factor. */
export function factorsTable({ factors }: SiteRecords): Table {
  const ratio = { type: 'number', unit: 'ratio' } as const;
  const own = { type: 'number', unit: { column: 'unit' } } as const;
  const mm = { type: 'number', unit: 'mm' } as const;
  return makeTable<Factor>({
    name: 'factors', title: 'Factors', key: ['id'],
    says: 'One row for each factor: what stands between figures and the model. Every number in it is a choice of ours, as are its limits.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the factor.', of: ({ id }) => id },
      { name: 'what', type: 'string', required: true, says: 'What it stands for.', of: ({ what }) => what },
      { name: 'acts', type: 'string', required: true, among: ['loop', 'rating', 'multiplies'], says: 'Whether it is a force, multiplies the rating of the device, or multiplies another factor.', of: ({ acts }) => (typeof acts === 'string' ? acts : 'multiplies') },
      { name: 'multiplies', type: 'string', refers: 'factors', says: 'The factor that it multiplies.', of: ({ acts }) => (typeof acts === 'string' ? null : acts.multiplies) },
      { name: 'class', type: 'string', required: true, refers: 'classes', says: 'Class that it shares its scatter with.', of: (factor) => factor.class },
      { name: 'unit', type: 'string', required: true, among: ['kN', 'ratio'], says: 'Unit of the factor.', of: ({ acts }) => (acts === 'loop' ? 'kN' : 'ratio') },
      { name: 'of', type: 'string', among: DENOMINATORS, says: 'What a ratio is a share of, where that is not another factor.', of: ({ acts }) => (acts === 'rating' ? 'device-rating' : null) },
      { name: 'standing', type: 'string', among: ['assumed'], says: 'How the numbers of this row are known, where it has any.', of: (factor) => (assumesANumber(factor) ? 'assumed' : null) },
      { name: 'riggings', type: 'string', list: true, says: 'Riggings of figures that may feed it; empty: any.', of: ({ applies }) => spaced(applies.riggings) },
      { name: 'materials', type: 'string', list: true, says: 'Materials that it speaks of; empty: any.', of: ({ applies }) => spaced(applies.materials) },
      { name: 'forms', type: 'string', list: true, says: 'Forms that it speaks of; empty: any.', of: ({ applies }) => spaced(applies.forms) },
      { name: 'width_from_mm', ...mm, says: 'Least width or diameter that it speaks of.', of: ({ applies }) => applies.widthMm?.[0] },
      { name: 'width_to_mm', ...mm, says: 'Largest width or diameter that it speaks of.', of: ({ applies }) => applies.widthMm?.[1] },
      { name: 'bearings', type: 'string', list: true, says: 'Bearings of figures that may feed it; empty: any.', of: ({ applies }) => spaced(applies.bearings) },
      { name: 'legs', type: 'integer', unit: 'count', says: 'Legs of figures that may feed it; empty: any.', of: ({ applies }) => applies.legs },
      { name: 'along', type: 'string', among: ['bearingMm'], says: 'Whether it runs along the diameter that the textile bears on.', of: ({ along }) => along },
      { name: 'from', type: 'string', list: 'cells', says: 'Figures that feed it.', of: ({ from }) => spaced(from) },
      { name: 'left_out', type: 'string', list: 'cells', says: 'Figures that match and were left out; the reasons stand in factor-figures.', of: ({ leftOut }) => spaced(leftOut.map(({ figure }) => figure)) },
      { name: 'floor', type: 'string', refers: 'cells', says: 'Required minimum below which a new piece is not sold.', of: ({ floor }) => floor },
      { name: 'times_by', ...ratio, says: 'Assumed multiplier between what was tested and this link.', of: ({ times }) => times?.by },
      { name: 'times_spread', ...ratio, says: 'Spread of that multiplier: standard deviation of its natural logarithm.', of: ({ times }) => times?.spread },
      { name: 'times_why', type: 'string', says: 'Reason for the multiplier.', of: ({ times }) => times?.why },
      { name: 'bridge_from_mm', ...mm, says: 'Least width that it is carried over to.', of: ({ bridge }) => bridge?.widthMm[0] },
      { name: 'bridge_to_mm', ...mm, says: 'Largest width that it is carried over to.', of: ({ bridge }) => bridge?.widthMm[1] },
      { name: 'bridge_spread', ...ratio, says: 'Extra spread where a width is carried over: standard deviation of the natural logarithm.', of: ({ bridge }) => bridge?.spread },
      { name: 'bridge_by_section', type: 'boolean', says: 'Whether the force is carried over with the square of the diameter.', of: ({ bridge }) => bridge && (bridge.bySection ?? false) },
      { name: 'bridge_why', type: 'string', says: 'Reason for carrying over.', of: ({ bridge }) => bridge?.why },
      { name: 'assumed_low', ...own, says: 'Low end of the assumed range that has nine pieces in ten in it.', of: ({ assumed }) => assumed?.low },
      { name: 'assumed_high', ...own, says: 'High end of that range.', of: ({ assumed }) => assumed?.high },
      { name: 'assumed_why', type: 'string', says: 'Reason for the assumed range.', of: ({ assumed }) => assumed?.why },
    ],
  }, rows(factors));
}

interface Named { factor: string; role: 'from' | 'left out' | 'taken'; position: number; figure: string; bearingMm?: number | undefined; diameterMm?: number | undefined; why?: string | undefined }

/** One row for each figure that a factor names, with the reason where it was left out, or where a condition was read into it. */
export function factorFiguresTable({ factors }: SiteRecords): Table {
  const named = rows(factors).flatMap(({ id, from, leftOut, taken }): Named[] => [
    ...from.map((figure, i): Named => ({ factor: id, role: 'from', position: i + 1, figure })),
    ...leftOut.map((each, i): Named => ({ factor: id, role: 'left out', position: i + 1, ...each })),
    ...taken.map((each, i): Named => ({ factor: id, role: 'taken', position: i + 1, ...each })),
  ]);
  return makeTable<Named>({
    name: 'factor-figures', title: 'Figures of factors', key: ['factor', 'role', 'position'],
    says: 'One row for each figure that a factor names: it feeds the factor, or was left out, or a condition that its source implies was read into it.',
    columns: [
      { name: 'factor', type: 'string', required: true, refers: 'factors', says: 'The factor.', of: ({ factor }) => factor },
      { name: 'role', type: 'string', required: true, among: ['from', 'left out', 'taken'], says: 'Whether the figure feeds it, was left out, or has a condition taken.', of: ({ role }) => role },
      { name: 'position', type: 'integer', required: true, unit: 'place', says: 'Place in the list of the factor.', of: ({ position }) => position },
      { name: 'figure', type: 'string', required: true, refers: 'cells', says: 'The figure.', of: ({ figure }) => figure },
      { name: 'taken_bearing_mm', type: 'number', unit: 'mm', says: 'Bearing that is read into it.', of: ({ bearingMm }) => bearingMm },
      { name: 'taken_diameter_mm', type: 'number', unit: 'mm', says: 'Diameter that is read into it.', of: ({ diameterMm }) => diameterMm },
      { name: 'standing', type: 'string', among: ['assumed'], says: 'How a condition taken is known.', of: ({ role }) => (role === 'taken' ? 'assumed' : null) },
      { name: 'why', type: 'string', says: 'Reason for leaving it out, or for the condition taken.', of: ({ why }) => why },
    ],
  }, named);
}

type Class = FactorClassRecord & { id: string };

/** One row a class. */
export function classesTable({ classes }: SiteRecords): Table {
  const ratio = { type: 'number', unit: 'ratio' } as const;
  return makeTable<Class>({
    name: 'classes', title: 'Classes of factors', key: ['id'],
    says: 'One row for each class of factors that share one scatter between pieces and one spread between laboratories. Its numbers are assumed; what is estimated names its figures in class-figures.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the class.', of: ({ id }) => id },
      { name: 'what', type: 'string', required: true, says: 'What it stands for.', of: ({ what }) => what },
      { name: 'cv_from', type: 'string', required: true, among: ['estimated', 'assumed'], says: 'Where the scatter between pieces comes from.', of: ({ cv }) => ('assumed' in cv ? 'assumed' : 'estimated') },
      { name: 'cv_assumed', ...ratio, says: 'Assumed scatter between pieces, as a share of the mean.', of: ({ cv }) => ('assumed' in cv ? cv.assumed : null) },
      { name: 'cv_why', type: 'string', says: 'Reason for it, or note to the estimate.', of: ({ cv }) => ('assumed' in cv ? cv.why : cv.note) },
      { name: 'ceiling_cv', ...ratio, required: true, says: 'The largest scatter that a series of this class may have.', of: ({ ceiling }) => ceiling.cv },
      { name: 'ceiling_why', type: 'string', required: true, says: 'Reason for the ceiling.', of: ({ ceiling }) => ceiling.why },
      { name: 'tau_from', type: 'string', required: true, among: ['estimated', 'borrowed', 'assumed'], says: 'Where the spread between laboratories comes from.', of: ({ tau }) => ('groups' in tau ? 'estimated' : 'borrowed' in tau ? 'borrowed' : 'assumed') },
      { name: 'tau_borrowed', type: 'string', refers: 'classes', says: 'Class that it is borrowed from.', of: ({ tau }) => ('borrowed' in tau ? tau.borrowed : null) },
      { name: 'tau_assumed', ...ratio, says: 'Assumed spread between laboratories: standard deviation of the natural logarithm.', of: ({ tau }) => ('assumed' in tau ? tau.assumed : null) },
      { name: 'tau_why', type: 'string', says: 'Reason for it, or note to the estimate.', of: ({ tau }) => ('why' in tau ? tau.why : tau.note) },
      { name: 'standing', type: 'string', required: true, among: ['assumed'], says: 'How the numbers of this row are known.', of: () => 'assumed' },
    ],
  }, rows(classes));
}

interface InClass { id: string; role: 'cv' | 'tau'; group: number; position: number; each: Compared }

/** One row for each figure that a class estimates from. */
export function classFiguresTable({ classes }: SiteRecords): Table {
  const placed = (id: string, role: InClass['role'], group: number, list: readonly Compared[]): InClass[] =>
    list.map((each, i) => ({ id, role, group, position: i + 1, each }));
  const named = rows(classes).flatMap(({ id, cv, tau }) => [
    ...('from' in cv ? placed(id, 'cv', 1, cv.from) : []),
    ...('groups' in tau ? tau.groups.flatMap((group, i) => placed(id, 'tau', i + 1, group)) : []),
  ]);
  return makeTable<InClass>({
    name: 'class-figures', title: 'Figures of classes', key: ['class', 'role', 'group', 'position'],
    says: 'One row for each figure that the scatter or the spread of a class is estimated from. A group of the spread is what two laboratories or more broke alike.',
    columns: [
      { name: 'class', type: 'string', required: true, refers: 'classes', says: 'The class.', of: ({ id }) => id },
      { name: 'role', type: 'string', required: true, among: ['cv', 'tau'], says: 'Scatter between pieces, or spread between laboratories.', of: ({ role }) => role },
      { name: 'group', type: 'integer', required: true, unit: 'place', says: 'Group within the class; the scatter has one.', of: ({ group }) => group },
      { name: 'position', type: 'integer', required: true, unit: 'place', says: 'Place in the group.', of: ({ position }) => position },
      { name: 'figure', type: 'string', required: true, refers: 'cells', says: 'The figure.', of: ({ each }) => (typeof each === 'string' ? each : each.figure) },
      { name: 'over', type: 'string', refers: 'cells', says: 'Straight strength that the figure is taken as a share of.', of: ({ each }) => (typeof each === 'string' ? null : each.over) },
    ],
  }, named);
}
