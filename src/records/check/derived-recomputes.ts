import { evaluateFormula, FormulaError } from '../expression.ts';
import { halfLastDigit, middleOf } from '../numbers.ts';
import type { Rule } from './rule.ts';

export const derivedRecomputes: Rule = {
  name: 'derived-recomputes',
  description:
    'A derived figure names its inputs and formula, and working it out gives the printed value to half a unit of its last digit.',
  check(report, { figures, cells }) {
    for (const record of figures.values()) {
      const { data } = record;
      if (data.standing !== 'derived') {
        if (data.derived)
          report({
            at: record.keyAt(['derived']),
            subject: record.id,
            problem: 'has a formula but is not derived',
            got: data.standing,
            advice: 'Write standing: derived, or remove the formula.',
          });
        continue;
      }
      if ('cells' in data) {
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: 'a table cannot be derived as a whole',
          advice: 'Write one record for each derived value, with its formula.',
        });
        continue;
      }
      if (!data.derived) {
        if (!record.spoilt(['derived']))
          report({
            at: record.at(['standing']),
            subject: record.id,
            problem: 'is derived without a formula',
            advice: 'Add derived: { formula, inputs }.',
          });
        continue;
      }
      const inputs: Record<string, number> = {};
      let complete = true;
      for (const [name, address] of Object.entries(data.derived.inputs)) {
        const input = cells.get(address);
        const number = middleOf(input?.figure.value);
        if (number === null) {
          complete = false;
          if (input)
            report({
              at: record.at(['derived', 'inputs', name]),
              subject: record.id,
              problem: `the input ${name} has no single value`,
              got: address,
              advice: 'Name a figure with an exact value, a mean or raw tests.',
            });
        } else inputs[name] = number;
      }
      if (!complete) continue;
      const printed = middleOf(data.value);
      if (printed === null) {
        if (data.value !== undefined)
          report({
            at: record.at(['value']),
            subject: record.id,
            problem: 'a derived value must be one number',
            advice: 'Write the number that the formula gives.',
          });
        continue;
      }
      let worked: number;
      try {
        worked = evaluateFormula(data.derived.formula, inputs);
      } catch (error) {
        if (!(error instanceof FormulaError)) throw error;
        report({
          at: record.at(['derived', 'formula']),
          subject: record.id,
          problem: `the formula does not work: ${error.message}`,
          got: data.derived.formula,
          advice: 'Use numbers, the names of the inputs, + - * / ( ), sqrt and mean.',
        });
        continue;
      }
      const path = typeof data.value === 'number' ? ['value'] : ['value', 'mean'];
      const asPrinted = /^-?\d+(\.\d+)?$/.test(data.asPrinted ?? '') ? data.asPrinted : record.written(path);
      const tolerance = halfLastDigit(asPrinted ?? String(printed));
      if (Math.abs(worked - printed) > tolerance * (1 + 1e-9)) {
        report({
          at: record.at(path),
          subject: record.id,
          problem: `the formula gives ${Number(worked.toPrecision(6))}`,
          got: String(printed),
          advice: 'Correct the value, the formula or an input.',
        });
      }
    }
  },
};
