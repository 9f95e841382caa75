/** Five pulls and what is made of them: exercise of "Minimum, mean, three standard deviations and bounds". */
import { summarise } from '../break-tests/summary.ts';
import { lowerToleranceBound } from '../break-tests/tolerance-bound.ts';
import { column, type Exercise, given, place } from './exercise.ts';

const PAIR = { coverage: 0.95, confidence: 0.95 } as const;
const PULLS = ['first', 'second', 'third', 'fourth', 'fifth'] as const;
/** Where each pull begins, and how it runs through the variants. The second is always the weakest. */
const BEGIN = [12, 10, 12.4, 11.6, 13] as const;
const STEPS = [4, 11, 22, 26, 27] as const;

export const fivePulls: Exercise = {
  lesson: 'minimum-mean-and-bounds',
  task: 'The club broke five slings of one lot, knotted alike, on the same bearing. In the order of the pulls: {first}, {second}, {third}, {fourth} and {fifth}.',
  asks: [
    'Name the lowest pull and the mean.',
    'What is the standard deviation, with one less than the number of pulls below the line?',
    'What is the mean less three standard deviations?',
    'What is the bound that nineteen of twenty pieces break above, with nineteen in twenty such bounds right? The factor for five normal pulls is {factor}.',
  ],
  working: [
    'The lowest is {lowest}, the mean {mean}.',
    'Squares of the differences from the mean, summed, over four, and the root: {sd}.',
    'The mean less three times that: {lessThree}.',
    'The mean less the factor times the standard deviation: {bound}.',
  ],
  sees: 'The lowest of five pulls is no bound. Three standard deviations are fewer than such a bound takes off.',
  given: PULLS.map((name, i) => column(name, `Pull ${'ABCDE'[i]}`, 'kN', 2)),
  fixed: [column('factor', 'Factor', '', 3)],
  between: [],
  answers: [column('lowest', 'Lowest', 'kN', 2), column('mean', 'Mean', 'kN', 2), column('sd', 'Standard deviation', 'kN', 3), column('lessThree', 'Mean less three', 'kN', 2), column('bound', 'Bound', 'kN', 2)],
  figures: [],
  work(variant) {
    const pulls = BEGIN.map((base, i) => given(base, 0.05, place(variant, STEPS[i] as number), 2));
    const { minimum, mean, spread } = summarise(pulls);
    if (!spread) throw new RangeError(`variant must give pulls that differ (got ${variant})`);
    const { k, bound } = lowerToleranceBound(pulls, PAIR);
    const named = Object.fromEntries(PULLS.map((name, i) => [name, pulls[i] as number]));
    return { ...named, factor: k, lowest: minimum, mean, sd: spread.sd, lessThree: spread.meanLessThreeSd, bound };
  },
};
