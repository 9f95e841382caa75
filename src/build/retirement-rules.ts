/** Rules of retirement as the engines read them: each with the time that its figure says. */
import type { Records, ResolvedFigure } from '../records/read.ts';
import type { RetirementRule, RuleRecord, VerdictRule } from '../records/schema.ts';

const MONTHS_IN: Readonly<Record<string, number>> = { years: 12, months: 1 };

/** Whole months after which a rule falls due, rounded down. Throws a RangeError that names the rule where its figure says none. */
function monthsOf(rule: string, { figure: address, reads }: NonNullable<RuleRecord['due']>, figure: ResolvedFigure | undefined): number {
  const unit = MONTHS_IN[figure?.unit ?? ''];
  const value = figure?.value;
  const age = figure?.rig.ageYears;
  if (reads === 'value' && typeof value === 'number' && unit) return Math.floor(value * unit);
  if (reads === 'at most' && typeof value === 'object' && 'atMost' in value && unit) return Math.floor(value.atMost * unit);
  if (reads === 'age from' && age !== undefined) return Math.floor((typeof age === 'number' ? age : age.from) * 12);
  throw new RangeError(`rule ${rule}: ${address} says no ${reads} in years or months`);
}

/** All rules by id, in order of their ids. The figure of `due` is among a rule's figures. Throws RangeErrors that name the rule at fault. */
export function verdictRules(records: Pick<Records, 'rules' | 'cells'>): Record<string, VerdictRule> {
  const sorted = [...records.rules].sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(sorted.map(([id, { data: { what, order, verdict, when, says, figures, due } }]) => [id, {
    what, order, verdict, when, says,
    figures: due && !figures.includes(due.figure) ? [due.figure, ...figures] : figures,
    due: due ? { months: monthsOf(id, due, records.cells.get(due.figure)?.figure), from: due.from } : null,
  }]));
}

/**
 * The rules that the comparison's own inputs decide: material, age, use and light. The others it does not carry. It does
 * not ask for the first use, which then counts from manufacture.
 */
export function comparedRules(rules: Readonly<Record<string, VerdictRule>>): Record<string, RetirementRule> {
  return Object.fromEntries(Object.entries(rules).flatMap(([id, { when, due, order, verdict, says, figures }]) => {
    const { materials, uses, exposures, ...beyond } = when;
    const isDecided = Object.keys(beyond).length === 0 && (exposures ?? []).every((one) => one === 'light') && (due === null || due.from !== 'inspection');
    return isDecided ? [[id, { order, verdict, when: when as RetirementRule['when'], says, figures, years: due && due.months / 12 }]] : [];
  }));
}
