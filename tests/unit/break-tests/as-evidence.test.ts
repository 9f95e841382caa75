import { describe, expect, it } from 'vitest';
import { asObservation, ownRig } from '../../../src/break-tests/as-evidence.ts';
import { scatterOf } from '../../../src/evidence/classes.ts';
import { observe } from '../../../src/evidence/observation.ts';
import { nextPull } from '../../../src/break-tests/intervals.ts';
import { meanOfValues, sampleSd } from '../../../src/numerics/descriptive.ts';
import { near } from './near.ts';

const three = { name: 'your tests', brokenKn: [10, 11, 12], oneLot: false };
const five = { name: 'your tests', brokenKn: [10, 11, 12, 10.5, 11.5], oneLot: false };

describe('a reader\'s series as an observation', () => {
  it('is what a figure with the same tests would be', () => {
    const figure = { id: 'your tests', study: 'your tests', kind: 'measured', standing: 'read', unit: 'kN' as const };
    const same = observe({ ...figure, value: { tests: [10, 11, 12] } });
    const found = asObservation(three);
    near(found.logMean, same!.logMean, 1e-15);
    near(found.cv as number, same!.cv as number, 1e-14);
    expect(found.n).toBe(3);
    expect('pulls' in found).toBe(false);
    const censored = asObservation({ ...three, atLeastKn: [13] });
    expect(censored.pulls).toEqual(observe({ ...figure, value: { tests: [10, 11, 12], censored: [13] } })!.pulls);
  });

  it('is pooled with the scatter of its class below ten pulls', () => {
    expect(scatterOf(asObservation(three), { cv: 0.12, ceiling: 0.2 })).toBe(0.12);
    expect(asObservation({ ...three, brokenKn: [10] }).cv).toBeNull();
  });

  it('refuses by name', () => {
    expect(() => asObservation({ ...three, brokenKn: [] })).toThrow('brokenKn must hold at least 1 (got 0).');
    expect(() => ownRig({ ...three, atLeastKn: [-1] }, { cv: 0.1 }, 0)).toThrow('atLeastKn[0] must be positive (got -1).');
    expect(() => ownRig(three, { cv: 0.1 }, -1)).toThrow('rigToRig must be 0 or more (got -1).');
    expect(() => ownRig(three, { cv: 0 }, 0)).toThrow('group.cv must be positive (got 0).');
  });
});

describe('the reader\'s own rig', () => {
  it('worked by hand: three pulls of 10, 11 and 12 kN, class cv 0.08, rigs 0.03 apart', () => {
    // ln: 2.302585, 2.397895, 2.484907; mean 2.395129. Class: sigma^2 = ln(1 + 0.08^2) = 0.0063796.
    // Knowledge sigma^2 / 3 = 0.0021265. Specimen sigma^2 + 0.03^2 = 0.0072796. 1-in-20:
    // exp(2.395129 - 1.644854 sqrt(0.0094061)) = exp(2.395129 - 0.159526) = 9.3521 kN.
    const found = ownRig(three, { cv: 0.08 }, 0.03);
    expect(found.scatterFrom).toBe('class');
    expect(found.mu).toBeCloseTo(2.395129, 6);
    expect(found.knowledge2).toBeCloseTo(0.0021265, 7);
    expect(found.specimen2).toBeCloseTo(0.0072796, 7);
    const low = Math.exp(found.mu - 1.6448536 * Math.sqrt(found.knowledge2 + found.specimen2));
    expect(low).toBeCloseTo(9.3521, 3);
    expect(found.understated).toBe(false);
  });

  it('from five pulls on its own scatter, so wide that the 1-in-20 of the next pull is Student\'s', () => {
    const found = ownRig(five, { cv: 0.05 }, 0);
    expect(found.scatterFrom).toBe('series');
    const logs = five.brokenKn.map(Math.log);
    const low = found.mu - 1.6448536269514722 * Math.sqrt(found.knowledge2 + found.specimen2);
    // nextPull is checked against Hahn and Meeker's factors (pi-multipliers); t-95 is good to one part in two thousand.
    near(low, nextPull(meanOfValues(logs), sampleSd(logs), 5, 0.95).oneSidedLow, 2e-4);
  });

  it('one lot never counts as scattering less than the class, and says that it understates', () => {
    const many = ownRig({ ...five, oneLot: true }, { cv: 0.12 }, 0);
    const lots = ownRig(five, { cv: 0.12 }, 0);
    expect(many.understated).toBe(true);
    expect(many.scatterFrom).toBe('class');
    near(many.specimen2, Math.log(1 + 0.12 ** 2), 1e-12);
    near(many.knowledge2, Math.log(1 + 0.12 ** 2) / 5, 1e-12);
    expect(lots.specimen2).toBeLessThan(many.specimen2);
    // Where the lot scatters more than the class, its own scatter stays.
    expect(ownRig({ ...five, oneLot: true }, { cv: 0.01 }, 0).scatterFrom).toBe('series');
  });

  it('pulls that ended otherwise lift the middle and never lower it', () => {
    const plain = ownRig(five, { cv: 0.05 }, 0);
    const lifted = ownRig({ ...five, atLeastKn: [11.8, 12.5] }, { cv: 0.05 }, 0);
    expect(lifted.mu).toBeGreaterThan(plain.mu);
    expect(ownRig({ ...three, atLeastKn: [12.5] }, { cv: 0.05 }, 0).mu).toBeGreaterThan(ownRig(three, { cv: 0.05 }, 0).mu);
  });

  it('five breaks and two pulls that ended otherwise scatter as their most likely fit does, times sqrt(5 / 4)', () => {
    // sigma of ln 0.051997858 by SciPy 1.17.1 for these pulls (fits.test.ts).
    const series = { name: 'small', brokenKn: [21.3, 20.1, 22.4, 19.8, 21.9], atLeastKn: [20.5, 22], oneLot: false };
    const found = ownRig(series, { cv: 0.02 }, 0.03);
    near(found.specimen2, 0.051997858 ** 2 * 1.25 + 0.03 ** 2, 1e-6);
    expect(found.scatterFrom).toBe('series');
    // Without the two it is the sample's own.
    near(ownRig({ ...series, atLeastKn: [] }, { cv: 0.02 }, 0).specimen2, sampleSd(series.brokenKn.map(Math.log)) ** 2, 1e-12);
    const { atLeastKn: _, ...plain } = series;
    expect(ownRig(plain, { cv: 0.02 }, 0)).toEqual(ownRig({ ...series, atLeastKn: [] }, { cv: 0.02 }, 0));
  });

  it('five equal pulls fall back on the class', () => {
    expect(ownRig({ ...five, brokenKn: [10, 10, 10, 10, 10] }, { cv: 0.05 }, 0).scatterFrom).toBe('class');
  });
});
