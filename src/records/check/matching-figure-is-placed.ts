import type { ResolvedFigure } from '../read.ts';
import type { FactorRecord } from '../schema.ts';
import { FORCE_UNITS } from '../units.ts';
import type { Rule } from './rule.ts';

export const matchingFigureIsPlaced: Rule = {
  name: 'matching-figure-is-placed',
  description:
    'A measured strength whose rig is that of a factor stands in its from or in its leftOut, so that no new figure moves an answer silently.',
  check(report, { factors, cells }) {
    for (const placed of cells.values()) {
      for (const record of factors.values()) {
        const { data } = record;
        if (!matches(placed.figure, data.applies) || data.from.includes(placed.figure.id)) continue;
        if (data.leftOut.some((entry) => entry.figure === placed.figure.id)) continue;
        report({
          at: placed.at(),
          subject: placed.figure.id,
          problem: `has the rig of the factor ${record.id} and stands in neither of its lists`,
          advice: `Add it to from in ${record.file}, or to leftOut with the reason.`,
        });
      }
    }
  },
};

/**
 * Whether a figure was rigged as a factor asks. Rigging, material and bearing
 * must be stated and among those named; form, width and legs may be silent. Only
 * slow pulls of new, dry pieces match: the model speaks of nothing else. A
 * factor that names no rigging matches nothing.
 */
export function matches(figure: ResolvedFigure, applies: FactorRecord['applies']): boolean {
  const { rig, unit } = figure;
  if (figure.kind !== 'measured' || figure.standing === 'invented') return false;
  if (unit === undefined || !(FORCE_UNITS.has(unit) || unit === 'percent' || unit === 'ratio')) return false;
  if ((rig.state ?? 'new') !== 'new' || (rig.pull ?? 'slow') !== 'slow') return false;
  const stated = <T>(value: T | undefined, list: readonly T[] | undefined) =>
    list === undefined || (value !== undefined && list.includes(value));
  if (applies.riggings === undefined || !stated(rig.method, applies.riggings)) return false;
  if (!stated(rig.material, applies.materials) || !stated(rig.bearing, applies.bearings)) return false;
  if (rig.form !== undefined && applies.forms && !applies.forms.includes(rig.form)) return false;
  if (rig.legs !== undefined && applies.legs !== undefined && rig.legs !== applies.legs) return false;
  const width = rig.widthMm ?? rig.diameterMm;
  return width === undefined || !applies.widthMm || (width >= applies.widthMm[0] && width <= applies.widthMm[1]);
}
