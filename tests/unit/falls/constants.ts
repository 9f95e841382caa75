/** The constants of falls, from the project's records, and a fall to change. */
import { loadFallConstants } from '../../../src/build/fall-evidence.ts';
import type { ToldFall } from '../../../src/falls/told-fall.ts';

export const CONSTANTS = loadFallConstants();

/** A single rope of 8.7 kN, held fast: a fall of 4.5 m on 15 m. */
export const CRAG: ToldFall = {
  massKg: 75, onto: 'piece', aboveM: 2, slackM: 0.5, ropeOutM: 15, rope: 'single', ratedKn: 8.7, belay: 'held', route: 'straight', condition: 'new',
};
