/** What replacement costs. Worked by hand, by published examples of break-even analysis, and by trying every order. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakEven, type Offer, orderCost, turns, yearlyShare } from '../../../src/replacement/cost.ts';
import { cheapestPlan, type Kind, planCost } from '../../../src/replacement/plan.ts';

const offer = (more: Partial<Offer> = {}): Offer => ({ steps: [{ from: 1, each: 9 }], least: 1, there: 15, back: 15, weeks: 0, weekCost: 0, ...more });

describe('an order', () => {
  test('seven devices at 9 each and 15 shipping each way come to 93', () => {
    // By hand: 7 x 9 = 63, and 2 x 15 = 30.
    expect(orderCost(offer(), 7)).toEqual({ work: 63, shipping: 30, waiting: 0, total: 93, charged: 7 });
  });

  test.each([
    // By hand: a least of five charges 45 for three; 5 weeks at 2 a device is 30 for three.
    ['below the least', offer({ least: 5 }), 3, { work: 45, charged: 5, total: 75 }],
    ['at the least', offer({ least: 5 }), 5, { work: 45, charged: 5, total: 75 }],
    ['above the least', offer({ least: 5 }), 6, { work: 54, charged: 6, total: 84 }],
    ['that is waited for', offer({ weeks: 5, weekCost: 2 }), 3, { waiting: 30, total: 87 }],
    // Ten at 8 are 80, nine at 9 are 81: nine are had for 80.
    ['just below a step', offer({ steps: [{ from: 1, each: 9 }, { from: 10, each: 8 }] }), 9, { work: 80, charged: 10 }],
    ['far below a step', offer({ steps: [{ from: 1, each: 9 }, { from: 10, each: 8 }] }), 8, { work: 72, charged: 8 }],
    ['of nothing', offer({ least: 5, weeks: 3, weekCost: 4 }), 0, { work: 0, shipping: 0, total: 0, charged: 0 }],
  ])('%s', (_name, asked, count, cost) => expect(orderCost(asked, count)).toMatchObject(cost));

  test.each<[string, () => unknown, RegExp]>([
    ['a count that is no whole number', () => orderCost(offer(), 1.5), /count must be a whole number/],
    ['a price below nothing', () => orderCost(offer({ steps: [{ from: 1, each: -1 }] }), 1), /steps\[0\]\.each must be 0 or more/],
    ['no price for one', () => orderCost(offer({ steps: [{ from: 2, each: 9 }] }), 1), /steps must begin with the price from one/],
    ['steps that fall', () => orderCost(offer({ steps: [{ from: 1, each: 9 }, { from: 1, each: 8 }] }), 1), /steps\[1\]\.from must be a whole number above/],
    ['shipping without end', () => orderCost(offer({ there: Number.POSITIVE_INFINITY }), 1), /there must be 0 or more/],
  ])('%s is refused', (_name, ask, message) => expect(ask).toThrow(message));
});

describe('published examples', () => {
  test('two cost lines meet where the textbooks say', () => {
    // Worked examples of break-even analysis between two cost lines (operations management texts): F = 2000, v = 0.03 against
    // 1500, 0.035 meet at 100,000; 12,000, 1.50 against 2,400, 3.00 at 6,400. At 125,000 the first pair costs 5,750 and 5,875.
    expect(breakEven({ fixed: 2000, each: 0.03 }, { fixed: 1500, each: 0.035 })).toBeCloseTo(100_000, 6);
    expect(breakEven({ fixed: 12_000, each: 1.5 }, { fixed: 2400, each: 3 })).toBe(6400);
    expect(2000 + 0.03 * 125_000).toBeLessThan(1500 + 0.035 * 125_000);
  });

  test('two lines that never meet have no count', () => {
    expect(breakEven({ fixed: 10, each: 3 }, { fixed: 5, each: 3 })).toBeNull();
    expect(breakEven({ fixed: 10, each: 3 }, { fixed: 5, each: 2 })).toBeNull();
    expect(breakEven({ fixed: 5, each: 3 }, { fixed: 5, each: 3 })).toBeNull();
  });

  test('a sum that lasts some years is shared among them as engineering economy does', () => {
    // Capital recovery factors, NIST Handbook 135; the two at 10 per cent also stand in printed tables as 0.2638 and 0.1627.
    const table: [number, number, number][] = [[0.03, 5, 0.218354571401], [0.03, 10, 0.117230506605], [0.05, 5, 0.230974798128], [0.05, 10, 0.129504574965], [0.1, 5, 0.263797480795], [0.1, 10, 0.162745394883]];
    for (const [rate, years, factor] of table) expect(Math.abs(yearlyShare(years, rate) / factor - 1)).toBeLessThan(1e-11);
    expect(yearlyShare(8, 0)).toBe(1 / 8);
    expect(yearlyShare(8, 1e-12)).toBeCloseTo(1 / 8, 10);
  });
});

describe('the turns between two ways', () => {
  test('are the break-even of the lines, rounded up to a whole device', () => {
    // 30 + 9 n against 20 n: 30 / 11 = 2.7, so from three on sending is cheaper.
    expect(turns(offer(), offer({ steps: [{ from: 1, each: 20 }], there: 0, back: 0 }), 50)).toEqual([{ count: 1, cheaper: 'second' }, { count: 3, cheaper: 'first' }]);
    // 30 + 9 n against 19 n meet at exactly three.
    expect(turns(offer(), offer({ steps: [{ from: 1, each: 19 }], there: 0, back: 0 }), 9).map(({ count, cheaper }) => `${count} ${cheaper}`)).toEqual(['1 second', '3 equal', '4 first']);
  });

  test('agree with the line arithmetic for all plain prices', () => {
    const cents = (max: number) => fc.integer({ min: 0, max }).map((n) => n / 100);
    fc.assert(fc.property(cents(5000), cents(5000), cents(5000), cents(5000), (f1, v1, f2, v2) => {
      const [a, b] = [offer({ steps: [{ from: 1, each: v1 }], there: f1, back: 0 }), offer({ steps: [{ from: 1, each: v2 }], there: f2, back: 0 })];
      const meet = breakEven({ fixed: f1, each: v1 }, { fixed: f2, each: v2 });
      const last = turns(a, b, 400).at(-1);
      if (meet === null || meet < 1 || meet > 399) return;
      // Beyond the break-even the way with the smaller price each is cheaper.
      expect(last?.cheaper).toBe(v1 < v2 ? 'first' : 'second');
      expect(last?.count).toBe(Math.floor(meet + 1e-6) + 1);
    }));
  });
});

const price = fc.integer({ min: 0, max: 400 });
const steps = fc.tuple(price, fc.array(fc.tuple(fc.integer({ min: 2, max: 9 }), price), { maxLength: 3 })).map(([each, more]) => {
  const rising = [...new Map(more)].sort(([a], [b]) => a - b);
  return [{ from: 1, each }, ...rising.map(([from, one]) => ({ from, each: one }))];
});
const anyOffer: fc.Arbitrary<Offer> = fc.record({ steps, least: fc.integer({ min: 1, max: 6 }), there: price, back: price, weeks: fc.integer({ min: 0, max: 9 }), weekCost: fc.integer({ min: 0, max: 20 }) });

describe('properties', () => {
  test('a device more never lowers a total', () => {
    fc.assert(fc.property(anyOffer, fc.integer({ min: 0, max: 30 }), (one, count) => {
      expect(orderCost(one, count + 1).total).toBeGreaterThanOrEqual(orderCost(one, count).total);
    }), { numRuns: 500 });
  });

  test('what is charged is the cheapest of all larger orders', () => {
    fc.assert(fc.property(anyOffer, fc.integer({ min: 1, max: 12 }), (one, count) => {
      // Every order of as many or more, up to far beyond the last step.
      const orders = Array.from({ length: 40 }, (_, i) => Math.max(count, one.least) + i);
      const cheapest = Math.min(...orders.map((n) => n * (one.steps.filter(({ from }) => from <= n).at(-1)?.each ?? Number.NaN)));
      expect(orderCost(one, count).work).toBe(cheapest);
    }), { numRuns: 500 });
  });

  const kinds: fc.Arbitrary<Kind[]> = fc.array(fc.record({
    count: fc.integer({ min: 0, max: 8 }),
    ways: fc.record({ workshop: fc.option(steps, { nil: null }), fresh: fc.option(steps, { nil: null }), maker: fc.option(steps, { nil: null }) }, { requiredKeys: ['fresh'] }),
  }), { minLength: 1, maxLength: 4 }) as fc.Arbitrary<Kind[]>;
  const offers = fc.record({ maker: anyOffer, workshop: anyOffer, fresh: anyOffer });

  test('the cheapest plan is the cheapest of all, tried one by one', () => {
    fc.assert(fc.property(kinds, offers, (some, offered) => {
      const best = cheapestPlan(some, offered);
      let all: string[][] = [[]];
      for (const kind of some) all = all.flatMap((ways) => Object.keys(kind.ways).map((way) => [...ways, way]));
      const totals = all.map((ways) => planCost(some, offered, ways));
      expect(best.total).toBe(Math.min(...totals));
      expect(best.total).toBe(planCost(some, offered, best.ways));
    }), { numRuns: 200 });
  });

  test('a device more of any kind never lowers the cheapest plan', () => {
    fc.assert(fc.property(kinds, offers, fc.nat(), (some, offered, at) => {
      const more = some.map((kind, i) => (i === at % some.length ? { ...kind, count: kind.count + 1 } : kind));
      expect(cheapestPlan(more, offered).total).toBeGreaterThanOrEqual(cheapestPlan(some, offered).total - 1e-9);
    }), { numRuns: 300 });
  });
});
