/**
 * Ready-made plans: lessons put together for the time that a class, a club or a course has. Which lessons go together is a
 * choice of ours; minutes and what is needed come from the lessons themselves.
 */
import type { Lesson } from '../records/lessons.ts';

/** What a plan reads of a lesson. */
export type PlannedLesson = Pick<Lesson, 'id' | 'minutes' | 'needs' | 'after'>;

/** A choice of lessons for a time. */
export interface PlanChoice {
  id: string;
  name: string;
  /** For whom, or what comes out. */
  says: string;
  /** Most minutes of lessons in it. Common practice of timetables and club evenings, without breaks. */
  limit: number;
  /** Ids of lessons in their order. */
  lessons: readonly string[];
}

/** A plan worked out: when each lesson starts, and what must be in the room. */
export interface Plan<L extends PlannedLesson> extends PlanChoice {
  steps: readonly { lesson: L; /** Minutes since the plan's own start, without breaks. */ from: number }[];
  minutes: number;
  /** What the lessons need, each once. */
  needs: readonly string[];
}

/** The choices, from the shortest to the longest. */
export const PLAN_CHOICES: readonly PlanChoice[] = [
  { id: 'class-hour', name: 'A class hour', says: 'For beginners: what a number says, and when a sling has to go.', limit: 45, lessons: ['reading-a-figure', 'deciding-to-retire'] },
  { id: 'double-hour', name: 'A double hour of statistics', says: 'For a class that knows percentages and wants to see what a handful of breaks can say.', limit: 90, lessons: ['reading-a-figure', 'minimum-mean-and-bounds', 'how-many-tests'] },
  { id: 'evening', name: 'A club evening', says: 'For a club that answers for a gear room: old slings, knots, and who decides.', limit: 120, lessons: ['deciding-to-retire', 'knots-and-bends', 'repair-law-and-risk'] },
  { id: 'afternoon', name: 'An afternoon on forces', says: 'For a course: knots, links of a chain, and what a fall loads.', limit: 120, lessons: ['knots-and-bends', 'weak-links', 'falls'] },
  {
    id: 'day', name: 'A day', says: 'All lessons, the debate as the last. Leave time for breaks, meals and talk.', limit: 300,
    lessons: [
      'reading-a-figure',
      'deciding-to-retire',
      'knots-and-bends',
      'weak-links',
      'minimum-mean-and-bounds',
      'how-many-tests',
      'falls',
      'repair-law-and-risk',
    ],
  },
];

/**
 * Works out a plan.
 * @param lessons all lessons by id
 * @throws RangeError when the plan names a lesson that is not there, takes longer than its limit, or has a lesson before one that it comes after
 */
export function planOf<L extends PlannedLesson>(choice: PlanChoice, lessons: ReadonlyMap<string, L>): Plan<L> {
  let minutes = 0;
  const steps = choice.lessons.map((id, i) => {
    const lesson = lessons.get(id);
    if (!lesson) throw new RangeError(`lessons: the plan ${choice.id} names a lesson that is not there (got ${id})`);
    const late = lesson.after.find((before) => choice.lessons.indexOf(before) > i);
    if (late) throw new RangeError(`lessons: in the plan ${choice.id}, ${id} must come after ${late}`);
    const from = minutes;
    minutes += lesson.minutes;
    return { lesson, from };
  });
  if (minutes > choice.limit) throw new RangeError(`limit: the lessons of the plan ${choice.id} take ${minutes} minutes, more than its ${choice.limit}`);
  return { ...choice, steps, minutes, needs: [...new Set(steps.flatMap(({ lesson }) => lesson.needs))] };
}
