/** Published breaks over bearings and in knots, for the page that explains why both weaken a sling. */
import { bearingPanel, type BearingPanel, type BearingPoint } from '../../charts/bearing-chart.ts';
import { type Axis, axisFor } from '../../charts/figures-chart.ts';
import { SAME_BEARING_MM } from '../../evidence/bearing-place.ts';
import { factorValue } from '../../evidence/factor.ts';
import { toModelUnit } from '../../evidence/force.ts';
import type { Material } from '../../records/schema.ts';
import type { Evidence } from '../../strength/types.ts';
import { markOf } from '../figures/chart.ts';
import { isForceItself } from '../figures/meaning.ts';
import type { ShownFigure } from '../figures/figures.ts';

/** Materials that the reader chooses from, with their names; wire bends by itself. */
export const FIBRES = { hmpe: 'HMPE', nylon: 'nylon', polyester: 'polyester', aramid: 'aramid' } as const satisfies Partial<Record<Material, string>>;
export type Fibre = keyof typeof FIBRES;

/** Ways over a bearing, with their name over a panel, the riggings that load it so, and the numbers along the axis of forces, kN. */
export const OVER = [
  { id: 'girth-hitch', name: 'girth hitch', short: 'girth hitch', riggings: ['girth-hitch'], kilonewtons: [10, 20, 30] },
  { id: 'four-strands', name: 'basket, four strands', short: 'basket', riggings: ['basket', 'doubled'], kilonewtons: [20, 40, 60] },
  { id: 'one-layer', name: 'one layer', short: 'one layer', riggings: ['straight', 'single-layer'], kilonewtons: [10, 20, 30] },
] as const;
export type Over = (typeof OVER)[number];

/** Riggings of knots, in the order in which they are chosen. */
export const KNOTS = [
  'overhand-on-a-bight', 'figure-eight', 'overhand', 'bowline', 'clove-hitch', 'ring-bend-loop', 'overhand-bend', 'offset-bend', 'double-fishermans-loop',
  'triple-fishermans-loop', 'beer-knot-loop', 'fishermans-strand', 'half-hitches', 'sheet-bend', 'girth-sling-to-sling',
] as const;

const HEIGHT = 168;
/** Axis of bearings, mm. */
export const BEARINGS: Axis = axisFor(15, 15, 3);
/** Axis of a pin's diameter over that of a wire rope. */
export const RATIOS: Axis = axisFor(40, 40, 3);

/** A panel, its figures in order of bearing, and the bearings that were tested. */
export interface PanelOfBearings {
  id: string;
  panel: BearingPanel;
  height: number;
  axis: Axis;
  unit: string;
  figures: { figure: ShownFigure; bearing: number }[];
  tested: number[];
  /** Figures of the same way whose source does not say the bearing. */
  unplaced: ShownFigure[];
  /** Name of the sling for which the model draws its line; null where there is none. */
  lineFor: string | null;
  /** Whether its points are a table of the trade and no tests. */
  isTaught: boolean;
}

/** Whether a figure is a new piece of this fibre loaded this way, in a force of its own. */
const isOver = ({ kind, unit, value, rig, ...words }: ShownFigure, fibre: Fibre, { riggings }: Over): boolean =>
  kind === 'measured' && value !== undefined && isForceItself({ unit, ...words }) && rig.material === fibre && rig.state !== 'used' && rig.legs !== 1 &&
  rig.method !== undefined && (riggings as readonly string[]).includes(rig.method) && (rig.form === 'sewn-loop' || rig.form === 'tape');

/** The model's middle between two tested bearings for the first sling that was tested at both, else for one carried over; null where it has none. */
export function modelLine(evidence: Evidence, fibre: Fibre, { riggings }: Over): { sling: string; line: [number, number][] } | null {
  for (const isBridged of [false, true]) {
    for (const [id, factor] of Object.entries(evidence.factors)) {
      if (factor.along !== 'bearingMm' || factor.acts !== 'loop' || !factor.applies.materials?.includes(fibre) || !factor.applies.riggings?.some((one) => (riggings as readonly string[]).includes(one))) continue;
      const group = evidence.classes[factor.class];
      if (!group) continue;
      const bearings = [...new Set(factor.from.flatMap((address) => evidence.figures[address]?.rig.bearingMm ?? []))].sort((a, b) => a - b);
      for (const { name, material, form, widthMm } of Object.values(evidence.slings)) {
        const at = (bearingMm: number) => {
          const found = factorValue(id, factor, group, evidence.figures, { material, form, widthMm, bearingMm });
          return 'value' in found ? found.value : null;
        };
        const [thin, thick] = [bearings[0], bearings.at(-1)];
        if (thin === undefined || thick === undefined) continue;
        const middle = at((thin + thick) / 2);
        if (!middle?.between || middle.bridged !== isBridged) continue;
        const steps = 16;
        const line = Array.from({ length: steps + 1 }, (_, i) => thin + ((thick - thin) * i) / steps).map((mm): [number, number] => [mm, Math.exp(at(mm)?.mu ?? Number.NaN)]);
        return { sling: name, line };
      }
    }
  }
  return null;
}

/** The panel of one fibre, loaded one way over a bearing. */
export function bearingPanelOf(figures: readonly ShownFigure[], evidence: Evidence, fibre: Fibre, over: Over): PanelOfBearings {
  const own = figures.filter((figure) => isOver(figure, fibre, over));
  const placed = own.flatMap((figure) => (figure.rig.bearingMm === undefined ? [] : [{ figure, bearing: figure.rig.bearingMm }])).sort((a, b) => a.bearing - b.bearing);
  const points = placed.flatMap(({ figure: { value, unit }, bearing }): BearingPoint[] => {
    const mark = value === undefined ? null : markOf(value, toModelUnit(unit) ?? Number.NaN);
    return mark ? [{ bearing, mark }] : [];
  });
  const model = modelLine(evidence, fibre, over);
  return {
    id: `${fibre}-${over.id}`, height: HEIGHT, axis: BEARINGS, unit: 'mm', figures: placed, tested: [...new Set(placed.map(({ bearing }) => bearing))],
    panel: bearingPanel(points, { bearingEnd: BEARINGS.end, values: over.kilonewtons, height: HEIGHT }, SAME_BEARING_MM, model?.line ?? null),
    unplaced: own.filter(({ rig }) => rig.bearingMm === undefined), lineFor: model?.sling ?? null, isTaught: false,
  };
}

/** The panel of steel wire rope bent round a pin: a table of the trade, by the pin's diameter over the rope's. */
export function wirePanel(figures: readonly ShownFigure[]): PanelOfBearings {
  const own = figures.filter(({ record }) => record === 'wire-rope-table/bend-efficiency');
  const placed = own.map((figure) => ({ figure, bearing: Number(figure.cell?.replace('ratio-', '')) }));
  const points = placed.map(({ figure: { value }, bearing }): BearingPoint => ({ bearing, mark: { kind: 'one', at: Number(value), taught: true } }));
  return {
    id: 'wire-bent', height: HEIGHT, axis: RATIOS, unit: '', figures: placed, tested: placed.map(({ bearing }) => bearing),
    panel: bearingPanel(points, { bearingEnd: RATIOS.end, values: [50, 100], height: HEIGHT }, 0, null), unplaced: [], lineFor: null, isTaught: true,
  };
}

/** Figures of fibres with a knot, new or of unstated state: measured, and what is taught. */
export function knotFigures(figures: readonly ShownFigure[]): ShownFigure[] {
  return figures.filter(({ rig, kind }) => (kind === 'measured' || kind === 'rule') && rig.material !== undefined && rig.material in FIBRES && rig.state !== 'used' && rig.state !== 'exposed' &&
    rig.method !== undefined && (KNOTS as readonly string[]).includes(rig.method) && rig.bearing !== 'clamp' && rig.pull !== 'cyclic');
}
