/** A rule of the record check that needs an engine: units are converted where the model does it. */
import { toModelUnit } from '../../evidence/force.ts';
import type { Rule } from '../../records/check/rule.ts';
import { numbersOf } from '../../records/numbers.ts';
import { FORCE_UNITS } from '../../records/units.ts';

/** Nothing that bears a climber breaks below this, kN; thin cord and yarn do. */
const LEAST_KN = 0.3;
const THIN_CORD_MM = 3;

export const forceIsPlausible: Rule = {
  name: 'force-is-plausible',
  description: 'A measured force in a unit smaller than kN is no number of kN under the wrong name.',
  check(report, { cells }) {
    for (const placed of cells.values()) {
      const { kind, unit, value, rig, id } = placed.figure;
      if (kind !== 'measured' || unit === undefined || unit === 'kN' || !FORCE_UNITS.has(unit)) continue;
      if (rig.form === 'yarn' || (rig.form === 'cord' && (rig.diameterMm ?? THIN_CORD_MM) < THIN_CORD_MM)) continue;
      const scale = toModelUnit(unit) as number;
      for (const { path, number } of numbersOf(value)) {
        if (number * scale >= LEAST_KN) continue;
        report({
          at: placed.record.at([...placed.path('value'), ...path]),
          subject: id,
          problem: `is below ${LEAST_KN} kN, less than cord of ${THIN_CORD_MM} mm breaks at`,
          got: `${number} ${unit}`,
          advice: 'Look up whether the source prints kN; for yarn or thinner cord, say so in the rig.',
        });
      }
    }
  },
};
