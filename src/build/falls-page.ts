/** What the page of falls shows without a script: the fall that it begins with, loads worked for usual falls, and which figure gives what. */
import { type FallConstants, FALL_FIGURES, type FallFigure } from '../falls/evidence.ts';
import { FALL_EXAMPLES, type FallExample } from '../falls/examples.ts';
import { blankFall, FALL_CHOICES, FALL_FIELDS, type FallWords, readFall } from '../falls/read-fall.ts';
import { type ToldFall, type ToldLoads, toldLoads } from '../falls/told-fall.ts';
import { serialiseFall } from '../links/fall-link.ts';

/** The fall that the form begins with: made up, and with nothing known of rope and belay. */
export const FIRST_FALL: FallWords = { ...blankFall(), kg: '80', onto: 'piece', up: '2', slack: '0.5', out: '12', rope: 'single', belay: 'unknown', route: 'unknown', state: 'unknown' };

/** A fall of the page and its loads. @throws RangeError with the first fault, when the words are no fall */
export function workedFall(words: FallWords, constants: FallConstants): { told: ToldFall; loads: ToldLoads } {
  const read = readFall(words, constants);
  if (!read.ok) throw new RangeError(`words: ${read.faults[0]?.field} ${read.faults[0]?.why}`);
  return { told: read.told, loads: toldLoads(read.told, constants) };
}

/** Heights above the piece and lengths of rope, m, of the worked table. */
export const USUAL_ABOVE = ['1', '2', '4'] as const;
export const USUAL_OUT = ['6', '12', '25', '50'] as const;

/** One line of the worked table: a climber of the first fall, no slack, nothing known of rope, belay and route. */
export interface UsualFall { above: string; out: string; loads: ToldLoads; query: string }

/** Loads of usual falls onto a piece. */
export function usualFalls(constants: FallConstants): UsualFall[] {
  return USUAL_ABOVE.flatMap((above) => USUAL_OUT.map((out) => {
    const words = { ...FIRST_FALL, up: above, slack: '', out };
    return { above, out, loads: workedFall(words, constants).loads, query: fallQuery(words) };
  }));
}

/** Query of a fall. */
export const fallQuery = (words: FallWords): string => serialiseFall(words, { fields: FALL_FIELDS, choices: FALL_CHOICES });

/** A worked example as words of the form: a straight route and a new rope, held fast or by a hitch that slips. */
export function exampleWords({ inputs: { massKg, aboveM, slackM, ropeOutM, isOntoBelay, ratedKn, slipKn } }: FallExample): FallWords {
  return {
    kg: String(massKg), onto: isOntoBelay ? 'belay' : 'piece', up: String(aboveM), slack: String(slackM), out: String(ropeOutM),
    rope: 'single', kn: String(ratedKn), belay: slipKn === null ? 'held' : 'hitch', route: 'straight', state: 'new',
  };
}

/** Links to the page of falls, one for each worked example. */
export const exampleQueries = (): ReadonlyMap<string, string> => new Map(FALL_EXAMPLES.map((example) => [example.id, fallQuery(exampleWords(example))]));

/** One part of the model and the figures that give its numbers; where it can drive a load, its id is the driver's. */
export interface FallSource { id: string; what: string; says: string; figures: readonly FallFigure[] }

/** Every figure that feeds a fall, once, by what it gives. */
export const FALL_SOURCES: readonly FallSource[] = [
  { id: 'weight', what: 'Weight', says: 'Newtons for each kilogram.', figures: ['gravity'] },
  { id: 'rope', what: 'Stiffness of a single rope', says: 'From the impact force on its sheet, with the mass of the standard’s drop. Where none is written: what sheets usually print, and at most what the standard allows.', figures: ['singleMass', 'singleRated', 'singleLimit'] },
  { id: 'rope-half', what: 'Of a half rope', says: 'The same for one strand.', figures: ['halfMass', 'halfRated', 'halfLimit'] },
  { id: 'rope-twin', what: 'Of twin ropes', says: 'The same for both strands together.', figures: ['twinMass', 'twinRated', 'twinLimit'] },
  { id: 'geometry', what: 'The standard’s drop', says: 'How high the mass is lifted, how much rope stops it, and how much of that lies behind the edge.', figures: ['raised', 'rope', 'behind'] },
  { id: 'geometry-other', what: 'Its other geometry', says: 'Height and rope as another text has them.', figures: ['otherRaised', 'otherRope'] },
  { id: 'friction', what: 'Friction at the pieces', says: 'The least from the load on a top piece, the most from rope over a bar.', figures: ['multiple', 'barFriction'] },
  { id: 'route', what: 'The way of the rope', says: 'How much it turns below the top piece.', figures: ['straightTurns', 'bendsTurns', 'zigzagTurns'] },
  { id: 'belay', what: 'A belay that slips', says: 'The pull at which a hitch lets rope run.', figures: ['hitchSlip'] },
  { id: 'condition', what: 'A rope after hard falls', says: 'How the load on the top piece grew up to the second, third and fifth drop.', figures: ['growthLow', 'growthMiddle', 'growthHigh'] },
  { id: 'measured', what: 'The model against a measurement', says: 'A standard drop whose top piece was measured.', figures: ['measuredRated', 'measuredTopPiece'] },
  { id: 'sling', what: 'A fall onto a sling', says: 'Stiffness and strength of the yarn, of HMPE and then of nylon; a lanyard’s measured peak.', figures: ['hmpeModulus', 'hmpeStrength', 'nylonModulus', 'nylonStrength', 'lanyardPeak'] },
  { id: 'units', what: 'Units', says: 'Feet and pounds that you may write.', figures: ['foot', 'pound', 'poundForce'] },
];

/** What a figure gives to falls; null where it feeds none. */
export function givesToFalls(address: string): string | null {
  return FALL_SOURCES.find(({ figures }) => figures.some((name) => FALL_FIGURES[name] === address))?.what ?? null;
}
