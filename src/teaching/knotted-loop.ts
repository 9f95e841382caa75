/** A knot in a loop, and a tail that creeps: exercise of "Knots and bends". */
import { column, type Exercise, given, place } from './exercise.ts';

/** Loadings after which less than `leftMm` of a tail is left, where it creeps evenly. @throws RangeError when there is nothing to lose, or nothing creeps */
export function loadingsUntilShort(tailMm: number, leftMm: number, creepPerHundredMm: number): number {
  if (!(leftMm > 0 && tailMm > leftMm && tailMm < Infinity)) throw new RangeError(`tailMm must be above leftMm, and leftMm above 0 (got ${tailMm} and ${leftMm})`);
  if (!(creepPerHundredMm > 0 && creepPerHundredMm < Infinity)) throw new RangeError(`creepPerHundredMm must be above 0 (got ${creepPerHundredMm})`);
  // Tenths of a millimetre are whole numbers: at a whole number of loadings the tail is exactly as long as it must be.
  return Math.floor((100 * Math.round(10 * (tailMm - leftMm))) / Math.round(10 * creepPerHundredMm)) + 1;
}

export const knottedLoop: Exercise = {
  lesson: 'knots-and-bends',
  task: 'A strand of cord breaks at {strand}. A knot in one strand left {share} of that. The club then pulled whole loops, joined by that knot, to breaking, at {loop} on average. In another loop a tail of {tail} creeps by {creep} in each hundred loadings, and at least {left} must be left.',
  asks: [
    'What would two strands with that knot bear, if a loop were no more than that?',
    'By how much is this above what the loops bore?',
    'At which loading is less tail left than must be, if it creeps evenly?',
  ],
  working: [
    'Two strands, each with its knot: {predicted}.',
    'That over what was measured, less one: {over} too high. The figure of one strand is no figure of the loop.',
    'The tail may lose its length less what must be left. That over the creep of one loading, and the next whole number: {loadings}.',
  ],
  sees: 'A knot is tested as it is used: in a loop, over its bearing. And a tail can run out of a knot that would not break.',
  given: [
    column('strand', 'Strand', 'kN', 1), column('share', 'Knot leaves', '%', 1), column('loop', 'Loops broke at', 'kN', 2),
    column('tail', 'Tail', 'mm', 0), column('creep', 'Creep', 'mm', 1), column('left', 'To be left', 'mm', 1),
  ],
  fixed: [],
  between: [],
  answers: [column('predicted', 'Two strands', 'kN', 2), column('over', 'Too high by', '%', 1), column('loadings', 'Short at loading', '', 0)],
  figures: [],
  work(variant) {
    const strand = given(10, 0.1, place(variant, 5), 1);
    const share = given(55, 0.5, place(variant, 18), 1);
    const loop = given(8, 0.08, place(variant, 19), 2);
    const tail = given(60, 1, place(variant, 30), 0);
    const creep = given(2, 0.1, place(variant, 28), 1);
    const left = given(20, 0.5, place(variant, 22), 1);
    const predicted = (2 * strand * share) / 100;
    return { strand, share, loop, tail, creep, left, predicted, over: 100 * (predicted / loop - 1), loadings: loadingsUntilShort(tail, left, creep) };
  },
};
