import type { FactorRecord } from '../schema.ts';
import type { Rule } from './rule.ts';

const CORD: readonly string[] = ['cord', 'rope'];
const isCord = ({ applies }: FactorRecord): boolean => applies.forms?.every((form) => CORD.includes(form)) ?? false;

export const takenIsNeeded: Rule = {
  name: 'taken-is-needed',
  description:
    'What a factor reads into a figure is what it is matched by: a bearing only along a bearing, a diameter only of cord and within its limits, once a figure; and only cord in kilonewtons is carried over by its section.',
  check(report, { factors }) {
    for (const record of factors.values()) {
      const { data, id: subject } = record;
      for (const [i, { figure, bearingMm, diameterMm }] of data.taken.entries()) {
        const at = (field: string) => record.at(['taken', i, field]);
        if (data.taken.findIndex((one) => one.figure === figure) < i) {
          report({ at: at('figure'), subject, problem: 'reads into one figure twice', got: figure, advice: 'Write both conditions in one entry.' });
        }
        if (bearingMm !== undefined && data.along === undefined) {
          report({ at: at('bearingMm'), subject, problem: 'reads a bearing into a figure and does not run along the bearing', got: String(bearingMm), advice: 'Remove bearingMm: it would cost a step of certainty for nothing.' });
        }
        if (diameterMm === undefined) continue;
        const [from, to] = data.applies.widthMm ?? [0, Number.POSITIVE_INFINITY];
        if (!isCord(data)) {
          report({ at: at('diameterMm'), subject, problem: 'reads a diameter into a figure and is not for cord', got: String(diameterMm), advice: 'Remove diameterMm, or give applies its forms: cord, rope.' });
        } else if (diameterMm < from || diameterMm > to) {
          report({ at: at('diameterMm'), subject, problem: 'reads a diameter into a figure that it does not apply to', got: `${diameterMm}, applies from ${from} to ${to}`, advice: 'Correct one of the two.' });
        }
      }
      if (data.bridge?.bySection && !(isCord(data) && data.acts === 'loop')) {
        report({ at: record.at(['bridge', 'bySection']), subject, problem: 'is carried over by its section and is no force of cord', got: typeof data.acts === 'string' ? data.acts : 'multiplies', advice: 'Only a factor that acts as a force of cord goes with the square of the diameter. Remove bySection.' });
      }
    }
  },
};
