/** What the statistics of breaks refuse, each with the name of the argument. */

/** Ends of an interval. An end that the data do not bound is Infinity, or the floor of the quantity. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Throws a RangeError unless `values` holds `least` numbers or more, all finite. */
export function assertValues(values: readonly number[], least: number, name = 'values'): void {
  if (values.length < least) throw new RangeError(`${name} must hold at least ${least} (got ${values.length}).`);
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) throw new RangeError(`${name}[${i}] must be finite (got ${values[i]}).`);
  }
}

/** Throws a RangeError unless `values` holds `least` positive numbers or more: breaking forces. */
export function assertForces(values: readonly number[], least: number, name: string): void {
  assertValues(values, least, name);
  for (let i = 0; i < values.length; i++) {
    if (!((values[i] as number) > 0)) throw new RangeError(`${name}[${i}] must be positive (got ${values[i]}).`);
  }
}

/** Throws a RangeError unless not all values are equal: a scatter of nothing has no distribution. */
export function assertScatter(values: readonly number[], name = 'values'): void {
  if (values.every((value) => value === values[0])) throw new RangeError(`${name} must not all be equal.`);
}

/** Throws a RangeError unless `share` lies strictly between 0 and 1. */
export function assertShare(share: number, name: string): void {
  if (!(share > 0 && share < 1)) throw new RangeError(`${name} must lie strictly between 0 and 1 (got ${share}).`);
}

/** Throws a RangeError unless `n` is a whole number from `least` upwards. */
export function assertCount(n: number, least: number, name = 'n'): void {
  if (!(Number.isInteger(n) && n >= least)) {
    throw new RangeError(`${name} must be a whole number from ${least} upwards (got ${n}).`);
  }
}

/** Throws a RangeError unless `value` is positive and finite. */
export function assertPositive(value: number, name: string): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be positive and finite (got ${value}).`);
}

/** A sorted copy, smallest first. */
export function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}
