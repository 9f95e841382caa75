/**
 * Every row of the evidence that was collected has an outcome in `collected-evidence.csv`: a record or cells of its own
 * (`figure`), a rule of the check, the model or the law (`rule`), another row's record (`same-number`), or a reason why
 * nothing of it is published (`not-used`). Rows stand in the order of the collection. That the numbers are right is
 * the task of `second-reading.test.ts`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { RESERVED_SOURCES, readAll, sourceOf } from '../../src/records/read.ts';

/** Rows of the collection, counted in the collection itself and not in this list. */
const COLLECTED = 236;
const OUTCOMES = ['figure', 'rule', 'same-number', 'not-used'] as const;
type Outcome = (typeof OUTCOMES)[number];
interface Row { row: string; outcome: string; addresses: string[]; why: string }

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const HEAD = 'row,outcome,addresses,why';
/**
 * Records that are no part of the collection: exact definitions of units, what the title of a law says, and what was read
 * for the loads of falls (geometry of the standard drop, friction, a hitch that slips, limits of the equation).
 */
const BESIDE: readonly string[] = [
  'nist-sp-811/units', 'nist-sp-811/lengths-and-masses', 'eu-2016-425/eea-relevance',
  'wikipedia-standard-drop/geometry', 'wikipedia-standard-drop/fall-factor', 'wikipedia-fall-factor/geometry',
  'wikipedia-fall-factor/equation', 'delaney-2022/rope-over-bars', 'prattley-2016/carabiner', 'warner-1996/italian-hitch',
  'leuthaeusser-2015/limits', 'leuthaeusser-belayer/lifted',
];

const records = readAll(ROOT);
const rows = collected(readFileSync(new URL('./collected-evidence.csv', import.meta.url), 'utf8'));
const tableOf = (address: string): string => address.split('#')[0] ?? address;
const isFigure = (address: string): boolean => records.figures.has(address) || records.cells.has(address);

/** Reads the list. Throws a RangeError on another head, or on a line that has not its four fields. */
function collected(text: string): Row[] {
  const [head, ...lines] = text.trimEnd().split('\n');
  if (head !== HEAD) throw new RangeError(`collected-evidence.csv: the columns are ${head}`);
  return lines.map((line) => {
    const [row, outcome, addresses, why, ...more] = line.split(',');
    if (!row || !outcome || addresses === undefined || why === undefined || more.length > 0) {
      throw new RangeError(`collected-evidence.csv: cannot read ${line}`);
    }
    return { row, outcome, addresses: addresses.split(' ').filter(Boolean), why: why.trim() };
  });
}

test('every collected row stands once, with an outcome that is known', () => {
  const twice = rows.filter(({ row }, i) => rows.findIndex((other) => other.row === row) < i).map(({ row }) => row);
  const unknown = rows.filter(({ outcome }) => !(OUTCOMES as readonly string[]).includes(outcome)).map(({ row }) => row);
  expect([...twice, ...unknown]).toEqual([]);
  expect(rows.length).toBe(COLLECTED);
  const counts = OUTCOMES.map((each) => `${rows.filter(({ outcome }) => outcome === each).length} ${each}`);
  console.log(`collected evidence: ${counts.join(', ')} of ${rows.length}`);
});

test('every address is a figure of the project, or for a rule a file of it', () => {
  const missing = rows.flatMap(({ row, outcome, addresses }) => addresses
    .filter((address) => !isFigure(address) && !(outcome === 'rule' && existsSync(`${ROOT}${address}`)))
    .map((address) => `${row}: ${address} does not exist`));
  expect(missing).toEqual([]);
});

test('every outcome has what it needs: an address where something is published, a reason where it is not plain', () => {
  const needs: Record<Outcome, { address: boolean; why: boolean }> = {
    figure: { address: true, why: false },
    rule: { address: true, why: true },
    'same-number': { address: true, why: true },
    'not-used': { address: false, why: true },
  };
  const faults = rows.flatMap(({ row, outcome, addresses, why }) => {
    const { address, why: reason } = needs[outcome as Outcome];
    return [
      ...(address === addresses.length > 0 ? [] : [`${row}: is ${outcome} with ${addresses.length} addresses`]),
      ...(reason && why === '' ? [`${row}: is ${outcome} without a reason`] : []),
    ];
  });
  expect(faults).toEqual([]);
});

test('a number that is said to be the same stands in the record of another row', () => {
  const carried = new Set(rows.filter(({ outcome }) => outcome === 'figure').flatMap(({ addresses }) => addresses.map(tableOf)));
  const orphans = rows.filter(({ outcome }) => outcome === 'same-number')
    .flatMap(({ row, addresses }) => addresses.filter((a) => !carried.has(tableOf(a))).map((a) => `${row}: ${a}`));
  expect(orphans).toEqual([]);
});

test('every record with a source comes from a collected row', () => {
  const named = new Set([...BESIDE, ...rows.flatMap(({ addresses }) => addresses.map(tableOf))]);
  const strays = [...records.figures.keys()].filter((id) => !RESERVED_SOURCES.includes(sourceOf(id)) && !named.has(id));
  expect(strays).toEqual([]);
});
