/** Series of breaks of the project: which figures have one, and what their records leave to the source. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { ROOT } from '../support/step.ts';
import { filesUnder } from '../support/tree.ts';

const FORCES = ['kN', 'N', 'daN', 'kgf', 'lbf'];
type Value = { tests?: number[]; censored?: number[] };
interface Figure { unit?: string; value?: Value; cells?: Record<string, { unit?: string; value: Value }> }
const read = <T>(path: string): T => parse(readFileSync(join(ROOT, path), 'utf8')) as T;

/** Values of two forces or more that a source prints break by break, read here from the figures themselves. */
const wanted = filesUnder('data/figures').filter((path) => path.endsWith('.yaml')).flatMap((path) => {
  const { unit, value, cells } = read<Figure>(path);
  const id = path.replace(/^data\/figures\/|\.yaml$/g, '');
  const values: [string, string | undefined, Value | undefined][] = cells
    ? Object.entries(cells).map(([name, cell]) => [`${id}#${name}`, cell.unit ?? unit, cell.value])
    : [[id, unit, value]];
  return values.filter(([, of, one]) => FORCES.includes(of ?? '') && (one?.tests?.length ?? 0) + (one?.censored?.length ?? 0) > 1).map(([address]) => address);
});
/** Forces read one by one in which nothing broke: loads on a rope that runs. */
const LOADS = ['prattley-2016/carabiner#pull'];
const series = filesUnder('data/series').filter((path) => path.endsWith('.yaml')).map((path) => read<{ figure?: string; beside?: { series: string }[] }>(path));

test('every figure of two single breaks or more, in a unit of force, has a series with a page', () => {
  const have = series.map(({ figure }) => figure);
  expect(wanted.filter((address) => !have.includes(address) && !LOADS.includes(address)), 'write data/series/<id>.yaml and .csv for it: DEVELOPERS.md, "Add a series"').toEqual([]);
  expect(wanted.length).toBeGreaterThan(10);
});

test('a published series stands beside series of one source alone, as the laboratory and the lot must be one', () => {
  const sourceOf = (id: string): string => String(read<{ figure?: string }>(`data/series/${id}.yaml`).figure).split('/')[0] as string;
  // One laboratory posted its sewn and its knotted loops of one spool under two names; both figures name the same study.
  const study = (source: string): string => (['harmston-1999', 'jones-1999', 'dimeo-1999'].includes(source) ? 'laboratory-h' : source);
  const pairs = series.flatMap(({ figure, beside }) => (beside ?? []).map((one) => [String(figure).split('/')[0] as string, sourceOf(one.series)] as const));
  expect(pairs.length).toBeGreaterThan(5);
  expect(pairs.filter(([a, b]) => study(a) !== study(b))).toEqual([]);
});
