/** The exercises of all lessons. */
import type { FallConstants } from '../falls/evidence.ts';
import type { VerdictRule } from '../records/schema.ts';
import { costAYear } from './cost-a-year.ts';
import { dueDays } from './due-days.ts';
import type { Exercise } from './exercise.ts';
import { fallOnRope } from './fall-on-rope.ts';
import { fivePulls } from './five-pulls.ts';
import { knottedLoop } from './knotted-loop.ts';
import { plannedBound } from './planned-bound.ts';
import { sharesAndDenominators } from './shares-and-denominators.ts';
import { threeLinks } from './three-links.ts';

/** What the exercises take from the records. */
export interface TaughtEvidence { falls: FallConstants; rules: Readonly<Record<string, VerdictRule>> }

/** One exercise a lesson, by the id of the lesson. */
export function exercisesWith({ falls, rules }: TaughtEvidence): ReadonlyMap<string, Exercise> {
  const all = [
    sharesAndDenominators,
    threeLinks,
    knottedLoop,
    plannedBound,
    fivePulls,
    fallOnRope(falls),
    dueDays(rules),
    costAYear,
  ];
  return new Map(all.map((exercise) => [exercise.lesson, exercise]));
}
