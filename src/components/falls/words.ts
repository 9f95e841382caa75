/** The words of the page of falls: one wording for the form, the answer, the drawing and what is copied. */
import type { FallGap, RopeKind, RouteWords, Spread } from '../../falls/evidence.ts';
import type { FallChoice } from '../../falls/read-fall.ts';
import type { Belay, Condition, Driver, DriverName, Onto, ToldFall, ToldLoads } from '../../falls/told-fall.ts';
import { serialiseFallBeside } from '../../links/fall-beside-link.ts';
import { rigWithFall, rigWithLoad } from '../../links/fall-link.ts';

/** A force, with one decimal and without its unit. */
export const kn = (force: number): string => force.toFixed(1);
/** A length with its unit: to the centimetre where it is short. */
export const metres = (length: number): string => `${Number(length.toFixed(length < 10 ? 2 : 1))}\u00a0m`;
/** A range of forces; one force where it has no width. */
export const rangeWords = ({ low, high }: Pick<Spread, 'low' | 'high'>): string => (kn(low) === kn(high) ? `${kn(low)}\u00a0kN` : `${kn(low)} to ${kn(high)}\u00a0kN`);
/** A range with its middle. */
const spreadWords = (load: Spread): string => `${rangeWords(load)}, middle ${kn(load.middle)}\u00a0kN`;

export const ONTO_WORDS: Readonly<Record<Onto, string>> = { piece: 'a piece that the rope is clipped to', belay: 'the belay itself, with nothing clipped' };
export const ROPE_WORDS: Readonly<Record<RopeKind, string>> = { single: 'single rope', half: 'half rope, one strand', twin: 'twin ropes, both strands' };
export const BELAY_WORDS: Readonly<Record<Belay, string>> = {
  unknown: 'don’t know', device: 'a belay device in the hand', hitch: 'a belayer’s hitch on a connector', held: 'held fast: tied off, or to a fixed point',
};
export const ROUTE_WORDS: Readonly<Record<RouteWords, string>> = { unknown: 'don’t know', straight: 'straight', bends: 'with some bends', zigzag: 'in a zigzag' };
export const CONDITION_WORDS: Readonly<Record<Condition, string>> = { unknown: 'don’t know', new: 'new and dry', 'hard-falls': 'stopped hard falls just before', wet: 'wet or frozen' };

/** Names of what can be chosen, by field. */
export const CHOICE_WORDS: Readonly<Record<FallChoice, Readonly<Record<string, string>>>> = { onto: ONTO_WORDS, rope: ROPE_WORDS, belay: BELAY_WORDS, route: ROUTE_WORDS, state: CONDITION_WORDS };

/** What drives a load, and what its two ends stand for. */
export const DRIVER_WORDS: Readonly<Record<DriverName, readonly [name: string, says: string]>> = {
  rope: ['The rope', 'its rated impact force is not known'],
  geometry: ['The standard’s drop', 'two geometries of it are in circulation'],
  friction: ['Friction at the pieces', 'two tests give its ends'],
  route: ['The way of the rope', 'how much it turns below the top piece'],
  belay: ['The belay', 'from rope that runs through to held fast'],
  condition: ['What the rope went through', 'hard falls stiffen it'],
};

/** Open questions that a fall can touch, as they concern it. */
export const GAP_WORDS: Readonly<Record<FallGap, string>> = {
  topPiece: 'The load on the top piece was measured in few falls with a person at both ends.',
  belay: 'No figure says at what pull rope runs through a belay device. The range goes from the slip of a hitch up to held fast.',
  wet: 'A wet or frozen rope is computed as a dry one. No figure says how its impact force changes.',
  worn: 'No figure says how years of climbing change a rope’s impact force.',
  sling: 'No figure says how stiff a sling is in a fall.',
};

/** What stops the fall, at the start of a sentence and inside one, and its load. */
export function stopOf({ topPieceKn, climberKn }: Pick<ToldLoads, 'topPieceKn' | 'climberKn'>): { name: string; inside: string; load: Spread } {
  return topPieceKn ? { name: 'The top piece', inside: 'the top piece', load: topPieceKn } : { name: 'The belay', inside: 'the belay', load: climberKn };
}

/** The finding in a sentence. */
export function headline(loads: ToldLoads): string {
  const { name, load } = stopOf(loads);
  return `${name} bears ${rangeWords(load)}, ${kn(load.middle)}\u00a0kN in the middle.`;
}

/** The fall as it was told. */
export function toldSentence({ massKg, onto, aboveM, slackM, ropeOutM, rope, ratedKn, belay, route, condition }: ToldFall): string {
  const known = [
    `${ROPE_WORDS[rope]}, ${ratedKn === null ? 'rated force not known' : `rated ${Number(ratedKn.toFixed(2))}\u00a0kN`}`,
    condition === 'unknown' ? 'its past not known' : CONDITION_WORDS[condition],
    `belay: ${belay === 'unknown' ? 'not known' : BELAY_WORDS[belay]}`,
    ...(onto === 'piece' ? [`way of the rope: ${route === 'unknown' ? 'not known' : ROUTE_WORDS[route]}`] : []),
  ];
  return `${Number(massKg.toFixed(1))}\u00a0kg, ${metres(aboveM)} above ${onto === 'piece' ? 'the last piece' : 'the belay, with nothing clipped'}, ${slackM > 0 ? `${metres(slackM)} of slack` : 'no slack'}, ${metres(ropeOutM)} of rope out; ${known.join('; ')}.`;
}

/** How far it goes. */
export function wayDown({ fallM, factor, stretchM, slipM }: ToldLoads, ropeOutM: number): string {
  const slips = slipM.high > 0 ? (slipM.middle > 0 ? ` The belay lets ${metres(slipM.middle)} run.` : ` Where the belay lets rope run, up to ${metres(slipM.high)} more.`) : '';
  const free = fallM > 0 ? `A fall of ${metres(fallM)} on ${metres(ropeOutM)} of rope: fall factor ${factor.toFixed(2)}.` : 'No fall: the rope is tight, and has to stop the weight.';
  return `${free} The rope then stretches by about ${metres(stretchM.middle)}.${slips}`;
}

/** How far below the belayer the lowest place is, where it is. */
export function belowBelay(belowM: number, onto: Onto): string | null {
  return onto === 'piece' && belowM > 0 ? `At the lowest the climber is ${metres(belowM)} below the belayer. From the ground that is a fall to the ground.` : null;
}

/** One driver, for what is copied. */
const driverLine = ({ name, low, high }: Driver): string => `- ${DRIVER_WORDS[name][0]} (${DRIVER_WORDS[name][1]}): ${rangeWords({ low, high })}`;

/** Loads that the comparator takes as what a rig must survive, kN. */
const ASKED = { low: 1, high: 60 } as const;

/** Links to the comparator, for the middle and the upper end of what stops the fall; none where it takes no such load. */
export function comparatorLinks(loads: ToldLoads, rig: string | null): { loadKn: number; query: string }[] {
  const { load } = stopOf(loads);
  const asked = kn(load.middle) === kn(load.high) ? [load.middle] : [load.middle, load.high];
  return asked.filter((one) => one >= ASKED.low && one <= ASKED.high).map((loadKn) => ({ loadKn, query: rigWithLoad(rig, loadKn) }));
}

/** Loads in a link are written to ten newtons: a narrower range has no two ends there. */
const NARROWEST_KN = 0.02;

/**
 * Query of the comparison with the whole range of the top piece beside the rating. Null where there is no range, or no
 * top piece: what stands there is a load on one.
 * @param rig query of the comparison that the reader came from, or null
 * @param fall query that gives this fall again
 */
export function besideQuery({ topPieceKn }: Pick<ToldLoads, 'topPieceKn'>, rig: string | null, fall: string): string | null {
  if (!topPieceKn || topPieceKn.high - topPieceKn.low < NARROWEST_KN) return null;
  return rigWithFall(rig, serialiseFallBeside({ lowKn: topPieceKn.low, highKn: topPieceKn.high, query: fall }));
}

/** What is not in it, in a line each: for the page's list and what is copied. */
export const NOT_IN_IT = [
  'It is the load on the piece, not on the sling alone.',
  'Placement, rock and wear are not in it; nor is a belayer who is lifted, a swing, or a ledge.',
] as const;

/** Everything as text. @param address link to the fall */
export function fallText(told: ToldFall, loads: ToldLoads, address: string): string {
  const { climberKn, belayerKn, topPieceKn, drivers } = loads;
  return [
    `A fall: ${toldSentence(told)}`,
    wayDown(loads, told.ropeOutM),
    headline(loads),
    ...(topPieceKn
      ? [`Top piece: ${spreadWords(topPieceKn)}`, `Climber: ${spreadWords(climberKn)}`, `Belayer: ${spreadWords(belayerKn)}`]
      : [`Climber and belay: ${spreadWords(climberKn)}`]),
    ...(drivers.length > 0 ? ['What drives it:', ...drivers.map(driverLine)] : []),
    ...NOT_IN_IT,
    address,
  ].join('\n').replaceAll('\u00a0', ' ');
}
