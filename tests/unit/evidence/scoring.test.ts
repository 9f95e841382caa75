/**
 * The model scored on studies it was not told of. Expectations are worked by hand beside each check; densities come from
 * the normal distribution of stdlib, another implementation.
 */
import normal from '@stdlib/stats-base-dists-normal';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { modelExample, oneInTwenty } from '../../../src/build/comparator/model-example.ts';
import { modelScores } from '../../../src/build/scores.ts';
import { baselineScore, classesWithout, type ScoredFigure, type ScoredRecords, score } from '../../../src/evidence/scoring.ts';
import { type FactorClassRecord, factor, factorClass } from '../../../src/records/schema.ts';
import { feedOnly, IBARRA_GIRTH } from '../../support/feed-only.ts';

const figure = (id: string, value: ScoredFigure['value'], rig: ScoredFigure['rig'] = {}, more: Partial<ScoredFigure> = {}): ScoredFigure =>
  ({ id, study: id.split('/')[0] as string, kind: 'measured', standing: 'read', value, unit: 'kN', rig: { form: 'sewn-loop', widthMm: 10, legs: 2, method: 'girth-hitch', ...rig }, ...more });
const records = (figures: ScoredFigure[], from: Record<string, string[]>, tau: unknown, more: Record<string, unknown> = {}): ScoredRecords => ({
  factors: Object.fromEntries(Object.entries(from).map(([id, list]) => [id, factor.parse({ what: 'a test', acts: 'loop', class: 'any', applies: {}, from: list, ...more })])),
  classes: { any: factorClass.parse({ what: 'a test', cv: { assumed: 0.1, why: 'a test' }, ceiling: { cv: 0.3, why: 'a test' }, tau }) },
  figures: Object.fromEntries(figures.map((one) => [one.id, one])),
});
const ASSUMED = { assumed: 0.2, why: 'a test' };
const pair = (a: number, b: number, more: Partial<ScoredFigure> = {}): ScoredRecords =>
  records([figure('a/x', { mean: a, n: 4 }, {}, more), figure('b/x', { mean: b, n: 5 }, {}, more)], { hitch: ['a/x', 'b/x'] }, ASSUMED);
const of = (scores: ReturnType<typeof score>, study: string) => {
  const found = scores.cases.flatMap((one) => one.predictions).find((one) => one.study === study);
  if (!found) throw new Error(`no prediction of ${study}`);
  return found;
};

describe('two studies of one hitch, tau 0.2 and scatter 0.1 of the class', () => {
  // Left out: a, 12 kN of 4 pulls. Left: b, 10 kN of 5.
  //   middle 10 kN. One study knows its mean with tau^2 + 0.1^2 / 5 = 0.04 + 0.002, the next laboratory differs by 0.04:
  //   knowledge^2 = 0.082. The mean of a has 0.1^2 / 4 = 0.0025 of its own: variance 0.0845, sd 0.290689.
  //   Nine in ten: 10 e^(-+1.644854 x 0.290689) = 10 e^(-+0.478141) = 6.1994 to 16.1306; upper over lower 2.6020.
  //   One in two: 10 e^(-+0.674490 x 0.290689) = 10 e^(-+0.196067) = 8.2196 to 12.1661.
  //   z = ln(12 / 10) / 0.290689 = 0.182322 / 0.290689 = 0.627206. Log score: -0.918939 + 1.235501 - 0.196694 = 0.119868.
  const a = of(score(pair(12, 10)), 'a');
  test('the middle is what the other study says, and the ends follow from its doubt', () => {
    expect(a.middle).toBeCloseTo(10, 10);
    expect(a.observed).toBeCloseTo(12, 10);
    expect(a.ninety[0]).toBeCloseTo(6.1994, 3);
    expect(a.ninety[1]).toBeCloseTo(16.1306, 3);
    expect(a.widthRatio).toBeCloseTo(2.602, 3);
    expect(a.fifty[0]).toBeCloseTo(8.2196, 3);
    expect(a.fifty[1]).toBeCloseTo(12.1661, 3);
  });
  test('inside both, and the log score is the density of a normal there', () => {
    expect(a).toMatchObject({ insideFifty: true, insideNinety: true, figures: ['a/x'], from: ['b/x'] });
    expect(a.logScore).toBeCloseTo(0.119868, 5);
    expect(a.logScore).toBeCloseTo(normal.logpdf(Math.log(12), Math.log(10), Math.sqrt(0.0845)), 10);
  });
  test.each([[12.1, true, true], [12.3, false, true], [16.1, false, true], [16.2, false, false], [8.3, true, true], [6.1, false, false]])('%f kN: inside one in two %s, inside nine in ten %s', (kn, fifty, ninety) => {
    expect(of(score(pair(kn, 10)), 'a')).toMatchObject({ insideFifty: fifty, insideNinety: ninety });
  });
  test('the summary counts', () => {
    expect(score(pair(16.2, 10)).summary).toEqual({ predictions: 2, insideFifty: 0, insideNinety: 0, unpredicted: 0, alone: 0, compared: 0, meanLogScore: null, meanBaseline: null, better: 0 });
    expect(score(pair(12.3, 10)).summary).toMatchObject({ predictions: 2, insideFifty: 0, insideNinety: 2 });
  });
});

describe('the fixed guess', () => {
  test.each([[15, 22], [8, 20], [30, 22]])('%f kN of textile that bears %f kN straight: a normal about ln of a half, sd sqrt(ln(1 + 0.35^2))', (observed, straight) => {
    expect(baselineScore(observed, straight)).toBeCloseTo(normal.logpdf(Math.log(observed), Math.log(straight / 2), Math.sqrt(Math.log(1.1225))), 10);
  });

  const straight = (id: string, kn: number, legs: number) => figure(id, { mean: kn, n: 5 }, { method: 'straight', legs });
  const scored = (a: Partial<ScoredFigure>, b: Partial<ScoredFigure>, rig: ScoredFigure['rig'] = {}) => score(records(
    [figure('a/x', { mean: 12, n: 4 }, rig, a), figure('b/x', { mean: 10, n: 5 }, rig, b), straight('a/strand', 14, 1), straight('b/loop', 24, 2)], { hitch: ['a/x', 'b/x'] }, ASSUMED));

  test('a strand counts once for each leg: two legs over a strand of 14 kN, 28 kN', () => {
    expect(of(scored({ of: 'a/strand' }, {}), 'a').baseline).toMatchObject({ straight: expect.closeTo(28, 10) as number, figure: 'a/strand', lent: false });
  });
  test('a study without a straight strength is lent the other\'s', () => {
    expect(of(scored({ of: 'a/strand' }, {}), 'b').baseline).toMatchObject({ straight: expect.closeTo(28, 10) as number, lent: true });
    expect(of(scored({ of: 'a/strand' }, { of: 'b/loop' }), 'b').baseline).toMatchObject({ straight: expect.closeTo(24, 10) as number, lent: false });
  });
  test('none where nobody printed one, where legs are not known, and for a straight pull itself', () => {
    expect(of(scored({ of: 'rated-minimum' }, {}), 'a').baseline).toBeNull();
    expect(of(scored({ of: 'a/strand' }, {}, { legs: undefined } as never), 'a').baseline).toBeNull();
    expect(of(scored({ of: 'a/strand' }, {}, { method: 'straight' }), 'a').baseline).toBeNull();
  });
  test('none where a figure is a share, where the straight one has no legs, and for a study with a straight pull among its figures', () => {
    for (const unit of ['ratio', 'percent'] as const) expect(of(scored({ unit, of: 'a/strand' }, { unit }), 'a').baseline).toBeNull();
    const all = [figure('a/x', { mean: 12, n: 4 }, {}, { of: 'a/strand' }), figure('b/x', { mean: 10, n: 5 }), straight('a/strand', 14, undefined as never)];
    expect(of(score(records(all, { hitch: ['a/x', 'b/x'] }, ASSUMED)), 'a').baseline).toBeNull();
    const inPercent = [figure('a/x', { mean: 12, n: 4 }, {}, { of: 'a/strand' }), figure('b/x', { mean: 10, n: 5 }), { ...straight('a/strand', 90, 1), unit: 'percent' as const }];
    expect(of(score(records(inPercent, { hitch: ['a/x', 'b/x'] }, ASSUMED)), 'a').baseline).toBeNull();
    const mixed = [...all.slice(0, 2), figure('a/y', { mean: 20, n: 4 }, { method: 'straight' }), straight('a/strand', 14, 1)];
    expect(of(score(records(mixed, { hitch: ['a/x', 'a/y', 'b/x'] }, ASSUMED)), 'a').baseline).toBeNull();
  });
  test('the first figure of a study that names a straight strength gives it', () => {
    const all = [figure('a/x', { mean: 12, n: 4 }), figure('a/y', { mean: 12, n: 4 }, {}, { of: 'a/strand' }), figure('b/x', { mean: 10, n: 5 }), straight('a/strand', 14, 1)];
    expect(of(score(records(all, { hitch: ['a/x', 'a/y', 'b/x'] }, ASSUMED)), 'a').baseline).toMatchObject({ figure: 'a/strand', lent: false });
  });
  test('the summary tells means of both scores, and how often the model\'s is the higher', () => {
    // a, 12 kN, from 10; b, 10 kN, from 12: one density each way. The guess is half of 24 kN for both: all of a's 12, less near to b.
    const sd = Math.sqrt(0.0845);
    const { summary, cases } = scored({ of: 'b/loop' }, {});
    expect(summary).toMatchObject({ predictions: 2, insideFifty: 2, insideNinety: 2, compared: 2 });
    // b's own error is 0.002, a's is known to 0.0025: the same sum.
    expect(summary.meanLogScore).toBeCloseTo(normal.logpdf(Math.log(1.2), 0, sd), 10);
    const guesses = [baselineScore(12, 24), baselineScore(10, 24)];
    const model = normal.logpdf(Math.log(1.2), 0, sd);
    expect(summary.better).toBe(guesses.filter((guess) => model > guess).length);
    expect([summary.better, cases.length]).toEqual([1, 1]);
    // Against 14 kN both of the model's are the higher.
    expect(Math.max(baselineScore(12, 28), baselineScore(10, 28))).toBeLessThan(model);
    expect(scored({ of: 'a/strand' }, {}).summary.better).toBe(2);
  });
  test('the means are over predictions with both', () => {
    const { summary } = scored({ of: 'a/strand' }, {});
    // a: 12 kN against 14; b: 10 kN against 14.
    expect(summary.compared).toBe(2);
    expect(summary.meanBaseline).toBeCloseTo((baselineScore(12, 28) + baselineScore(10, 28)) / 2, 10);
  });
});

describe('what is left out is forgotten', () => {
  const figures = [figure('a/x', { mean: 12, n: 4 }), figure('b/x', { mean: 10, n: 5 }), figure('c/y', { mean: 10, n: 4 }), figure('d/y', { mean: 15, n: 4 })];
  test('tau comes from the groups that the study is not in: d^2 / 2 less the variance', () => {
    // Paule and Mandel for two studies: tau^2 = (ln 1.5)^2 / 2 - 0.01 / 4 = 0.082201 - 0.0025 = 0.079701; tau 0.282314.
    const scores = score(records(figures, { hitch: ['a/x', 'b/x'] }, { groups: [['a/x', 'b/x'], ['c/y', 'd/y']] }));
    expect(of(scores, 'a').tau).toBeCloseTo(0.282314, 5);
    expect(of(scores, 'b').tau).toBeCloseTo(0.282314, 5);
  });
  test('a class whose only group is the one to be predicted has no spread left, and nothing is put in its place', () => {
    const scores = score(records(figures, { hitch: ['a/x', 'b/x'] }, { groups: [['a/x', 'b/x']] }));
    expect(scores.cases).toMatchObject([{ factor: 'hitch', predictions: [], unpredicted: [{ study: 'a', figures: ['a/x'] }, { study: 'b', figures: ['b/x'] }] }]);
    expect(scores.summary).toMatchObject({ predictions: 0, unpredicted: 2 });
  });
  test('a class that borrows from such a one has none either, and a scatter with no series left is the ceiling', () => {
    const raw = (more: Record<string, unknown>) => factorClass.parse({ what: 'a test', cv: { from: ['a/x'] }, ceiling: { cv: 0.3, why: 'a test' }, ...more });
    const withCv = { ...records([figure('a/x', { tests: [9, 10, 11] }), figure('b/x', { mean: 10, n: 5 })], {}, ASSUMED) };
    const classes = { one: raw({ tau: { groups: [['a/x', 'b/x']] } }), two: raw({ tau: { borrowed: 'one', why: 'a test' } }), three: raw({ tau: ASSUMED }) };
    const rest = classesWithout({ classes, figures: withCv.figures }, new Set(['a/x']));
    expect(Object.keys(rest)).toEqual(['three']);
    expect(rest['three']).toMatchObject({ cv: 0.3, tau: 0.2 });
  });

  test('scatter comes from the series that are left, or is the ceiling where none has two pulls; a group that is left empty goes; a share goes with either side', () => {
    const seen = [figure('a/x', { tests: [9, 10, 11] }), figure('c/y', { tests: [8, 10, 12] }), figure('e/y', { tests: [9] }), figure('b/x', { mean: 10, n: 5 }), figure('d/y', { mean: 15, n: 4 })];
    const { figures: book } = records(seen, {}, ASSUMED);
    const made = (cv: string[], tau: unknown) => ({ one: { what: 'a test', cv: { from: cv }, ceiling: { cv: 0.3, why: 'a test' }, tau } as FactorClassRecord });
    const without = (cv: string[], out: string[], tau: unknown = ASSUMED) => classesWithout({ classes: made(cv, tau), figures: book }, new Set(out))['one'];
    expect(without(['a/x', 'c/y'], ['a/x'])?.cv).toBeCloseTo(0.2, 12);
    expect(without(['a/x', 'c/y'], [])?.cv).toBeCloseTo(Math.sqrt((0.01 + 0.04) / 2), 12);
    expect(without(['a/x', 'e/y'], ['a/x'])?.cv).toBe(0.3);
    const groups = { groups: [['a/x', 'b/x'], ['c/y', 'd/y']] };
    const alone = { groups: [['c/y', 'd/y']] };
    expect(without(['c/y'], ['a/x', 'b/x'], groups)?.tau).toBe(without(['c/y'], [], alone)?.tau);
    const shares = { groups: [[{ figure: 'a/x', over: 'b/x' }, { figure: 'c/y', over: 'd/y' }], ['c/y', 'd/y']] };
    for (const side of ['a/x', 'b/x']) expect(without(['c/y'], [side], shares)?.tau).toBe(without(['c/y'], [], { groups: [[{ figure: 'c/y', over: 'd/y' }], ['c/y', 'd/y']] })?.tau);
  });
  test('a figure that is nowhere, or may not feed, is named', () => {
    expect(() => score(records([], { hitch: ['a/x'] }, ASSUMED))).toThrow('figures: none has the address a/x');
    expect(() => score(records([figure('a/x', { statement: 'strong' }), figure('b/x', { mean: 10, n: 5 })], { hitch: ['a/x', 'b/x'] }, ASSUMED))).toThrow('figures: a/x gives no number that may feed');
  });

  const kn = fc.double({ min: 5, max: 30, noNaN: true });
  const count = fc.integer({ min: 1, max: 9 });
  const build = (a: number, b: number, n: number, c: number, d: number, times = 1): ScoredRecords => {
    const at = (x: number) => x * times;
    return records([figure('a/x', { mean: at(a), n }), figure('b/x', { mean: at(b), n: 5 }), figure('c/y', { mean: at(c), n: 4 }), figure('d/y', { mean: at(d), n: 4 })],
      { hitch: ['a/x', 'b/x'] }, { groups: [['a/x', 'b/x'], ['c/y', 'd/y']] });
  };
  test('what a study measured never moves its own prediction', () => {
    fc.assert(fc.property(kn, kn, kn, count, kn, kn, (a, other, b, n, c, d) => {
      const { middle, ninety, tau } = of(score(build(a, b, n, c, d)), 'a');
      expect(of(score(build(other, b, n, c, d)), 'a')).toMatchObject({ middle, ninety, tau });
    }));
  });
  test('with another unit of force the same studies lie inside, with the same scores', () => {
    fc.assert(fc.property(kn, kn, count, kn, kn, fc.double({ min: 0.1, max: 10, noNaN: true }), (a, b, n, c, d, times) => {
      const one = of(score(build(a, b, n, c, d)), 'a');
      const other = of(score(build(a, b, n, c, d, times)), 'a');
      expect(other.middle).toBeCloseTo(one.middle * times, 6);
      expect(other.widthRatio).toBeCloseTo(one.widthRatio, 6);
      expect(other.logScore).toBeCloseTo(one.logScore, 6);
    }));
  });
  test('the two predictions of a pair are mirror images: as far above as the other is below, with one width and one score', () => {
    fc.assert(fc.property(kn, kn, count, kn, kn, (a, b, n, c, d) => {
      const scores = score(build(a, b, n, c, d));
      const [first, second] = [of(scores, 'a'), of(scores, 'b')];
      expect(first.observed / first.middle).toBeCloseTo(second.middle / second.observed, 8);
      expect(first.widthRatio).toBeCloseTo(second.widthRatio, 8);
      expect(first.logScore).toBeCloseTo(second.logScore, 8);
    }));
  });
  test('a wider spread between studies never puts one of a pair outside', () => {
    fc.assert(fc.property(kn, kn, fc.double({ min: 0.02, max: 0.4, noNaN: true }), fc.double({ min: 0, max: 0.4, noNaN: true }), (a, b, tau, more) => {
      const inside = (spread: number) => of(score({ ...pair(a, b), classes: records([], {}, { assumed: spread, why: 'a test' }).classes }), 'a');
      const [narrow, wide] = [inside(tau), inside(tau + more)];
      if (narrow.insideNinety) expect(wide.insideNinety).toBe(true);
      if (narrow.insideFifty) expect(wide.insideFifty).toBe(true);
      expect(narrow.insideNinety || !narrow.insideFifty).toBe(true);
    }));
  });
});

describe('what counts as a case', () => {
  const GROUPS = { groups: [['a/x', 'b/x'], ['c/y', 'd/y']] };
  const many = [figure('a/x', { mean: 12, n: 4 }), figure('a/z', { mean: 12, n: 4 }), figure('b/x', { mean: 10, n: 5 }), figure('c/y', { mean: 10, n: 4 }), figure('d/y', { mean: 15, n: 4 })];
  test('a pair that a factor and a class both name counts once, as the factor\'s, also where the factor has more pulls', () => {
    expect(score(records(many, { hitch: ['a/x', 'a/z', 'b/x'] }, GROUPS)).cases.map(({ factor: of }) => of)).toEqual(['hitch', null]);
    expect(score(records(many, { hitch: ['a/x', 'b/x'], basket: ['b/x', 'a/x'] }, GROUPS)).cases.map(({ factor: of }) => of)).toEqual(['hitch', null]);
  });
  test('the same studies with other pulls are another case', () => {
    const two = [...many, figure('b/z', { mean: 9, n: 3 })];
    expect(score(records(two, { hitch: ['a/z', 'b/z'] }, GROUPS)).cases).toHaveLength(3);
  });
  test('one width and one bearing make a configuration; a figure that says neither makes none', () => {
    const at = (id: string, widthMm: number, bearingMm: number | undefined) => figure(id, { mean: 12, n: 4 }, { widthMm, bearingMm } as never);
    const all = [at('a/x', 10, 3.8), at('b/x', 11, 4.3), at('c/x', 8, 3.8), at('d/x', 10, 4.4), at('e/x', 10, undefined)];
    const scores = score(records(all, { hitch: all.map(({ id }) => id) }, ASSUMED, { along: 'bearingMm' }));
    // Within half a millimetre of the thinnest, and less than two of the narrowest: a with b. c is narrower, d is thicker.
    expect(scores.cases.map((one) => one.predictions.map(({ study }) => study))).toEqual([['a', 'b']]);
    expect(scores.alone).toEqual([{ factor: 'hitch', study: 'c', figures: ['c/x'] }, { factor: 'hitch', study: 'd', figures: ['d/x'] }]);
  });
  test('a bearing that the factor reads into a figure counts', () => {
    const all = [figure('a/x', { mean: 12, n: 4 }, { bearingMm: 10 }), figure('b/x', { mean: 10, n: 5 })];
    const more = { along: 'bearingMm', taken: [{ figure: 'b/x', bearingMm: 10, why: 'a test' }] };
    expect(score(records(all, { hitch: ['a/x', 'b/x'] }, ASSUMED, more)).cases).toHaveLength(1);
  });
  test('what is read into one figure is not read into another, and the order of the record does not matter', () => {
    const taken = (id: string, bearingMm: number) => ({ figure: id, bearingMm, why: 'a test' });
    const all = [figure('a/x', { mean: 12, n: 4 }), figure('b/x', { mean: 10, n: 5 })];
    expect(score(records(all, { hitch: ['a/x', 'b/x'] }, ASSUMED, { along: 'bearingMm', taken: [taken('a/x', 4), taken('b/x', 10)] })).cases).toEqual([]);
    const at = (id: string, bearingMm: number) => figure(id, { mean: 12, n: 4 }, { bearingMm });
    const thick = [at('a/x', 10), at('b/x', 4), at('c/x', 10.4), at('d/x', 4.3)];
    const scores = score(records(thick, { hitch: thick.map(({ id }) => id) }, ASSUMED, { along: 'bearingMm' }));
    expect(scores.cases.map(({ id, predictions }) => [id, predictions.map(({ study }) => study)])).toEqual([['hitch-1', ['b', 'd']], ['hitch-2', ['a', 'c']]]);
  });
  test('cord of 5 and of 6 mm are two widths, and a figure without a width stands in none', () => {
    const cord = (id: string, diameterMm: number | undefined) => figure(id, { mean: 12, n: 4 }, { form: 'cord', widthMm: undefined, diameterMm } as never);
    const all = [cord('a/x', 5), cord('b/x', 6), cord('c/x', undefined)];
    expect(score(records(all, { hitch: all.map(({ id }) => id) }, ASSUMED))).toMatchObject({ cases: [], alone: [{ study: 'a' }, { study: 'b' }] });
  });
  test('one study more, another study, or other pulls of one of them make another case', () => {
    const all = [...many, figure('b/z', { mean: 9, n: 3 }), figure('c/x', { mean: 9, n: 3 })];
    const with_ = (group: string[]) => score(records(all, { hitch: ['a/x', 'b/x'] }, { groups: [group, ['c/y', 'd/y']] })).cases.map(({ id }) => id);
    expect(with_(['b/x', 'a/x'])).toEqual(['hitch-1', 'any-2']);
    for (const group of [['a/x', 'b/x', 'c/x'], ['a/x', 'c/x'], ['a/x', 'b/z']]) expect(with_(group), group.join()).toEqual(['hitch-1', 'any-1', 'any-2']);
    const three = [...all, figure('c/z', { mean: 9, n: 3 })];
    expect(score(records(three, { hitch: ['a/x', 'b/x', 'c/x'] }, { groups: [['a/x', 'b/x', 'c/z']] })).cases.map(({ id }) => id)).toEqual(['hitch-1', 'any-1']);
  });
  test('a group of a class with one study is not a configuration that one study alone has measured', () => {
    expect(score(records(many, {}, { groups: [['a/x', 'a/z'], ['c/y', 'd/y']] })).alone).toEqual([]);
  });
  test('two series of one laboratory are one study', () => {
    expect(score(records(many, { hitch: ['a/x', 'a/z'] }, ASSUMED))).toMatchObject({ cases: [], alone: [{ study: 'a', figures: ['a/x', 'a/z'] }] });
  });
  test('a share is predicted as a share, and told in kN of the study\'s own straight strength', () => {
    // a: 6 of 10 kN; b: 9 of 12 kN. Left out a: expected 0.75 of 10 kN = 7.5 kN, measured 6.
    const all = [figure('a/k', { mean: 6, n: 4 }), figure('a/s', { mean: 10, n: 5 }), figure('b/k', { mean: 9, n: 8 }), figure('b/s', { mean: 12, n: 2 }), ...many];
    const found = of(score(records(all, {}, { groups: [[{ figure: 'a/k', over: 'a/s' }, { figure: 'b/k', over: 'b/s' }], ['c/y', 'd/y']] })), 'a');
    expect(found.middle).toBeCloseTo(7.5, 10);
    expect(found.observed).toBeCloseTo(6, 10);
    // Both sides of both shares err: 0.01 (1/8 + 1/2) = 0.00625 in what is known, 0.01 (1/4 + 1/5) = 0.0045 in what is left out.
    const sd = Math.sqrt(2 * found.tau ** 2 + 0.00625 + 0.0045);
    expect(found.logScore).toBeCloseTo(normal.logpdf(Math.log(0.6), Math.log(0.75), sd), 10);
    expect(found.figures).toEqual(['a/k', 'a/s']);
  });
});

describe('on the records', () => {
  const scores = modelScores();
  test('no figure of a study left out is among those that predict it, and no pulls are predicted twice', () => {
    const predictions = scores.cases.flatMap((one) => one.predictions);
    expect(predictions.length).toBeGreaterThan(0);
    for (const { figures, from } of predictions) expect(figures.filter((id) => from.includes(id))).toEqual([]);
    const keys = predictions.map(({ figures, from }) => [figures, from].map((list) => [...list].sort().join(' ')).join(' < '));
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('the example of the model\'s page is what its formulas say, from the printed pulls', () => {
    // M. Ibarra, post of 4 August 2021, wire section: four girth hitches on a wire of 3.8 mm, kN.
    const pulls = [11.162, 9.166, 11.425, 11.417];
    const evidence = feedOnly('girth-hmpe', [IBARRA_GIRTH]);
    const { hitch, row } = modelExample(evidence);
    const { cv, tau } = evidence.classes['textile-on-thin-bearing'] as { cv: number; tau: number };
    const mu = pulls.reduce((sum, kn) => sum + Math.log(kn), 0) / 4;
    const spread = Math.sqrt(tau ** 2 + (tau ** 2 + cv ** 2 / 4) + Math.log(1 + cv ** 2));
    expect(hitch.studies.map(({ study }) => study)).toEqual(['ibarra']);
    expect(hitch.pooled).not.toBeNull();
    expect(hitch.link.spread.low).toBeCloseTo(Math.exp(normal.quantile(0.05, mu, spread)), 8);
    expect(oneInTwenty(hitch.value.mu, hitch.spread)).toBeCloseTo(hitch.link.spread.low, 8);
    // The connector end hardly ever goes first, so the attachment is the hitch.
    expect(row.attachment?.low).toBeCloseTo(hitch.link.spread.low, 6);
  });
});
