/** Product of two numbers as their decimal digits stand, without the noise of binary fractions: 9.3 times 0.01 is 0.093. */

/** Digits of a number without its point, and how many stand behind the point. */
function digitsOf(x: number): { digits: bigint; decimals: number } {
  const [plain, exponent] = String(x).split('e') as [string, string?];
  const [whole, fraction = ''] = plain.split('.') as [string, string?];
  return { digits: BigInt(whole + fraction), decimals: fraction.length - Number(exponent ?? 0) };
}

/** The number nearest to the exact product. Throws a RangeError on a number that is not finite. */
export function exactProduct(a: number, b: number): number {
  for (const [name, x] of Object.entries({ a, b })) if (!Number.isFinite(x)) throw new RangeError(`${name}: is not a finite number (got ${x})`);
  const [x, y] = [digitsOf(a), digitsOf(b)];
  return Number(`${x.digits * y.digits}e${-(x.decimals + y.decimals)}`);
}
