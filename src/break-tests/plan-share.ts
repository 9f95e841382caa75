/** How many pulls tell in what share of rigs a part breaks first. */
import { binomialPmf } from '../numerics/binomial.ts';
import { assertCount, assertShare } from './checks.ts';
import { shareInterval } from './mode-shares.ts';

/** The most pulls that a plan is looked for. */
const MOST = 5000;

/**
 * Width of the exact interval on average, over all counts that n pulls may show if the share is `share`.
 * @throws RangeError when n is below 1, or share or level do not lie strictly between 0 and 1.
 */
export function expectedShareWidth(n: number, share: number, level = 0.95): number {
  assertCount(n, 1);
  assertShare(share, 'share');
  assertShare(level, 'level');
  let width = 0;
  for (let count = 0; count <= n; count++) {
    const chance = binomialPmf(count, n, share);
    // What has no chance to speak of moves no width by a millionth.
    if (chance < 1e-9) continue;
    const { low, high } = shareInterval(count, n, level);
    width += chance * (high - low);
  }
  return width;
}

/**
 * The fewest pulls whose interval is no wider than `width` on average. A share of one half is the worst case.
 * @throws RangeError as `expectedShareWidth`, or when width does not lie between 0 and 1 or asks for more than 5000 pulls.
 */
export function pullsForShare(share: number, width: number, level = 0.95): { pulls: number; width: number } {
  assertShare(width, 'width');
  const fits = (n: number): boolean => expectedShareWidth(n, share, level) <= width;
  let low = 0;
  let high = 1;
  while (!fits(high)) {
    low = high;
    high *= 2;
    if (high > MOST) throw new RangeError(`width asks for more than ${MOST} pulls (got ${width}).`);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (fits(middle)) high = middle;
    else low = middle;
  }
  return { pulls: high, width: expectedShareWidth(high, share, level) };
}
