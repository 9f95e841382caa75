/** What a reader wrote into the calculator of costs, read into offers and kinds of device, with a reason for each word that cannot be. */
import type { Offer, PriceStep } from './cost.ts';
import type { Kind } from './plan.ts';
import { readAmount, type AmountRange } from './read-amount.ts';

/** Ways that have a price, in the order in which they are to be asked: the maker first. */
export const WAYS = ['maker', 'workshop', 'new', 'home'] as const;
export type Way = (typeof WAYS)[number];
export const GENERAL_KEYS = ['cur', 'week', 'metal', 'rate', 'retire'] as const;
/** Currency; what a week without a device costs; years that the metal has left; yearly interest in per cent; when the sling has to go. */
export type GeneralKey = (typeof GENERAL_KEYS)[number];
/** What is written of an offer, in the order of a link. */
export const OFFER_FIELDS = ['price', 'there', 'back', 'weeks', 'life', 'least', 'from', 'lower', 'from2', 'lower2'] as const;
export type OfferField = (typeof OFFER_FIELDS)[number];
/** Devices that are alike, as written. `refused` names who refused them: `m` the maker, `w` a workshop, `mw` both. */
export interface KindWords { count: string; name: string; fresh: string; refused: '' | 'm' | 'w' | 'mw' }
/** More kinds than that are for a list, not for a form. */
export const MOST_KINDS = 6;

/** Everything as it was written; empty: not said. */
export interface CostWords { general: Record<GeneralKey, string>; kinds: KindWords[]; offers: Record<Way, Record<OfferField, string>> }

const blank = <K extends string>(keys: readonly K[]): Record<K, string> => Object.fromEntries(keys.map((key) => [key, ''])) as Record<K, string>;
export const blankKind = (): KindWords => ({ count: '', name: '', fresh: '', refused: '' });
/** Nothing written. */
export const nothingWritten = (): CostWords => ({
  general: blank(GENERAL_KEYS), kinds: [blankKind()], offers: { maker: blank(OFFER_FIELDS), workshop: blank(OFFER_FIELDS), new: blank(OFFER_FIELDS), home: blank(OFFER_FIELDS) },
});

/** An offer with the years that what it gives will last, by its maker's own limit; null where that is not said. */
export interface TimedOffer extends Offer { years: number | null }
/** One kind as read, with its place in the form. */
export interface AskedKind extends Kind { at: number; name: string; isHomeOpen: boolean }

export interface CostAsked {
  currency: string;
  kinds: AskedKind[];
  /** Offers whose fields could all be read, in the order of ways; home only where some kind was refused by both. */
  offers: Partial<Record<Way, TimedOffer>>;
  /** Years that the metal has left, or null. */
  metal: number | null;
  /** Yearly interest, as a share of one. */
  rate: number;
  /** `now`, a day, or null where nobody has said. */
  retire: string | null;
  /** What is wrong, by field: `week`, `count-0`, `maker-price`. */
  faults: Readonly<Record<string, string>>;
  /** Whether nothing can be worked out before a fault is mended: it stands in what all ways share. */
  isStopped: boolean;
}

const MONEY: AmountRange = { low: 0, high: 1_000_000 };
const COUNT: AmountRange = { low: 1, high: 999, whole: true };
const YEARS: AmountRange = { low: 0.1, high: 100 };
const OFFER_RANGES: Readonly<Record<OfferField, AmountRange>> = {
  price: MONEY, there: MONEY, back: MONEY, weeks: { low: 0, high: 520 }, life: YEARS, least: COUNT, from: { ...COUNT, low: 2 }, lower: MONEY, from2: { ...COUNT, low: 2 }, lower2: MONEY,
};
const DAY = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
const LONGEST_CURRENCY = 8;

/** Reads everything. Never throws; a word that cannot be read is a fault, and nothing is worked out as if it were not there. */
export function readCost(words: CostWords): CostAsked {
  const faults: Record<string, string> = {};
  const amount = (id: string, text: string, range: AmountRange): number | null => {
    if (text.trim() === '') return null;
    const read = readAmount(text, range);
    if (read.ok) return read.value;
    faults[id] = read.why;
    return null;
  };
  const { cur, week, metal, rate, retire } = words.general;
  const currency = cur.trim();
  if (currency.length > LONGEST_CURRENCY) faults['cur'] = `longer than ${LONGEST_CURRENCY} signs; write a code or a sign`;
  else if (/\d/.test(currency)) faults['cur'] = 'a digit in the name of a currency; write a code or a sign';
  const weekCost = amount('week', week, MONEY) ?? 0;
  const asked = { metal: amount('metal', metal, YEARS), rate: (amount('rate', rate, { low: 0, high: 100 }) ?? 0) / 100 };
  const isRetire = retire === 'now' || DAY.test(retire);
  if (retire !== '' && !isRetire) faults['retire'] = 'neither "now" nor a day like 2026-11-24';

  const kinds = words.kinds.flatMap(({ count, name, fresh, refused }, at): AskedKind[] => {
    const many = amount(`count-${at}`, count, COUNT);
    const own = amount(`fresh-${at}`, fresh, MONEY);
    if (many === null) {
      if (faults[`count-${at}`] === undefined && (name.trim() !== '' || fresh.trim() !== '' || refused !== '')) faults[`count-${at}`] = 'how many of them? Write a whole number';
      return [];
    }
    const isHomeOpen = refused === 'mw';
    const ways: Record<string, PriceStep[] | null> = {};
    if (!refused.includes('m')) ways['maker'] = null;
    if (!refused.includes('w')) ways['workshop'] = null;
    ways['new'] = own === null ? null : [{ from: 1, each: own }];
    if (isHomeOpen) ways['home'] = null;
    return [{ at, name: name.trim(), count: many, ways, isHomeOpen }];
  });
  const isStopped = Object.keys(faults).length > 0;

  const offers: CostAsked['offers'] = {};
  for (const way of WAYS) {
    const of = words.offers[way];
    const read = Object.fromEntries(OFFER_FIELDS.map((field) => [field, amount(`${way}-${field}`, of[field], OFFER_RANGES[field])])) as Record<OfferField, number | null>;
    const steps = way === 'new' && read.price === null ? stepsOfKinds(kinds) : readSteps(way, read, of, faults);
    const isWrong = OFFER_FIELDS.some((field) => faults[`${way}-${field}`] !== undefined);
    if (isWrong || steps === null || (way === 'home' && !kinds.some(({ isHomeOpen }) => isHomeOpen))) continue;
    offers[way] = { steps, least: read.least ?? 1, there: read.there ?? 0, back: read.back ?? 0, weeks: read.weeks ?? 0, weekCost, years: read.life };
  }
  return { currency, kinds, offers, ...asked, retire: isRetire ? retire : null, faults, isStopped };
}

/** Where each kind has its own price new, the first of them stands for "a new one". */
function stepsOfKinds(kinds: readonly AskedKind[]): PriceStep[] | null {
  const own = kinds.map(({ ways }) => ways['new']?.[0]?.each);
  const [first] = own;
  return first === undefined || own.includes(undefined) ? null : [{ from: 1, each: first }];
}

/** Price steps of an offer, rising by count; null where it has no price. Half a step, or steps that do not rise, are faults. */
function readSteps(way: Way, read: Record<OfferField, number | null>, words: Record<OfferField, string>, faults: Record<string, string>): PriceStep[] | null {
  const steps: PriceStep[] = [];
  if (read.price !== null) steps.push({ from: 1, each: read.price });
  else if (words.price.trim() === '' && OFFER_FIELDS.some((field) => words[field].trim() !== '' && field !== 'life')) faults[`${way}-price`] = 'the price of one is missing';
  for (const [from, lower] of [['from', 'lower'], ['from2', 'lower2']] as const) {
    const [count, each] = [read[from], read[lower]];
    if (count === null && each === null) continue;
    const known = (field: OfferField): boolean => faults[`${way}-${field}`] !== undefined;
    if (count === null || each === null) {
      const missing = count === null ? from : lower;
      if (!known(missing)) faults[`${way}-${missing}`] = count === null ? 'from how many on? Write a whole number' : 'the price from there on is missing';
      continue;
    }
    if (count <= (steps.at(-1)?.from ?? 1)) faults[`${way}-${from}`] = 'not above the step before';
    else steps.push({ from: count, each });
  }
  return read.price === null ? null : steps;
}
