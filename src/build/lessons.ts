/** Lessons in order, each with its exercise worked with the evidence. */
import { LESSON_LEVELS, type Lesson, readLessons } from '../records/lessons.ts';
import { readFiles } from '../records/files.ts';
import type { Exercise } from '../teaching/exercise.ts';
import { exercisesWith } from '../teaching/exercises.ts';
import type { Drawing } from '../drawings/drawing.ts';
import { drawingsOf, pathOfDrawing } from '../drawings/drawings.ts';
import { siteDrawings } from './pictures/drawing-files.ts';
import { loadFallConstants } from './fall-evidence.ts';
import { siteRules } from './verdict-page.ts';

export type TaughtLesson = Lesson & { exercise: Exercise };

/** Each level in words: its name, and what it asks of a class. */
export const LEVEL_WORDS: Readonly<Record<Lesson['level'], readonly [name: string, asks: string]>> = {
  start: ['Start', 'Percentages at most.'],
  further: ['Further', 'Several steps, and a calculator.'],
  deep: ['Deep', 'Statistics or equations, and a table or a spreadsheet.'],
};

let taught: TaughtLesson[] | undefined;

/**
 * All lessons by level, then by minutes, then by name. What is wrong with them, the record check has said before.
 * @throws RangeError when a lesson has no exercise, or an exercise no lesson
 */
export function siteLessons(root = process.cwd()): readonly TaughtLesson[] {
  if (taught) return taught;
  const { lessons } = readLessons(readFiles(root));
  const exercises = exercisesWith({ falls: loadFallConstants(root), rules: siteRules() });
  const stray = [...exercises.keys()].find((id) => !lessons.has(id));
  if (stray) throw new RangeError(`content/lessons/${stray}.mdx: there is an exercise for this lesson, and no lesson`);
  taught = [...lessons.values()].map((lesson) => {
    const exercise = exercises.get(lesson.id);
    if (!exercise) throw new RangeError(`content/lessons/${lesson.id}.mdx: the lesson has no exercise in src/teaching/exercises.ts`);
    return { ...lesson, exercise };
  }).sort((a, b) => LESSON_LEVELS.indexOf(a.level) - LESSON_LEVELS.indexOf(b.level) || a.minutes - b.minutes || (a.title < b.title ? -1 : 1));
  return taught;
}

/** A drawing of a lesson with its file. */
export type LessonDrawing = Drawing & { path: string; width: number; height: number };

/**
 * Drawings by their names in lessons, such as basket/right.
 * @throws RangeError when there is no such drawing
 */
export function lessonDrawings(wanted: readonly string[]): LessonDrawing[] {
  return wanted.map((name) => {
    const [method = '', frame] = name.split('/');
    const drawing = drawingsOf(method).find((one) => one.frame === frame);
    const file = drawing && siteDrawings().get(pathOfDrawing(drawing));
    if (!drawing || !file) throw new RangeError(`drawings: there is no drawing ${name}`);
    return { ...drawing, path: file.path, width: file.width, height: file.height };
  });
}

/** Places of a lesson: itself, its handout, its variants and its answers. */
export const lessonPaths = (id: string): Record<'lesson' | 'handout' | 'variants' | 'answers', string> => ({
  lesson: `/teach/${id}/`, handout: `/teach/${id}/handout/`, variants: `/teach/${id}/variants/`, answers: `/teach/${id}/answers/`,
});
