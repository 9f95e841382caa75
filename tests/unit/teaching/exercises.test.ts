/** Exercises of the lessons: thirty variants that share nothing, and every answer by a second route that is not ours. */
import normal from '@stdlib/stats-base-dists-normal';
import { expect, test } from 'vitest';
import { loadFallConstants } from '../../../src/build/fall-evidence.ts';
import { siteLessons } from '../../../src/build/lessons.ts';
import { siteRules } from '../../../src/build/verdict-page.ts';
import { columnsOf, cutAtNumbers, type Exercise, place, shown, type Values, VARIANTS } from '../../../src/teaching/exercise.ts';
import { exercisesWith } from '../../../src/teaching/exercises.ts';

const constants = loadFallConstants();
const exercises = exercisesWith({ falls: constants, rules: siteRules() });
const all = [...exercises.values()];
const numbers = Array.from({ length: VARIANTS + 1 }, (_, variant) => variant);
const of = (lesson: string): { exercise: Exercise; worked: Values[] } => {
  const exercise = exercises.get(lesson) as Exercise;
  return { exercise, worked: numbers.map((variant) => exercise.work(variant)) };
};
const n = (values: Values, name: string): number => values[name] as number;

test('there are eight lessons of 15 to 50 minutes, each with an exercise', () => {
  // Issue 10, part 5: "at least eight lessons of 15 to 50 minutes".
  expect(siteLessons().length).toBeGreaterThanOrEqual(8);
  for (const { id, minutes, exercise } of siteLessons()) expect([minutes >= 15 && minutes <= 50, exercise.lesson], id).toEqual([true, id]);
});

test.each(all.map((exercise) => [exercise.lesson, exercise] as const))('%s: no two variants share an input or an answer, as they are shown', (_lesson, exercise) => {
  const worked = numbers.map((variant) => exercise.work(variant));
  for (const column of [...exercise.given, ...exercise.answers]) expect(new Set(worked.map((values) => shown(column, values))).size, column.name).toBe(31);
});

test.each(all.map((exercise) => [exercise.lesson, exercise] as const))('%s: its texts name only its own numbers, and each question has its working', (_lesson, exercise) => {
  const named = [exercise.task, ...exercise.asks, ...exercise.working].flatMap((text) => cutAtNumbers(text, exercise)).flatMap((piece) => (typeof piece === 'string' ? [] : [piece.name]));
  expect(columnsOf(exercise).map(({ name }) => name).filter((name) => !named.includes(name))).toEqual([]);
  expect(exercise.working).toHaveLength(exercise.asks.length);
});

test('a variant that is none is refused by name, as is a text that names no number', () => {
  for (const variant of [-1, 31, 1.5, Number.NaN]) expect(() => place(variant, 3)).toThrow(`variant must be a whole number from 0 to 30 (got ${variant})`);
  for (const step of [0, 31, 62, 0.5]) expect(() => place(1, step)).toThrow('step must be');
  expect(() => cutAtNumbers('{nothing}', all[0] as Exercise)).toThrow('(got nothing)');
  expect(() => shown({ name: 'day', head: 'Day', unit: '', digits: null }, { day: 3 })).toThrow('day must have a value of its kind (got 3)');
});

test('shares: in whole numbers, tenths of a kilonewton times percent', () => {
  const { worked } = of('reading-a-figure');
  for (const values of worked) {
    const [share, rated, mean] = [n(values, 'share'), Math.round(10 * n(values, 'rated')), Math.round(10 * n(values, 'mean'))];
    expect(n(values, 'broke')).toBeCloseTo((share * rated) / 1000, 9);
    expect(n(values, 'mistaken') - n(values, 'broke')).toBeCloseTo((share * (mean - rated)) / 1000, 9);
    expect(n(values, 'tooHigh')).toBeCloseTo((100 * (mean - rated)) / rated, 9);
    expect(n(values, 'ofOwn')).toBeCloseTo((share * rated) / mean, 9);
  }
  // By hand: 45 % of 22 is 9.9, of 26 is 11.7; 26 / 22 - 1 = 18.18 %.
  expect(worked[0]).toMatchObject({ share: 45, rated: 22, mean: 26 });
  expect([n(worked[0]!, 'broke'), n(worked[0]!, 'mistaken')]).toEqual([expect.closeTo(9.9, 9), expect.closeTo(11.7, 9)]);
});

test('weak links: products of survivals by another library, and the link that goes first by a sum over forces', () => {
  for (const values of of('weak-links').worked) {
    const sd = n(values, 'scatter') / 100;
    const middles = ['eye', 'clip', 'device'].map((name) => Math.log(n(values, name)));
    const above = (load: number) => middles.map((mu) => 1 - normal.cdf(Math.log(load), mu, sd));
    const [eye, clip, device] = above(n(values, 'load')) as [number, number, number];
    expect(n(values, 'aboveEye')).toBeCloseTo(100 * eye, 8);
    expect(n(values, 'aboveClip')).toBeCloseTo(100 * clip, 8);
    expect(n(values, 'aboveDevice')).toBeCloseTo(100 * device, 8);
    expect(n(values, 'aboveRig')).toBeCloseTo(100 * eye * clip * device, 8);
    expect(above(n(values, 'middleRig')).reduce((product, share) => product * share, 1)).toBeCloseTo(0.5, 8);
    // In steps of a hundredth of a kilonewton: what share of eyes breaks in the step, with both others still whole in its middle.
    let first = 0;
    for (let kn = 5; kn < 30; kn += 0.01) {
      const [, clipAbove, deviceAbove] = above(kn + 0.005) as [number, number, number];
      first += ((above(kn)[0] as number) - (above(kn + 0.01)[0] as number)) * clipAbove * deviceAbove;
    }
    expect(n(values, 'first')).toBeCloseTo(100 * first, 3);
  }
});

test('knots: two strands by hand, and a tail that is shortened loading by loading', () => {
  for (const values of of('knots-and-bends').worked) {
    expect(n(values, 'predicted')).toBeCloseTo((n(values, 'strand') * n(values, 'share')) / 50, 9);
    expect(n(values, 'loop') * (1 + n(values, 'over') / 100)).toBeCloseTo(n(values, 'predicted'), 9);
    // In thousandths of a millimetre, so that sums are exact.
    const [creep, least] = [Math.round(10 * n(values, 'creep')), Math.round(1000 * n(values, 'left'))];
    let tail = 1000 * n(values, 'tail');
    let loadings = 0;
    while (tail >= least) {
      tail -= creep;
      loadings++;
    }
    expect(n(values, 'loadings')).toBe(loadings);
  }
});

/** Lower share of the standard normal distribution, by the library. */
const phi = (z: number): number => normal.cdf(z, 0, 1);

/** Mean of a function of s, the standard deviation of n normal pulls over the true one, by Simpson's rule over its density. */
function overSd(pulls: number, f: (s: number) => number): number {
  const degrees = pulls - 1;
  const weight = (s: number) => (s <= 0 ? 0 : Math.exp((degrees - 1) * Math.log(s) - (degrees * (s * s - 1)) / 2));
  const parts = 4000;
  let [sum, whole] = [0, 0];
  for (let i = 0; i <= parts; i++) {
    const s = (5 * i) / parts;
    const simpson = (i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2) * weight(s);
    sum += simpson * f(s);
    whole += simpson;
  }
  return sum / whole;
}

test('how many tests: the factor keeps its promise when all standard deviations are gone through', () => {
  const { worked } = of('how-many-tests');
  // Krishnamoorthy and Mathew, Table B1: 7.656 for three pulls. NIST/SEMATECH e-Handbook 6.3.2: c4 of three is 0.8862. 1.645: any table of the normal.
  expect(worked[0]).toMatchObject({ pulls: 3, factor: expect.closeTo(7.656, 3), short: expect.closeTo(0.8862, 4), knownFactor: expect.closeTo(1.645, 3) });
  for (const values of worked) {
    const [pulls, factor, mean, cv] = [n(values, 'pulls'), n(values, 'factor'), n(values, 'mean'), n(values, 'cv') / 100];
    expect(overSd(pulls, (s) => phi(Math.sqrt(pulls) * (factor * s - 1.6448536269514722)))).toBeCloseTo(0.95, 5);
    const short = overSd(pulls, (s) => s);
    expect(n(values, 'short')).toBeCloseTo(short, 6);
    expect(n(values, 'bound')).toBeCloseTo(mean - factor * short * cv * mean, 4);
    expect(n(values, 'known')).toBeCloseTo(mean - 1.6448536269514722 * cv * mean, 6);
    expect((n(values, 'known') - n(values, 'bound')) / mean).toBeCloseTo(n(values, 'cost') / 100, 9);
    let none = 1;
    for (let i = 0; i < pulls; i++) none *= 0.95;
    expect(n(values, 'weakest')).toBeCloseTo(100 * (1 - none), 9);
  }
});

test('five pulls: by sums of whole numbers, with the published factor', () => {
  for (const values of of('minimum-mean-and-bounds').worked) {
    const pulls = ['first', 'second', 'third', 'fourth', 'fifth'].map((name) => Math.round(100 * n(values, name)));
    const sum = pulls.reduce((a, b) => a + b, 0);
    const sd = Math.sqrt((5 * pulls.reduce((a, b) => a + b * b, 0) - sum * sum) / 20) / 100;
    expect(n(values, 'lowest')).toBe(Math.min(...pulls) / 100);
    expect(n(values, 'mean')).toBeCloseTo(sum / 500, 9);
    expect(n(values, 'sd')).toBeCloseTo(sd, 9);
    expect(n(values, 'lessThree')).toBeCloseTo(sum / 500 - 3 * sd, 9);
    // Krishnamoorthy and Mathew, Table B1, five pulls: 4.203.
    expect(n(values, 'bound')).toBeCloseTo(sum / 500 - 4.203 * sd, 2);
  }
});

/** Largest pull of a spring that stops a fall, by small steps in time from the moment when the rope comes tight. Newtons, metres, seconds. */
function simulatedPeak(massKg: number, gravity: number, fallM: number, stiffness: number, ropeM: number): number {
  const step = 2e-5;
  let [x, v, peak] = [0, Math.sqrt(2 * gravity * fallM), 0];
  while (v > 0) {
    const pull = (stiffness * x) / ropeM;
    v += step * (gravity - pull / massKg);
    x += step * v;
    peak = Math.max(peak, pull);
  }
  return peak;
}

test('falls: the motion in small steps of time gives the same peak, on a rope that gives its rated force in the standard drop', () => {
  const { gravity, geometries: [drop], ropes: { single } } = constants;
  const { worked } = of('falls');
  for (const values of worked.filter((_, variant) => variant % 5 === 0)) {
    const [mass, out, stiffness] = [n(values, 'mass'), n(values, 'out'), 1000 * n(values, 'stiffness')];
    const dropped = simulatedPeak(single.massKg, gravity, drop.raisedM + drop.ropeM - drop.behindM, stiffness, drop.ropeM);
    expect(dropped / 1000).toBeCloseTo(n(values, 'rated'), 2);
    const fallM = 2 * n(values, 'above') + n(values, 'slack');
    expect(n(values, 'fall')).toBeCloseTo(fallM, 9);
    expect(n(values, 'fallFactor') * out).toBeCloseTo(fallM, 9);
    const peak = simulatedPeak(mass, gravity, fallM, stiffness, out) / 1000;
    expect(n(values, 'climber')).toBeCloseTo(peak, 2);
    expect(n(values, 'top') / 2).toBeCloseTo(peak, 2);
  }
});

test('days: the calendar of the language counts the same months', () => {
  const later = (day: string, months: number): string => {
    const date = new Date(`${day}T00:00:00Z`);
    date.setUTCMonth(date.getUTCMonth() + months);
    return date.toISOString().slice(0, 10);
  };
  for (const values of of('deciding-to-retire').worked) {
    const [made, inspected] = [`${values['made']}-01`, String(values['inspected'])];
    expect(inspected < String(values['asked'])).toBe(true);
    // hse-indg367: every six months; the exercise's maker: eight years; the trade's habit: ten.
    expect(values['inspectBy']).toBe(later(inspected, 6));
    expect(values['makerDay']).toBe(later(made, 96));
    expect(values['tradeDay']).toBe(later(made, 120));
  }
});

test('costs: paid device by device and spread year by year', () => {
  for (const values of of('repair-law-and-risk').worked) {
    const [devices, metal, life] = [n(values, 'devices'), n(values, 'metal'), n(values, 'life')];
    let total = n(values, 'shipping');
    for (let i = 0; i < devices; i++) total += n(values, 'work');
    expect(n(values, 'total')).toBeCloseTo(total, 9);
    expect(n(values, 'sewnYear') * devices * metal).toBeCloseTo(total, 9);
    expect(n(values, 'newYear') * life).toBeCloseTo(n(values, 'price'), 9);
    expect(n(values, 'equal') / life).toBeCloseTo(n(values, 'sewnYear'), 9);
  }
});
