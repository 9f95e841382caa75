/** Methods as tables: their records, their links, and why a method is set apart. */
import { FORMS, type LinkRecord, MATERIALS, type MethodRecord, PARTS, type SlingRecord } from '../../../records/schema.ts';
import type { SiteRecords } from '../../records.ts';
import { makeTable, spaced, type Table } from '../table.ts';

type Method = MethodRecord & { id: string };

/** One row a method. */
export function methodsTable({ methods }: SiteRecords): Table {
  return makeTable<Method>({
    name: 'methods', title: 'Methods', key: ['id'],
    says: 'One row for each way of attaching a sling to an eye. No row is a recommendation: the maker decides, and a home method ends the approval.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the method.', of: ({ id }) => id },
      { name: 'name', type: 'string', required: true, says: 'Name.', of: ({ name }) => name },
      { name: 'order', type: 'integer', required: true, unit: 'place', says: 'Place in lists; no ranking.', of: ({ order }) => order },
      { name: 'role', type: 'string', required: true, among: ['reference', 'home', 'comparison'], says: "The maker's own sling, a method made at home, or one that is shown for comparison and never ranked.", of: ({ role }) => role },
      { name: 'summary', type: 'string', required: true, says: 'What it is, in a sentence.', of: ({ summary }) => summary },
      { name: 'takes', type: 'string', required: true, list: true, says: 'Forms of sling that it is made with.', of: ({ takes }) => spaced(takes) },
      { name: 'eyes', type: 'string', required: true, list: true, says: 'Kinds of eye that it is made on.', of: ({ eyes }) => spaced(eyes) },
      { name: 'riggings', type: 'string', list: true, says: 'How tests of it name their rigging; empty: by its own id.', of: ({ riggings }) => spaced(riggings) },
      { name: 'length_words', type: 'string', required: true, says: 'Finished length in words.', of: ({ length }) => length.words },
      { name: 'length_share', type: 'number', unit: 'ratio', says: 'Finished length as a share of the length of the sling, before knots and turns: how it is laid.', of: ({ length }) => length.share },
      { name: 'length_less_widths', type: 'number', unit: 'widths of the sling', says: 'What knots and turns take off it, in widths of tape or diameters of cord.', of: ({ length }) => length.lessWidths },
      { name: 'length_why', type: 'string', says: 'Reason for what is taken off.', of: ({ length }) => length.why },
      { name: 'standing', type: 'string', among: ['assumed'], says: 'How we know what knots and turns take off.', of: ({ length }) => (length.lessWidths === undefined ? null : 'assumed') },
      { name: 'bulk', type: 'string', required: true, says: 'What it adds to the rack.', of: ({ bulk }) => bulk },
      { name: 'clip_error', type: 'string', required: true, says: 'What one clipping error does.', of: ({ oneClipError }) => oneClipError.what },
      { name: 'clip_error_releases', type: 'boolean', required: true, says: 'Whether one clipping error lets go of the device.', of: ({ oneClipError }) => oneClipError.releases },
      { name: 'closed_possible', type: 'boolean', required: true, says: 'Whether it can be made with a closed sling on a closed eye.', of: ({ closed }) => closed.possible },
      { name: 'closed_why', type: 'string', required: true, says: 'Why, or why not.', of: ({ closed }) => closed.why },
      { name: 'shown', type: 'string', list: 'cells', says: 'Figures that its page shows and the model does not use.', of: ({ shown }) => spaced(shown) },
    ],
  }, [...methods].map(([id, record]) => ({ id, ...record })));
}

interface Placed<T> { method: string; position: number; each: T }

const placed = <T>(methods: SiteRecords['methods'], list: (method: MethodRecord) => readonly T[]): Placed<T>[] =>
  [...methods].flatMap(([method, record]) => list(record).map((each, i) => ({ method, position: i + 1, each })));

/** One row a link of a method's load path. */
export function linksTable({ methods }: SiteRecords): Table {
  return makeTable<Placed<LinkRecord>>({
    name: 'links', title: 'Links of methods', key: ['method', 'position'],
    says: 'One row for each part of the load path of a method that can break, from the device to the connector.',
    columns: [
      { name: 'method', type: 'string', required: true, refers: 'methods', says: 'The method.', of: ({ method }) => method },
      { name: 'position', type: 'integer', required: true, unit: 'place', says: 'Place in the load path.', of: ({ position }) => position },
      { name: 'name', type: 'string', required: true, says: 'Name of the link.', of: ({ each }) => each.name },
      { name: 'part', type: 'string', required: true, among: PARTS, says: 'What it is a part of.', of: ({ each }) => each.part },
      { name: 'at', type: 'string', required: true, among: ['device', 'eye', 'knot', 'connector'], says: 'Where it is.', of: ({ each }) => each.at },
      { name: 'legs', type: 'integer', unit: 'count', says: 'Strands that carry the load there.', of: ({ each }) => each.legs },
      { name: 'factors', type: 'string', required: true, list: 'factors', says: 'Candidates in order; the first that speaks of the sling governs the link.', of: ({ each }) => spaced(each.factors) },
    ],
  }, placed(methods, ({ links }) => links));
}

/** One row a reason for which a method is set apart. */
export function reasonsTable({ methods }: SiteRecords): Table {
  return makeTable<Placed<MethodRecord['apart'][number]>>({
    name: 'reasons', title: 'Reasons to set a method apart', key: ['method', 'position'],
    says: 'One row for each reason for which a method is set apart and not ranked.',
    columns: [
      { name: 'method', type: 'string', required: true, refers: 'methods', says: 'The method.', of: ({ method }) => method },
      { name: 'position', type: 'integer', required: true, unit: 'place', says: 'Place in the list of the method.', of: ({ position }) => position },
      { name: 'why', type: 'string', required: true, says: 'The reason.', of: ({ each }) => each.why },
      { name: 'eyes', type: 'string', list: true, says: 'Kinds of eye that it speaks of; empty: all.', of: ({ each }) => spaced(each.when?.eyes) },
      { name: 'materials', type: 'string', list: true, says: 'Materials that it speaks of; empty: all.', of: ({ each }) => spaced(each.when?.materials) },
      { name: 'width_from_mm', type: 'number', unit: 'mm', says: 'Least width that its figures speak of.', of: ({ each }) => each.widthMm?.[0] },
      { name: 'width_to_mm', type: 'number', unit: 'mm', says: 'Largest width that its figures speak of.', of: ({ each }) => each.widthMm?.[1] },
      { name: 'figures', type: 'string', list: 'cells', says: 'Figures behind it.', of: ({ each }) => spaced(each.figures) },
      { name: 'published', type: 'string', list: 'cells', says: 'Published breaks of the method that the model may not use.', of: ({ each }) => spaced(each.published) },
    ],
  }, placed(methods, ({ apart }) => apart));
}

/** One row a sling. */
export function slingsTable({ slings }: SiteRecords): Table {
  return makeTable<SlingRecord & { id: string }>({
    name: 'slings', title: 'Slings', key: ['id'],
    says: 'One row for each sling that the comparison offers. Widths and lengths say what is meant; nobody measured them.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the sling.', of: ({ id }) => id },
      { name: 'name', type: 'string', required: true, says: 'Name.', of: ({ name }) => name },
      { name: 'order', type: 'integer', required: true, unit: 'place', says: 'Place in lists.', of: ({ order }) => order },
      { name: 'form', type: 'string', required: true, among: FORMS, says: 'Form.', of: ({ form }) => form },
      { name: 'material', type: 'string', required: true, among: MATERIALS, says: 'Fibre.', of: ({ material }) => material },
      { name: 'width_mm', type: 'number', required: true, unit: 'mm', says: 'Width of tape or diameter of cord, as the model uses it.', of: ({ widthMm }) => widthMm },
      { name: 'lengths_cm', type: 'string', required: true, list: true, says: 'Lengths offered, in centimetres.', of: ({ lengthsCm }) => spaced(lengthsCm) },
      { name: 'floor', type: 'string', refers: 'cells', says: 'Requirement that it is sold under.', of: ({ floor }) => floor },
      { name: 'note', type: 'string', says: 'Note.', of: ({ note }) => note },
    ],
  }, [...slings].map(([id, record]) => ({ id, ...record })));
}

