/** What a number of pulls may be expected to give: exercise of "How many tests". */
import { orderConfidence } from '../break-tests/order-bound.ts';
import { expectedBound } from '../break-tests/plan-bound.ts';
import { column, type Exercise, given, place } from './exercise.ts';

/** Nineteen of twenty pieces above the bound, and nineteen in twenty such bounds right. */
const PAIR = { coverage: 0.95, confidence: 0.95 } as const;

export const plannedBound: Exercise = {
  lesson: 'how-many-tests',
  task: 'The club plans {pulls} pulls of one rig. It guesses a mean of {mean} and a scatter of {cv} of the mean. It wants a bound that nineteen of twenty pieces break above, with nineteen in twenty such bounds right. For so many pulls from a normal distribution, statistics give a tolerance factor of {factor}. A standard deviation then comes out at {short} of the true one on average.',
  asks: [
    'Which bound may the club expect?',
    'Which one would it have, if mean and scatter were known, with a factor of {knownFactor}?',
    'How much does not knowing them cost, as a share of the mean?',
    'How sure could it be that the weakest of its pulls is such a bound, whatever the distribution?',
  ],
  working: [
    'The mean, less factor times that share times scatter: {bound}.',
    'The mean, less the factor of the normal distribution times scatter: {known}.',
    'Their difference over the mean: {cost}.',
    'All pulls lie above it only by chance: one, less {coverage} to the power of the number of pulls: {weakest}.',
  ],
  sees: 'The first pulls buy much, and later ones little. Without a distribution one needs far more.',
  given: [column('pulls', 'Pulls', '', 0), column('mean', 'Mean', 'kN', 1), column('cv', 'Scatter', '%', 1), column('factor', 'Factor', '', 3), column('short', 'Share of the true scatter', '', 4)],
  fixed: [column('knownFactor', 'Factor of the normal distribution', '', 3), column('coverage', 'Share above', '', 2)],
  between: [],
  answers: [column('bound', 'Bound expected', 'kN', 2), column('known', 'If known', 'kN', 2), column('cost', 'Cost', '%', 2), column('weakest', 'Weakest pull sure', '%', 1)],
  figures: [],
  work(variant) {
    const pulls = given(3, 1, place(variant, 12), 0);
    const mean = given(14, 0.1, place(variant, 19), 1);
    const cv = given(5, 0.2, place(variant, 21), 1);
    const plan = expectedBound(pulls, PAIR, cv / 100);
    const z = (1 - plan.known) / (cv / 100);
    return {
      pulls, mean, cv, factor: plan.k, short: (1 - plan.bound) / (plan.k * (cv / 100)), knownFactor: z, coverage: PAIR.coverage,
      bound: mean * plan.bound, known: mean * plan.known, cost: 100 * plan.shortfall, weakest: 100 * orderConfidence(pulls, 1, PAIR.coverage),
    };
  },
};
