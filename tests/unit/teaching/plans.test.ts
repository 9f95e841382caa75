/** Ready-made plans against the lessons' own front matter, read here by another parser and added up. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { PLAN_CHOICES, type PlannedLesson, planOf } from '../../../src/teaching/plans.ts';
import { siteLessons } from '../../../src/build/lessons.ts';
import { ROOT } from '../../support/step.ts';

const lessons = new Map(siteLessons().map((lesson) => [lesson.id, lesson]));
const frontOf = (id: string): { minutes: number; needs: string[] } => parse(readFileSync(join(ROOT, `content/lessons/${id}.mdx`), 'utf8').split('---')[1] as string);

test.each(PLAN_CHOICES)('$name takes the sum of its lessons, starts each where the last one ended, and names all that is needed once', (choice) => {
  const { minutes, steps, needs } = planOf(choice, lessons);
  const own = choice.lessons.map(frontOf);
  expect(minutes).toBe(own.reduce((sum, one) => sum + one.minutes, 0));
  expect(steps.map(({ from }) => from)).toEqual(own.map((_, i) => own.slice(0, i).reduce((sum, one) => sum + one.minutes, 0)));
  expect([...needs].sort()).toEqual([...new Set(own.flatMap((one) => one.needs))].sort());
});

test('the day has every lesson, each once', () => {
  const day = PLAN_CHOICES.find(({ id }) => id === 'day');
  expect(day?.lessons.toSorted()).toEqual([...lessons.keys()].sort());
});

describe('a plan is refused', () => {
  const lesson = (id: string, after: string[] = []): [string, PlannedLesson] => [id, { id, minutes: 25, needs: [], after }];
  const all = new Map([lesson('one'), lesson('two', ['one'])]);
  const choice = { id: 'x', name: 'X', says: '', limit: 45 };
  test.each([
    ['when it names a lesson that is not there', ['three'], 'names a lesson that is not there (got three)'],
    ['when it takes longer than it may', ['one', 'two'], 'take 50 minutes, more than its 45'],
    ['when a lesson stands before the one that it comes after', ['two', 'one'], 'two must come after one'],
  ])('%s', (_, ids, message) => {
    expect(() => planOf({ ...choice, lessons: ids }, all)).toThrow(message);
  });
});
