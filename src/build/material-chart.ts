/**
 * Small panels of what changes a material: one row a quantity, one panel a material, all panels of a row on one axis.
 * A row is one unit and one denominator; what is no number is left to the words beside it.
 */
import { type Axis, axisFor, type Lane, laneOf, largestOf, type Mark } from '../charts/figures-chart.ts';
import { toModelUnit } from '../evidence/force.ts';
import type { Topic } from '../records/schema.ts';
import { markOf } from './figures/chart.ts';
import { isForceItself, isShare, shareKind } from './figures/meaning.ts';
import type { ShownFigure } from './figures/figures.ts';
import { denominatorWords, formWords, riggingWords, unitSign } from './words.ts';

/** One material's panel of a row. */
export interface Panel { lane: Lane; figures: readonly ShownFigure[]; pieces: string }

/** A quantity on one axis, with a panel for each material that has a figure of it. */
export interface PanelRow {
  id: string;
  title: string;
  unit: string;
  axis: Axis;
  panels: ReadonlyMap<string, Panel>;
  /** Whether some figure is of a sewn sling: such a row is shown where it stands alone, too. */
  isOfSlings: boolean;
}

/** What a figure is drawn as: the row that it belongs to, what its numbers are multiplied by, and where the axis may end. */
interface Quantity { key: string; title: string; unit: string; scale: number; least: number; most: number }

/** Width of the narrowest panel, px: two stand side by side on the narrowest phone. */
const NARROWEST_PANEL = 118;

/** About so many numbers find room along a panel. */
const PANEL_TICKS = 3;

/** Several riggings that load one bearing alike. */
const OVER_BEARING: Readonly<Record<string, string>> = {
  'girth-hitch': 'girth hitch', basket: 'four strands over the bearing', doubled: 'four strands over the bearing', straight: 'one layer over the bearing', 'single-layer': 'one layer over the bearing',
};

/** What a force is of: over a bearing the rigging decides, else the piece. A requirement is apart from what was measured. */
function forceTitle({ rig, kind }: ShownFigure, topic: Topic): string {
  const what = topic === 'bearings' && rig.method ? (OVER_BEARING[rig.method] ?? riggingWords(rig.method)) : rig.form ? formWords(rig.form) : 'piece not stated';
  if (kind === 'required') return `Force that a new ${what} must reach`;
  return `Breaking force, ${what}${topic !== 'bearings' && rig.legs === 1 ? ', single strand' : ''}`;
}

/** What a share is a share of, in words. @param ofFigure finds the figure that a denominator names */
function wholeOf(of: string, ofFigure: (id: string) => ShownFigure): string {
  if (!of.includes('/')) return denominatorWords(of);
  const { rig, what } = ofFigure(of);
  return rig.method === 'straight' && rig.legs === 1 ? denominatorWords('strand') : rig.form === 'yarn' ? 'the same yarn, dry' : what;
}

function quantityOf(figure: ShownFigure, topic: Topic, ofFigure: (id: string) => ShownFigure): Quantity | null {
  const { unit, of, what, kind } = figure;
  if (unit === undefined) return null;
  const scale = toModelUnit(unit);
  if (scale !== null && isForceItself(figure)) {
    const title = forceTitle(figure, topic);
    return { key: title, title, unit: 'kN', scale, least: 30, most: 60 };
  }
  const share = scale !== null && isShare(figure) ? shareKind(figure) : 'other';
  if (scale !== null && share !== 'other' && of !== undefined) {
    const title = `Strength ${share}, of ${wholeOf(of, ofFigure)}`;
    return { key: title, title, unit: '%', scale: 100 * scale, least: 100, most: 100 };
  }
  if (unit === 'celsius') {
    const title = kind === 'constant' ? 'Melting point' : 'Highest temperature of use, in lifting';
    return { key: title, title, unit: unitSign(unit), scale: 1, least: 300, most: 300 };
  }
  if (unit === 'percent' && share === 'other' && /moisture/.test(figure.cell ?? '')) return { key: 'moisture', title: 'Moisture taken up, of its weight', unit: '%', scale: 1, least: 10, most: 100 };
  if (unit === 'percent' || unit === 'ratio') return share === 'lost' ? { key: `${what}`, title: what, unit: '%', scale: 1, least: 100, most: 100 } : null;
  // Years, cycles and lengths are told in words: alone on an axis they would say less.
  return null;
}

/** What the pieces of a panel are, in few words. */
function piecesOf(figures: readonly ShownFigure[]): string {
  return [...new Set(figures.flatMap(({ rig }) => (rig.form ? [formWords(rig.form)] : [])))].join(', ');
}

/**
 * The rows of one topic.
 * @param shown figures of each material, by its id; the order of materials and figures is kept
 * @param ofFigure finds the figure that a denominator names
 */
export function panelRows(topic: Topic, shown: ReadonlyMap<string, readonly ShownFigure[]>, ofFigure: (id: string) => ShownFigure): PanelRow[] {
  interface Drawn { material: string; figure: ShownFigure; mark: Mark }
  const rows = new Map<string, { quantity: Quantity; drawn: Drawn[] }>();
  for (const [material, figures] of shown) {
    for (const figure of figures) {
      const quantity = quantityOf(figure, topic, ofFigure);
      const mark = quantity && figure.value !== undefined ? markOf(figure.value, quantity.scale) : null;
      if (!quantity || !mark) continue;
      const row = rows.get(quantity.key) ?? { quantity, drawn: [] };
      row.drawn.push({ material, figure, mark: figure.kind === 'measured' || figure.kind === 'constant' ? mark : { ...mark, taught: true } });
      rows.set(quantity.key, row);
    }
  }
  return [...rows.values()].map(({ quantity: { title, unit, least, most }, drawn }, i) => {
    const largest = Math.max(least, largestOf(drawn.map(({ mark }) => mark)));
    // Forces have one of two axes, so that rows compare by eye.
    const axis = axisFor(unit === 'kN' && largest > least ? most : largest, most, PANEL_TICKS);
    const ofMaterials = Map.groupBy(drawn, ({ material }) => material);
    const panels = new Map([...ofMaterials].map(([material, own]): [string, Panel] => {
      const figures = own.map(({ figure }) => figure);
      return [material, { lane: laneOf(own.map(({ mark }) => mark), axis, NARROWEST_PANEL), figures, pieces: piecesOf(figures) }];
    }));
    // Where every panel is of the same kind of piece, the title says it or nothing is said.
    if (new Set([...panels.values()].map(({ pieces }) => pieces)).size === 1) for (const panel of panels.values()) panel.pieces = '';
    return { id: `${topic}-${i + 1}`, title, unit, axis, panels, isOfSlings: drawn.some(({ figure }) => figure.rig.form === 'sewn-loop') };
  });
}

/** Rows in which two materials can be compared, and rows of sewn slings, which are what this site is about. */
export function rowsToCompare(rows: readonly PanelRow[]): PanelRow[] {
  return rows.filter(({ panels, isOfSlings }) => panels.size > 1 || isOfSlings);
}
