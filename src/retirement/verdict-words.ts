/** Verdicts of the retirement rules in words. Pure; never a word of praise: a sling is due now, due by then, or it is not spoken of. */
import type { RetirementRule } from '../records/schema.ts';
import type { Judgement, JudgedSling } from './judge.ts';

/**
 * "retire now", "retire by 3 years from now"; the word of the verdict comes first.
 * @param after what the years are counted from, in words, with its space
 */
export function verdictWords({ verdict, due, yearsLeft }: Judgement, after = ''): string {
  // A difference of two decimals; no reader's age is finer than a hundredth of a year.
  const years = Number(yearsLeft?.toFixed(2));
  return due || !years ? `${verdict} now` : `${verdict} by ${years} year${years === 1 ? '' : 's'}${after}`;
}

/** What is not known of a sling and so counted against it under one rule: "its age and use are not known". Null where nothing is. */
export function countedUnknown({ when, years }: RetirementRule, { material, ageYears, use, light }: JudgedSling): string | null {
  const unknown = [
    when.materials && !material && 'material', years !== null && ageYears === null && 'age', when.uses && !use && 'use', when.exposures && !light && 'light',
  ].filter(Boolean);
  return unknown.length === 0 ? null : `its ${unknown.join(' and ')} ${unknown.length > 1 ? 'are' : 'is'} not known`;
}
