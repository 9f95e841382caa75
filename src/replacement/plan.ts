/** Which way for which devices: several kinds of device, each sent one way as a whole, those that go the same way in one parcel. */
import { type Offer, orderCost, type PriceStep } from './cost.ts';

/** Devices that are alike, and the price of each way for one of them where it differs from the offer's own. */
export interface Kind { count: number; /** Names of ways that take this kind, with steps of their own or null for the offer's. */ ways: Readonly<Record<string, readonly PriceStep[] | null>> }

export interface Plan { /** The way of each kind, in their order. */ ways: string[]; total: number }

/**
 * What a choice of ways costs. Kinds that go the same way share its parcel. Each pays its own work; together they pay at
 * least what the way charges for its least count.
 */
export function planCost(kinds: readonly Kind[], offers: Readonly<Record<string, Offer>>, ways: readonly string[]): number {
  let total = 0;
  for (const way of new Set(ways)) {
    const offer = offers[way];
    if (!offer) throw new RangeError(`way ${way}: no such offer`);
    const sent = kinds.filter((kind, i) => ways[i] === way && kind.count > 0);
    if (sent.length === 0) continue;
    const own = { ...offer, there: 0, back: 0 };
    const costs = sent.map((kind) => orderCost({ ...own, steps: kind.ways[way] ?? offer.steps, least: 1 }, kind.count));
    const work = costs.reduce((sum, one) => sum + one.work, 0);
    // A kind's own price may be below the offer's: only a least of several is charged for at the offer's price.
    const least = offer.least > 1 ? orderCost({ ...own, weeks: 0 }, 1).work : 0;
    total += offer.there + offer.back + Math.max(work, least) + costs.reduce((sum, one) => sum + one.waiting, 0);
  }
  return total;
}

/** The most ways of sending that are tried. */
const MOST_PLANS = 200_000;

/**
 * The cheapest plan: every choice of ways is tried. Of equal ones the first by the order of the offers.
 * @throws RangeError when a kind has no way, or there are too many choices
 */
export function cheapestPlan(kinds: readonly Kind[], offers: Readonly<Record<string, Offer>>): Plan {
  const choices = kinds.map((kind, i) => {
    const ways = Object.keys(offers).filter((way) => way in kind.ways);
    if (ways.length === 0) throw new RangeError(`kinds[${i}] must have a way that is offered`);
    return ways;
  });
  if (choices.reduce((product, ways) => product * ways.length, 1) > MOST_PLANS) throw new RangeError(`kinds must leave at most ${MOST_PLANS} choices`);
  let best: Plan | null = null;
  const visit = (ways: string[]): void => {
    const next = choices[ways.length];
    if (next) {
      for (const way of next) visit([...ways, way]);
      return;
    }
    const total = planCost(kinds, offers, ways);
    if (!best || total < best.total - 1e-9) best = { ways, total };
  };
  visit([]);
  return best as unknown as Plan;
}
