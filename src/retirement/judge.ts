/**
 * What the rules of retirement say of one sling. Pure: no clock, only ages. Not knowing counts against the sling: an
 * input that the reader leaves open meets every condition on it, and an unknown age has reached every limit.
 */
import type { Material, OldLight, OldUse, RetirementRule, RuleRecord } from '../records/schema.ts';

/** A sling as far as it is known. Ages in years from manufacture. Null: not known. */
export interface JudgedSling { material: Material | null; ageYears: number | null; use: OldUse | null; light: OldLight | null }

/** A rule that speaks of a sling. `due`: its limit is reached, or may be; `yearsLeft`: how long until then, null where the age or the limit is not known. */
export interface Judgement { rule: string; verdict: RuleRecord['verdict']; due: boolean; yearsLeft: number | null }

const meets = <T>(value: T | null, wanted: readonly T[] | undefined): boolean => wanted === undefined || value === null || wanted.includes(value);

/**
 * Rules that speak of a sling: what is due first, then by the least time left; of equals retirement before inspection, then
 * the rules' own order.
 * @throws RangeError when the age is no number of years from 0
 */
export function judge(rules: Readonly<Record<string, RetirementRule>>, sling: JudgedSling): Judgement[] {
  if (sling.ageYears !== null && !(sling.ageYears >= 0 && sling.ageYears < Infinity)) throw new RangeError(`ageYears must be 0 or more (got ${sling.ageYears})`);
  const met = Object.entries(rules).filter(([, { when }]) =>
    meets(sling.material, when.materials) && meets(sling.use, when.uses) && meets(sling.light, when.exposures && ['sun']));
  const judged = met.map(([rule, { verdict, years }]): Judgement => {
    const left = years === null || sling.ageYears === null ? null : Math.max(0, years - sling.ageYears);
    return { rule, verdict, due: left === null || left === 0, yearsLeft: left };
  });
  const order = (one: Judgement): number => rules[one.rule]?.order ?? 0;
  const left = (one: Judgement): number => (one.due ? 0 : (one.yearsLeft ?? 0));
  return judged.sort((a, b) => left(a) - left(b) || Number(a.verdict === 'inspect') - Number(b.verdict === 'inspect') || order(a) - order(b));
}
