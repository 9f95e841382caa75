/** How studies, n and sd move what the model knows. The rules are those of the design's strength model. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type StudyEstimate, byStudy, meanVariance, scatterOf } from '../../../src/evidence/classes.ts';
import { poolStudies } from '../../../src/evidence/pool.ts';
import type { Observation } from '../../../src/evidence/observation.ts';

const study = (i: number, mean: number, variance: number): StudyEstimate => ({ study: `s${i}`, figures: [`s${i}/f`], mean, variance, scatter2: 0.01 });
const tau = fc.double({ min: 0.02, max: 0.4, noNaN: true });
const studies = (min: number, max: number): fc.Arbitrary<StudyEstimate[]> =>
  fc.array(fc.record({ mean: fc.double({ min: 2, max: 3, noNaN: true }), variance: fc.double({ min: 0.0005, max: 0.04, noNaN: true }) }), { minLength: min, maxLength: max })
    .map((list) => list.map((s, i) => study(i, s.mean, s.variance)));

test('with fewer than five studies, one more that agrees with the mean never widens', () => {
  fc.assert(fc.property(studies(1, 3), tau, fc.double({ min: 0.0005, max: 0.04, noNaN: true }), (some, spread, variance) => {
    const before = poolStudies(some, spread);
    const after = poolStudies([...some, study(9, before.mu, variance)], spread);
    expect(after.knowledge2).toBeLessThanOrEqual(before.knowledge2 * (1 + 1e-9));
  }));
});

test('with fewer than five studies, one more outside the 19-in-20 range of what was known never narrows', () => {
  fc.assert(fc.property(studies(1, 3), tau, fc.double({ min: 0.0005, max: 0.04, noNaN: true }), fc.double({ min: 1, max: 4, noNaN: true }), fc.boolean(), (some, spread, variance, far, above) => {
    const before = poolStudies(some, spread);
    const reach = 1.96 * Math.sqrt(before.knowledge2 + variance) * far;
    const after = poolStudies([...some, study(9, before.mu + (above ? reach : -reach), variance)], spread);
    expect(after.knowledge2).toBeGreaterThanOrEqual(before.knowledge2 * (1 - 1e-9));
  }));
});

test('more spread between studies in the class never narrows a factor', () => {
  fc.assert(fc.property(studies(1, 4), tau, fc.double({ min: 0, max: 0.3, noNaN: true }), (some, spread, more) => {
    expect(poolStudies(some, spread + more).knowledge2).toBeGreaterThanOrEqual(poolStudies(some, spread).knowledge2 * (1 - 1e-9));
  }));
});

const group = fc.record({ cv: fc.double({ min: 0.02, max: 0.1, noNaN: true }), ceiling: fc.double({ min: 0.2, max: 0.3, noNaN: true }) });
const series = fc.record({ n: fc.integer({ min: 1, max: 40 }), cv: fc.double({ min: 0.005, max: 0.2, noNaN: true }) })
  .map(({ n, cv }): Observation => ({ figure: 'a/b', study: 'a', logMean: 2.5, n, cv: n === 1 ? null : cv }));

test('dropping n or sd from a series never narrows its scatter, its mean or its factor', () => {
  fc.assert(fc.property(series, group, tau, (whole, klass, spread) => {
    const poorer: Observation[] = [{ ...whole, n: null }, { ...whole, cv: null }, { ...whole, n: null, cv: null }];
    const width = (s: Observation): number => {
      const pooled = poolStudies(byStudy([s], klass), spread);
      return pooled.knowledge2 + pooled.specimen2;
    };
    for (const less of poorer) {
      expect(scatterOf(less, klass)).toBeGreaterThanOrEqual(scatterOf(whole, klass));
      expect(meanVariance(less, klass)).toBeGreaterThanOrEqual(meanVariance(whole, klass) * (1 - 1e-12));
      expect(width(less)).toBeGreaterThanOrEqual(width(whole) * (1 - 1e-12));
    }
    expect(width({ ...whole, n: null, cv: null })).toBeGreaterThanOrEqual(Math.max(width({ ...whole, n: null }), width({ ...whole, cv: null })) * (1 - 1e-12));
  }));
});

test('two series of one study are one study', () => {
  const klass = { cv: 0.05, ceiling: 0.2 };
  const one = (figure: string, name: string): Observation => ({ figure, study: name, logMean: 3, n: 5, cv: 0.04 });
  expect(byStudy([one('a/1', 'a'), one('a/2', 'a'), one('b/1', 'b')], klass)).toHaveLength(2);
});
