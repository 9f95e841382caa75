/**
 * A fall as it was typed: words in, a told fall out, or what is wrong at which field and what to do. Nothing is moved to
 * the end of a range, and nothing is guessed: an empty field that is needed says so.
 */
import { type FallConstants, ROPE_KINDS, type RopeKind, ROUTES } from './evidence.ts';
import { weightKn } from './fall.ts';
import { type QuantityRange, readQuantity } from './read-quantity.ts';
import { BELAYS, CONDITIONS, ONTO, type ToldFall, toldFallM } from './told-fall.ts';

/** Fields of the form, and keys of its link. */
export const FALL_FIELDS = ['kg', 'onto', 'up', 'slack', 'out', 'rope', 'kn', 'belay', 'route', 'state'] as const;
export type FallField = (typeof FALL_FIELDS)[number];
/** What was typed or chosen, word for word; empty where nothing was. */
export type FallWords = Record<FallField, string>;

/** Words that a chosen field takes, the first where nothing is chosen. */
export const FALL_CHOICES = {
  onto: ONTO,
  rope: ROPE_KINDS,
  belay: ['unknown', ...BELAYS.filter((one) => one !== 'unknown')],
  route: ['unknown', ...ROUTES.filter((one) => one !== 'unknown')],
  state: ['unknown', ...CONDITIONS.filter((one) => one !== 'unknown')],
} as const satisfies Partial<Record<FallField, readonly string[]>>;
export type FallChoice = keyof typeof FALL_CHOICES;

/** No words at all. */
export const blankFall = (): FallWords => Object.fromEntries(FALL_FIELDS.map((field) => [field, ''])) as FallWords;

/** One thing wrong, at its field. */
export interface FallFault { field: FallField; why: string }

export type ReadFall = { ok: true; told: ToldFall } | { ok: false; faults: FallFault[] };

/** Limits of what may be typed; wide, so that a number outside is a slip. */
const LIMITS = { kg: [20, 200], up: [0, 100], slack: [0, 50], out: [0.3, 150] } as const;

/** What a number field asks for. */
export function quantityOf(field: 'kg' | 'up' | 'slack' | 'out' | 'kn', { units, ropes, gravity }: FallConstants, rope: RopeKind = 'single'): QuantityRange {
  if (field === 'kg') return { low: LIMITS.kg[0], high: LIMITS.kg[1], unit: 'kg', others: { lb: units.poundKg } };
  if (field !== 'kn') return { low: LIMITS[field][0], high: LIMITS[field][1], unit: 'm', others: { ft: units.footM, cm: 0.01 } };
  // Below twice the weight of the standard's mass no rope can be; above its limit none is sold.
  const { massKg, limitKn } = ropes[rope];
  return { low: Math.ceil(20 * weightKn(massKg, gravity) * 1.02) / 10, high: limitKn, unit: 'kN', others: { daN: 0.01, kgf: units.kilogramForceKn, lbf: units.poundForceKn } };
}

const metres = (value: number): string => `${Number(value.toFixed(2))} m`;

/**
 * Reads a fall.
 * @param words as typed; a chosen field that is empty takes its first word
 * @returns the fall, or every fault at once in the order of the fields
 */
export function readFall(words: FallWords, constants: FallConstants): ReadFall {
  const faults: FallFault[] = [];
  const fail = (field: FallField, why: string): void => {
    faults.push({ field, why });
  };
  const chosen = <F extends FallChoice>(field: F): (typeof FALL_CHOICES)[F][number] => {
    const list: readonly string[] = FALL_CHOICES[field];
    const word = words[field].trim();
    if (word !== '' && !list.includes(word)) fail(field, `${JSON.stringify(word)} is none of ${list.join(', ')}; choose one of them`);
    return (list.includes(word) ? word : list[0]) as (typeof FALL_CHOICES)[F][number];
  };
  const onto = chosen('onto');
  const rope = chosen('rope');
  const number = (field: 'kg' | 'up' | 'slack' | 'out' | 'kn', empty: number | string): number | null => {
    if (words[field].trim() === '') {
      if (typeof empty === 'number') return empty;
      fail(field, empty);
      return null;
    }
    const read = readQuantity(words[field], quantityOf(field, constants, rope));
    if (read.ok) return read.value;
    fail(field, read.why);
    return null;
  };
  const massKg = number('kg', 'write the weight of the climber with all gear, in kg');
  const aboveM = number('up', onto === 'piece' ? 'write how far the knot at the harness is above the last piece, in m' : 'write how far the knot at the harness is above the belay, in m');
  const slackM = number('slack', 0);
  // Onto the belay all the rope is between belayer and climber: it need not be written.
  const isDerived = onto === 'belay' && words.out.trim() === '';
  const written = isDerived ? null : number('out', 'write how much rope is between belayer and climber, slack included, in m');
  const ratedKn = words.kn.trim() === '' ? null : number('kn', 0);
  const [belay, route, condition] = [chosen('belay'), chosen('route'), chosen('state')];

  const ropeOutM = isDerived && aboveM !== null && slackM !== null ? aboveM + slackM : written;
  if (aboveM !== null && slackM !== null && ropeOutM !== null) {
    const why = impossible(onto, aboveM, slackM, ropeOutM);
    if (why !== null) fail(isDerived ? 'up' : 'out', why);
  }
  if (faults.length > 0 || massKg === null || aboveM === null || slackM === null || ropeOutM === null) {
    return { ok: false, faults: faults.sort((a, b) => FALL_FIELDS.indexOf(a.field) - FALL_FIELDS.indexOf(b.field)) };
  }
  // What was written as the whole and its parts may differ by rounding.
  const outM = onto === 'belay' ? aboveM + slackM : Math.max(ropeOutM, aboveM + slackM);
  return { ok: true, told: { massKg, onto, aboveM, slackM, ropeOutM: outM, rope, ratedKn, belay, route, condition } };
}

/** Two lengths that were written to a centimetre are the same within this. */
const SAME_M = 0.011;

/** What makes a fall impossible, with what to do; null where nothing does. */
function impossible(onto: ToldFall['onto'], aboveM: number, slackM: number, ropeOutM: number): string | null {
  const fallM = toldFallM({ aboveM, slackM });
  const between = aboveM + slackM;
  if (between === 0 && onto === 'belay') return 'nobody is above the belay and no rope is slack, so nothing falls; write how far above the belay the climber is';
  if (fallM > 2 * ropeOutM + SAME_M) {
    return `a fall of ${metres(fallM)} on ${metres(ropeOutM)} of rope: nobody falls farther than twice the rope that is out. Write all the rope from belayer to climber, at least ${metres(between)}, or less height or slack`;
  }
  if (between > ropeOutM + SAME_M) {
    return `${metres(aboveM)} above and ${metres(slackM)} of slack need ${metres(between)} of rope, and only ${metres(ropeOutM)} is out. Write all the rope from belayer to climber, slack included, or less height or slack`;
  }
  if (onto === 'belay' && ropeOutM > between + SAME_M) {
    return `without a piece the rope is as long as the height above the belay and the slack, ${metres(between)}, and ${metres(ropeOutM)} is written. Leave this empty, or write the rest as slack`;
  }
  return null;
}
