/** The one place that joins records to the engines: reads `data/` and gives what a comparison needs. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ClassValue, classValues } from '../evidence/classes.ts';
import { type Observation, observe } from '../evidence/observation.ts';
import { certaintyOf } from '../records/certainty.ts';
import { type Records, readAll } from '../records/read.ts';
import type { GapRecord } from '../records/schema.ts';
import type { Evidence, Figure } from '../strength/types.ts';
import { comparedRules, verdictRules } from './retirement-rules.ts';

/**
 * The project's folder: npm scripts, the build and the tests all run there. (The module's own address is no guide: the
 * build bundles it into another folder.)
 */
export const ROOT = process.cwd();
/** Number of the model; raised when the same evidence gives other answers, with a line on `/changes/`. */
export const MODEL = 2;

/** What stands for the version before the first is frozen. */
const UNRELEASED = 'unreleased';

/** Version of the newest frozen evidence, or `unreleased` before the first. */
export function newestVersion(root = ROOT): string {
  const index = join(root, 'data/versions/index.json');
  if (!existsSync(index)) return UNRELEASED;
  const versions = JSON.parse(readFileSync(index, 'utf8')) as { version: string }[];
  return versions.at(-1)?.version ?? UNRELEASED;
}

/**
 * The newest version where the records are still those that it froze; with a plus sign where they have changed since, so
 * that no page names a version whose numbers it does not show.
 */
function versionOf(evidence: Evidence, root: string): string {
  const version = newestVersion(root);
  if (version === UNRELEASED) return version;
  const frozen = (JSON.parse(readFileSync(join(root, 'data/versions', `${version}.json`), 'utf8')) as { evidence: Evidence }).evidence;
  const text = (e: Evidence): string => JSON.stringify({ ...e, version });
  return text(frozen) === text(evidence) ? version : `${version}+`;
}

/** Twelve figures are far more than an estimate holds, and every machine's logarithms agree on them. */
const round = (x: number): number => Number(x.toPrecision(12));

function roundedObservation(seen: Observation | null): Observation | null {
  if (!seen) return null;
  const { pulls } = seen;
  return {
    ...seen, logMean: round(seen.logMean), cv: seen.cv === null ? null : round(seen.cv),
    ...(pulls ? { pulls: { broken: pulls.broken.map(round), held: pulls.held.map(round) } } : {}),
  };
}

function rounded(value: ClassValue): ClassValue {
  const pair = (ends: readonly [number, number] | null): [number, number] | null => ends && [round(ends[0]), round(ends[1])];
  return { ...value, cv: round(value.cv), tau: round(value.tau), cvInterval: pair(value.cvInterval), tauInterval: pair(value.tauInterval) };
}

/** Of a gap the engine reads what it blocks and what is nearest; question and test stand on its page. */
const asRead = (gaps: Readonly<Record<string, GapRecord>>): Evidence['gaps'] =>
  Object.fromEntries(Object.entries(gaps).map(([id, { blocks, nearest }]) => [id, { blocks, nearest }]));

/** Gaps that the comparison asks: a question of another page leaves none of its cells empty. */
const compared = (gaps: Readonly<Record<string, GapRecord>>): Record<string, GapRecord> =>
  Object.fromEntries(Object.entries(gaps).filter(([, { page }]) => page === undefined));

/**
 * What the engine reads of some records, with no version yet. Only figures that a factor, method or gap names go in; the
 * classes go in as values. Throws RangeErrors that name the record at fault.
 */
export function evidenceOf(records: Records): Evidence {
  const plain = <T>(files: Map<string, { data: T }>): Record<string, T> =>
    Object.fromEntries([...files].sort(([a], [b]) => (a < b ? -1 : 1)).map(([id, file]) => [id, file.data]));
  const factors = plain(records.factors);
  const methods = plain(records.methods);
  const gaps = compared(plain(records.gaps));
  const named = new Set<string>();
  for (const factor of Object.values(factors)) {
    for (const id of factor.from) named.add(id);
    if (factor.floor) named.add(factor.floor);
  }
  for (const method of Object.values(methods)) {
    for (const id of [...method.shown, ...method.apart.flatMap((reason) => [...reason.figures, ...reason.published])]) named.add(id);
  }
  for (const gap of Object.values(gaps)) for (const id of gap.nearest) named.add(id);
  const rules = comparedRules(verdictRules(records));
  for (const rule of Object.values(rules)) for (const id of rule.figures) named.add(id);
  const figures: Record<string, Figure> = {};
  for (const id of [...named].sort()) {
    const cell = records.cells.get(id)?.figure;
    if (!cell) throw new RangeError(`figure ${id}: named by a record, but there is none`);
    figures[id] = {
      id, source: cell.source, what: cell.what, kind: cell.kind, rig: cell.rig ?? {}, study: cell.study, standing: cell.standing,
      certainty: certaintyOf(cell),
      seen: roundedObservation(observe(cell)),
      ...(cell.value === undefined ? {} : { value: cell.value }),
      ...(cell.unit === undefined ? {} : { unit: cell.unit }),
      ...(cell.of === undefined ? {} : { of: cell.of }),
    };
  }
  const cells = Object.fromEntries([...records.cells].map(([id, { figure }]) => [id, figure]));
  const classes = Object.fromEntries(Object.entries(classValues(plain(records.classes), cells)).map(([id, value]) => [id, rounded(value)]));
  // What a factor leaves out stands on its page; the engine reads nothing of it.
  const read = Object.fromEntries(Object.entries(factors).map(([id, { leftOut: _leftOut, ...factor }]) => [id, factor]));
  return { version: '', model: MODEL, figures, factors: read, classes, methods, slings: plain(records.slings), gaps: asRead(gaps), rules };
}

let loaded: Evidence | null = null;

/** Evidence of the records on disk, with its version. */
export function loadEvidence(root = ROOT): Evidence {
  if (loaded && root === ROOT) return loaded;
  const records = readAll(root);
  if (records.methods.size === 0) throw new RangeError(`no methods below ${root}/data: run this from the project's folder`);
  if (records.faults.length > 0) throw new RangeError(`the records have ${records.faults.length} faults of shape; run npm run check`);
  const evidence = evidenceOf(records);
  evidence.version = versionOf(evidence, root);
  if (root === ROOT) loaded = evidence;
  return evidence;
}
