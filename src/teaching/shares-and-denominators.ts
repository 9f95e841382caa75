/** A share without its denominator: what it says, and what is made of it by mistake. Exercise of "What a strength figure says". */
import { column, type Exercise, given, place } from './exercise.ts';

/** @param sharePercent share of the rated minimum; the forces in kN */
export function readShare(sharePercent: number, ratedKn: number, meanKn: number): { brokeKn: number; mistakenKn: number; tooHighPercent: number; ofOwnPercent: number } {
  for (const [name, n] of Object.entries({ sharePercent, ratedKn, meanKn })) if (!(n > 0 && n < Infinity)) throw new RangeError(`${name} must be above 0 (got ${n})`);
  const brokeKn = (sharePercent * ratedKn) / 100;
  const mistakenKn = (sharePercent * meanKn) / 100;
  return { brokeKn, mistakenKn, tooHighPercent: 100 * (meanKn / ratedKn - 1), ofOwnPercent: (100 * brokeKn) / meanKn };
}

export const sharesAndDenominators: Exercise = {
  lesson: 'reading-a-figure',
  task: 'A notebook of the club says that a knotted sling broke at {share} of its rated minimum, which is {rated}. Slings of the same lot without a knot broke at {mean} on average.',
  asks: [
    'At what force did the knotted sling break?',
    'Somebody multiplies the share by the mean of the lot. What force do they get?',
    'By how much is that too high?',
    'What share of its own straight strength did the knot leave?',
  ],
  working: [
    'The share is one of the rated minimum: {share} of {rated} is {broke}.',
    'The wrong denominator: {share} of {mean} is {mistaken}.',
    'The mean over the rated minimum, less one: {tooHigh} too high, whatever the share.',
    'What broke it over the mean of the lot: {ofOwn}.',
  ],
  sees: 'The mistake is as large as the gap between rating and mean, and it errs on the dangerous side.',
  given: [column('share', 'Share', '%', 0), column('rated', 'Rated minimum', 'kN', 1), column('mean', 'Mean of the lot', 'kN', 1)],
  fixed: [],
  between: [],
  answers: [column('broke', 'Broke at', 'kN', 2), column('mistaken', 'By mistake', 'kN', 2), column('tooHigh', 'Too high by', '%', 2), column('ofOwn', 'Share of its own', '%', 1)],
  figures: [],
  work(variant) {
    const share = given(45, 1, place(variant, 18), 0);
    const rated = given(22, 0.1, place(variant, 9), 1);
    const mean = given(26, 0.1, place(variant, 17), 1);
    const { brokeKn, mistakenKn, tooHighPercent, ofOwnPercent } = readShare(share, rated, mean);
    return { share, rated, mean, broke: brokeKn, mistaken: mistakenKn, tooHigh: tooHighPercent, ofOwn: ofOwnPercent };
  },
};
