/** From records to links, on made-up evidence with round numbers. Each expectation names its arithmetic. */
import { describe, expect, test } from 'vitest';
import type { FactorRead, Sought } from '../../../src/evidence/factor.ts';
import type { LinkRecord, MethodRecord } from '../../../src/records/schema.ts';
import { atRating, type BuiltLink, chainOf, factorNames, loadPath, needsRating, prepare } from '../../../src/strength/load-path.ts';
import type { Evidence, Figure } from '../../../src/strength/types.ts';
import { near } from '../break-tests/near.ts';

/** Of ln, one in twenty on each side of a range: 1.644854 (any normal table). */
const NINETY = 1.6448536269514722;
const CV = 0.05;
/** Sd of ln of a coefficient of variation: sqrt(ln(1 + cv^2)). */
const SPECIMEN = Math.sqrt(Math.log(1 + CV * CV));

const figure = (id: string, more: Partial<Figure> = {}): Figure => ({ id, source: id, what: 'made up', kind: 'measured', value: { mean: 10, n: 4 }, unit: 'kN', rig: { widthMm: 10 }, study: id, standing: 'read', certainty: 'low',
  seen: { figure: id, study: id, logMean: Math.log(10), cv: CV, n: 4 } as Figure['seen'], ...more });
const factor = (more: Record<string, unknown> = {}): FactorRead =>
  ({ what: 'made up', acts: 'loop', class: 'any', applies: {}, from: [], ...more }) as unknown as FactorRead;
const assumed = (low: number, high: number, more: Record<string, unknown> = {}): FactorRead => factor({ assumed: { low, high, why: 'made up' }, ...more });

const evidence = {
  version: '2026-01-01.1', model: 1, methods: {}, slings: {}, gaps: {}, rules: {},
  classes: { any: { cv: CV, cvDf: 9, cvInterval: [0.03, 0.09], ceiling: 0.2, tau: 0.1, tauInterval: null, tauFrom: 'assumed' } },
  figures: Object.fromEntries([
    figure('on-3'), figure('on-4'), figure('on-2'), figure('least', { kind: 'required', value: 1000, unit: 'lbf', seen: null }),
    figure('length', { value: 22, unit: 'mm' }), figure('range', { value: { low: 1, high: 2, kind: 'teaching' } }), figure('wide', { rig: { widthMm: 30 } }),
  ].map((one) => [one.id, { ...one, rig: { ...one.rig, ...(one.id.startsWith('on-') && { bearingMm: Number(one.id.slice(3)) }) } }])),
  factors: {
    along: factor({ along: 'bearingMm', from: ['on-4', 'on-3'] }),
    plain: factor({ from: ['on-2'] }),
    tens: assumed(8, 12.5),
    half: assumed(0.4, 0.625, { acts: { multiplies: 'tens' } }),
    device: assumed(1, 1.21, { acts: 'rating' }),
    floored: assumed(8, 12.5, { floor: 'least' }),
    'floored-by-length': assumed(8, 12.5, { floor: 'length' }),
    'floored-by-range': assumed(8, 12.5, { floor: 'range' }),
    'floored-by-nothing': assumed(8, 12.5, { floor: 'nowhere' }),
    nylon: assumed(8, 12.5, { applies: { materials: ['nylon'] } }),
    wide: factor({ from: ['wide'] }),
    'wide-too': factor({ from: ['wide'] }),
    classless: assumed(8, 12.5, { class: 'none' }),
  },
} as unknown as Evidence;

const sought: Sought = { material: 'hmpe', form: 'sewn-loop', widthMm: 10, bearingMm: 3 };
const link = (at: LinkRecord['at'], ...factors: string[]): LinkRecord => ({ name: `${at} of ${factors}`, at, part: at === 'connector' ? 'connector' : 'sling', factors }) as unknown as LinkRecord;
const pathOf = (links: LinkRecord[], hasRating = true) => loadPath(prepare(evidence), { links } as unknown as MethodRecord, sought, hasRating);
const built = (links: LinkRecord[], hasRating = true): BuiltLink[] => {
  const path = pathOf(links, hasRating);
  if ('stop' in path) throw new Error(path.stop.factor);
  return path.links;
};

describe('the smallest bearing', () => {
  test('is that of a figure that runs along bearings; others, and figures that are not there, say nothing of it', () => {
    expect(prepare(evidence).smallestBearingMm).toBe(3);
    const holed = { ...evidence, factors: { along: factor({ along: 'bearingMm', from: ['nowhere', 'on-4', 'wide'] }) } };
    expect(prepare(holed).smallestBearingMm).toBe(4);
  });
});

describe('a link', () => {
  test('of one factor: the middle of its range, and what is not known of it', () => {
    const [one] = built([link('eye', 'tens')]) as [BuiltLink];
    // ln of sqrt(8 x 12.5) = 10, and ln(12.5 / 8) over twice 1.645.
    near(Math.exp(one.mu), 10, 1e-12);
    near(one.parts[0]?.value.knowledge ?? 0, Math.log(12.5 / 8) / (2 * NINETY), 1e-6);
    near(one.specimen, SPECIMEN, 1e-12);
    expect([one.ofRating, one.floorKn]).toEqual([false, null]);
  });

  test('of a factor that multiplies another: means of ln add up, and so do the squares of what scatters', () => {
    const [one] = built([link('eye', 'half')]) as [BuiltLink];
    near(Math.exp(one.mu), 5, 1e-12);
    near(one.specimen, SPECIMEN * Math.SQRT2, 1e-12);
    expect(one.parts.map((part) => part.factor)).toEqual(['half', 'tens']);
  });

  test('takes the first of its factors that has a value', () => {
    const [one] = built([link('eye', 'nylon', 'wide', 'half', 'tens')]) as [BuiltLink];
    expect(one.parts[0]?.factor).toBe('half');
  });

  test('without a value says the nearest miss: another width is nearer than another material, and of two alike the first counts', () => {
    const stopOf = (...factors: string[]) => {
      const path = pathOf([link('eye', ...factors)]);
      return 'stop' in path ? [path.stop.miss, path.stop.factor] : null;
    };
    expect(stopOf('nylon', 'wide')).toEqual(['other-width', 'wide']);
    expect(stopOf('wide', 'nylon')).toEqual(['other-width', 'wide']);
    expect(stopOf('wide', 'wide-too')).toEqual(['other-width', 'wide']);
  });

  test('with a required minimum has it in kN: 1000 lbf are 4.448 (NIST SP 811), and keeps what is not known to itself', () => {
    const links = built([link('eye', 'floored'), link('connector', 'tens')]);
    near(links[0]?.floorKn ?? 0, 4.4482216152605, 1e-12);
    const chain = chainOf(links, factorNames(links));
    const knowledge = Math.log(12.5 / 8) / (2 * NINETY);
    expect(chain.map((one) => [one.shared.length, 'floor' in one])).toEqual([[2, true], [2, false]]);
    expect(chain[0]?.shared).toEqual([0, 0]);
    near(chain[0]?.own ?? 0, Math.hypot(SPECIMEN, knowledge), 1e-6);
    expect(chain[0]?.floor).toBe(links[0]?.floorKn);
    expect(chain[1]?.shared[0]).toBe(0);
    near(chain[1]?.shared[1] ?? 0, knowledge, 1e-6);
    near(chain[1]?.own ?? 0, SPECIMEN, 1e-12);
  });

  test('whose evidence is no single force, or not there, is refused by its address', () => {
    for (const [id, address] of [['floored-by-length', 'length'], ['floored-by-range', 'range'], ['floored-by-nothing', 'nowhere']] as const) {
      expect(() => pathOf([link('eye', id)])).toThrow(new RangeError(`floor ${address}: is no single force`));
    }
    for (const id of ['nothing', 'classless']) {
      expect(() => pathOf([link('eye', id)], false)).toThrow(new RangeError(`factor ${id}: no such record, or no such class`));
    }
  });
});

describe('a path', () => {
  test('has its links in the order of the record, whichever is looked at first', () => {
    expect(built([link('device', 'device'), link('connector', 'tens'), link('eye', 'half')]).map((one) => one.record.at)).toEqual(['device', 'connector', 'eye']);
  });

  test('stops at the eye before anything else, and else at the first link without a figure', () => {
    const stopAt = (...links: LinkRecord[]) => {
      const path = pathOf(links);
      return 'stop' in path ? path.stop.link.name : null;
    };
    expect(stopAt(link('connector', 'nylon'), link('eye', 'wide'), link('knot', 'nylon'))).toBe('eye of wide');
    expect(stopAt(link('connector', 'wide'), link('eye', 'tens'), link('knot', 'nylon'))).toBe('connector of wide');
    expect(stopAt(link('knot', 'tens'), link('connector', 'wide'), link('eye', 'tens'))).toBe('connector of wide');
  });

  test('without a rating leaves out what multiplies it, also where only one of its factors does', () => {
    const links = [link('device', 'nylon', 'device'), link('eye', 'tens')];
    expect(needsRating(evidence, links[0] as LinkRecord)).toBe(true);
    expect(needsRating(evidence, links[1] as LinkRecord)).toBe(false);
    expect(built(links, false).map((one) => one.record.at)).toEqual(['eye']);
    const both = built(links);
    expect(both.map((one) => one.ofRating)).toEqual([true, false]);
    // ln of sqrt(1 x 1.21) = 1.1, times 12 kN; a rating that is not known counts as 1 kN.
    const chain = chainOf(both, factorNames(both));
    near(Math.exp(atRating(chain, both, 12)[0]?.muLog ?? 0), 13.2, 1e-12);
    near(Math.exp(atRating(chain, both, 12)[1]?.muLog ?? 0), 10, 1e-12);
    expect(atRating(chain, both, null)).toEqual(chain);
  });

  test('names each factor of some paths once, in the order in which it comes', () => {
    const [first, second] = [built([link('eye', 'half'), link('connector', 'tens')]), built([link('eye', 'device')])];
    expect(factorNames(first, second)).toEqual(['half', 'tens', 'device']);
  });
});
