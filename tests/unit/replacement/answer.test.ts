/** What the calculator says. Worked by hand, and against trying every plan. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costExample } from '../../../src/build/cost-example.ts';
import { answerOn, cheapestChoice, costCurves, lastingYears, turnsAgainstNew } from '../../../src/replacement/answer.ts';
import { orderCost } from '../../../src/replacement/cost.ts';
import { cheapestPlan, planCost } from '../../../src/replacement/plan.ts';
import { type CostAsked, type CostWords, nothingWritten, readCost, type Way, WAYS } from '../../../src/replacement/read-words.ts';
import { costTicks } from '../../../src/components/replacement/cost-chart.tsx';

type Change = Partial<Record<Way, Partial<CostWords['offers']['maker']>>> & { general?: Partial<CostWords['general']>; kinds?: Partial<CostWords['kinds'][number]>[] };
function asked({ general = {}, kinds = [], ...offers }: Change): CostAsked {
  const words = nothingWritten();
  Object.assign(words.general, general);
  words.kinds = kinds.map((kind) => ({ count: '', name: '', fresh: '', refused: '', ...kind }));
  for (const way of WAYS) Object.assign(words.offers[way], offers[way] ?? {});
  return readCost(words);
}

describe('by hand', () => {
  // 7 x 9 + 2 x 15 = 93 at the workshop; 7 x 20 = 140 new.
  const seven = asked({ kinds: [{ count: '7' }], workshop: { price: '9', there: '15', back: '15', life: '10' }, new: { price: '20', life: '10' }, general: { metal: '6' } });

  test('seven devices at 9 each and 15 shipping each way come to 93', () => {
    const { rows, best } = answerOn(seven);
    expect(rows[0]).toMatchObject({ way: 'workshop', count: 7, work: 63, shipping: 30, waiting: 0, total: 93, years: 6 });
    expect(best).toMatchObject({ total: 93, parts: [{ way: 'workshop' }] });
  });

  test('a new sling ends with the metal, a new device does not: so the cost a year may say otherwise', () => {
    const { bestYearly, rows } = answerOn(seven);
    // 93 / 6 = 15.5 and 140 / 10 = 14.
    expect(rows.map(({ yearly }) => yearly)).toEqual([15.5, 14]);
    expect(bestYearly).toMatchObject({ total: 14, parts: [{ way: 'new' }] });
    expect(lastingYears('maker', { steps: [{ from: 1, each: 1 }], least: 1, there: 0, back: 0, weeks: 0, weekCost: 0, years: null }, 4)).toBe(4);
  });

  test('what changes the answer is where the two cost the same', () => {
    const at = Object.fromEntries(answerOn(seven).changes.map(({ way, what, at: value }) => [`${way} ${what}`, value]));
    // 7 p + 30 = 140 at p = 110 / 7; 63 + s = 140 at s = 77; 7 p = 93 at p = 93 / 7. A new one has no post to fall.
    expect(Object.keys(at).sort()).toEqual(['new price', 'workshop price', 'workshop shipping']);
    expect(at['workshop price']).toBeCloseTo(110 / 7, 5);
    expect(at['workshop shipping']).toBeCloseTo(77, 5);
    expect(at['new price']).toBeCloseTo(93 / 7, 5);
  });

  test('weeks count where a week without a device costs something', () => {
    const waited = asked({ kinds: [{ count: '2' }], general: { week: '3' }, maker: { price: '10', weeks: '4' }, new: { price: '30' } });
    const { rows, changes } = answerOn(waited);
    // 2 x 10 + 4 x 3 x 2 = 44 against 60: it turns at w x 6 = 40, and at 8 c = 40.
    expect(rows[0]).toMatchObject({ waiting: 24, total: 44 });
    expect(changes.find(({ what }) => what === 'weeks')?.at).toBeCloseTo(40 / 6, 5);
    expect(changes.find(({ what }) => what === 'week')?.at).toBeCloseTo(5, 5);
  });

  test('kinds may go different ways, and those that nobody takes are named', () => {
    const split = asked({ kinds: [{ count: '4', name: 'cams' }, { count: '1', name: 'old', refused: 'mw', fresh: '8' }], maker: { price: '10' }, new: { price: '50' } });
    // 4 x 10 + 8 = 48; a new one of the second kind has its own price, below that of the first.
    expect(answerOn(split).best).toMatchObject({ total: 48, parts: [{ way: 'maker' }, { way: 'new' }] });
    const alone = answerOn(asked({ kinds: [{ count: '1', refused: 'm' }], maker: { price: '10' } }));
    expect(alone.stranded).toHaveLength(1);
    expect(alone.best).toBeNull();
  });

  test('of equal plans the maker stands first', () => {
    expect(answerOn(asked({ kinds: [{ count: '2' }], maker: { price: '9' }, workshop: { price: '9' }, new: { price: '9' } })).best?.parts.map(({ way }) => way)).toEqual(['maker']);
  });

  test('the break-even against new is that of the two lines', () => {
    // Operations management texts: 12,000 + 1.5 n against 2,400 + 3 n meet at 6,400; scaled to a thousandth, 12 + 1.5 n and 2.4 + 3 n at 6.4.
    const two = asked({ kinds: [{ count: '1' }], maker: { price: '1.5', there: '12' }, new: { price: '3', back: '2.4' } });
    expect(turnsAgainstNew(two.offers)).toEqual([{ way: 'maker', turns: [{ count: 1, cheaper: 'second' }, { count: 7, cheaper: 'first' }] }]);
    expect(costCurves(two.offers, 3).cheapest).toEqual([{ count: 1, ways: ['new'] }, { count: 7, ways: ['maker'] }]);
  });

  test('ticks of the axis are one, two or five times a power of ten', () => {
    // Heckbert's nice numbers for about five ticks, by hand.
    expect(costTicks(93)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(costTicks(276)).toEqual([0, 100, 200, 300]);
    expect(costTicks(5)).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

test('the invented example of the page is added up as by hand', () => {
  const { curves } = costExample();
  const totals = Object.fromEntries(curves.ways.map(({ way, totals: of }) => [way, of]));
  // Maker 16 n + 18 + 4 n. Workshop: 12 each, 3 at least, 10 each from 10 on; 28 post, 5 n waiting; 9 are had for the price of 10.
  expect(totals['maker']).toEqual([38, 58, 78, 98, 118, 138, 158, 178, 198, 218]);
  expect(totals['workshop']).toEqual([69, 74, 79, 96, 113, 130, 147, 164, 173, 178]);
  // New: 27 n + 6.
  expect(totals['new']).toEqual([33, 60, 87, 114, 141, 168, 195, 222, 249, 276]);
  expect(totals['home']).toBeUndefined();
  expect(curves.cheapest).toEqual([{ count: 1, ways: ['new'] }, { count: 2, ways: ['maker'] }, { count: 4, ways: ['workshop'] }]);
});

const money = fc.integer({ min: 0, max: 300 }).map(String);
const anyOffer = fc.record({ price: money, there: money, back: money, weeks: fc.integer({ min: 0, max: 9 }).map(String), least: fc.integer({ min: 1, max: 5 }).map(String), life: fc.integer({ min: 1, max: 12 }).map(String) });
const anyAsked = fc.record({
  general: fc.record({ week: fc.integer({ min: 0, max: 9 }).map(String), metal: fc.integer({ min: 1, max: 12 }).map(String), rate: fc.integer({ min: 0, max: 9 }).map(String) }),
  kinds: fc.array(fc.record({ count: fc.integer({ min: 1, max: 9 }).map(String), fresh: fc.oneof(fc.constant(''), money), refused: fc.constantFrom('', 'm', 'w', 'mw') }), { minLength: 1, maxLength: 4 }),
  maker: anyOffer, workshop: anyOffer, new: anyOffer, home: anyOffer,
}).map((some) => asked(some as unknown as Change));

describe('properties', () => {
  test('the cheapest shown equals an exhaustive search', () => {
    fc.assert(fc.property(anyAsked, ({ kinds, offers }) => {
      const choice = cheapestChoice(kinds, offers);
      const offered = offers as Record<string, NonNullable<(typeof offers)[Way]>>;
      expect(choice?.total).toBeCloseTo(cheapestPlan(kinds, offered).total, 6);
      const ways = kinds.map((kind) => choice?.parts.find((part) => part.kinds.includes(kind))?.way as string);
      expect(planCost(kinds, offered, ways)).toBeCloseTo(choice?.total as number, 6);
      for (const [i, kind] of kinds.entries()) expect(Object.keys(kind.ways)).toContain(ways[i]);
    }), { numRuns: 300 });
  });

  test('a device more never lowers the cheapest plan', () => {
    fc.assert(fc.property(anyAsked, fc.nat(), ({ kinds, offers }, at) => {
      const more = kinds.map((kind, i) => (i === at % kinds.length ? { ...kind, count: kind.count + 1 } : kind));
      expect(cheapestChoice(more, offers)?.total).toBeGreaterThanOrEqual((cheapestChoice(kinds, offers)?.total as number) - 1e-9);
    }), { numRuns: 300 });
  });

  test('a row adds up to its parts, and to the order of its devices where they are alike', () => {
    fc.assert(fc.property(anyAsked, (some) => {
      for (const { way, work, shipping, waiting, total, each, count } of answerOn(some).rows) {
        expect(work + shipping + waiting).toBeCloseTo(total, 6);
        expect(each * count).toBeCloseTo(total, 6);
        if (some.kinds.length === 1 && way !== 'new') expect(total).toBeCloseTo(orderCost(some.offers[way] as NonNullable<(typeof some.offers)[Way]>, count).total, 6);
      }
    }), { numRuns: 200 });
  });

  test('just beyond the value that changes the answer the plan is another, and just before it the same', () => {
    fc.assert(fc.property(anyAsked, (some) => {
      const { best, changes } = answerOn(some);
      const names = (choice: typeof best) => choice?.parts.map(({ way, kinds }) => `${way} ${kinds.map(({ at }) => at)}`).join();
      for (const { way, what, at, after } of changes) {
        expect(names(after)).not.toBe(names(best));
        if (way === null || what !== 'shipping') continue;
        const offer = some.offers[way] as NonNullable<(typeof some.offers)[Way]>;
        const at_ = (there: number) => cheapestChoice(some.kinds, { ...some.offers, [way]: { ...offer, there, back: 0 } });
        const step = at > offer.there + offer.back ? 0.01 : -0.01;
        if (at + step >= 0) expect(at_(at + step)?.total).toBeLessThanOrEqual((best?.total ?? 0) + Math.max(0, at - offer.there - offer.back) + 1e-6);
        const before = at_(at - step);
        expect(before?.total).toBeCloseTo(planCost(some.kinds, { ...some.offers, [way]: { ...offer, there: at - step, back: 0 } } as never, some.kinds.map((kind) => best?.parts.find(({ kinds }) => kinds.includes(kind))?.way as string)), 4);
      }
    }), { numRuns: 100 });
  });
});
