/** The days by which a sling is due: exercise of "Deciding to retire". Worked by the engine of the verdict, with the rules of the records. */
import type { VerdictRule } from '../records/schema.ts';
import { SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS } from '../retirement/answers.ts';
import { addMonths } from '../retirement/days.ts';
import { type Answer, type SlingHistory, verdictOn } from '../retirement/verdict.ts';
import { column, type Exercise, place } from './exercise.ts';

/** Day of asking in the exercise, and what its maker prints. */
const ASKED = '2026-06-01';
const MAKER_YEARS = 8;
/** Rules of the records that the exercise asks about. */
const WEEKLY = 'inspect-weekly';
const AGE = 'age';

const no = <K extends string>(keys: readonly K[]): Record<K, Answer> => Object.fromEntries(keys.map((key) => [key, 'no'])) as Record<K, Answer>;

/** The day of a rule's limit. @throws RangeError when the rule does not speak of the sling */
function dayOf(reasons: ReturnType<typeof verdictOn>['reasons'], rule: string): string {
  const day = reasons.find((reason) => reason.rule === rule)?.day;
  if (!day) throw new RangeError(`rules must give a day by ${rule} (got none)`);
  return day;
}

export const dueDays = (rules: Readonly<Record<string, VerdictRule>>): Exercise => ({
  lesson: 'deciding-to-retire',
  task: 'Today is {asked}. The club has a nylon sling that was made in {made} and is used each week. It was last looked over thoroughly on {inspected}, and nothing was found. It was never wet, in the sun, near chemicals or in a big fall. Its maker prints a life of {limit} from manufacture.',
  asks: [
    'By which day has it to be looked over again, by the rule for what is used each week?',
    'By which day has it to go, by its maker?',
    'By which day would it have to go, by the habit of the trade?',
    'Which of these days stands first, and what if it had been left in the sun?',
  ],
  working: [
    'So many months from the last inspection: {inspectBy}.',
    'So many years from the first day of the month of manufacture: {makerDay}.',
    'The longest life that the trade gives to textile: {tradeDay}. The maker comes first, and is stricter here.',
    'The inspection, {inspectBy}. A sling that was left in the sun is retired now.',
  ],
  sees: 'Several limits speak at once, and the strictest stands first. What nobody knows counts against the sling.',
  given: [column('made', 'Made', '', null), column('inspected', 'Looked over', '', null)],
  fixed: [column('asked', 'Today', '', null), column('limit', "Maker's limit", 'years', 0)],
  between: [],
  answers: [column('inspectBy', 'Look over by', '', null), column('makerDay', 'Retire by, maker', '', null), column('tradeDay', 'Retire by, trade', '', null)],
  figures: [...(rules[WEEKLY]?.figures ?? []), ...(rules[AGE]?.figures ?? []), 'common-practice/left-in-the-sun'],
  work(variant) {
    const made = addMonths('2019-03-01', place(variant, 11)).slice(0, 7);
    const after = 4 * place(variant, 3);
    const inspected = `${addMonths('2026-01-01', Math.floor(after / 28)).slice(0, 7)}-${String((after % 28) + 1).padStart(2, '0')}`;
    const history: SlingHistory = {
      material: 'nylon', widthMm: 16, made, firstUse: made, inspected, use: 'weekly',
      exposures: no(SLING_EXPOSURES), events: no(SLING_EVENTS), findings: no(SLING_FINDINGS), maker: { yearsFromMade: MAKER_YEARS },
    };
    const { reasons } = verdictOn(rules, history, ASKED);
    return { made, inspected, asked: ASKED, limit: MAKER_YEARS, inspectBy: dayOf(reasons, WEEKLY), makerDay: dayOf(reasons, 'maker#years-from-made'), tradeDay: dayOf(reasons, AGE) };
  },
});
