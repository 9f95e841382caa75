/**
 * A fall as a climber tells it, and the loads that it gives: low, middle and high, with what drives them. Every input that
 * is not known runs over its whole range, in all combinations; the middle has each at its own middle.
 */
import { type Arrested, arrest } from './arrest.ts';
import { assertNotNegative, assertPositive } from './checks.ts';
import type { FallConstants, FallGap, RopeKind, RouteWords, Spread } from './evidence.ts';
import { weightKn } from './fall.ts';
import { pullLeft, type Route } from './friction.ts';
import { type DropGeometry, modulusFromRated } from './rope.ts';

export const ONTO = ['piece', 'belay'] as const;
/** What stops the fall: a piece above the belay that the rope is clipped to, or the belay itself. */
export type Onto = (typeof ONTO)[number];
export const BELAYS = ['held', 'hitch', 'device', 'unknown'] as const;
/** How the rope is held: fast, as in the standard; by the belayer's hitch on a connector; by a device; not known. */
export type Belay = (typeof BELAYS)[number];
export const CONDITIONS = ['new', 'hard-falls', 'wet', 'unknown'] as const;
/** What the rope went through: nothing; hard falls just before; water. */
export type Condition = (typeof CONDITIONS)[number];

/** A fall in words, read. Lengths in metres. */
export interface ToldFall {
  massKg: number;
  onto: Onto;
  /** How far the climber is above the piece, or above the belay where there is none. */
  aboveM: number;
  /** Rope that hangs loose. */
  slackM: number;
  /** All the rope from the belayer to the climber, the slack with it. */
  ropeOutM: number;
  rope: RopeKind;
  /** Impact force on the rope's sheet, kN; null: not known. */
  ratedKn: number | null;
  belay: Belay;
  route: RouteWords;
  condition: Condition;
}

/** What can drive a load. */
export type DriverName = 'rope' | 'geometry' | 'friction' | 'route' | 'belay' | 'condition';
/** One driver: the load at its two ends, with all else at the middle; kN on the top piece, or on the belay where there is none. */
export interface Driver { name: DriverName; low: number; high: number }

export interface ToldLoads {
  /** Free fall before the rope comes tight, and over all the rope. */
  fallM: number;
  factor: number;
  climberKn: Spread;
  belayerKn: Spread;
  /** Null where the fall goes onto the belay. */
  topPieceKn: Spread | null;
  /** Stretch of the rope and rope that ran at the belay: how much farther than the fall the climber goes. */
  stretchM: Spread;
  slipM: Spread;
  /** Largest first; those that move nothing are left out. */
  drivers: Driver[];
  /** Questions without a figure that this fall touches. */
  gaps: FallGap[];
  /** The fall with everything at its middle, for drawings and the time course. */
  middle: { weightKn: number; modulusKn: number; fallM: number; route: Route; slipKn?: number | undefined; arrested: Arrested };
}

/** Lower pieces that share the turning evenly, evenly spread over the rope. */
const LOWER_PIECES = 2;
/** A rope over the top piece turns back on itself. */
const TOP_TURN_DEG = 180;

/** Free fall of a told fall: down past the piece by as much as the climber was above, and the slack. */
export function toldFallM({ aboveM, slackM }: Pick<ToldFall, 'aboveM' | 'slackM'>): number {
  return 2 * aboveM + slackM;
}

function assertTold(told: ToldFall): void {
  assertPositive(told.massKg, 'massKg');
  assertNotNegative(told.aboveM, 'aboveM');
  assertNotNegative(told.slackM, 'slackM');
  assertPositive(told.ropeOutM, 'ropeOutM');
  const between = told.aboveM + told.slackM;
  if (between > told.ropeOutM * (1 + 1e-12)) throw new RangeError(`ropeOutM must be at least what is above and slack, ${between} (got ${told.ropeOutM}).`);
  if (told.onto === 'belay' && Math.abs(between - told.ropeOutM) > 1e-9 * told.ropeOutM) {
    throw new RangeError(`ropeOutM must be what is above and slack, ${between}, where the fall goes onto the belay (got ${told.ropeOutM}).`);
  }
  if (told.ratedKn !== null) assertPositive(told.ratedKn, 'ratedKn');
}

/** The way of the rope when it comes tight: the climber's part is what was above and the slack. */
function routeOf({ onto, aboveM, slackM, ropeOutM }: ToldFall, friction: number, turnDeg: number): Route {
  if (onto === 'belay') return { segmentsM: [ropeOutM], turns: [] };
  const climberM = Math.min(aboveM + slackM, ropeOutM);
  const restM = ropeOutM - climberM;
  const part = restM / (LOWER_PIECES + 1);
  const lower = Array.from({ length: LOWER_PIECES }, () => ({ turnDeg: turnDeg / LOWER_PIECES, friction }));
  return { segmentsM: [climberM, part, ...lower.map(() => part)], turns: [{ turnDeg: TOP_TURN_DEG, friction }, ...lower] };
}

/** One choice for everything that is not known. */
interface Choice { rope: number; geometry: DropGeometry; friction: number; route: number; belay: number | undefined; condition: number }

/** For each driver what it may be: the low end, the high end and the middle; one entry where it is known or plays no part. */
type Choices = { [Name in DriverName]: { ends: Choice[Name][]; middle: Choice[Name] } };

function choicesOf(told: ToldFall, { ropes, geometries, friction, turns, hitchSlipKn, growth }: FallConstants): Choices {
  const { usualKn, limitKn } = ropes[told.rope];
  const isOverPiece = told.onto === 'piece';
  const known = <T>(value: T): { ends: T[]; middle: T } => ({ ends: [value], middle: value });
  const over = ({ low, middle, high }: Spread): { ends: number[]; middle: number } => ({ ends: [low, high], middle });
  // A hitch may jam, a device may slip at as little as a hitch: both run up to held fast.
  const belay: Choices['belay'] = told.belay === 'held' ? known(undefined) : { ends: [hitchSlipKn, undefined], middle: told.belay === 'hitch' ? hitchSlipKn : undefined };
  return {
    rope: told.ratedKn !== null ? known(told.ratedKn) : { ends: [usualKn.low, limitKn], middle: 0.5 * (usualKn.low + usualKn.high) },
    geometry: { ends: [...geometries], middle: geometries[0] },
    friction: over(friction),
    route: isOverPiece ? over(turns[told.route]) : known(0),
    belay,
    condition: told.condition === 'hard-falls' ? over(growth) : told.condition === 'unknown' ? { ends: [1, growth.high], middle: 1 } : known(1),
  };
}

/** What one choice gives. The edge of the standard drop has the same friction as the top piece, so a fall like it gives the rated force back. */
function oneFall(told: ToldFall, constants: FallConstants, choice: Choice): ToldLoads['middle'] {
  const edge = pullLeft({ turnDeg: TOP_TURN_DEG, friction: choice.friction });
  const drop = { ...choice.geometry, weightKn: weightKn(constants.ropes[told.rope].massKg, constants.gravity) };
  const parts = {
    weightKn: weightKn(told.massKg, constants.gravity),
    modulusKn: modulusFromRated(choice.rope * choice.condition, drop, edge),
    fallM: toldFallM(told),
    route: routeOf(told, choice.friction, choice.route),
    slipKn: choice.belay,
  };
  return { ...parts, arrested: arrest(parts) };
}

/** All combinations of the ends. */
function corners({ rope, geometry, friction, route, belay, condition }: Choices): Choice[] {
  return rope.ends.flatMap((r) => geometry.ends.flatMap((g) => friction.ends.flatMap((f) => route.ends.flatMap((w) => belay.ends.flatMap((b) =>
    condition.ends.map((c) => ({ rope: r, geometry: g, friction: f, route: w, belay: b, condition: c })))))));
}

/** Load that matters to what stops the fall: the top piece, or the belay. */
const stopLoad = ({ connectorsKn, climberKn }: Arrested): number => connectorsKn[0] ?? climberKn;

/**
 * The loads of a told fall.
 * @throws RangeError when the fall is impossible (read-fall.ts says so in words at the field), or the rated force is not
 * above twice the weight of the standard's mass
 */
export function toldLoads(told: ToldFall, constants: FallConstants): ToldLoads {
  assertTold(told);
  const choices = choicesOf(told, constants);
  const middleChoice: Choice = {
    rope: choices.rope.middle, geometry: choices.geometry.middle, friction: choices.friction.middle, route: choices.route.middle, belay: choices.belay.middle, condition: choices.condition.middle,
  };
  const middle = oneFall(told, constants, middleChoice);
  const all = [...corners(choices).map((choice) => oneFall(told, constants, choice)), middle].map(({ arrested }) => arrested);
  const spread = (of: (one: Arrested) => number): Spread => {
    const values = all.map(of);
    return { low: Math.min(...values), middle: of(middle.arrested), high: Math.max(...values) };
  };
  const drivers = (Object.keys(choices) as DriverName[]).flatMap((name): Driver[] => {
    const loads = choices[name].ends.map((end) => stopLoad(oneFall(told, constants, { ...middleChoice, [name]: end }).arrested));
    const [low, high] = [Math.min(...loads), Math.max(...loads)];
    return high > low * (1 + 1e-9) ? [{ name, low, high }] : [];
  });
  const fallM = toldFallM(told);
  return {
    fallM,
    factor: fallM / told.ropeOutM,
    climberKn: spread(({ climberKn }) => climberKn),
    belayerKn: spread(({ belayerKn }) => belayerKn),
    topPieceKn: told.onto === 'piece' ? spread(stopLoad) : null,
    stretchM: spread(({ stretchM }) => stretchM),
    slipM: spread(({ slipM }) => slipM),
    drivers: drivers.sort((a, b) => b.high - b.low - (a.high - a.low)),
    gaps: gapsOf(told),
    middle,
  };
}

function gapsOf({ onto, belay, condition }: ToldFall): FallGap[] {
  return [
    ...(onto === 'piece' ? (['topPiece'] as const) : []),
    ...(belay === 'held' ? [] : (['belay'] as const)),
    ...(condition === 'wet' ? (['wet'] as const) : []),
    ...(condition === 'new' || condition === 'wet' ? [] : (['worn'] as const)),
  ];
}
