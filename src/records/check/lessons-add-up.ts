import { LESSON_MINUTES, readLessons } from '../lessons.ts';
import { didYouMean } from '../nearest-name.ts';
import type { Rule } from './rule.ts';

export const lessonsAddUp: Rule = {
  name: 'lessons-add-up',
  description: 'Every lesson has its plan, takes from 15 to 50 minutes, and its steps take as long together; a lesson before it exists.',
  check(report, { files }) {
    const { lessons, faults } = readLessons(files);
    for (const { rule: _rule, ...finding } of faults) report(finding);
    const [least, most] = LESSON_MINUTES;
    for (const { id, minutes, steps, after, at } of lessons.values()) {
      if (minutes < least || minutes > most)
        report({ at: at(['minutes']), subject: id, problem: 'is too short or too long for a lesson', got: String(minutes), advice: `Plan ${least} to ${most} minutes, or make two lessons of it.` });
      const sum = steps.reduce((total, step) => total + step.minutes, 0);
      if (sum !== minutes) report({ at: at(['minutes']), subject: id, problem: `takes other minutes than its steps, which take ${sum}`, got: String(minutes), advice: 'Correct the steps or the minutes.' });
      for (const [i, before] of after.entries()) {
        if (before === id || !lessons.has(before))
          report({ at: at(['after', i]), subject: id, problem: 'comes after a lesson that does not exist', got: before, advice: didYouMean(before, [...lessons.keys()].filter((one) => one !== id), 'Name another file below content/lessons.').trim() });
      }
    }
  },
};
