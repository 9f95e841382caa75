import type { ResolvedFigure } from '../read.ts';
import type { FactorRecord } from '../schema.ts';
import type { Rule } from './rule.ts';

export const feedFitsFactor: Rule = {
  name: 'feed-fits-factor',
  description: 'No figure feeds a factor whose stated rigging, material, form, bearing, width or legs are not its own.',
  check(report, { factors, cells }) {
    for (const record of factors.values()) {
      for (const [i, address] of record.data.from.entries()) {
        const figure = cells.get(address)?.figure;
        const clash = figure && clashOf(figure.rig, record.data.applies);
        if (!clash) continue;
        report({
          at: record.at(['from', i]),
          subject: record.id,
          problem: `${address} was tested with another ${clash[0]} than the factor applies to`,
          got: String(clash[1]),
          advice: 'Leave it out with this reason, or widen applies with care: it decides which rigs get this number.',
        });
      }
    }
  },
};

/** The first condition that a figure states and a factor rules out, with what the figure says; nothing when none does. */
function clashOf(rig: ResolvedFigure['rig'], applies: FactorRecord['applies']): [string, string | number] | undefined {
  const outside = <T extends string>(value: T | undefined, list: readonly T[] | undefined) =>
    value !== undefined && list !== undefined && !list.includes(value);
  if (outside(rig.method, applies.riggings)) return ['rigging', rig.method as string];
  if (outside(rig.material, applies.materials)) return ['material', rig.material as string];
  if (outside(rig.form, applies.forms)) return ['form', rig.form as string];
  if (outside(rig.bearing, applies.bearings)) return ['bearing', rig.bearing as string];
  const width = rig.widthMm ?? rig.diameterMm;
  const [from, to] = applies.widthMm ?? [0, Number.POSITIVE_INFINITY];
  if (width !== undefined && (width < from || width > to)) return ['width', width];
  if (rig.legs !== undefined && applies.legs !== undefined && rig.legs !== applies.legs) return ['number of legs', rig.legs];
  return undefined;
}
