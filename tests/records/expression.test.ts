/** The calculator for derived figures. Expected numbers are sums done by hand. */
import { describe, expect, test } from 'vitest';
import { evaluateFormula, FormulaError } from '../../src/records/expression.ts';
import { halfLastDigit, middleOf, pullsOf, statesScatter } from '../../src/records/numbers.ts';

describe('formulas', () => {
  test.each<[string, Record<string, number>, number]>([
    ['1 + 2 * 3', {}, 7],
    ['(1 + 2) * 3', {}, 9],
    ['10 - 4 - 3', {}, 3],
    ['100 / 5 / 2', {}, 10],
    ['-2 * -3', {}, 6],
    ['2 - -3', {}, 5],
    ['sqrt(16) + 1', {}, 5],
    ['mean(2, 4, 9)', {}, 5],
    ['mean(a, b) / 2', { a: 10, b: 14 }, 6],
    ['100 * knot / straight', { knot: 12.5, straight: 25 }, 50],
    ['sqrt(mean(a * a, b * b))', { a: 1, b: 7 }, 5],
    ['  a  ', { a: 3.25 }, 3.25],
  ])('%s', (formula, inputs, expected) => {
    expect(evaluateFormula(formula, inputs)).toBe(expected);
  });

  test.each<[string, Record<string, number>, string, number]>([
    ['', {}, 'ends too early', 0],
    ['1 +', {}, 'ends too early', 3],
    ['(1 + 2', {}, '")" is missing at the end', 6],
    ['1 2', {}, '"2" is left over', 2],
    ['1 ^ 2', {}, '"^" has no meaning in a formula', 2],
    ['a + b', { a: 1 }, '"b" is not one of the inputs', 4],
    ['a', { a: 1, b: 2 }, 'the input "b" is never used', 0],
    ['1 / (2 - 2)', {}, 'divides by zero', 2],
    ['sqrt(0 - 1)', {}, 'takes the root of a negative number', 0],
    ['sqrt(1, 2)', {}, 'sqrt takes one number', 0],
    ['mean 3', {}, '"(" is missing before "3"', 5],
    ['mean(1 2)', {}, '")" is missing before "2"', 7],
    ['* 3', {}, '"*" stands where a number or a name should be', 0],
    ['constructor', {}, '"constructor" is not one of the inputs', 0],
  ])('%s is refused', (formula, inputs, message, index) => {
    let thrown: unknown;
    try {
      evaluateFormula(formula, inputs);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(FormulaError);
    expect((thrown as FormulaError).message).toBe(message);
    expect((thrown as FormulaError).index).toBe(index);
  });

  test('a recomputed value may lie half a unit of the last printed digit away', () => {
    expect(halfLastDigit('22')).toBe(0.5);
    expect(halfLastDigit('22.0')).toBeCloseTo(0.05, 12);
    expect(halfLastDigit('0.57')).toBeCloseTo(0.005, 12);
  });
});

describe('what a value states', () => {
  test('the middle of raw tests is their mean; a limit and a range have none', () => {
    expect(middleOf({ tests: [2, 4, 9] })).toBe(5);
    expect(middleOf(7)).toBe(7);
    expect(middleOf({ mean: 3 })).toBe(3);
    expect(middleOf({ low: 1, high: 3, kind: 'teaching' })).toBeNull();
    expect(middleOf({ atLeast: 1 })).toBeNull();
    expect(middleOf(undefined)).toBeNull();
  });

  test('scatter is stated by two raw tests, by the extremes of n, and by a mean with sd or cv and n', () => {
    expect(statesScatter({ tests: [2, 4] })).toBe(true);
    expect(statesScatter({ tests: [3] })).toBe(false);
    expect(statesScatter({ low: 9, high: 11, kind: 'extremes of n', n: 5 })).toBe(true);
    expect(statesScatter({ low: 9, high: 11, kind: 'between products', n: 5 })).toBe(false);
    expect(statesScatter({ mean: 10, sd: 1, n: 4 })).toBe(true);
    expect(statesScatter({ mean: 10, cv: 0.2, n: 4 })).toBe(true);
    expect(statesScatter({ mean: 10, sd: 1 })).toBe(false);
    expect(statesScatter({ mean: 10, n: 4 })).toBe(false);
    expect(statesScatter(10)).toBe(false);
    expect(statesScatter(undefined)).toBe(false);
  });

  test('pulls are counted where they are stated, without those that did not break', () => {
    expect(pullsOf({ tests: [2, 4, 9], censored: [10] })).toBe(3);
    expect(pullsOf({ mean: 3, n: 7 })).toBe(7);
    expect(pullsOf({ mean: 3 })).toBeUndefined();
    expect(pullsOf({ low: 1, high: 2, kind: 'teaching' })).toBeUndefined();
    expect(pullsOf({ statement: 'it slipped' })).toBeUndefined();
    expect(pullsOf(12)).toBeUndefined();
  });
});
