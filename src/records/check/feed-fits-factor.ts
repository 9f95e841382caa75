import type { ResolvedFigure } from '../read.ts';
import type { FactorRecord } from '../schema.ts';
import type { Rule } from './rule.ts';

export const feedFitsFactor: Rule = {
  name: 'feed-fits-factor',
  description:
    'No figure feeds a factor whose stated rigging, material, form, bearing, width or legs are not its own, or that is silent on what the factor is matched by and nothing is read into it; what is stated is never taken to be something else.',
  check(report, { factors, cells }) {
    for (const record of factors.values()) {
      for (const [i, address] of record.data.from.entries()) {
        const figure = cells.get(address)?.figure;
        // What may not feed at all is told elsewhere.
        if (figure?.kind !== 'measured' || figure.standing === 'invented') continue;
        const at = record.at(['from', i]);
        const clash = clashOf(figure.rig, record.data.applies);
        if (clash) {
          report({
            at,
            subject: record.id,
            problem: `${address} was tested with another ${clash[0]} than the factor applies to`,
            got: String(clash[1]),
            advice: 'Leave it out with this reason, or widen applies with care: it decides which rigs get this number.',
          });
          continue;
        }
        const taken = record.data.taken.find((one) => one.figure === address);
        const { figure: _of, why: _why, ...readInto } = taken ?? { figure: address, why: '' };
        for (const field of TAKEN) {
          if (readInto[field] === undefined || figure.rig[field] === undefined) continue;
          report({
            at: record.at(['taken', record.data.taken.indexOf(taken as NonNullable<typeof taken>), field]),
            subject: record.id,
            problem: `${address} states its ${field}, and the factor takes it to be something`,
            got: `${readInto[field]}, stated ${figure.rig[field]}`,
            advice: 'Remove it from taken: only what a source does not print may be read into it.',
          });
        }
        for (const [field, why] of silentOn({ ...readInto, ...figure.rig }, record.data)) {
          report({
            at,
            subject: record.id,
            problem: `${address} does not say its ${field}, and ${why}`,
            advice: (TAKEN as readonly string[]).includes(field)
              ? `Add ${field} to the rig as the source states it, or to taken with the reason why it can be read into it; or leave the figure out.`
              : `Add ${field} to the rig as the source states it, or leave the figure out with this reason.`,
          });
        }
      }
      for (const [i, { figure }] of record.data.taken.entries()) {
        if (record.data.from.includes(figure)) continue;
        report({
          at: record.at(['taken', i, 'figure']), subject: record.id, problem: 'takes a condition of a figure that does not feed it', got: figure,
          advice: 'Add the figure to from, or remove the entry.',
        });
      }
    }
  },
};

/** Conditions that may be read into a figure that is silent on them. */
const TAKEN = ['bearingMm', 'diameterMm'] as const;
/** Forms of textile that a width, or a diameter, tells apart. */
const BY_WIDTH: readonly string[] = ['sewn-loop', 'tape'];
const BY_DIAMETER: readonly string[] = ['cord', 'rope'];

/** What a figure must state for a factor to be matched by it, and does not: name of the field, and why it is needed. */
function silentOn(rig: ResolvedFigure['rig'], factor: FactorRecord): [string, string][] {
  const silent: [string, string][] = [];
  if (factor.along === 'bearingMm' && rig.bearingMm === undefined) silent.push(['bearingMm', 'the factor runs along the bearing']);
  // A figure that does not say its form is taken for what the factor is about.
  const forms = rig.form === undefined ? (factor.applies.forms ?? []) : [rig.form];
  const byDiameter = forms.length > 0 && forms.every((form) => BY_DIAMETER.includes(form));
  if (byDiameter ? rig.diameterMm === undefined : forms.some((form) => BY_WIDTH.includes(form)) && rig.widthMm === undefined)
    silent.push([byDiameter ? 'diameterMm' : 'widthMm', 'a figure speaks for slings of its own width only']);
  if (factor.applies.legs !== undefined && rig.legs === undefined) silent.push(['legs', 'the factor is for a stated number of legs']);
  return silent;
}

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
