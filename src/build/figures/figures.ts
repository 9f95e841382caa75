/** Figures as pages show them: each address with its inherited fields, what it feeds, and why it was left out. */
import type { Cell, FigureRecord, LawRecord, Lowered, RigConditions, Single, Standing, Table, Unit, Value } from '../../records/schema.ts';
import { fallFigureAddresses } from '../fall-evidence.ts';
import { givesToFalls } from '../falls-page.ts';
import { type SiteRecords, siteRecords } from '../records.ts';
import { figurePath } from '../site.ts';

/** One addressable value. */
export interface ShownFigure {
  /** `source/result` or `source/result#cell`. */
  id: string;
  /** The record's id: `source/result`. */
  record: string;
  cell?: string;
  source: string;
  what: string;
  kind: Single['kind'];
  value?: Value | undefined;
  unit?: Unit | undefined;
  of?: string | undefined;
  rig: RigConditions;
  study: string;
  standing: Standing;
  locator?: string | undefined;
  checked: string;
  asPrinted?: string | undefined;
  lowered: Lowered[];
  note?: string | undefined;
  why?: string | undefined;
}

/** Steps that lower a figure's certainty, with the one that an unrecorded place in the source adds by itself. */
export function loweringSteps(figure: Pick<ShownFigure, 'lowered' | 'locator'>): Lowered[] {
  return figure.locator === 'not-recorded'
    ? [...figure.lowered, { by: 'method', steps: 1, why: 'the place in the source was not recorded' }]
    : figure.lowered;
}

/** True for records that hold values, false for those that only say where one went. */
export function isOrdinary(record: FigureRecord): record is Single | Table {
  return 'what' in record;
}

/** The addressable values of one record; a table gives one for each cell. */
export function valuesOf(id: string, record: Single | Table): ShownFigure[] {
  const source = id.split('/')[0] as string;
  const common = {
    record: id, source, what: record.what, kind: record.kind, standing: record.standing, locator: record.locator,
    checked: record.checked, study: record.study ?? source, why: record.why,
  };
  if (!('cells' in record)) {
    return [{
      ...common, id, value: record.value, unit: record.unit, of: record.of, rig: record.rig ?? {},
      asPrinted: record.asPrinted, lowered: record.lowered ?? [], note: record.note,
    }];
  }
  return Object.entries(record.cells).map(([cell, own]: [string, Cell]) => ({
    ...common, id: `${id}#${cell}`, cell, value: own.value, unit: own.unit ?? record.unit, of: own.of ?? record.of,
    rig: { ...record.rig, ...own.rig }, study: own.study ?? common.study, asPrinted: own.asPrinted,
    lowered: [...(record.lowered ?? []), ...(own.lowered ?? [])], note: own.note,
  }));
}

/**
 * Values that the model assumes, given the shape of figures: so that every assumed number has an address of its own
 * and a page with its reason. The ids begin with `assumed/`.
 */
export function assumedFigures(records: Pick<SiteRecords, 'factors' | 'classes' | 'methods'>, day: string): Map<string, Table> {
  const made = new Map<string, Table>();
  const table = (what: string, cells: Table['cells']): Table => ({ what, kind: 'assumed', standing: 'assumed', unit: 'ratio', checked: day, cells });
  for (const [id, factor] of records.factors) {
    const cells: Table['cells'] = {};
    const unit: Unit = factor.acts === 'loop' ? 'kN' : 'ratio';
    if (factor.assumed) {
      cells['range'] = { value: { low: factor.assumed.low, high: factor.assumed.high, kind: "author's interval" }, unit, note: `Nine in ten pieces are taken to lie in this range. ${factor.assumed.why}` };
    }
    if (factor.times) {
      cells['times'] = { value: factor.times.by, note: `Multiplier between what was tested and this link. ${factor.times.why}` };
      if (factor.times.spread > 0) cells['times-spread'] = { value: factor.times.spread, note: 'Spread of that multiplier: standard deviation of its natural logarithm.' };
    }
    if (factor.bridge) cells['bridge'] = { value: factor.bridge.spread, note: `Extra spread where the width is carried over: standard deviation of the natural logarithm. ${factor.bridge.why}` };
    factor.taken.forEach(({ figure, bearingMm, diameterMm, why }, i) => {
      const note = `Not printed in ${figure}, and read into it. ${why}`;
      if (bearingMm !== undefined) cells[`taken-bearing-${i + 1}`] = { value: bearingMm, unit: 'mm', note: `Bearing. ${note}` };
      if (diameterMm !== undefined) cells[`taken-diameter-${i + 1}`] = { value: diameterMm, unit: 'mm', note: `Diameter of the cord. ${note}` };
    });
    if (Object.keys(cells).length > 0) made.set(`assumed/factor-${id}`, table(factor.what, cells));
  }
  for (const [id, group] of records.classes) {
    const cells: Table['cells'] = {};
    if ('assumed' in group.cv) cells['cv'] = { value: group.cv.assumed, note: `Scatter between pieces, as a share of the mean. ${group.cv.why}` };
    cells['ceiling'] = { value: group.ceiling.cv, note: `The largest scatter that a series of this class may have. ${group.ceiling.why}` };
    if ('assumed' in group.tau) cells['tau'] = { value: group.tau.assumed, note: `Spread between laboratories: standard deviation of the natural logarithm. ${group.tau.why}` };
    made.set(`assumed/class-${id}`, table(group.what, cells));
  }
  for (const [id, { name, length }] of records.methods) {
    if (length.lessWidths === undefined) continue;
    made.set(`assumed/method-${id}`, table(`${name}: what knots and turns take off the finished length, in widths of the sling`, {
      length: { value: length.lessWidths, note: `Widths of tape, or diameters of cord. ${length.why ?? ''}` },
    }));
  }
  return made;
}

/** One place where a figure is used or refused. */
export interface Use { factor: string; what: string; why?: string }

/** A use that is no factor's: what the figure is there, the name of what uses it, and its page where it has one. */
export interface OtherUse {
  /** `class`: scatter or spread that the model shares out; `floor`: a minimum that it cuts at; `fall`: a constant of falls; the rest only show it. */
  kind: 'class' | 'floor' | 'fall' | 'rule' | 'route' | 'law' | 'material' | 'gap' | 'figure';
  says: string;
  name: string;
  path?: string;
}

/** Every figure of the site with what pages ask of it. */
export interface FigureBook {
  /** All records, those that the model's assumptions give included. */
  records: Map<string, FigureRecord>;
  /** Every addressable value by address. */
  values: Map<string, ShownFigure>;
  /** Factors that a figure feeds. */
  feeds: Map<string, Use[]>;
  /** Factors that leave it out, with the reason. */
  leftOut: Map<string, Use[]>;
  /** Methods whose record names it as shown, or as a reason. */
  methods: Map<string, string[]>;
  /** Everything else that names it. */
  others: Map<string, OtherUse[]>;
}

let cached: FigureBook | undefined;

/** The book of all figures. Reads the records once. */
export function figureBook(): FigureBook {
  if (cached) return cached;
  const all = siteRecords();
  const newest = [...all.figures.values()].map((record) => ('checked' in record ? record.checked : '')).sort().at(-1) || '2026-11-24';
  const records = new Map<string, FigureRecord>([...all.figures, ...assumedFigures(all, newest)].sort(([a], [b]) => (a < b ? -1 : 1)));
  const values = new Map<string, ShownFigure>();
  for (const [id, record] of records) {
    if (isOrdinary(record)) for (const value of valuesOf(id, record)) values.set(value.id, value);
  }
  const feeds = new Map<string, Use[]>();
  const leftOut = new Map<string, Use[]>();
  const methods = new Map<string, string[]>();
  const push = <T>(map: Map<string, T[]>, key: string, item: T): void => { map.set(key, [...(map.get(key) ?? []), item]); };
  for (const [id, factor] of all.factors) {
    for (const figure of factor.from) push(feeds, figure, { factor: id, what: factor.what });
    for (const { figure, why } of factor.leftOut) push(leftOut, figure, { factor: id, what: factor.what, why });
  }
  for (const [id, method] of all.methods) {
    for (const figure of new Set([...method.shown, ...method.apart.flatMap((reason) => [...reason.figures, ...reason.published])])) push(methods, figure, id);
  }
  const others = otherUses(all);
  for (const value of values.values()) {
    // A table that compares its own cells says so itself.
    if (value.of?.includes('/') && value.of.split('#')[0] !== value.record) {
      push(others, value.of, { kind: 'figure', says: value.unit === 'ratio' || value.unit === 'percent' ? 'is what this is a share of' : 'stands beside', name: value.what, path: figurePath(value.id) });
    }
  }
  for (const [id, record] of records) {
    if (!isOrdinary(record)) continue;
    for (const input of new Set(Object.values(record.derived?.inputs ?? {}))) push(others, input, { kind: 'figure', says: 'goes into', name: record.what, path: figurePath(id) });
  }
  cached = { records, values, feeds, leftOut, methods, others };
  return cached;
}

/** Uses by classes, required minimums, rules, routes, laws and gaps, in that order. */
function otherUses(all: SiteRecords): FigureBook['others'] {
  const others: FigureBook['others'] = new Map();
  const push = (address: string, use: OtherUse): void => { others.set(address, [...(others.get(address) ?? []), use]); };
  for (const [id, { what, cv, tau }] of all.classes) {
    const use = (says: string): OtherUse => ({ kind: 'class', says, name: what, path: `/model/factors/#class-${id}` });
    if ('from' in cv) for (const address of cv.from) push(address, use('gives scatter between pieces to the class'));
    if ('groups' in tau) {
      const named = tau.groups.flat().flatMap((each) => (typeof each === 'string' ? [each] : [each.figure, each.over]));
      for (const address of new Set(named)) push(address, use('gives spread between laboratories to the class'));
    }
  }
  for (const [id, { what, floor }] of all.factors) if (floor) push(floor, { kind: 'floor', says: 'is the required minimum in', name: what, path: `/model/factors/#factor-${id}` });
  for (const { name, floor } of all.slings.values()) if (floor) push(floor, { kind: 'floor', says: 'is the requirement behind the sling', name });
  for (const { what, figures, due } of all.rules.values()) {
    for (const address of new Set([...figures, ...(due ? [due.figure] : [])])) push(address, { kind: 'rule', says: 'stands behind the rule of retirement', name: what });
  }
  for (const [id, { name, figures }] of all.replacements) for (const address of figures) push(address, { kind: 'route', says: 'stands behind the route', name, path: `/replace/#${id}` });
  for (const { region, sentences } of all.law.values()) for (const address of new Set(sentences.flatMap(({ figures }) => figures))) push(address, { kind: 'law', says: 'stands behind', name: `what the law says (${REGIONS[region]})`, path: `/replace/#${region}` });
  for (const [id, { name, topics }] of all.materials) {
    const shown = new Set(Object.values(topics).flatMap(({ figures }) => figures));
    for (const address of shown) push(address, { kind: 'material', says: 'is shown with the material', name, path: `/materials/${id}/` });
  }
  for (const address of fallFigureAddresses()) push(address, { kind: 'fall', says: 'feeds', name: `what a fall loads: ${lowerFirst(givesToFalls(address) ?? '')}`, path: '/falls/#sources' });
  for (const [id, { question, nearest }] of all.gaps) for (const address of nearest) push(address, { kind: 'gap', says: 'is nearest to the open question', name: question, path: `/gaps/${id}/` });
  return others;
}

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const REGIONS: Record<LawRecord['region'], string> = { eu: 'European Union and European Economic Area', uk: 'United Kingdom', us: 'United States', elsewhere: 'elsewhere' };

/**
 * A figure by address. A table's own address, without a cell, gives its first cell's page with no value.
 * Throws RangeError that names the address when no record has it.
 */
export function figure(id: string): ShownFigure {
  const { values, records } = figureBook();
  const found = values.get(id);
  if (found) return found;
  const record = records.get(id);
  if (record && isOrdinary(record) && 'cells' in record) {
    const { cell: _cell, ...first } = valuesOf(id, record)[0] as ShownFigure;
    return { ...first, id, value: undefined };
  }
  throw new RangeError(`figure: no record has the address ${id}; moved and split ids are never referred to`);
}

/** True where a source says it in words and gives no number to compute with. */
export function isStatement({ value }: Pick<ShownFigure, 'value'>): boolean {
  return typeof value === 'object' && 'statement' in value;
}

/**
 * What a figure is of, in a few words, for a list in which it stands without its title; null for a statement, which
 * says so itself.
 */
export function figureLabel(shown: Pick<ShownFigure, 'value' | 'rig' | 'what'>): string | null {
  if (isStatement(shown)) return null;
  if (shown.rig.form === 'device' && shown.rig.bearing === 'plastic-bar') return "the plastic bar's own breaking load";
  return shown.what;
}

/** Every value with an address, in order of address. */
export function allFigures(): ShownFigure[] {
  return [...figureBook().values.values()];
}
