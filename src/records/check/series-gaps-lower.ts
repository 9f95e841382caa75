import type { Rule } from './rule.ts';

export const seriesGapsLower: Rule = {
  name: 'series-gaps-lower',
  description: 'A series that stands by itself and does not say its rate, its conditioning or when its load cell was calibrated is lowered by method.',
  check(report, { series }) {
    for (const record of series.values()) {
      const { data, id } = record;
      if ('figure' in data || data.lowered?.some(({ by }) => by === 'method') || record.spoilt(['lowered'])) continue;
      const { rateMmPerMin, conditioning, loadCell } = data.pulled;
      const fields: [string, unknown][] = [['rateMmPerMin', rateMmPerMin], ['conditioning', conditioning], ['loadCell.calibrated', loadCell?.calibrated]];
      const open = fields.filter(([field, value]) => value === undefined && !record.spoilt(['pulled', ...field.split('.')])).map(([field]) => field);
      if (open.length > 0)
        report({
          at: record.at(['pulled']),
          subject: id,
          problem: 'does not say all of how it was pulled, and is not lowered for it',
          got: `no ${open.join(', no ')}`,
          advice: `Add ${open.join(', ')}, or a step to lowered: { by: method, why: what is not recorded }.`,
        });
    }
  },
};
