/**
 * What it costs to give devices a new sling, or to buy new ones. Money is in the reader's own currency and has no name
 * here. Pure; nothing is rounded.
 */

/** Price of one device where an order holds so many or more; it then holds for each of the order. */
export interface PriceStep { from: number; each: number }

/** One way as the reader was offered it. */
export interface Offer {
  /** Rising by `from`; the first holds from one device on. */
  steps: readonly PriceStep[];
  /** At least so many are charged, however few are sent. */
  least: number;
  /** Sending one parcel there, and having it sent back; nothing where nothing is sent. */
  there: number;
  back: number;
  /** Weeks without the devices, and what one week without one of them costs: hired ones, or days that are lost. */
  weeks: number;
  weekCost: number;
}

/** What an order comes to, piece by piece. */
export interface Cost { work: number; shipping: number; waiting: number; total: number; /** How many are paid for: more than asked where that is cheaper or the least. */ charged: number }

const MOST = 9999;

function assertOffer({ steps, least, there, back, weeks, weekCost }: Offer): void {
  if (steps[0]?.from !== 1) throw new RangeError('steps must begin with the price from one device on');
  for (const [i, { from, each }] of steps.entries()) {
    if (!Number.isInteger(from) || (i > 0 && from <= (steps[i - 1] as PriceStep).from)) throw new RangeError(`steps[${i}].from must be a whole number above the one before (got ${from})`);
    if (!(each >= 0 && each < Infinity)) throw new RangeError(`steps[${i}].each must be 0 or more (got ${each})`);
  }
  if (!Number.isInteger(least) || least < 1) throw new RangeError(`least must be a whole number from 1 (got ${least})`);
  for (const [name, n] of Object.entries({ there, back, weeks, weekCost })) if (!(n >= 0 && n < Infinity)) throw new RangeError(`${name} must be 0 or more (got ${n})`);
}

const priceAt = (steps: readonly PriceStep[], count: number): number => (steps.findLast(({ from }) => from <= count) as PriceStep).each;

/** Counts that may be paid for instead of `count`: itself or the least, and each step above, whose price may make more of them cheaper. */
const chargeable = ({ steps, least }: Offer, count: number): number[] => [Math.max(count, least), ...steps.map(({ from }) => from).filter((from) => from > Math.max(count, least))];

/**
 * The cheapest order that gives `count` devices what they need. Where the price of a step makes a larger order cheaper,
 * that is paid for; so one device more never costs less.
 * @throws RangeError when the count is no whole number from 0 to 9999, or the offer is none
 */
export function orderCost(offer: Offer, count: number): Cost {
  assertOffer(offer);
  if (!Number.isInteger(count) || count < 0 || count > MOST) throw new RangeError(`count must be a whole number from 0 to ${MOST} (got ${count})`);
  if (count === 0) return { work: 0, shipping: 0, waiting: 0, total: 0, charged: 0 };
  const { charged, work } = chargeable(offer, count).map((n) => ({ charged: n, work: n * priceAt(offer.steps, n) })).reduce((a, b) => (b.work < a.work ? b : a));
  const shipping = offer.there + offer.back;
  const waiting = offer.weeks * offer.weekCost * count;
  return { work, shipping, waiting, total: work + shipping + waiting, charged };
}

/**
 * Capital recovery factor: what each year costs of a sum that is paid now and lasts `years`, at a yearly `rate` of interest.
 * i (1+i)^n / ((1+i)^n - 1), and 1/n without interest (NIST Handbook 135).
 * @throws RangeError when the years are not above 0, or the rate is below 0
 */
export function yearlyShare(years: number, rate: number): number {
  if (!(years > 0 && years < Infinity)) throw new RangeError(`years must be above 0 (got ${years})`);
  if (!(rate >= 0 && rate < Infinity)) throw new RangeError(`rate must be 0 or more (got ${rate})`);
  // For a small rate the formula loses its digits; expm1 and log1p keep them, down to 1/n.
  return rate === 0 ? 1 / years : rate / -Math.expm1(-years * Math.log1p(rate));
}

/** Where the cheaper of two ways changes: from `count` on it is the one named; the first stands for one device. */
export interface Turn { count: number; cheaper: 'first' | 'second' | 'equal' }

/** Differences below this share of the larger sum are none: sums of decimals are not exact. */
const EQUAL = 1e-9;

/**
 * The cheaper of two ways for every count from one to `most`, as the counts at which it changes. With plain prices that is
 * at most one count: the break-even of two cost lines. With steps it can be several.
 */
export function turns(first: Offer, second: Offer, most: number): Turn[] {
  const found: Turn[] = [];
  for (let count = 1; count <= most; count += 1) {
    const [a, b] = [orderCost(first, count).total, orderCost(second, count).total];
    const cheaper = Math.abs(a - b) <= EQUAL * Math.max(a, b) ? 'equal' : a < b ? 'first' : 'second';
    if (found.at(-1)?.cheaper !== cheaper) found.push({ count, cheaper });
  }
  return found;
}

/**
 * Count at which two cost lines F + v n meet; null where they never do, or meet below nothing: one is then cheaper always,
 * or both are one line.
 */
export function breakEven(a: { fixed: number; each: number }, b: { fixed: number; each: number }): number | null {
  const count = (a.fixed - b.fixed) / (b.each - a.each);
  return Number.isFinite(count) && count >= 0 ? count : null;
}
