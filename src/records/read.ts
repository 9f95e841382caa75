/** Reads every record of the project into typed collections, with a position for each of their values. */
import type { z } from 'zod';
import { at as valueAt, shapeFaults } from './shape.ts';
import type { Fault, Position } from './fault.ts';
import { type FileMap, readFiles } from './files.ts';
import { didYouMean } from './nearest-name.ts';
import {
  correction,
  factor,
  factorClass,
  figureSchemaFor,
  gap,
  law,
  method,
  rackMaterial,
  replacement,
  rule,
  seriesSchemaFor,
  sling,
  source,
  type Cell,
  type CorrectionRecord,
  type FactorClassRecord,
  type FactorRecord,
  type FigureRecord,
  type GapRecord,
  type LawRecord,
  type Lowered,
  type MethodRecord,
  type Moved,
  type RackMaterialRecord,
  type ReplacementRecord,
  type RigConditions,
  type RuleRecord,
  type SeriesRecord,
  type Single,
  type SlingRecord,
  type SourceRecord,
  type Split,
  type Standing,
  type Table,
  type Unit,
  type Value,
  type Withdrawn,
} from './schema.ts';
import { parseYaml, type Path } from './yaml.ts';

/** A record with its place on disk. */
export interface RecordFile<T> {
  id: string;
  file: string;
  data: T;
  at(path?: Path): Position;
  keyAt(path: Path): Position;
  /** A scalar as written in the file. */
  written(path: Path): string | undefined;
  /** True where a field stood in the file but was left out of `data` because its shape is wrong: it is not missing. */
  spoilt(path: Path): boolean;
}

/** One addressable figure with the defaults of its table filled in. */
export interface ResolvedFigure {
  /** `source/result` or `source/result#cell`. */
  id: string;
  source: string;
  what: string;
  kind: Single['kind'];
  value?: Value;
  unit?: Unit;
  of?: string;
  rig: RigConditions;
  study: string;
  standing: Standing;
  lowered: Lowered[];
  locator?: string;
  checked: string;
  asPrinted?: string;
  note?: string;
  why?: string;
  derived?: Single['derived'];
}

/** A resolved figure and where its parts stand. */
export interface PlacedFigure {
  figure: ResolvedFigure;
  record: RecordFile<Single | Table>;
  /** Name of the cell; undefined for a record of one value. */
  cell?: string;
  /** Path of a field: the cell's own where it has one, else the record's. */
  path(field: string): Path;
  /** Position of a field, or of the figure itself. */
  at(field?: string): Position;
  /** True where neither the cell nor its table has the field, not even a misshapen one. */
  lacks(field: string): boolean;
}

export interface Records {
  files: FileMap;
  figures: Map<string, RecordFile<Single | Table>>;
  moved: Map<string, RecordFile<Moved | Split>>;
  withdrawn: Map<string, RecordFile<Withdrawn>>;
  sources: Map<string, RecordFile<SourceRecord>>;
  factors: Map<string, RecordFile<FactorRecord>>;
  classes: Map<string, RecordFile<FactorClassRecord>>;
  methods: Map<string, RecordFile<MethodRecord>>;
  slings: Map<string, RecordFile<SlingRecord>>;
  gaps: Map<string, RecordFile<GapRecord>>;
  replacements: Map<string, RecordFile<ReplacementRecord>>;
  law: Map<string, RecordFile<LawRecord>>;
  rules: Map<string, RecordFile<RuleRecord>>;
  materials: Map<string, RecordFile<RackMaterialRecord>>;
  corrections: Map<string, RecordFile<CorrectionRecord>>;
  /** Series of breaks, published and invented; the file says which. */
  series: Map<string, RecordFile<SeriesRecord>>;
  /** Every addressable figure by its address. */
  cells: Map<string, PlacedFigure>;
  /** Ids that have a file, also where the file could not be read: they exist, so a reference to them does not dangle. */
  present: Record<Collection, Set<string>>;
  /** Faults of reading and of shape. */
  faults: Fault[];
}

/** Folders of records; `class` stands inside `factors`, and `demo/series` contains invented series. */
export const COLLECTIONS = [
  'figures',
  'sources',
  'factors',
  'classes',
  'methods',
  'slings',
  'gaps',
  'replacements',
  'law',
  'rules',
  'materials',
  'corrections',
  'series',
] as const;
export type Collection = (typeof COLLECTIONS)[number];

/** Folders under `data/figures/` whose figures have no source record. */
export const RESERVED_SOURCES: readonly string[] = ['common-practice', 'assumed', 'demo'];

/** Folders under `data/` that hold no records of this check: frozen versions, words about them, and invented examples. */
const OTHER_FOLDERS: readonly string[] = ['versions', 'changes', 'demo'];

const SCHEMAS: Record<Exclude<Collection, 'figures' | 'series'>, z.ZodType> = {
  sources: source,
  factors: factor,
  classes: factorClass,
  methods: method,
  slings: sling,
  gaps: gap,
  replacements: replacement,
  law,
  rules: rule,
  materials: rackMaterial,
  corrections: correction,
};
const WHAT: Record<Collection, string> = {
  figures: 'figure',
  sources: 'source',
  factors: 'factor',
  classes: 'factor class',
  methods: 'method',
  slings: 'sling',
  gaps: 'gap',
  replacements: 'replacement',
  law: 'law',
  rules: 'rule',
  materials: 'material',
  corrections: 'correction',
  series: 'series',
};
const SLUG = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** Reads all records of a project: its top folder on disk, or a map of files. */
export function readAll(rootOrFiles: string | FileMap): Records {
  const files = typeof rootOrFiles === 'string' ? readFiles(rootOrFiles) : rootOrFiles;
  const records: Records = {
    files,
    figures: new Map(),
    moved: new Map(),
    withdrawn: new Map(),
    sources: new Map(),
    factors: new Map(),
    classes: new Map(),
    methods: new Map(),
    slings: new Map(),
    gaps: new Map(),
    replacements: new Map(),
    law: new Map(),
    rules: new Map(),
    materials: new Map(),
    corrections: new Map(),
    series: new Map(),
    cells: new Map(),
    present: Object.fromEntries(COLLECTIONS.map((c) => [c, new Set<string>()])) as Records['present'],
    faults: [],
  };
  for (const [file, text] of Object.entries(files)) {
    if (!file.startsWith('data/') || file.startsWith('data/versions/') || !/\.ya?ml$/.test(file)) continue;
    readRecord(records, file, text);
  }
  for (const record of records.figures.values())
    for (const placed of cellsOf(record)) records.cells.set(placed.figure.id, placed);
  return records;
}

function readRecord(records: Records, file: string, text: string): void {
  const yaml = parseYaml(file, text);
  records.faults.push(...yaml.faults);
  const top = { file, line: 1, col: 1 };
  const misplaced = (problem: string, got: string, advice: string) =>
    records.faults.push({ rule: 'file-place', at: top, subject: 'file', problem, got, advice });
  const parts = file.split('/');
  const folder = parts[1] as string;
  const isClass = folder === 'factors' && parts[2] === 'class' && parts.length === 4;
  const isDemo = folder === 'demo' && parts[2] === 'series' && parts.length === 4;
  const collection = (isClass ? 'classes' : isDemo ? 'series' : folder) as Collection;
  if (
    parts.length < 3 ||
    !(COLLECTIONS.includes(collection) || OTHER_FOLDERS.includes(folder)) ||
    folder === 'classes'
  ) {
    const known = COLLECTIONS.filter((c) => c !== 'classes');
    misplaced(
      'stands in no folder of records',
      parts.slice(0, -1).join('/'),
      didYouMean(folder, known, `Move it into one of data/${known.join(', data/')}.`),
    );
    return;
  }
  if (OTHER_FOLDERS.includes(folder) && !isDemo) return;
  const depth = collection === 'figures' || isClass || isDemo ? 4 : 3;
  if (parts.length !== depth) {
    misplaced(
      'stands at the wrong depth',
      file,
      collection === 'figures' ? 'Write data/figures/<source>/<result>.yaml.' : `Write data/${folder}/<id>.yaml.`,
    );
    return;
  }
  if (file.endsWith('.yml')) misplaced('has the wrong ending', '.yml', 'Rename it to .yaml.');
  const names = parts.slice(isClass || isDemo ? 3 : 2).map((name) => name.replace(/\.ya?ml$/, ''));
  for (const name of names) {
    if (!SLUG.test(name)) {
      records.faults.push({
        rule: 'file-name',
        at: top,
        subject: 'file',
        problem: 'a record is named by its path, and this is no lower-case name with hyphens',
        got: name,
        advice: `Rename it, for example to ${slugOf(name) || 'a-name'}.`,
      });
    }
  }
  const id = names.join('/');
  records.present[collection].add(id);
  if (yaml.data === undefined) return;
  if (yaml.data === null) {
    if (!yaml.faults.length)
      records.faults.push({
        rule: 'shape',
        at: top,
        subject: WHAT[collection],
        problem: 'is empty',
        advice: 'Fill it, or remove the file.',
      });
    return;
  }
  const schema = collection === 'figures' ? figureSchemaFor(yaml.data) : collection === 'series' ? seriesSchemaFor(yaml.data) : SCHEMAS[collection];
  const spoilt = new Set<string>();
  const data = readShape(WHAT[collection], schema, yaml, records.faults, spoilt);
  if (data === undefined) return;
  const record = {
    id,
    file,
    data,
    at: yaml.at,
    keyAt: yaml.keyAt,
    written: yaml.written,
    spoilt: (path: Path) => path.some((_, i) => spoilt.has(path.slice(0, i + 1).join('\n'))),
  };
  if (collection !== 'figures') (records[collection] as Map<string, RecordFile<unknown>>).set(id, record);
  else if (isMoved(data as FigureRecord | Withdrawn)) records.moved.set(id, record as RecordFile<Moved | Split>);
  else if (isWithdrawn(data as FigureRecord | Withdrawn)) records.withdrawn.set(id, record as RecordFile<Withdrawn>);
  else records.figures.set(id, record as RecordFile<Single | Table>);
}

function isMoved(data: FigureRecord | Withdrawn): data is Moved | Split {
  return data.kind === 'moved' || data.kind === 'split';
}

function isWithdrawn(data: FigureRecord | Withdrawn): data is Withdrawn {
  return data.kind === 'withdrawn';
}

/**
 * Reads what can be read: takes out the parts that are wrong, so that the rest is
 * still checked in the same run. A record that lacks a required field gives nothing.
 */
function readShape(
  what: string,
  schema: z.ZodType,
  yaml: ReturnType<typeof parseYaml>,
  faults: Fault[],
  spoilt: Set<string>,
): unknown {
  let data = yaml.data;
  for (let round = 0; round < 4; round++) {
    const result = schema.safeParse(data);
    if (result.success) return result.data;
    const found = shapeFaults(what, schema, result.error, { ...yaml, data });
    if (round === 0) faults.push(...found.map((f) => f.fault));
    if (found.some(({ path, missing, extra }) => missing || (path.length === 0 && !extra.length))) return undefined;
    data = structuredClone(data);
    for (const { path, extra } of found) {
      for (const lost of extra.length ? extra.map((key) => [...path, key]) : [path]) {
        spoilt.add(lost.join('\n'));
        without(data, lost);
      }
    }
  }
  return undefined;
}

function without(data: unknown, path: Path): void {
  const parent = valueAt(data, path.slice(0, -1));
  const last = path.at(-1) as string | number;
  if (Array.isArray(parent)) parent.splice(Number(last), 1);
  else if (parent && typeof parent === 'object') delete (parent as Record<string | number, unknown>)[last];
}

/** A name made from any text: lower case, hyphens. */
export function slugOf(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}

function cellsOf(record: RecordFile<Single | Table>): PlacedFigure[] {
  const { data } = record;
  const [folder] = record.id.split('/') as [string];
  if (!('cells' in data)) return [place(record, folder, undefined, undefined)];
  return Object.entries(data.cells).map(([name, cell]) => place(record, folder, name, cell));
}

function place(
  record: RecordFile<Single | Table>,
  folder: string,
  name: string | undefined,
  cell: Cell | undefined,
): PlacedFigure {
  const { data } = record;
  const id = name === undefined ? record.id : `${record.id}#${name}`;
  const shared = data.of === id ? undefined : data.of; // a table's default may name one of its own cells
  const value = cell ? cell.value : 'value' in data ? data.value : undefined;
  const own = name === undefined ? [] : ['cells', name];
  const raw = (field: string): boolean =>
    (cell as Record<string, unknown> | undefined)?.[field] !== undefined || record.spoilt([...own, field]);
  const path = (field: string): Path =>
    name !== undefined && raw(field)
      ? [...own, field]
      : name !== undefined && field === 'value'
        ? [...own, field]
        : [field];
  const optional = {
    value,
    unit: cell?.unit ?? data.unit,
    of: cell?.of ?? shared,
    locator: data.locator,
    asPrinted: cell?.asPrinted ?? data.asPrinted,
    note: cell?.note ?? data.note,
    why: data.why,
    derived: data.derived,
  };
  const figure = {
    id,
    source: folder,
    what: data.what,
    kind: data.kind,
    rig: { ...data.rig, ...cell?.rig },
    study: cell?.study ?? data.study ?? folder,
    standing: data.standing,
    lowered: [...(data.lowered ?? []), ...(cell?.lowered ?? [])],
    checked: data.checked,
    ...Object.fromEntries(Object.entries(optional).filter(([, v]) => v !== undefined)),
  } as ResolvedFigure;
  return {
    figure,
    record,
    ...(name === undefined ? {} : { cell: name }),
    path,
    at: (field) =>
      field === undefined ? (name === undefined ? record.at() : record.keyAt(own)) : record.at(path(field)),
    lacks: (field) =>
      figure[field as keyof ResolvedFigure] === undefined && !record.spoilt([...own, field]) && !record.spoilt([field]),
  };
}

/** Where the pulls of a series stand: beside its record. */
export const pullsFileOf = (record: Pick<RecordFile<SeriesRecord>, 'file'>): string => record.file.replace(/\.ya?ml$/, '.csv');

/** Whether a series stands among the invented examples. */
export const isInvented = (record: Pick<RecordFile<SeriesRecord>, 'file'>): boolean => record.file.startsWith('data/demo/');

/** Folder of sources that a figure's address names. */
export function sourceOf(address: string): string {
  return address.split('/')[0] as string;
}
