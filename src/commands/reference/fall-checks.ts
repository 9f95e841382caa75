/** Checks of falls, friction, sling angles and costs against entries of tests/reference/published-checks.json, by family. */
import { toModelUnit } from '../../evidence/force.ts';
import { legOverStraight, legShare, triangleAnchorShare } from '../../falls/angles.ts';
import { arrest } from '../../falls/arrest.ts';
import { energyBalance, freeFallSpeed, peakAtFactor, peakForce, weightKn } from '../../falls/fall.ts';
import { connectorLoad, frictionFromHalfTurn, pullLeft } from '../../falls/friction.ts';
import { modulusFromRated, type StandardDrop, standardFallFactor, standardFallM } from '../../falls/rope.ts';
import { breakEven, yearlyShare } from '../../replacement/cost.ts';
import { at, type Entry, type EntryCheck, halfLastDigit, listAt, numberAt } from './entry.ts';

type Family = (check: EntryCheck, entry: Entry) => boolean;

/** Standard gravity, N/kg: one kilogram-force (NIST SP 811, appendix B). */
const GRAVITY = 1000 * (toModelUnit('kgf') ?? Number.NaN);

/** A drop of the given factor, for entries that give the factor and not its lengths: all the rope before the edge. */
const dropOf = (massKg: number, gravity: number, factor: number): StandardDrop => {
  // Raised by h over an edge with rope r in all and none behind: the factor is (h + r) / r.
  const ropeM = 1;
  return { weightKn: weightKn(massKg, gravity), raisedM: factor - ropeM, ropeM, behindM: 0 };
};

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

function checkTable(check: EntryCheck, { inputs, expected, tolerance }: Entry): boolean {
  const weight = numberAt(inputs, 'weight_lbf');
  const modulus = numberAt(inputs, 'rope_modulus_lbf');
  listAt(inputs, 'fall_factor').forEach((factor, i) => {
    // The equation holds in any unit of force.
    const found = peakAtFactor(weight, modulus, factor);
    const formula = at(expected, 'force_lbf_formula', i);
    // The modulus is printed to five figures, which the root halves; the forces to two decimals.
    const rounding = halfLastDigit(modulus) / (2 * modulus);
    if (typeof formula === 'number') check.within(`formula at ${factor}`, found, formula, 0.0051 + rounding * found);
    const except = at(tolerance, `except_row_${factor}`);
    const allowed = typeof except === 'number' ? except : numberAt(tolerance, 'abs_lbf');
    check.within(`published at ${factor}`, found, at(expected, 'force_lbf_published', i), allowed);
  });
  return true;
}

function checkInverse(check: EntryCheck, { inputs, expected }: Entry): boolean {
  const massKg = numberAt(inputs, 'mass_kg');
  const gravity = numberAt(inputs, 'g');
  for (const [i, row] of listOf(at(expected, 'rows')).entries()) {
    const drop = dropOf(massKg, gravity, numberAt(row, 'f0'));
    const modulus = modulusFromRated(numberAt(row, 'F0_kN'), drop);
    // Printed to 10 to 12 figures, and f0 itself to 10.
    for (const [key, value] of Object.entries(row as Record<string, unknown>)) {
      const factor = /^F_at_f_([\d.]+)_kN$/.exec(key)?.[1];
      const found = key === 'M_kN' ? modulus : factor === undefined ? null : peakAtFactor(drop.weightKn, modulus, Number(factor));
      if (found !== null) check.within(`row ${i} ${key}`, found, value, 1e-9 * found);
    }
  }
  return true;
}

function checkScaling(check: EntryCheck, { inputs, expected }: Entry): boolean {
  for (const [i, row] of listOf(inputs).entries()) {
    const modulus = modulusFromRated(numberAt(row, 'F0') / 1000, dropOf(numberAt(row, 'm0'), GRAVITY, numberAt(row, 'f0')));
    const found = 1000 * peakAtFactor(weightKn(numberAt(row, 'm'), GRAVITY), modulus, numberAt(row, 'f'));
    check.within(`F_N[${i}]`, found, at(expected, 'F_N', i), 1.01e-8);
  }
  return true;
}

function checkFriction(check: EntryCheck, { inputs, expected }: Entry): boolean {
  for (const [i, row] of listOf(inputs).entries()) {
    const climberM = numberAt(row, 'climber_side_m');
    const ropeM = numberAt(row, 'rope_m');
    const fallM = numberAt(row, 'fall_m');
    const found = arrest({
      weightKn: numberAt(row, 'W_kN'),
      modulusKn: numberAt(row, 'M_kN'),
      fallM,
      route: { segmentsM: [climberM, ropeM - climberM], turns: [{ turnDeg: 180, friction: frictionFromHalfTurn(numberAt(row, 'ratio')) }] },
    });
    check.compare(`effective_length_m[${i}]`, found.effectiveM, at(expected, 'effective_length_m', i));
    check.compare(`effective_fall_factor[${i}]`, fallM / found.effectiveM, at(expected, 'effective_fall_factor', i));
    check.compare(`T_climber_kN[${i}]`, found.climberKn, at(expected, 'T_climber_kN', i));
    check.compare(`T_top_kN[${i}]`, found.connectorsKn[0] ?? Number.NaN, at(expected, 'T_top_kN', i));
  }
  return true;
}

function checkEnergy(check: EntryCheck, { inputs, expected }: Entry): boolean {
  const fall = { weightKn: numberAt(inputs, 'W_kN'), modulusKn: numberAt(inputs, 'M_kN'), fallM: numberAt(inputs, 'fall_m'), ropeM: numberAt(inputs, 'rope_m') };
  const peak = peakForce(fall);
  const stretch = (peak * fall.ropeM) / fall.modulusKn;
  const { storedKj, potentialKj } = energyBalance(fall);
  check.compare('F_kN', peak, at(expected, 'F_kN'));
  check.compare('peak_stretch_m', stretch, at(expected, 'peak_stretch_m'));
  check.compare('stored_energy_kJ', storedKj, at(expected, 'stored_energy_kJ'));
  check.compare('potential_drop_kJ', potentialKj, at(expected, 'potential_drop_kJ'));
  check.compare('free_fall_speed_mps', freeFallSpeed(fall.fallM, GRAVITY), at(expected, 'free_fall_speed_mps'));
  check.compare('elongation_percent', (100 * stretch) / fall.ropeM, at(expected, 'elongation_percent'));
  return true;
}

const FALLS: Readonly<Record<string, Family>> = {
  'fall-table-180lb': checkTable,
  'fall-inverse-modulus': checkInverse,
  'fall-scaling': checkScaling,
  'fall-friction-effective-length': checkFriction,
  'fall-energy': checkEnergy,
};

const checkFall: Family = (check, entry) => FALLS[entry.id]?.(check, entry) ?? false;

function checkGeometry(check: EntryCheck, { expected }: Entry): boolean {
  const geometry = { raisedM: numberAt(expected, 'mass_raised_above_orifice_m'), ropeM: numberAt(expected, 'rope_out_m'), behindM: numberAt(expected, 'of_which_anchor_to_orifice_m') };
  const factor = standardFallFactor(geometry);
  check.within('free_fall_m', standardFallM(geometry), at(expected, 'free_fall_m'), 1e-12);
  check.within('fall_factor_geometric', factor, at(expected, 'fall_factor_geometric'), 1e-12);
  check.compare('published_rounded', factor, at(expected, 'published_rounded'));
  // The other circulated geometry leaves no rope hanging beside the mass, and its factor is the key it stands under.
  for (const [printed, words] of Object.entries((at(expected, 'other_published') as Record<string, string> | undefined) ?? {})) {
    const lengths = /2 x ([\d.]+) m fall on ([\d.]+) m/.exec(words);
    if (!lengths) continue;
    const other = { raisedM: Number(lengths[1]), ropeM: Number(lengths[2]), behindM: geometry.behindM };
    check.compare(`fall factor printed ${printed}`, standardFallFactor(other), Number(printed));
    const speed = /v0 = ([\d.]+) m\/s/.exec(words)?.[1];
    if (speed !== undefined) check.within('v0', freeFallSpeed(standardFallM(other), GRAVITY), Number(speed), 1.001 * halfLastDigit(Number(speed)));
  }
  return true;
}

function checkPulley(check: EntryCheck, { inputs, expected }: Entry): boolean {
  listAt(inputs, 'belayer_to_climber_tension_ratio').forEach((ratio, i) => {
    const friction = frictionFromHalfTurn(ratio);
    // Short ratios are exact; one of six decimals stands for two thirds.
    const allowed = Math.max(1e-9, halfLastDigit(ratio) < 1e-6 ? halfLastDigit(ratio) : 0);
    check.within(`implied_mu_at_180deg[${i}]`, friction, at(expected, 'implied_mu_at_180deg', i), allowed);
    const load = connectorLoad(1, pullLeft({ turnDeg: 180, friction }), 180);
    check.within(`anchor_multiple[${i}]`, load, at(expected, 'anchor_multiple', i), allowed);
  });
  check.within('frictionless', connectorLoad(1, 1, 180), at(expected, 'frictionless'), 1e-15);
  return true;
}

function checkWexler(check: EntryCheck, { inputs }: Entry): boolean {
  // The entry prints the equation in Wexler's form; ours must be the same over a grid of falls.
  if (!String(at(inputs, 'formula')).startsWith('T = W + W sqrt(1 + 2 K H/(W L))')) return false;
  for (const W of [0.5, 0.784532, 1]) {
    for (const K of [10, 25]) {
      for (const [H, L] of [[0, 5], [4, 10], [20, 10]] as const) {
        const printed = W + W * Math.sqrt(1 + (2 * K * H) / (W * L));
        check.within(`W ${W}, K ${K}, H ${H}, L ${L}`, peakForce({ weightKn: W, modulusKn: K, fallM: H, ropeM: L }), printed, 1e-12 * printed);
      }
    }
  }
  return true;
}

function checkLimit(check: EntryCheck, { inputs, expected }: Entry): boolean {
  check.compare('force_kN', numberAt(inputs, 'g_multiple') * weightKn(numberAt(inputs, 'mass_kg'), GRAVITY), at(expected, 'force_kN'));
  return true;
}

function checkTopLoads(check: EntryCheck, { expected }: Entry): boolean {
  // Context only: the loads are other people's calculations. Their conversion is ours.
  const pound = toModelUnit('lbf') ?? Number.NaN;
  listAt(expected, 'soft_to_hard_lead_fall_lbf').forEach((pounds, i) => {
    const printed = at(expected, 'soft_to_hard_lead_fall_kN', i);
    check.within(`soft_to_hard_lead_fall_kN[${i}]`, pounds * pound, printed, 1.001 * halfLastDigit(Number(printed)));
  });
  return true;
}

function checkCapstan(check: EntryCheck, { id, inputs, expected, tolerance }: Entry): boolean {
  if (id === 'capstan-table') {
    const load = numberAt(inputs, 'load_kg');
    const fitted = numberAt(inputs, 'mu_fitted_to_6_turns');
    listAt(inputs, 'turns').forEach((turns, i) => {
      const left = pullLeft({ turnDeg: 360 * turns, friction: numberAt(inputs, 'mu') });
      const printed = numberAt(expected, 'ratio_published', i);
      const lower = numberAt(expected, 'T_lower_published_kg', i);
      check.within(`ratio at ${turns}`, 1 / left, printed, numberAt(tolerance, 'ratio_rel') * printed);
      check.within(`T_lower at ${turns}`, load * left, lower, numberAt(tolerance, 'kg_abs'));
      const exact = numberAt(expected, 'ratio_formula_fitted_mu', i);
      check.within(`formula at ${turns}`, 1 / pullLeft({ turnDeg: 360 * turns, friction: fitted }), exact, 1e-6 * exact);
    });
    return true;
  }
  if (id !== 'capstan-basic') return false;
  for (const [i, row] of listOf(inputs).entries()) {
    const found = 1 / pullLeft({ turnDeg: numberAt(row, 'deg'), friction: numberAt(row, 'mu') });
    check.compare(`ratio[${i}]`, found, at(expected, 'ratio', i));
    if (i === 1) check.within('published_second', found, at(expected, 'published_second'), 0.0501);
  }
  return true;
}

function checkSling(check: EntryCheck, { id, inputs, expected }: Entry): boolean {
  if (id === 'sling-1000lb') {
    for (const [i, row] of listOf(inputs).entries()) {
      const leg = numberAt(row, 'load_lb') * legShare(numberAt(row, 'included_deg'));
      const exact = numberAt(expected, 'leg_lb', i);
      check.within(`leg_lb[${i}]`, leg, exact, 1e-9 * exact);
      check.compare(`published[${i}]`, leg, at(expected, 'published', i));
    }
    return true;
  }
  if (id !== 'sling-angle-factor') return false;
  listAt(inputs, 'angle_from_horizontal_deg').forEach((angle, i) => {
    const found = legOverStraight(angle);
    check.within(`load_angle_factor at ${angle}`, found, at(expected, 'load_angle_factor', i), 1e-11 * found);
    check.within(`capacity_factor at ${angle}`, 1 / found, at(expected, 'capacity_factor', i), 1e-11);
    check.compare(`published at ${angle}`, found, at(expected, 'published_3dp', String(angle)));
    // Two legs at this angle from the horizontal stand apart by twice what is left to the vertical.
    check.within(`two legs at ${angle}`, 2 * legShare(180 - 2 * angle), at(expected, 'load_angle_factor', i), 1e-10 * found);
  });
  return true;
}

function checkTriangle(check: EntryCheck, { inputs, expected }: Entry): boolean {
  listAt(inputs, 'included_deg').forEach((angle, i) => {
    const found = triangleAnchorShare(angle);
    check.within(`anchor_over_load at ${angle}`, found, at(expected, 'anchor_over_load', i), 1e-10 * found);
    check.compare(`published at ${angle}`, found, at(expected, `published_${angle}`));
  });
  return true;
}

function checkCost(check: EntryCheck, { id, inputs, expected }: Entry): boolean {
  if (id === 'be-two-options') {
    for (const [i, row] of listOf(inputs).entries()) {
      const a = { fixed: numberAt(row, 'F1'), each: numberAt(row, 'v1') };
      const b = { fixed: numberAt(row, 'F2'), each: numberAt(row, 'v2') };
      const count = breakEven(a, b) ?? Number.NaN;
      const printed = numberAt(expected, 'Q', i);
      check.within(`Q[${i}]`, count, printed, 1e-11 * printed);
    }
    return true;
  }
  if (id !== 'be-annualised') return false;
  listAt(inputs, 'rate').forEach((rate, i) => {
    listAt(inputs, 'years').forEach((years, j) => {
      const found = yearlyShare(years, rate);
      check.within(`rate ${rate}, ${years} years`, found, at(expected, 'capital_recovery_factor', i, j), 6e-13);
      if (rate === 0.1) check.within(`tabulated, ${years} years`, found, at(expected, 'tabulated_10pct', j), 5.01e-5);
    });
  });
  return true;
}

/** Checks of falls, friction, angles and costs, by the first part of an entry's id. */
export const fallFamilies: Readonly<Record<string, Family>> = {
  fall: checkFall,
  en892: checkGeometry,
  pulley: checkPulley,
  wexler: checkWexler,
  limit: checkLimit,
  top: checkTopLoads,
  capstan: checkCapstan,
  sling: checkSling,
  triangle: checkTriangle,
  be: checkCost,
};
