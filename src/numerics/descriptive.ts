/** Mean, spread and neighbours of a list of numbers. Two passes: the mean first, so that large offsets do no harm. */

function assertCount(values: readonly number[], least: number): void {
  if (values.length < least) throw new RangeError(`values must hold at least ${least} (got ${values.length}).`);
}

/**
 * Arithmetic mean, corrected by the mean of what is left over.
 * @throws RangeError when `values` is empty.
 */
export function meanOfValues(values: readonly number[]): number {
  assertCount(values, 1);
  let sum = 0;
  for (const value of values) sum += value;
  const rough = sum / values.length;
  let rest = 0;
  for (const value of values) rest += value - rough;
  return rough + rest / values.length;
}

/**
 * Unbiased sample variance (denominator n - 1).
 * @throws RangeError when `values` holds fewer than two.
 */
export function sampleVariance(values: readonly number[]): number {
  assertCount(values, 2);
  const mean = meanOfValues(values);
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return squares / (values.length - 1);
}

/** Sample standard deviation (denominator n - 1). */
export function sampleSd(values: readonly number[]): number {
  return Math.sqrt(sampleVariance(values));
}

/** Sample coefficient of variation: sd / mean. */
export function sampleCv(values: readonly number[]): number {
  return sampleSd(values) / meanOfValues(values);
}

/** First-order autocorrelation: sum of products of neighbours' deviations over the sum of squares. */
export function autocorrelation(values: readonly number[]): number {
  assertCount(values, 2);
  const mean = meanOfValues(values);
  let products = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const deviation = (values[i] as number) - mean;
    squares += deviation * deviation;
    if (i > 0) products += deviation * ((values[i - 1] as number) - mean);
  }
  return products / squares;
}
