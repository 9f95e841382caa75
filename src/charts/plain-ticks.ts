/** An axis from nothing to a round number, for the browser: the steps of 1, 2 and 5 that people count by, without a library. */

/**
 * Ticks from 0 on, four to eight of them; the last lies at or above `most`.
 * @throws RangeError unless `most` is positive and finite
 */
export function plainTicks(most: number): number[] {
  if (!(most > 0 && most < Infinity)) throw new RangeError(`plainTicks: most must be positive and finite (got ${most})`);
  const power = 10 ** Math.floor(Math.log10(most / 4));
  const step = power * ([1, 2, 5, 10].find((one) => most / (one * power) <= 7) as number);
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: Math.ceil(most / step - 1e-9) + 1 }, (_, i) => Number((i * step).toFixed(decimals)));
}
