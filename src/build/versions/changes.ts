/**
 * What changed from one frozen version of the evidence to the next: worked out from the two files alone, so that nothing
 * of it is written by hand and a build can work it out again. What people add to it, the reason, stands in
 * `data/changes/<version>.yaml`.
 */
import { z } from 'zod';
import { formatFault } from '../../records/fault.ts';
import type { Moved, Split } from '../../records/schema.ts';
import { shapeFaults } from '../../records/shape.ts';
import { parseYaml } from '../../records/yaml.ts';
import type { Evidence } from '../../strength/types.ts';
import type { FrozenVersion, GoneFigure, ShownAnswer } from './versions.ts';

/** Collections of the evidence, in the order in which they are listed. */
export const READ_COLLECTIONS = ['figures', 'factors', 'classes', 'methods', 'slings', 'gaps', 'rules'] as const;
export type ReadCollection = (typeof READ_COLLECTIONS)[number];

/** One field of a record: what it was and what it is. The side on which the field is absent is left out. */
export interface FieldChange { field: string; was?: unknown; now?: unknown }

/** What became of the records of one collection, as the engine reads them. Ids are in order. */
export interface CollectionChanges {
  added: string[];
  changed: { id: string; fields: FieldChange[] }[];
  /** Read before and not now. Of figures: without those that moved or were withdrawn. */
  dropped: string[];
  /** Fields that no record had before and all have now: the engine reads more, and no record changed by it. */
  newlyRead: string[];
  /** Fields that all records had before and none has now. */
  noLongerRead: string[];
}

/** A figure that moved or was split. */
export interface MovedFigure {
  id: string;
  to: string[];
  on: string;
  why: string;
  /** Its values that the engine read: old and new address, and what changed on the way. `now` is null where it reads them no longer. */
  read: { was: string; now: string | null; fields: FieldChange[] }[];
}

export interface WithdrawnFigure {
  id: string;
  on: string;
  why: string;
  was: string;
  /** Its values that the engine read. */
  read: string[];
}

/** How far one shown number of one row moved. */
export interface Step {
  /** Path of the comparison. */
  path: string;
  of: 'attachment' | 'rig';
  at: 'low' | 'middle' | 'high';
  was: string;
  now: string;
  /** Without its sign. */
  kn: number;
}

/** How a method's shown rows moved, over the prebuilt comparisons that both versions have. */
export interface MovedMethod {
  method: string;
  /** Comparisons in which both versions show it. */
  compared: number;
  /** Paths of those in which anything shown of it differs. */
  moved: string[];
  /** How many have numbers now and had none, and the other way round. */
  gained: number;
  lost: number;
  /** Rows that stand elsewhere on the page, by where they stood and stand. */
  regrouped: { was: { state: string; group: string }; now: { state: string; group: string }; paths: string[] }[];
  /** The largest step of a shown number; the first of equals. Null where no number moved. */
  largest: Step | null;
}

export interface VersionChanges {
  version: string;
  model: number;
  /** Version and model that it is compared with; null for the first. */
  since: { version: string; model: number } | null;
  records: Record<ReadCollection, CollectionChanges>;
  moved: MovedFigure[];
  withdrawn: WithdrawnFigure[];
  answers: {
    /** Prebuilt comparisons of both versions, of the newer alone, and of the older alone. */
    compared: number;
    added: number;
    dropped: number;
    /** Methods of which anything moved, in the order of their ids. */
    methods: MovedMethod[];
  };
}

/**
 * Everything that differs between two frozen versions. Pure: the same two files give the same list.
 * @param older the version before, or null for the first
 */
export function changesBetween(older: Readonly<FrozenVersion> | null, newer: Readonly<FrozenVersion>): VersionChanges {
  const gone = newlyGone(older?.gone ?? {}, newer.gone ?? {});
  const was = older?.evidence.figures ?? {};
  const now = newer.evidence.figures;
  const moved = gone.flatMap(([id, record]) => (record.kind === 'withdrawn' ? [] : [movedFigure(id, record, was, now)]));
  const withdrawn = gone.flatMap(([id, record]): WithdrawnFigure[] =>
    record.kind === 'withdrawn' ? [{ id, on: record.on, why: record.why, was: record.was, read: cellsOf(id, was) }] : []);
  const records = Object.fromEntries(READ_COLLECTIONS.map((collection) => [
    collection, collectionChanges(older?.evidence[collection] ?? {}, newer.evidence[collection] ?? {}),
  ])) as VersionChanges['records'];
  // A figure that moved is neither lost nor new, and a withdrawn one is more than lost.
  const explained = new Set([...moved.flatMap(({ read }) => read.map((one) => one.was)), ...withdrawn.flatMap(({ read }) => read)]);
  const arrived = new Set(moved.flatMap(({ read }) => read.flatMap((one) => one.now ?? [])));
  records.figures.dropped = records.figures.dropped.filter((id) => !explained.has(id));
  records.figures.added = records.figures.added.filter((id) => !arrived.has(id));
  return {
    version: newer.evidence.version,
    model: newer.evidence.model,
    since: older && { version: older.evidence.version, model: older.evidence.model },
    records,
    moved,
    withdrawn,
    answers: answerChanges(older?.answers ?? {}, newer.answers),
  };
}

/** True where the older version already shows everything that the newer one does. */
export function isNothing({ since, records, moved, withdrawn, answers, model }: VersionChanges): boolean {
  return since !== null && since.model === model && moved.length + withdrawn.length + answers.methods.length + answers.added + answers.dropped === 0
    && Object.values(records).every((one) => Object.values(one).every((list: unknown[]) => list.length === 0));
}

const inOrder = (ids: Iterable<string>): string[] => [...ids].sort((a, b) => (a < b ? -1 : 1));

/** Text of a value in which the order of fields does not matter. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) => (part && typeof part === 'object' && !Array.isArray(part)
    ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
    : part)) ?? 'absent';
}
const isSame = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b);

type Fields = Readonly<Record<string, unknown>>;

/** Fields that differ, without those that are left out. */
function fieldsBetween(was: Fields, now: Fields, except: ReadonlySet<string> = new Set()): FieldChange[] {
  const names = inOrder(new Set([...Object.keys(was), ...Object.keys(now)]));
  return names.filter((field) => !except.has(field) && !isSame(was[field], now[field])).map((field) => ({
    field,
    ...(was[field] === undefined ? {} : { was: was[field] }),
    ...(now[field] === undefined ? {} : { now: now[field] }),
  }));
}

function collectionChanges(was: Readonly<Record<string, object>>, now: Readonly<Record<string, object>>): CollectionChanges {
  const fieldsIn = (records: Readonly<Record<string, object>>) => Object.values(records).map((record) => new Set(Object.keys(record)));
  const [before, after] = [fieldsIn(was), fieldsIn(now)];
  const all = (records: Set<string>[]) => inOrder(new Set(records.flatMap((fields) => [...fields])));
  /** Fields of all records on one side and of none on the other. */
  const wholly = (on: Set<string>[], other: Set<string>[]) =>
    (on.length === 0 || other.length === 0 ? [] : all(on).filter((field) => on.every((fields) => fields.has(field)) && !other.some((fields) => fields.has(field))));
  const newlyRead = wholly(after, before);
  const noLongerRead = wholly(before, after);
  const except = new Set([...newlyRead, ...noLongerRead]);
  const [old, young] = [inOrder(Object.keys(was)), inOrder(Object.keys(now))];
  return {
    added: young.filter((id) => !(id in was)),
    changed: young.filter((id) => id in was)
      .map((id) => ({ id, fields: fieldsBetween(was[id] as Fields, now[id] as Fields, except) }))
      .filter(({ fields }) => fields.length > 0),
    dropped: old.filter((id) => !(id in now)),
    newlyRead,
    noLongerRead,
  };
}

/** Records that say something of a figure's absence which the older version did not say. */
function newlyGone(was: Readonly<Record<string, GoneFigure>>, now: Readonly<Record<string, GoneFigure>>): [string, GoneFigure][] {
  return inOrder(Object.keys(now)).filter((id) => !isSame(was[id], now[id])).map((id) => [id, now[id] as GoneFigure]);
}

/** Addresses of one record among figures: its own, or those of its cells. */
function cellsOf(record: string, figures: Evidence['figures']): string[] {
  return inOrder(Object.keys(figures)).filter((id) => id.split('#')[0] === record);
}

/** What an address is by, and no property of the figure there. */
const PLACE = new Set(['id', 'source']);

function movedFigure(id: string, record: Moved | Split, was: Evidence['figures'], now: Evidence['figures']): MovedFigure {
  const to = [record.to].flat();
  const read = cellsOf(id, was).map((address) => {
    const cell = address.split('#')[1];
    const targets = to.flatMap((target) => [target, ...(cell === undefined ? [] : [`${target}#${cell}`])]).filter((target) => target in now);
    // Where one value became several, none of them is the old one with a change.
    const target = targets.length === 1 ? (targets[0] as string) : null;
    return { was: address, now: target, fields: target === null ? [] : fieldsBetween(was[address] as unknown as Fields, now[target] as unknown as Fields, PLACE) };
  });
  return { id, to, on: record.on, why: record.why, read };
}

const PLACES = ['low', 'middle', 'high'] as const;

function stepsOf(path: string, was: ShownAnswer, now: ShownAnswer): Step[] {
  return (['attachment', 'rig'] as const).flatMap((of) => PLACES.flatMap((at, i): Step[] => {
    const [before, after] = [was[of]?.[i], now[of]?.[i]];
    if (before === undefined || after === undefined || before === after) return [];
    // Both have one decimal; so has their difference.
    return [{ path, of, at, was: before, now: after, kn: Math.round(Math.abs(Number(after) - Number(before)) * 10) / 10 }];
  }));
}

function answerChanges(was: FrozenVersion['answers'], now: FrozenVersion['answers']): VersionChanges['answers'] {
  const both = Object.keys(now).filter((path) => path in was);
  const methods = new Map<string, MovedMethod>();
  for (const path of both) {
    const before = new Map((was[path] as ShownAnswer[]).map((row) => [row.method, row]));
    for (const row of now[path] as ShownAnswer[]) {
      const old = before.get(row.method);
      if (!old) continue;
      const method = methods.get(row.method) ?? { method: row.method, compared: 0, moved: [], gained: 0, lost: 0, regrouped: [], largest: null };
      methods.set(row.method, method);
      method.compared += 1;
      if (isSame(old, row)) continue;
      method.moved.push(path);
      const hasNumbers = (answer: ShownAnswer) => answer.attachment !== null || answer.rig !== null;
      if (!hasNumbers(old) && hasNumbers(row)) method.gained += 1;
      if (hasNumbers(old) && !hasNumbers(row)) method.lost += 1;
      const places = { was: { state: old.state, group: old.group }, now: { state: row.state, group: row.group } };
      if (!isSame(places.was, places.now)) {
        const known = method.regrouped.find((one) => isSame({ was: one.was, now: one.now }, places));
        if (known) known.paths.push(path);
        else method.regrouped.push({ ...places, paths: [path] });
      }
      for (const step of stepsOf(path, old, row)) if (step.kn > (method.largest?.kn ?? 0)) method.largest = step;
    }
  }
  return {
    compared: both.length,
    added: Object.keys(now).length - both.length,
    dropped: Object.keys(was).filter((path) => !(path in now)).length,
    methods: [...methods.values()].filter(({ moved }) => moved.length > 0).sort((a, b) => (a.method < b.method ? -1 : 1)),
  };
}

const words = z.string().min(1);
/** What people say of a version, besides the generated list. */
export const versionWords = z.strictObject({
  /** What a raised model number computes otherwise, and why. */
  model: words.optional(),
  /** Reasons for what changed, a sentence each. */
  says: z.array(words).default([]),
});
export type VersionWords = z.infer<typeof versionWords>;

/**
 * Reads the words about a version.
 * @param file its path in the project, for messages
 * Throws a RangeError with every fault, each with its place.
 */
export function parseVersionWords(file: string, text: string): VersionWords {
  const yaml = parseYaml(file, text);
  const parsed = versionWords.safeParse(yaml.data);
  const faults = [...yaml.faults, ...(parsed.success ? [] : shapeFaults('version', versionWords, parsed.error, yaml).map(({ fault }) => fault))];
  if (faults.length > 0 || !parsed.success) throw new RangeError(faults.map(formatFault).join('\n'));
  return parsed.data;
}
