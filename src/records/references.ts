/** Every place where a record names another one. */
import { namedIn } from './compared.ts';
import type { Position } from './fault.ts';
import type { Collection, RecordFile, Records } from './read.ts';
import { DENOMINATORS } from './schema.ts';

export interface Reference {
  /** The id or address that is named. */
  to: string;
  /** Where the named record should be. */
  collection: Collection;
  /** Id of the record that names it, and its collection. */
  from: string;
  fromCollection: Collection;
  /** Field that holds the name. */
  field: string;
  at: Position;
}

const NAMED: ReadonlySet<string> = new Set(DENOMINATORS);

/** References between records, in the order of collections and files. Named denominators are no references. */
export function referencesOf(records: Records): Reference[] {
  const out: Reference[] = [];
  const collect = (
    fromCollection: Collection,
    record: RecordFile<unknown>,
    collection: Collection,
    path: (string | number)[],
    to: unknown,
  ) => {
    if (typeof to !== 'string') return;
    const field = path.filter((step) => typeof step === 'string').join('.');
    out.push({ to, collection, from: record.id, fromCollection, field, at: record.at(path) });
  };
  const list = (
    fromCollection: Collection,
    record: RecordFile<unknown>,
    collection: Collection,
    path: (string | number)[],
    values: readonly unknown[] | undefined,
  ) => {
    (values ?? []).forEach((to, i) => {
      collect(fromCollection, record, collection, [...path, i], to);
    });
  };

  for (const record of records.figures.values()) {
    const { data } = record;
    if (data.of && !NAMED.has(data.of)) collect('figures', record, 'figures', ['of'], data.of);
    for (const [name, to] of Object.entries(data.derived?.inputs ?? {}))
      collect('figures', record, 'figures', ['derived', 'inputs', name], to);
    if ('cells' in data)
      for (const [name, cell] of Object.entries(data.cells))
        if (cell.of && !NAMED.has(cell.of)) collect('figures', record, 'figures', ['cells', name, 'of'], cell.of);
  }
  for (const record of records.factors.values()) {
    const { data } = record;
    collect('factors', record, 'classes', ['class'], data.class);
    if (typeof data.acts === 'object')
      collect('factors', record, 'factors', ['acts', 'multiplies'], data.acts.multiplies);
    list('factors', record, 'figures', ['from'], data.from);
    data.leftOut.forEach((entry, i) => {
      collect('factors', record, 'figures', ['leftOut', i, 'figure'], entry.figure);
    });
    data.taken.forEach((entry, i) => {
      collect('factors', record, 'figures', ['taken', i, 'figure'], entry.figure);
    });
    if (data.floor) collect('factors', record, 'figures', ['floor'], data.floor);
  }
  for (const record of records.classes.values()) {
    const { cv, tau } = record.data;
    if ('from' in cv) list('classes', record, 'figures', ['cv', 'from'], cv.from);
    if ('groups' in tau)
      tau.groups.forEach((group, i) => {
        for (const { address, path } of namedIn(group)) collect('classes', record, 'figures', ['tau', 'groups', i, ...path], address);
      });
    if ('borrowed' in tau) collect('classes', record, 'classes', ['tau', 'borrowed'], tau.borrowed);
  }
  for (const record of records.methods.values()) {
    const { data } = record;
    data.links.forEach((link, i) => {
      list('methods', record, 'factors', ['links', i, 'factors'], link.factors);
    });
    data.apart.forEach((reason, i) => {
      list('methods', record, 'figures', ['apart', i, 'figures'], reason.figures);
      list('methods', record, 'figures', ['apart', i, 'published'], reason.published);
    });
    list('methods', record, 'figures', ['shown'], data.shown);
  }
  for (const record of records.slings.values())
    if (record.data.floor) collect('slings', record, 'figures', ['floor'], record.data.floor);
  for (const record of records.gaps.values()) {
    record.data.blocks.forEach((block, i) => {
      list('gaps', record, 'methods', ['blocks', i, 'methods'], block.methods);
      list('gaps', record, 'slings', ['blocks', i, 'slings'], block.slings);
    });
    list('gaps', record, 'methods', ['concerns'], record.data.concerns);
    list('gaps', record, 'figures', ['nearest'], record.data.nearest);
  }
  for (const record of records.replacements.values())
    list('replacements', record, 'figures', ['figures'], record.data.figures);
  for (const record of records.rules.values()) {
    list('rules', record, 'figures', ['figures'], record.data.figures);
    if (record.data.due) collect('rules', record, 'figures', ['due', 'figure'], record.data.due.figure);
  }
  for (const record of records.materials.values())
    for (const [topic, { figures, gaps }] of Object.entries(record.data.topics)) {
      list('materials', record, 'figures', ['topics', topic, 'figures'], figures);
      list('materials', record, 'gaps', ['topics', topic, 'gaps'], gaps);
    }
  for (const record of records.law.values())
    for (const [i, { figures }] of record.data.sentences.entries()) list('law', record, 'figures', ['sentences', i, 'figures'], figures);
  for (const record of records.corrections.values())
    collect('corrections', record, 'figures', ['figure'], record.data.figure);
  for (const record of records.series.values()) {
    const { data } = record;
    if ('figure' in data) collect('series', record, 'figures', ['figure'], data.figure);
    else if (data.source) collect('series', record, 'sources', ['source'], data.source);
    data.beside.forEach((entry, i) => {
      collect('series', record, 'series', ['beside', i, 'series'], entry.series);
    });
  }
  return out;
}
