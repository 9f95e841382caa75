/** The equation of a fall, friction and a slipping belay, held against limits, hand calculation and the conservation of energy. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrest } from '../../../src/falls/arrest.ts';
import { energyBalance, peakAtFactor, peakForce } from '../../../src/falls/fall.ts';
import { connectorLoad, frictionFromHalfTurn, pullLeft, type Route, solveRoute } from '../../../src/falls/friction.ts';
import { modulusFromRated, ratedFromModulus, standardFallFactor, standardFallM } from '../../../src/falls/rope.ts';
import { timeCourse } from '../../../src/falls/time-course.ts';
import { CONSTANTS } from './constants.ts';

const { geometries, gravity } = CONSTANTS;
const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const fall = fc.record({ weightKn: amount(0.3, 2), modulusKn: amount(5, 100), fallM: amount(0, 30), ropeM: amount(0.5, 60) });
const turn = fc.record({ turnDeg: amount(0, 360), friction: amount(0, 0.5) });
const route: fc.Arbitrary<Route> = fc.array(turn, { maxLength: 5 }).chain((turns) =>
  fc.record({ turns: fc.constant(turns), segmentsM: fc.array(amount(0.1, 20), { minLength: turns.length + 1, maxLength: turns.length + 1 }) }));

describe('the equation of a fall', () => {
  test('a load that is let go on a tight rope pulls with twice its weight, whatever the rope (any textbook of mechanics)', () => {
    fc.assert(fc.property(amount(0.1, 5), amount(1, 1000), (weight, modulus) => {
      expect(peakAtFactor(weight, modulus, 0) / weight).toBeCloseTo(2, 14);
    }));
  });

  test('only the ratio of fall and rope counts, not how far somebody falls', () => {
    fc.assert(fc.property(fall, amount(0.1, 10), (one, times) => {
      expect(peakForce({ ...one, fallM: one.fallM * times, ropeM: one.ropeM * times }) / peakForce(one)).toBeCloseTo(1, 12);
    }));
  });

  test('what the climber gives up is what the rope stores, to a share of 1e-9', () => {
    fc.assert(fc.property(fall, (one) => {
      expect(energyBalance(one).off).toBeLessThan(1e-9);
    }));
  });

  test.each([
    [{ weightKn: 0, modulusKn: 20, fallM: 1, ropeM: 2 }, /^weight must be positive/], [{ weightKn: 1, modulusKn: -1, fallM: 1, ropeM: 2 }, /^modulusKn/],
    [{ weightKn: 1, modulusKn: 20, fallM: -1, ropeM: 2 }, /^fallM/], [{ weightKn: 1, modulusKn: 20, fallM: 1, ropeM: 0 }, /^ropeM/], [{ weightKn: 1, modulusKn: 20, fallM: Number.NaN, ropeM: 1 }, /^fallM/],
  ])('a part out of range is refused by its name: %j', (one, message) => expect(() => peakForce(one)).toThrow(message));
});

describe('the rope and its standard drop', () => {
  test('the two circulated geometries have the fall factors that are printed: 1.71, and 1.77 on rope sheets', () => {
    expect(geometries.map((one) => standardFallFactor(one).toFixed(2))).toEqual(['1.71', '1.77']);
    // 4.80 m of free fall is printed with 2.80 m of rope; 2 x 2.3 m with 2.6 m.
    expect(geometries.map((one) => standardFallM(one))).toEqual([expect.closeTo(4.8, 12), expect.closeTo(4.6, 12)]);
  });

  test('rated force to modulus and back gives the rated force, in both geometries, with and without friction at the edge', () => {
    fc.assert(fc.property(amount(0.3, 1), amount(2.1, 30), fc.constantFrom(...geometries), amount(0.2, 1), (weightKn, ratedKn, geometry, ratio) => {
      const drop = { ...geometry, weightKn };
      expect(ratedFromModulus(modulusFromRated(ratedKn, drop, ratio), drop, ratio) / ratedKn).toBeCloseTo(1, 12);
    }));
  });

  test('the standard drop is a fall like any other: its own lengths give the rated force', () => {
    const [geometry] = geometries;
    const drop = { ...geometry, weightKn: 0.784532 };
    const left = 0.6;
    const found = arrest({
      weightKn: drop.weightKn, modulusKn: modulusFromRated(8.4, drop, left), fallM: 4.8,
      route: { segmentsM: [2.5, 0.3], turns: [{ turnDeg: 180, friction: frictionFromHalfTurn(left) }] },
    });
    expect(found.climberKn).toBeCloseTo(8.4, 12);
  });

  test('a rated force of twice the weight or less is none of a rope', () => {
    expect(() => modulusFromRated(1.5, { ...geometries[0], weightKn: 0.784532 })).toThrow(/^ratedKn must be above twice the weight/);
  });
});

describe('friction', () => {
  test('without friction the top piece bears twice the climber\'s share, and the belayer as much as the climber', () => {
    fc.assert(fc.property(fall, amount(0.1, 0.9), ({ ropeM, ...one }, share) => {
      const found = arrest({ ...one, route: { segmentsM: [ropeM * share, ropeM * (1 - share)], turns: [{ turnDeg: 180, friction: 0 }] } });
      expect((found.connectorsKn[0] ?? 0) / found.climberKn).toBeCloseTo(2, 12);
      expect(found.belayerKn).toBe(found.climberKn);
      expect(found.climberKn / peakForce({ ...one, ropeM })).toBeCloseTo(1, 12);
    }));
  });

  test('turns in a row leave as much of the pull as one turn by their sum: the capstan does not ask where the rope bends', () => {
    fc.assert(fc.property(amount(0, 0.5), fc.array(amount(0, 180), { minLength: 1, maxLength: 6 }), (friction, angles) => {
      const { pulls } = solveRoute({ segmentsM: [1, ...angles.map(() => 1)], turns: angles.map((turnDeg) => ({ turnDeg, friction })) });
      const whole = pullLeft({ turnDeg: angles.reduce((sum, one) => sum + one, 0), friction });
      expect((pulls.at(-1) ?? 0) / whole).toBeCloseTo(1, 10);
    }));
  });

  test('a right angle loads its connector with the hypotenuse of both pulls, no turn with nothing but friction (Pythagoras)', () => {
    expect(connectorLoad(3, 4, 90)).toBeCloseTo(5, 14);
    expect(connectorLoad(1, 1, 0)).toBe(0);
    expect(connectorLoad(1, 1, 60)).toBeCloseTo(1, 14);
    expect(connectorLoad(5, 3, 180)).toBeCloseTo(8, 14);
  });

  test('friction behind the top piece makes the climber\'s pull larger and the belayer\'s smaller', () => {
    fc.assert(fc.property(fall, route, ({ ropeM: _ropeM, ...one }, way) => {
      const free = arrest({ ...one, route: { ...way, turns: way.turns.map((each) => ({ ...each, friction: 0 })) } });
      const rough = arrest({ ...one, route: way });
      expect(rough.climberKn).toBeGreaterThanOrEqual(free.climberKn * (1 - 1e-12));
      expect(rough.belayerKn).toBeLessThanOrEqual(free.belayerKn * (1 + 1e-12));
    }));
  });

  test('a route needs one segment more than it has turns', () => {
    expect(() => solveRoute({ segmentsM: [1], turns: [{ turnDeg: 180, friction: 0 }] })).toThrow(/^segmentsM must hold one more than turns/);
    expect(() => solveRoute({ segmentsM: [0], turns: [] })).toThrow(/^segmentsM must not all be 0/);
  });
});

describe('energy and time', () => {
  const slip = fc.option(amount(0.05, 20), { nil: undefined });

  test('stretch, friction at each connector and slip at the belay take up all that the climber gives up, to a share of 1e-9', () => {
    fc.assert(fc.property(fall, route, slip, ({ ropeM: _ropeM, ...one }, way, over) => {
      const { pulls } = solveRoute(way);
      const slipKn = over === undefined ? undefined : (one.weightKn + over) * (pulls.at(-1) as number);
      expect(arrest({ ...one, route: way, slipKn }).energy.off).toBeLessThan(1e-9);
    }), { numRuns: 300 });
  });

  test('the motion, integrated from the forces, has the peak and the slip of the closed form, to 1e-6', () => {
    fc.assert(fc.property(fall, route, slip, ({ ropeM: _ropeM, ...one }, way, over) => {
      const { pulls } = solveRoute(way);
      const slipKn = over === undefined ? undefined : (one.weightKn + over) * (pulls.at(-1) as number);
      const closed = arrest({ ...one, route: way, slipKn });
      const motion = timeCourse({ ...one, route: way, slipKn }, gravity);
      expect(Math.abs(motion.peakKn / closed.climberKn - 1)).toBeLessThan(1e-6);
      expect(Math.abs(motion.slipM - closed.slipM)).toBeLessThan(1e-6 * Math.max(1, closed.slipM));
      const down = motion.moments.at(-1)?.downM ?? 0;
      expect(Math.abs(down / (one.fallM + closed.stretchM + closed.slipM) - 1)).toBeLessThan(1e-6);
    }), { numRuns: 60 });
  });

  test('a rope held fast stops the climber within half a swing of mass and rope, and a free fall lasts sqrt(2 h / g)', () => {
    const { tightAt, lowestAt } = timeCourse({ weightKn: 0.980665, modulusKn: 20, fallM: 4.903325, route: { segmentsM: [10], turns: [] } }, gravity);
    expect(tightAt).toBeCloseTo(1, 12);
    // m / k = 0.1 t / 2 kN/m: the swing takes 2 pi sqrt(0.05) = 1.405 s.
    expect(lowestAt - tightAt).toBeLessThan(0.5 * 1.4050);
    expect(lowestAt - tightAt).toBeGreaterThan(0.25 * 1.4049);
  });

  test('a belay that slips at less than the climber weighs never stops the fall, and says so', () => {
    const weak = { weightKn: 0.8, modulusKn: 20, fallM: 2, route: { segmentsM: [5], turns: [] }, slipKn: 0.7 };
    expect(() => arrest(weak)).toThrow(/^slipKn must stop the climber/);
    expect(() => timeCourse(weak, gravity)).toThrow(/^slipKn must stop the climber/);
  });
});
