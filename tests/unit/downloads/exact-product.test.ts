/** Conversion of printed forces. The factors are definitions: 1 lb = 0.45359237 kg, g = 9.80665 m/s2 (NIST SP 811, appendix B.8). Products are worked by hand. */
import { expect, test } from 'vitest';
import { exactProduct } from '../../../src/build/downloads/exact-product.ts';

test.each([
  // 0.45359237 x 9.80665 = 4.4482216152605, so 1 lbf is 0.0044482216152605 kN; times 2500.
  [2500, 0.0044482216152605, 11.12055403815125],
  [1100, 0.00980665, 10.787315],
  [9.3, 0.01, 0.093],
  [8650, 0.001, 8.65],
  [-40, 1, -40],
  [0, 0.001, 0],
  // Beyond a million million million a number is written with an exponent.
  [1e21, 1e-7, 1e14],
])('%d times %d is %d to the last digit', (a, b, product) => {
  expect(exactProduct(a, b)).toBe(product);
  expect(exactProduct(b, a)).toBe(product);
});

test('binary fractions alone would leave noise in the digits', () => {
  expect(9.3 * 0.01).not.toBe(0.093);
});

test('what is no finite number is refused by name', () => {
  expect(() => exactProduct(Number.NaN, 1)).toThrow(new RangeError('a: is not a finite number (got NaN)'));
  expect(() => exactProduct(1, Number.POSITIVE_INFINITY)).toThrow(new RangeError('b: is not a finite number (got Infinity)'));
});
