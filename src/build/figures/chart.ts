/** From figures to the rows of the chart: every measured force, and every measured share with its denominator kept apart. */
import { type Axis, axisFor, type Lane, laneOf, largestOf, type Mark } from '../../charts/figures-chart.ts';
import { toModelUnit } from '../../evidence/force.ts';
import { DENOMINATORS, RIGGINGS, type Value } from '../../records/schema.ts';
import { facetPath } from './facets.ts';
import { isForceItself, isShare, type ShareKind, shareKind } from './meaning.ts';
import type { ShownFigure } from './figures.ts';
import { figurePath } from '../site.ts';
import { denominatorWords, formWords, materialWords, riggingWords } from '../words.ts';

/** One lane with its name. */
export interface ChartRow {
  name: string;
  /** Page with the figures of this row as a table. */
  path: string;
  figures: number;
  studies: number;
  lane: Lane;
  /** Material of the row's pieces; absent where the source names none. */
  material?: string;
}

/** Rows of one rigging. */
export interface ChartGroup { name: string; path?: string; rigging?: string; rows: ChartRow[] }

/** A table of lanes on one axis. */
export interface Chart {
  id: string;
  title: string;
  unit: string;
  axis: Axis;
  groups: ChartGroup[];
  /** Over all rows: figures, and those that print every pull. */
  figures: number;
  raw: number;
  /** Rows whose rigging is stated: kinds of rig. */
  rigs: number;
  /** Kinds of rig that rest on one study. */
  alone: number;
}

/** All charts, and how many forces and shares speak of a scatter, a difference, a rating or a length, and are not drawn. */
export interface Charts { forces: Chart; shares: Chart[]; notDrawn: number }

/** Ends between which the axis of forces ends, kN: what lies beyond is an arrow with its number. */
const FORCES_END = [10, 60] as const;
/** Ends between which the axes of shares end, percent: the whole is always on them, so that they look alike. */
const SHARES_END = [100, 150] as const;

/** A value as a mark, every number times `scale`; null for words. */
export function markOf(value: Value, scale: number): Mark | null {
  const turn = (x: number): number => Number((x * scale).toPrecision(4));
  if (typeof value === 'number') return { kind: 'one', at: turn(value) };
  if ('tests' in value) return { kind: 'pulls', broken: value.tests.map(turn), held: (value.censored ?? []).map(turn) };
  if ('mean' in value) return { kind: 'mean', at: turn(value.mean), n: value.n ?? null };
  if ('low' in value) return { kind: 'range', low: turn(value.low), high: turn(value.high), n: value.n ?? null };
  if ('atLeast' in value) return { kind: 'atLeast', at: turn(value.atLeast), n: value.n ?? null };
  if ('atMost' in value) return { kind: 'atMost', at: turn(value.atMost), n: value.n ?? null };
  return null;
}

interface Drawn { figure: ShownFigure; mark: Mark }

/** Material, form and state of the piece, in words: "HMPE sewn loop, used". */
function pieceName({ rig }: ShownFigure): string {
  const piece = [rig.material && materialWords(rig.material), rig.form && formWords(rig.form)].filter(Boolean).join(' ') || 'piece not stated';
  const besides = [rig.state === 'new' ? undefined : rig.state, rig.pull === 'slow' ? undefined : rig.pull && `${rig.pull} pull`.replace('drop pull', 'in a drop')];
  return [piece, ...besides].filter(Boolean).join(', ');
}

/** What a figure stands under: its rigging; else whether it was a fall or a pull. */
function groupOf({ rig }: ShownFigure): { order: number; name: string; path?: string; rigging?: string } {
  if (rig.method) return { order: RIGGINGS.indexOf(rig.method), rigging: rig.method, name: riggingWords(rig.method), path: facetPath('rigging', rig.method) };
  return rig.pull === 'drop' ? { order: RIGGINGS.length + 1, name: 'falls, rigging not stated' } : { order: RIGGINGS.length, name: 'rigging not stated' };
}

/** A row: of one rigging the pieces, without a rigging the records. */
const rowOf = (figure: ShownFigure): { name: string; path: string } => (figure.rig.method
  ? { name: pieceName(figure), path: facetPath('rigging', figure.rig.method) }
  : { name: figure.what, path: figurePath(figure.record) });

const materialOf = ({ rig }: ShownFigure): { material?: string } => (rig.material === undefined ? {} : { material: rig.material });

const studiesIn = (drawn: readonly Drawn[]): number => new Set(drawn.map(({ figure }) => figure.study)).size;

function chartOf(id: string, title: string, unit: string, drawn: readonly Drawn[], [least, most]: readonly [number, number]): Chart {
  const axis = axisFor(Math.max(least, largestOf(drawn.map(({ mark }) => mark))), most);
  const ofGroups = Map.groupBy(drawn, ({ figure }) => groupOf(figure).name);
  const groups = [...ofGroups.values()]
    .map((members) => ({ ...groupOf((members[0] as Drawn).figure), members }))
    .sort((a, b) => a.order - b.order)
    .map(({ name, path, rigging, members }): ChartGroup => ({
      name,
      ...(path === undefined ? {} : { path }),
      ...(rigging === undefined ? {} : { rigging }),
      rows: [...Map.groupBy(members, ({ figure }) => rowOf(figure).name)].sort(([a], [b]) => a.localeCompare(b, 'en')).map(([row, of]) => ({
        ...rowOf((of[0] as Drawn).figure), ...materialOf((of[0] as Drawn).figure), name: row, figures: of.length, studies: studiesIn(of), lane: laneOf(of.map(({ mark }) => mark), axis),
      })),
    }));
  const rigs = groups.flatMap((group) => (group.path === undefined ? [] : group.rows));
  return {
    id, title, unit, axis, groups, figures: drawn.length, raw: drawn.filter(({ mark }) => mark.kind === 'pulls').length,
    rigs: rigs.length, alone: rigs.filter((row) => row.studies === 1).length,
  };
}

/** What the charts show, as a sentence: its first words follow the counts. Null where no rigging is stated at all. */
export function finding(charts: readonly Chart[]): string | null {
  const sum = (of: (chart: Chart) => number): number => charts.reduce((total, chart) => total + of(chart), 0);
  const rigs = sum(({ rigs }) => rigs);
  if (rigs === 0) return null;
  const alone = sum((chart) => chart.alone);
  const much = 2 * alone > rigs ? 'Most kinds of rig were' : 'Of the kinds of rig, some were';
  return `${much} measured in one study only: ${alone} of ${rigs}. Of ${sum(({ figures }) => figures)} figures, ${sum(({ raw }) => raw)} print each pull`;
}

/** Heading of the shares of one denominator. */
const SHARE_TITLES: Record<Exclude<ShareKind, 'other'>, string> = { kept: 'Strength kept, of ', lost: 'Strength lost, of ' };

/**
 * The charts of some figures; of these only the measured count.
 * @param withTaught rules and teaching ranges are drawn too, lighter
 */
export function chartsOf(figures: readonly ShownFigure[], withTaught = false): Charts {
  const forces: Drawn[] = [];
  const shares = new Map<string, { title: string; order: number; drawn: Drawn[] }>();
  let notDrawn = 0;
  for (const figure of figures) {
    const scale = toModelUnit(figure.unit);
    const isTaught = withTaught && figure.kind === 'rule';
    if ((figure.kind !== 'measured' && !isTaught) || figure.value === undefined || scale === null) continue;
    const plain = markOf(figure.value, isShare(figure) ? 100 * scale : scale);
    if (!plain) continue;
    const mark: Mark = isTaught ? { ...plain, taught: true } : plain;
    if (!isShare(figure)) {
      if (isForceItself(figure)) forces.push({ figure, mark });
      else notDrawn += 1;
      continue;
    }
    const kind = shareKind(figure);
    if (kind === 'other' || figure.of === undefined) {
      notDrawn += 1;
      continue;
    }
    const isNamed = !figure.of.includes('/');
    const key = `${kind}-of-${isNamed ? figure.of : 'another-figure'}`;
    const order = (kind === 'lost' ? 100 : 0) + (isNamed ? (DENOMINATORS as readonly string[]).indexOf(figure.of) : 50);
    const known = shares.get(key) ?? { title: SHARE_TITLES[kind] + (isNamed ? denominatorWords(figure.of) : 'another figure, each of its own'), order, drawn: [] };
    known.drawn.push({ figure, mark });
    shares.set(key, known);
  }
  return {
    forces: chartOf('forces', 'Forces', 'kN', forces, FORCES_END),
    shares: [...shares].sort(([, a], [, b]) => a.order - b.order).map(([key, { title, drawn }]) => chartOf(key, title, '%', drawn, SHARES_END)),
    notDrawn,
  };
}
