/** One pull as a series records it, and the ways in which statistics look at a series. */
import { assertForces } from './checks.ts';
import type { CensoredPulls } from './censored.ts';
import type { ModePull } from './competing-modes.ts';

export interface Pull {
  /** Force at which the pull ended, in the unit of the series. */
  readonly force: number;
  /** True where the part in question did not break: its strength is at least `force`. */
  readonly atLeast: boolean;
  /** How it broke, in the trade's words; empty where nobody wrote it down. */
  readonly mode: string;
  /** Which part of the load path broke; empty likewise. */
  readonly link: string;
}

/** Forces at which pulls ended, whatever gave way. */
export const endsOf = (pulls: readonly Pull[]): number[] => pulls.map(({ force }) => force);

/** Pulls as the part in question sees them: breaks, and forces that it came to without breaking. */
export function seenByPart(pulls: readonly Pull[]): Required<CensoredPulls> {
  const of = (atLeast: boolean): number[] => pulls.filter((pull) => pull.atLeast === atLeast).map(({ force }) => force);
  return { broken: of(false), atLeast: of(true) };
}

/** Pulls for the links that compete; a pull in which nothing broke has no link. */
export const linkPulls = (pulls: readonly Pull[]): ModePull[] => pulls.map(({ force, link }) => ({ force, mode: link === '' ? null : link }));

/** Throws a RangeError when there is no pull or a force is not positive. */
export function assertPulls(pulls: readonly Pull[], name = 'pulls'): void {
  assertForces(endsOf(pulls), 1, name);
}
