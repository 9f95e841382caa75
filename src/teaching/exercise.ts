/**
 * What an exercise of a lesson is: a task with given numbers, questions, and answers that are worked out when the site is
 * built. Every given number is invented, in the gear room of the outing club of a fictional university. One exercise has
 * thirty variants for students, and the class's own setting, which is variant 0.
 */

/** Variants of an exercise beside the class's own. */
export const VARIANTS = 30;

/** A prime just above the number of variants: multiples of a variant's number then run through all places once. */
const PLACES = 31;

/** One number of an exercise as it is shown. */
export interface Column {
  /** Key of its value, and its name in the texts. */
  name: string;
  /** Head of its column. */
  head: string;
  /** Unit behind the number; empty for none. */
  unit: string;
  /** Digits behind the point; null where the value is a text, such as a day. */
  digits: number | null;
}

/** Values by the names of their columns; days as `2026-11-24`, months as `2026-11`. */
export type Values = Readonly<Record<string, number | string>>;

export interface Exercise {
  /** Id of its lesson. */
  lesson: string;
  /** The task in sentences; `{name}` stands for a number. */
  task: string;
  /** What is asked, a sentence each. */
  asks: readonly string[];
  /** How each answer comes about, a sentence or two each. */
  working: readonly string[];
  /** What a class sees in it. */
  sees: string;
  /** Numbers that differ between variants. */
  given: readonly Column[];
  /** Numbers that are the same in all variants. */
  fixed: readonly Column[];
  answers: readonly Column[];
  /** Numbers between given and answers that the working names. */
  between: readonly Column[];
  /** Addresses of the figures that the answers rest on, besides what is given. Empty: on what is given alone. */
  figures: readonly string[];
  /** All values of a variant, not rounded but for what is given. @throws RangeError when there is no such variant */
  work(variant: number): Values;
}

/**
 * A place from 1 to 30 for a variant; 0 for the class's own. For each `step` that is no multiple of 31, no two variants
 * have the same place, so that a number made from it differs in all of them.
 * @throws RangeError when there is no such variant, or step is no whole number above 0 or is a multiple of 31
 */
export function place(variant: number, step: number): number {
  if (!Number.isInteger(variant) || variant < 0 || variant > VARIANTS) throw new RangeError(`variant must be a whole number from 0 to ${VARIANTS} (got ${variant})`);
  if (!Number.isInteger(step) || step < 1 || step % PLACES === 0) throw new RangeError(`step must be a whole number above 0 and no multiple of ${PLACES} (got ${step})`);
  return (variant * step) % PLACES;
}

/** A number made from a place: `base` and so many times `each`, with `digits` behind the point, so that it is what is shown. */
export function given(base: number, each: number, at: number, digits: number): number {
  return Number((base + each * at).toFixed(digits));
}

/** A column. */
export const column = (name: string, head: string, unit: string, digits: number | null): Column => ({ name, head, unit, digits });

/**
 * A value as it is shown, with its unit.
 * @throws RangeError when the column has no value, or one of the wrong kind
 */
export function shown({ name, unit, digits }: Column, values: Values): string {
  const value = values[name];
  const isRight = digits === null ? typeof value === 'string' : typeof value === 'number' && Number.isFinite(value);
  if (!isRight) throw new RangeError(`${name} must have a value of its kind (got ${value})`);
  const text = digits === null ? String(value) : (value as number).toFixed(digits);
  return unit === '' ? text : `${text} ${unit}`;
}

/** All columns of an exercise. */
export const columnsOf = ({ given: varied, fixed, between, answers }: Exercise): Column[] => [...varied, ...fixed, ...between, ...answers];

/** A piece of a text: words, or a number by its column. */
export type TextPiece = string | Column;

/**
 * A text cut at its `{name}`s.
 * @throws RangeError when it names what the exercise does not have
 */
export function cutAtNumbers(text: string, exercise: Exercise): TextPiece[] {
  const columns = new Map(columnsOf(exercise).map((one) => [one.name, one]));
  return text.split(/\{(\w+)\}/).flatMap((piece, i): TextPiece[] => {
    if (i % 2 === 0) return piece === '' ? [] : [piece];
    const named = columns.get(piece);
    if (!named) throw new RangeError(`text names a number that the exercise of ${exercise.lesson} lacks (got ${piece})`);
    return [named];
  });
}
