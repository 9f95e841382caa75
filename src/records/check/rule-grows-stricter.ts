import { OLD_USES } from '../schema.ts';
import type { Rule } from './rule.ts';

export const ruleGrowsStricter: Rule = {
  name: 'rule-grows-stricter',
  description:
    'A rule of retirement that speaks of one use speaks of every harder one; what an inspection restarts is the next inspection; limits of width stand in order.',
  check(report, { rules }) {
    for (const record of rules.values()) {
      const { id: subject, data: { verdict, when, due } } = record;
      const { uses, widthMm } = when;
      if (uses) {
        const mildest = Math.min(...uses.map((use) => OLD_USES.indexOf(use)));
        const passedOver = OLD_USES.slice(mildest).filter((use) => !uses.includes(use));
        if (passedOver.length > 0) {
          report({ at: record.at(['when', 'uses']), subject, problem: 'passes over a harder use than one that it names', got: passedOver.join(', '), advice: `Write uses: [${OLD_USES.slice(mildest).join(', ')}]: a harder use never makes a verdict milder.` });
        }
      }
      if (due?.from === 'inspection' && verdict === 'retire') {
        report({ at: record.at(['due', 'from']), subject, problem: 'counts a retirement from an inspection', got: due.from, advice: 'Write verdict: inspect, or count from made or first-use: no inspection gives a sling more life.' });
      }
      if (widthMm && widthMm[0] > widthMm[1]) {
        report({ at: record.at(['when', 'widthMm']), subject, problem: 'has no width between its limits', got: widthMm.join(' to '), advice: 'Put the smaller number first.' });
      }
    }
  },
};
