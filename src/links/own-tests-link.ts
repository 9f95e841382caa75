/**
 * A reader's own breaks in the link of a comparison, under `t`: what was pulled, and the few numbers. Total: any string
 * gives tests or the reason why not.
 *
 * Parted by `~`: method, sling, kind of eye, diameter that the sling bore on in mm (or `unmeasured`), what is known of lots
 * and rigs (`lot`: all slings of one lot; `rig`: all pulls on one device and eye; `lot-rig`; `-`), then the forces in kN,
 * with `>` before one at which the attachment did not break.
 */
import type { Eye } from '../records/schema.ts';
import { readNumber, writeNumber } from './read-number.ts';
import { EYE_IDS, INPUT_RANGES } from './rig-keys.ts';

/** What was pulled, and at which forces it came apart. */
export interface OwnTests {
  method: string;
  sling: string;
  eye: Eye;
  bearingMm: number | null;
  oneLot: boolean;
  oneRig: boolean;
  /** kN. */
  broken: readonly number[];
  /** Forces at which something else gave way first, or nothing did, kN. */
  atLeast: readonly number[];
}

/** More pulls than that are a series for a record, not for a link. */
export const MOST_OWN_PULLS = 60;
const BETWEEN = '~';
const KNOWN = ['-', 'lot', 'rig', 'lot-rig'] as const;
const FORCE = { low: 0.01, high: 1000, unit: 'kN' };

export type OwnTestsRead = { tests: OwnTests } | { why: string };

/** Reads the value of `t`. @param words ids of the records */
export function parseOwnTests(value: string, words: { methods: readonly string[]; slings: readonly string[] }): OwnTestsRead {
  const [method, sling = '', eyeWord, bearing = '', knownWord, ...forces] = value.split(BETWEEN).map((part) => part.trim()) as [string, ...string[]];
  const eye = EYE_IDS.find((one) => one === eyeWord);
  if (!words.methods.includes(method)) return { why: `no method is called ${JSON.stringify(method)}` };
  if (!words.slings.includes(sling)) return { why: `no sling is called ${JSON.stringify(sling)}` };
  if (!eye) return { why: `a kind of eye is ${EYE_IDS.join(', ')}` };
  const on = bearing === 'unmeasured' ? { ok: true as const, value: null } : readNumber(bearing, INPUT_RANGES.bearing);
  if (!on.ok) return { why: `the bearing is ${on.why}` };
  const known = KNOWN.find((one) => one === knownWord);
  if (!known) return { why: `what is known of lots and rigs is ${KNOWN.join(', ')}` };
  if (forces.length > MOST_OWN_PULLS) return { why: `more than ${MOST_OWN_PULLS} pulls` };
  const broken: number[] = [];
  const atLeast: number[] = [];
  for (const text of forces) {
    const read = readNumber(text.replace(/^>/, ''), FORCE);
    if (!read.ok) return { why: `the force ${JSON.stringify(text)} is ${read.why}` };
    (text.startsWith('>') ? atLeast : broken).push(read.value);
  }
  if (broken.length === 0) return { why: 'in no pull did the attachment break' };
  return { tests: { method, sling, eye, bearingMm: on.value, oneLot: known.includes('lot'), oneRig: known.includes('rig'), broken, atLeast } };
}

/** The value of `t`. Forces are written to a newton. */
export function serialiseOwnTests({ method, sling, eye, bearingMm, oneLot, oneRig, broken, atLeast }: OwnTests): string {
  const known = [oneLot && 'lot', oneRig && 'rig'].filter(Boolean).join('-') || '-';
  const kn = (force: number): string => writeNumber(Number(force.toFixed(3)));
  return [method, sling, eye, bearingMm === null ? 'unmeasured' : writeNumber(bearingMm), known, ...broken.map(kn), ...atLeast.map((force) => `>${kn(force)}`)].join(BETWEEN);
}
