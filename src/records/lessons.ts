/** Lessons for a class: `content/lessons/<id>.mdx`, each with its plan in front and what the teacher says of it below. */
import { z } from 'zod';
import type { Fault, Position } from './fault.ts';
import type { FileMap } from './files.ts';
import { readFronted } from './front-matter.ts';
import { slug } from './schema.ts';
import type { Path } from './yaml.ts';

/** Whom a lesson is for, the first first. */
export const LESSON_LEVELS = ['start', 'further', 'deep'] as const;

/** A lesson takes so many minutes, from and to. */
export const LESSON_MINUTES = [15, 50] as const;

const sentence = z.string().min(1);

/** Front matter of a lesson. */
export const lesson = z.strictObject({
  title: sentence,
  /** What the lesson is about, in one sentence. */
  says: sentence,
  /** start: percentages at most; further: several steps with a calculator; deep: statistics or equations. */
  level: z.enum(LESSON_LEVELS),
  /** From 15 to 50; the steps add up to it. */
  minutes: z.int(),
  /** What learners can do afterwards. */
  aims: z.array(sentence).min(1),
  /** What has to be in the room. */
  needs: z.array(sentence).min(1),
  steps: z.array(z.strictObject({ minutes: z.int().positive(), does: sentence })).min(2),
  /** Drawings of methods, as method/frame; of what a lesson is about, as lessons/name. */
  drawings: z.array(z.string().regex(/^[a-z0-9-]+\/[a-z0-9-]+$/, 'is not a drawing like basket/right')).default([]),
  /** What the handout says to remember. */
  remember: z.array(sentence).min(1),
  /** Questions of the handout, with what a teacher may hear. */
  questions: z.array(z.strictObject({ asks: sentence, answer: sentence })).min(1),
  /** Pages that the handout prints on. */
  handoutPages: z.int().positive(),
  /** Lessons that come before it. */
  after: z.array(slug).default([]),
});
export type LessonFields = z.output<typeof lesson>;

/** A lesson as pages show it. */
export interface Lesson extends LessonFields {
  /** Name of its file, and of its page below `/teach/`. */
  id: string;
  at(path?: Path): Position;
}

/** All lessons by id, and what is wrong with their front matter. A lesson with a fault is absent. */
export function readLessons(files: FileMap): { lessons: Map<string, Lesson>; faults: Fault[] } {
  const { texts, faults } = readFronted(files, 'lessons', 'lesson', lesson);
  return { lessons: new Map([...texts].map(([id, { fields, at }]) => [id, { ...fields, id, at }])), faults };
}
