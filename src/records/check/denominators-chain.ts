import type { PlacedFigure, RecordFile } from '../read.ts';
import type { FactorRecord } from '../schema.ts';
import type { Rule } from './rule.ts';
import { FORCE_UNITS } from '../units.ts';

/** Named denominators that are the strength of the same piece without knot or hitch: they chain with a straight strength. */
const STRAIGHT: readonly string[] = ['unknotted', 'strand', 'twice-strand', 'half-loop-on-10-mm-pins', 'new'];

export const denominatorsChain: Rule = {
  name: 'denominators-chain',
  description:
    'A factor that multiplies another is a share of that very thing, in percent or ratio; a factor that acts as a whole loop is in a force.',
  check(report, { factors, cells }) {
    for (const record of factors.values()) {
      const { acts, from, floor } = record.data;
      from.forEach((address, i) => {
        const placed = cells.get(address);
        if (!placed) return;
        const at = record.at(['from', i]);
        const { unit, of } = placed.figure;
        const isForce = FORCE_UNITS.has(unit ?? 'count');
        if (acts === 'loop') {
          if (isForce || (of === 'rated-minimum' && floor !== undefined)) return;
          report({
            at,
            subject: record.id,
            problem: `acts as a whole loop, which is a force, but ${address} is a ${unit ?? 'number without unit'}`,
            got: of ?? 'no denominator',
            advice:
              'Use acts: { multiplies: ... } with the factor that it is a share of, or give a floor that it is a multiple of.',
          });
          return;
        }
        const base = acts === 'rating' ? undefined : factors.get(acts.multiplies);
        if (acts !== 'rating' && !base) return; // a dangling reference is told elsewhere
        const multiplied = acts === 'rating' ? 'the rating' : acts.multiplies;
        if (of === undefined && placed.lacks('of')) {
          report({
            at,
            subject: record.id,
            problem: `${address} does not say what it is a fraction of, so nothing can be multiplied by it`,
            got: unit ?? 'no unit',
            advice: 'Add of to the figure, or let the factor act as loop.',
          });
        } else if (unit !== undefined && unit !== 'percent' && unit !== 'ratio') {
          report({
            at,
            subject: record.id,
            problem: `multiplies ${multiplied}, so it is a share, but ${address} is not in percent or ratio`,
            got: unit,
            advice: 'Leave it out with this reason, write the share as a derived figure, or let the factor act as loop.',
          });
        } else if (of !== undefined && !chains(of, acts === 'rating' ? undefined : base, placed)) {
          report({
            at,
            subject: record.id,
            problem: `${address} is a fraction of ${of}, which is not what ${multiplied} is`,
            got: of,
            advice:
              acts === 'rating'
                ? 'Leave it out with this reason: only a fraction of device-rating multiplies the rating.'
                : `Leave it out with this reason, or put ${of} into the from of ${acts.multiplies}.`,
          });
        }
      });
    }
  },
};

function chains(of: string, base: RecordFile<FactorRecord> | undefined, placed: PlacedFigure): boolean {
  if (!base) return of === 'device-rating';
  if (of.includes('/')) return base.data.from.includes(of);
  if (of === 'rated-minimum')
    return base.data.floor !== undefined && base.data.from.length === 0 && base.data.assumed === undefined;
  if (!STRAIGHT.includes(of)) return false;
  const riggings = base.data.applies.riggings;
  return (
    riggings === undefined || riggings.includes('straight') || riggings.includes(placed.figure.rig.method ?? 'straight')
  );
}
