/** An axis from nothing to a round number that no mark lies beyond, with its ticks. */
import { scaleLinear } from 'd3-scale';

/**
 * Ticks from 0 on, about `count` of them; the last lies at or above `most`.
 * @throws RangeError unless `most` is positive and finite
 */
export function roundTicks(most: number, count = 6): number[] {
  if (!(most > 0 && most < Infinity)) throw new RangeError(`roundTicks: most must be positive and finite (got ${most})`);
  const scale = scaleLinear().domain([0, most]).nice(count);
  return scale.ticks(count);
}
