/** What the engine of falls refuses, each with the name of the argument. */

/** Throws a RangeError unless `value` is positive and finite. */
export function assertPositive(value: number, name: string): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be positive and finite (got ${value}).`);
}

/** Throws a RangeError unless `value` is 0 or more, and finite. */
export function assertNotNegative(value: number, name: string): void {
  if (!(value >= 0 && value < Infinity)) throw new RangeError(`${name} must be 0 or more (got ${value}).`);
}

/** Throws a RangeError unless `value` is a share above 0 and at most 1. */
export function assertShare(value: number, name: string): void {
  if (!(value > 0 && value <= 1)) throw new RangeError(`${name} must be above 0 and at most 1 (got ${value}).`);
}
