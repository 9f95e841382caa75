/** Counts in words. */

const COUNT_WORDS = [
  'no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen',
  'sixteen', 'seventeen', 'eighteen', 'nineteen',
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** A count below one hundred, spelled out; the digits above. Throws RangeError on what is no count. */
export function countWord(n: number): string {
  if (!Number.isInteger(n) || n < 0) throw new RangeError(`n: is not a count (got ${n})`);
  if (n >= 100) return String(n);
  const ones = COUNT_WORDS[n % 10] as string;
  return COUNT_WORDS[n] ?? (n % 10 === 0 ? (TENS[n / 10] as string) : `${TENS[Math.floor(n / 10)]}-${ones}`);
}
