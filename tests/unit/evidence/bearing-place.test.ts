/** Where a bearing lies among tested ones: the rule is that of the design, "within half a millimetre, or between two tested". */
import { expect, test } from 'vitest';
import { bearingPlace } from '../../../src/evidence/bearing-place.ts';

/** The wire of the nut and the usual test pin, as the published breaks of HMPE have them. */
const tested = [3.8, 10];

test.each([
  [3.8, { at: 3.8 }], [4.3, { at: 3.8 }], [4.4, { between: [3.8, 10] }], [3.3, { at: 3.8 }], [3.2, { miss: 'thinner' }],
  [9.6, { between: [3.8, 10] }], [10, { at: 10 }], [10.5, { at: 10 }], [10.6, { miss: 'thicker' }],
] as const)('%s mm', (mm, place) => {
  expect(bearingPlace(mm, tested)).toEqual(place);
});

test('with one test a bearing lies at it or beyond it', () => {
  expect([9.5, 10.5, 9.4, 10.6].map((mm) => bearingPlace(mm, [10]))).toEqual([{ at: 10 }, { at: 10 }, { miss: 'thinner' }, { miss: 'thicker' }]);
});

test('with no test nothing is known', () => {
  expect(bearingPlace(5, [])).toEqual({ miss: 'thinner' });
});
