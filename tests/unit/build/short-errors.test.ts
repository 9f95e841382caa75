/** Guards in the pages' script say where their words stand. */
import { expect, test } from 'vitest';
import { withShortErrors } from '../../../src/build/steps/short-errors.ts';

test('a guard says its file and line, and nothing else changes', () => {
  const source = "const a = 1;\nif (a < 0) throw new RangeError(`a must be 0 or more (got ${a}).`);\nthrow new Error('kept');\n";
  expect(withShortErrors(source, 'src/strength/chain.ts')).toBe("const a = 1;\nif (a < 0) throw new RangeError('src/strength/chain.ts:2');\nthrow new Error('kept');\n");
});

test('a message with another template inside is left as it is', () => {
  const source = 'throw new RangeError(`a ${b ? `c` : ""} d`);';
  expect(withShortErrors(source, 'x.ts')).toBe(source);
});
