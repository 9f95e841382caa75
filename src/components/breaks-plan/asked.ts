/** What a reader wrote into the planner, read into what the engine takes, with a reason for each word that cannot be. */
import { PLAN_NUMBERS, type PlanNumber, type PlanWords } from '../../links/plan-link.ts';
import { readNumber } from '../../links/read-number.ts';
import type { InputRange } from '../../links/rig-keys.ts';
import { type BoundPlan, planBound, planDifference, planShare, type SharePlan, type TwoMethodsPlan } from '../../break-tests/plan-steps.ts';

/** Fields of the form: the numbers, and both halves of the reader's own pair. */
export type PlanField = PlanNumber | 'coverage' | 'confidence';

/** Below one half a bound is no lower bound; at one, no number of pulls is enough. */
const PAIR_RANGE: InputRange = { low: 50, high: 99.9, unit: 'of 100' };
export const PLAN_RANGES: Readonly<Record<PlanField, InputRange>> = {
  coverage: PAIR_RANGE,
  confidence: PAIR_RANGE,
  cv: { low: 0.5, high: 60, unit: '%' },
  short: { low: 0.5, high: 100, unit: '%' },
  diff: { low: 1, high: 100, unit: '%' },
  power: { low: 10, high: 99, unit: 'of 100' },
  share: { low: 1, high: 99, unit: 'of 100' },
  width: { low: 10, high: 90, unit: 'of 100' },
};

/** A number as a plan prints it, as a share of one; null where nothing is written or it cannot be read. */
type Read = number | null;

export type PlanAnswer =
  | { want: 'bound'; plan: BoundPlan; shortfall: Read }
  | { want: 'difference'; plan: TwoMethodsPlan; power: Read }
  | { want: 'share'; plan: SharePlan; width: Read };

export interface PlanAsked {
  /** Null where a number that the question needs is missing or cannot be read. */
  answer: PlanAnswer | null;
  /** What is wrong, by field. Fields of other questions are read, too. */
  faults: Readonly<Partial<Record<PlanField, string>>>;
  /** Fields that the question needs and that are empty. */
  missing: readonly PlanField[];
}

/** Reads everything and plans. Never throws; nothing is planned as if an unreadable word were not there. */
export function planOn({ want, pair, own, numbers }: PlanWords): PlanAsked {
  const faults: Partial<Record<PlanField, string>> = {};
  const read = (field: PlanField, text: string): Read => {
    if (text.trim() === '') return null;
    const number = readNumber(text.replace(/\s*%\s*$/, ''), PLAN_RANGES[field]);
    if (number.ok) return number.value / 100;
    faults[field] = number.why;
    return null;
  };
  const value = Object.fromEntries(PLAN_NUMBERS.map((field) => [field, read(field, numbers[field])])) as Record<PlanNumber, Read>;
  const ownPair = { coverage: read('coverage', own[0]), confidence: read('confidence', own[1]) };
  const [share, sure] = pair === 'own' ? [ownPair.coverage, ownPair.confidence] : pair.split('~').map((part) => Number(part) / 100) as [number, number];
  const needs = ({
    bound: [...(pair === 'own' ? ['coverage', 'confidence'] as const : []), 'cv'],
    difference: ['diff', 'cv'],
    share: ['share'],
  } as const satisfies Record<typeof want, readonly PlanField[]>)[want];
  const written: Readonly<Record<PlanField, Read>> = { ...value, ...ownPair };
  const goal = ({ bound: 'short', difference: 'power', share: 'width' } as const)[want];
  const missing = needs.filter((field) => written[field] === null && faults[field] === undefined);
  const isReady = needs.every((field) => written[field] !== null) && faults[goal] === undefined;
  const { cv, short, diff, power, width } = value;
  let answer: PlanAnswer | null = null;
  if (isReady && want === 'bound') answer = { want, plan: planBound({ coverage: share as number, confidence: sure as number }, cv as number, short), shortfall: short };
  else if (isReady && want === 'difference') answer = { want, plan: planDifference(diff as number, cv as number, power), power };
  else if (isReady && want === 'share') answer = { want, plan: planShare(value.share as number, width), width };
  return { answer, faults, missing };
}
