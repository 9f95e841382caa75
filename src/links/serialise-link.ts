/** Writes the rig into a link: every input that moves the answer, also where it is the default, in a fixed order. */
import type { Rig } from '../strength/types.ts';
import { writeNumber } from './read-number.ts';
import { CURRENT_MEANING, type RigKey } from './rig-keys.ts';

/** Evidence version and model number, added by "Copy link" so that a later reader sees what the link was made with. */
export interface Stamp { evidence: string; model: number }

const numberOr = (value: number | null, word: string): string => (value === null ? word : writeNumber(value));

/** Each input of the rig as its word in a link, in the order in which they are written. */
export function rigWords(rig: Readonly<Rig>): [RigKey, string][] {
  return [
    ['rating', numberOr(rig.ratingKn, 'unknown')],
    ['eye', rig.eye ?? 'unknown'],
    ['bearing', numberOr(rig.bearingMm, 'unmeasured')],
    ['sling', rig.sling ?? 'unknown'],
    ['length', numberOr(rig.lengthCm, 'unknown')],
    ['used', rig.slingState],
    ['demand', numberOr(rig.demandKn, 'rating')],
    ['oldsling', rig.old?.material ?? 'unknown'],
    ['oldage', numberOr(rig.old?.ageYears ?? null, 'unknown')],
    ['olduse', rig.old?.use ?? 'unknown'],
    ['oldlight', rig.old?.light ?? 'unknown'],
  ];
}

/**
 * The query of a link, without the question mark.
 * @param rig what the reader described
 * @param stamp what the answer was made with; absent while the reader is still changing inputs
 */
export function serialiseLink(rig: Readonly<Rig>, stamp?: Stamp): string {
  const pieces: [string, string][] = [['v', String(CURRENT_MEANING)], ...rigWords(rig)];
  if (stamp) pieces.push(['d', stamp.evidence], ['m', String(stamp.model)]);
  return pieces.map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&');
}

/** What a query sets beside the comparison, own tests (`t`) and a fall (`f`), as it stands there with `&` before each; empty where there is nothing. It goes along with every rig. */
export const besideOf = (search: string): string => `&${search.slice(1)}`.match(/&[tf]=[^&]*/g)?.join('') ?? '';
