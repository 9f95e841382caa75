/** What the calculator of costs says: each way for all devices that it takes, the cheapest plan, where ways cross, and what would change the answer. */
import { type Offer, orderCost, type PriceStep, turns, type Turn, yearlyShare } from './cost.ts';
import { planCost } from './plan.ts';
import { type AskedKind, type CostAsked, type TimedOffer, type Way, WAYS } from './read-words.ts';

/** One way for every device that it takes. */
export interface WayCost {
  way: Way;
  /** Devices that it takes. */
  count: number;
  work: number;
  shipping: number;
  waiting: number;
  total: number;
  each: number;
  /** Years that the result lasts, by the metal and by the limit of the way; null where neither is said. */
  years: number | null;
  yearly: number | null;
}

/** A choice of ways: which kinds go which way, in the order of ways. */
export interface Choice { total: number; parts: { way: Way; kinds: AskedKind[] }[] }

/** An input that would change which plan is cheapest, and the value at which it does. */
export interface Change { way: Way | null; what: 'price' | 'shipping' | 'weeks' | 'week'; now: number; at: number; hasSteps: boolean; /** Cheapest beyond it. */ after: Choice }

export interface CostAnswer {
  /** All devices. */
  count: number;
  rows: WayCost[];
  /** Kinds that no priced way takes. */
  stranded: AskedKind[];
  /** Cheapest now; null where a kind is stranded or nothing is priced. */
  best: Choice | null;
  /** Cheapest a year, of ways whose years are known; `total` is what it costs a year. */
  bestYearly: Choice | null;
  changes: Change[];
}

type Offers = Partial<Record<Way, TimedOffer>>;

/** Years that a way's result lasts: a new sling ends with the metal, or at its own limit; a new device only at its limit. */
export function lastingYears(way: Way, { years }: TimedOffer, metal: number | null): number | null {
  if (way === 'new' || metal === null) return years;
  return years === null ? metal : Math.min(years, metal);
}

/** Costs of each way for each set of kinds, a set being a number whose bits are kinds; infinite where it does not take one of them. */
function setCosts(kinds: readonly AskedKind[], way: Way, offer: Offer, weight = 1): number[] {
  return Array.from({ length: 2 ** kinds.length }, (_, set) => {
    const sent = kinds.filter((_kind, bit) => (set >> bit) & 1);
    if (sent.some(({ ways }) => !(way in ways))) return Infinity;
    return weight * planCost(sent, { [way]: offer }, sent.map(() => way));
  });
}

/** The cheapest split of all kinds among ways, from the costs of sets. Of equal ones the first by the order of ways. */
function cheapestSplit(costs: ReadonlyMap<Way, readonly number[]>, count: number): { total: number; sets: Map<Way, number> } {
  const all = 2 ** count - 1;
  let best: { total: number; sets: Map<Way, number> }[] = Array.from({ length: all + 1 }, (_, set) => ({ total: set === 0 ? 0 : Infinity, sets: new Map() }));
  for (const [way, of] of costs) {
    best = best.map((before, set) => {
      let [total, part] = [before.total, 0];
      for (let sub = set; sub > 0; sub = (sub - 1) & set) {
        const sum = (best[set & ~sub]?.total ?? Infinity) + (of[sub] as number);
        // With one way after the other, an earlier way keeps what is equal.
        if (sum < total - 1e-9) [total, part] = [sum, sub];
      }
      return part === 0 ? before : { total, sets: new Map(best[set & ~part]?.sets).set(way, part) };
    });
  }
  return best[all] as { total: number; sets: Map<Way, number> };
}

function choiceOf(kinds: readonly AskedKind[], { total, sets }: { total: number; sets: ReadonlyMap<Way, number> }): Choice | null {
  if (!Number.isFinite(total)) return null;
  return { total, parts: WAYS.flatMap((way) => (sets.get(way) ? [{ way, kinds: kinds.filter((_, bit) => ((sets.get(way) as number) >> bit) & 1) }] : [])) };
}

/** The cheapest plan, by every split of the kinds among the ways. */
export function cheapestChoice(kinds: readonly AskedKind[], offers: Offers): Choice | null {
  const costs = new Map(WAYS.flatMap((way): [Way, number[]][] => (offers[way] ? [[way, setCosts(kinds, way, offers[way])]] : [])));
  return kinds.length === 0 ? null : choiceOf(kinds, cheapestSplit(costs, kinds.length));
}

/** Everything that is said of an asked cost. @throws RangeError where an offer is none: what was read never is */
export function answerOn({ kinds, offers, metal, rate }: CostAsked): CostAnswer {
  const count = kinds.reduce((sum, kind) => sum + kind.count, 0);
  const share = (way: Way): number | null => {
    const years = offers[way] ? lastingYears(way, offers[way], metal) : null;
    return years === null ? null : yearlyShare(years, rate);
  };
  const rows = WAYS.flatMap((way): WayCost[] => {
    const offer = offers[way];
    const sent = kinds.filter(({ ways }) => way in ways);
    if (!offer || sent.length === 0) return [];
    const many = sent.reduce((sum, kind) => sum + kind.count, 0);
    const total = planCost(sent, { [way]: offer }, sent.map(() => way));
    const shipping = offer.there + offer.back;
    const waiting = offer.weeks * offer.weekCost * many;
    const part = share(way);
    return [{ way, count: many, work: total - shipping - waiting, shipping, waiting, total, each: total / many, years: lastingYears(way, offer, metal), yearly: part === null ? null : total * part }];
  });
  const stranded = kinds.filter(({ ways }) => !WAYS.some((way) => offers[way] && way in ways));
  const yearly = new Map(WAYS.flatMap((way): [Way, number[]][] => {
    const part = share(way);
    return offers[way] && part !== null ? [[way, setCosts(kinds, way, offers[way], part)]] : [];
  }));
  const best = cheapestChoice(kinds, offers);
  return {
    count, rows, stranded, best,
    bestYearly: kinds.length === 0 ? null : choiceOf(kinds, cheapestSplit(yearly, kinds.length)),
    changes: best ? changesOf(kinds, offers, best) : [],
  };
}

const moved = (steps: readonly PriceStep[], by: number): PriceStep[] => steps.map(({ from, each }) => ({ from, each: Math.max(0, each + by) }));
/** No price, and no number of weeks, is looked for beyond this. */
const FARTHEST = 1_000_000;
const HALVINGS = 44;

/** What would change the cheapest plan, nearest first: one input at a time, all others as they are. */
function changesOf(kinds: readonly AskedKind[], offers: Offers, best: Choice): Change[] {
  const given = WAYS.filter((way) => offers[way]);
  const base = new Map(given.map((way) => [way, setCosts(kinds, way, offers[way] as TimedOffer)]));
  const bits = (part: Choice['parts'][number]): number => part.kinds.reduce((set, kind) => set | (1 << kinds.indexOf(kind)), 0);
  const used = new Map(best.parts.map((part) => [part.way, bits(part)]));

  /** Looks for the value of one input from which another plan is cheaper. @param with_ kinds and offers of the touched ways at a value */
  const look = (now: number, isUp: boolean, touched: readonly Way[], with_: (value: number) => [readonly AskedKind[], Offers]): { at: number; after: Choice } | null => {
    const split = (value: number) => {
      const [some, other] = with_(value);
      const costs = new Map([...base].map(([way, of]): [Way, readonly number[]] => [way, touched.includes(way) ? setCosts(some, way, other[way] as TimedOffer) : of]));
      const stays = [...used].reduce((sum, [way, set]) => sum + ((costs.get(way) as number[])[set] as number), 0);
      const found = cheapestSplit(costs, kinds.length);
      return { found, isSame: stays <= found.total + 1e-7 };
    };
    let far = 0;
    if (isUp) {
      far = Math.max(1, now * 2);
      while (far < FARTHEST && split(far).isSame) far *= 4;
    }
    if (split(far).isSame) return null;
    let near = now;
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = (near + far) / 2;
      if (split(middle).isSame) near = middle;
      else far = middle;
    }
    const after = choiceOf(kinds, split(far).found);
    return after && { at: far, after };
  };

  const found: Change[] = [];
  const add = (change: Pick<Change, 'way' | 'what' | 'now' | 'hasSteps'>, isUp: boolean, with_: (value: number) => [readonly AskedKind[], Offers]): void => {
    if (!isUp && change.now === 0) return;
    const turn = look(change.now, isUp, change.way === null ? given : [change.way], with_);
    if (turn) found.push({ ...change, ...turn });
  };
  for (const way of given) {
    const offer = offers[way] as TimedOffer;
    // A way that the plan takes changes it by growing dearer; one that it does not, by growing cheaper.
    const isUp = used.has(way);
    const put = (other: Partial<TimedOffer>): Offers => ({ [way]: { ...offer, ...other } });
    const now = offer.steps[0]?.each ?? 0;
    const owned = kinds.some(({ ways }) => ways[way]);
    add({ way, what: 'price', now, hasSteps: offer.steps.length > 1 || owned }, isUp, (value) => [
      owned ? kinds.map((kind) => ({ ...kind, ways: { ...kind.ways, ...(kind.ways[way] ? { [way]: moved(kind.ways[way], value - now) } : {}) } })) : kinds,
      put({ steps: moved(offer.steps, value - now) }),
    ]);
    add({ way, what: 'shipping', now: offer.there + offer.back, hasSteps: false }, isUp, (value) => [kinds, put({ there: value, back: 0 })]);
    if (offer.weekCost > 0) add({ way, what: 'weeks', now: offer.weeks, hasSteps: false }, isUp, (value) => [kinds, put({ weeks: value })]);
  }
  const { weekCost = 0 } = offers[given[0] as Way] ?? {};
  if (given.some((way) => (offers[way] as TimedOffer).weeks > 0)) {
    for (const isUp of [false, true]) {
      add({ way: null, what: 'week', now: weekCost, hasSteps: false }, isUp, (value) => [kinds, Object.fromEntries(given.map((way) => [way, { ...offers[way], weekCost: value }])) as Offers]);
    }
  }
  const stretch = ({ now, at }: Change): number => Math.abs(at - now) / Math.max(now, at, 1e-9);
  return found.sort((a, b) => stretch(a) - stretch(b));
}

/** Counts for which the chart and its table are drawn. */
const FEWEST_SHOWN = 10;
const MOST_SHOWN = 60;
/** Up to here a break-even is looked for. */
export const MOST_TURNS = 500;

/** What one to so many devices that are alike cost by each way, and where the cheapest way changes. */
export interface CostCurves { ways: { way: Way; totals: number[] }[]; /** Cheapest ways from a count on; several where they cost the same. */ cheapest: { count: number; ways: Way[] }[]; count: number }

/** Offers that stand side by side in the chart: home only where it is open to all devices, and then what refused them is not. */
export function offersSideBySide({ kinds, offers }: Pick<CostAsked, 'kinds' | 'offers'>): Offers {
  const takesAll = (way: Way): boolean => kinds.every(({ ways }) => way in ways);
  const isForAll = kinds.length > 0 && takesAll('home');
  return Object.fromEntries(WAYS.flatMap((way) => (offers[way] && (isForAll ? takesAll(way) : way !== 'home') ? [[way, offers[way]]] : [])));
}

/** Curves over the count of devices, at each way's own price. @param count of devices that the reader has; none for an example */
export function costCurves(offers: Offers, count: number): CostCurves {
  const most = Math.min(MOST_SHOWN, Math.max(FEWEST_SHOWN, Math.ceil(count * 1.3)));
  const ways = WAYS.flatMap((way) => {
    const offer = offers[way];
    return offer ? [{ way, totals: Array.from({ length: most }, (_, i) => orderCost(offer, i + 1).total) }] : [];
  });
  const cheapest: CostCurves['cheapest'] = [];
  for (let n = 1; n <= most && ways.length > 0; n += 1) {
    const least = Math.min(...ways.map(({ totals }) => totals[n - 1] as number));
    const first = ways.filter(({ totals }) => (totals[n - 1] as number) <= least * (1 + 1e-9) + 1e-9).map(({ way }) => way);
    if (cheapest.at(-1)?.ways.join() !== first.join()) cheapest.push({ count: n, ways: first });
  }
  return { ways, cheapest, count };
}

/** Where a way and buying new change places; null where one of them has no price. */
export function turnsAgainstNew(offers: Offers): { way: Way; turns: Turn[] }[] {
  const fresh = offers.new;
  return fresh ? WAYS.flatMap((way) => (way !== 'new' && offers[way] ? [{ way, turns: turns(offers[way], fresh, MOST_TURNS) }] : [])) : [];
}
