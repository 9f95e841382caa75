/**
 * The figures behind a fall: which record gives which constant, and what of the model is assumed. The records are read
 * where they are joined (src/build/fall-evidence.ts); the engine gets numbers.
 */
import type { Value } from '../records/schema.ts';
import { frictionFromHalfTurn } from './friction.ts';
import type { DropGeometry } from './rope.ts';
import type { Yarn } from './sling-fall.ts';

export const ROPE_KINDS = ['single', 'half', 'twin'] as const;
/** Single rope; half rope, one strand; twin ropes, both strands together. */
export type RopeKind = (typeof ROPE_KINDS)[number];
export const SLING_MATERIALS = ['hmpe', 'nylon'] as const;
export type SlingMaterial = (typeof SLING_MATERIALS)[number];

/** Addresses of the figures that feed the engine, by what they give. */
export const FALL_FIGURES = {
  /** Newtons that a kilogram weighs: one kilogram-force. */
  gravity: 'nist-sp-811/units#kgf',
  foot: 'nist-sp-811/lengths-and-masses#foot',
  pound: 'nist-sp-811/lengths-and-masses#pound',
  poundForce: 'nist-sp-811/units#lbf',
  raised: 'wikipedia-standard-drop/geometry#raised',
  rope: 'wikipedia-standard-drop/geometry#rope-out',
  behind: 'wikipedia-standard-drop/geometry#behind-edge',
  otherRaised: 'wikipedia-fall-factor/geometry#raised',
  otherRope: 'wikipedia-fall-factor/geometry#rope-out',
  singleMass: 'en-892/limits#single-mass', singleLimit: 'en-892/limits#single-impact', singleRated: 'common-practice/rated-impact-force#single',
  halfMass: 'en-892/limits#half-mass', halfLimit: 'en-892/limits#half-impact', halfRated: 'common-practice/rated-impact-force#half',
  twinMass: 'en-892/limits#twin-mass', twinLimit: 'en-892/limits#twin-impact', twinRated: 'common-practice/rated-impact-force#twin',
  /** Load on the top piece over the climber's pull; its larger end is the least friction. */
  multiple: 'moyer-2000/redirect-multiple',
  /** Friction of rope on a bar as thick as a connector's: the most. */
  barFriction: 'delaney-2022/rope-over-bars#steel-10-mm',
  hitchSlip: 'warner-1996/italian-hitch',
  growthLow: 'moyer-2000/growth-drop-2', growthMiddle: 'moyer-2000/growth-drop-3', growthHigh: 'moyer-2000/growth-drop-5',
  measuredTopPiece: 'moyer-2000/redirect-forces#drop-1',
  measuredRated: 'moyer-2000/drop-rig#rated-impact-force',
  hmpeModulus: 'tension-technology/yarn-modulus#hmpe-higher-grade', hmpeStrength: 'tension-technology/yarn-strength#hmpe-higher-grade',
  nylonModulus: 'tension-technology/yarn-modulus#nylon', nylonStrength: 'tension-technology/yarn-strength#nylon',
  lanyardPeak: 'french-caving-school-2006/lanyard-peak',
  straightTurns: 'assumed/rope-turns#straight', bendsTurns: 'assumed/rope-turns#bends', zigzagTurns: 'assumed/rope-turns#zigzag',
} as const satisfies Record<string, string>;
export type FallFigure = keyof typeof FALL_FIGURES;

export const ROUTES = ['straight', 'bends', 'zigzag', 'unknown'] as const;
/** How the rope runs between the top piece and the belayer. */
export type RouteWords = (typeof ROUTES)[number];

/** Gaps of fall loads: questions that a told fall leaves open, by what it asked. */
export const FALL_GAPS = {
  topPiece: 'top-piece-in-real-falls',
  belay: 'belay-slip',
  wet: 'wet-rope-in-a-fall',
  worn: 'worn-rope-in-a-fall',
  sling: 'sling-stiffness-in-a-fall',
} as const;
export type FallGap = keyof typeof FALL_GAPS;

/** Ends and middle of what an input may be. */
export interface Spread { low: number; middle: number; high: number }

/** The drop of one kind of rope: its mass, the force that the standard allows, and what sheets usually print. */
export interface RopeDrop { massKg: number; limitKn: number; usualKn: { low: number; high: number } }

/** All numbers that the engine takes from records. */
export interface FallConstants {
  /** Newtons per kilogram. */
  gravity: number;
  units: { footM: number; poundKg: number; poundForceKn: number; kilogramForceKn: number };
  /** The geometry that the standard is said to have, and the other circulated one. */
  geometries: readonly [DropGeometry, DropGeometry];
  ropes: Readonly<Record<RopeKind, RopeDrop>>;
  /** Coefficient of friction between rope and connector. */
  friction: Spread;
  /** Turning of the rope below the top piece, degrees in all. */
  turns: Readonly<Record<RouteWords, Spread>>;
  /** Pull at which the belayer's hitch lets rope run. */
  hitchSlipKn: number;
  /** Force over that of the first fall, for a rope that has just stopped one to four hard falls. */
  growth: Spread;
  yarns: Readonly<Record<SlingMaterial, Yarn>>;
  /** A measured standard drop: the rope's rated force, and the load that the top piece bore. */
  measured: { ratedKn: number; topPieceKn: number };
  /** Lanyards without an absorber: more than this in a fall as deep as they are long. */
  lanyardAboveKn: number;
}

/** One choice of the model that no figure gives. */
export interface Assumption { id: string; what: string; why: string }

/** What is assumed, for the page to say. */
export const FALL_ASSUMPTIONS: readonly Assumption[] = [
  { id: 'spring', what: 'The rope is one spring without damping, and the climber a stiff mass.', why: 'It is the equation that rope sheets and books use; measured pulls rise otherwise in hard falls.' },
  { id: 'friction-middle', what: 'The middle of friction lies halfway between its two ends.', why: 'The ends come from different tests, and neither is known to be the better one.' },
  { id: 'route', what: 'A straight route turns the rope only a little below the top piece, one with bends more, a zigzag by several right angles.', why: 'A climber knows how the rope runs, and hardly its angles.' },
  { id: 'rope-middle', what: 'Without a rated force the rope prints what sheets of its kind usually do, and at most what the standard allows.', why: 'No list of rated forces with a source was read.' },
  { id: 'belay', what: 'A belay device counts from a slip at the pull of the hitch up to held fast; its middle is held fast.', why: 'No figure for a device was found, and held fast is the larger load.' },
  { id: 'worn', what: 'After hard falls the rope is as much stiffer as the load on the top piece grew from drop to drop.', why: 'Only that load was measured; friction is taken to be the same in all drops.' },
  { id: 'demand', what: 'Nine falls in ten like this lie between low and high, evenly on a scale of ratios.', why: 'The ends are what we believe, not what was counted.' },
];

const numberOf = (value: Value | undefined, name: FallFigure): number => {
  const found = typeof value === 'number' ? value : value && 'atMost' in value ? value.atMost : value && 'atLeast' in value ? value.atLeast : value && 'mean' in value ? value.mean : undefined;
  if (found === undefined) throw new RangeError(`${FALL_FIGURES[name]} must be one number.`);
  return found;
};
const rangeOf = (value: Value | undefined, name: FallFigure): { low: number; high: number } => {
  if (typeof value !== 'object' || !('low' in value)) throw new RangeError(`${FALL_FIGURES[name]} must be a range.`);
  return { low: value.low, high: value.high };
};

/**
 * The constants, from the values of the figures.
 * @param read value of the figure at an address, in the units of the records that `FALL_FIGURES` names
 * @throws RangeError when a figure is missing or not of the form that is needed
 */
export function fallConstants(read: (address: string) => Value | undefined): FallConstants {
  const one = (name: FallFigure): number => numberOf(read(FALL_FIGURES[name]), name);
  const two = (name: FallFigure): { low: number; high: number } => rangeOf(read(FALL_FIGURES[name]), name);
  const behindM = one('behind');
  const drop = (kind: RopeKind): RopeDrop => ({ massKg: one(`${kind}Mass`), limitKn: one(`${kind}Limit`), usualKn: two(`${kind}Rated`) });
  const yarn = (material: SlingMaterial): Yarn => ({ modulusNPerTex: one(`${material}Modulus`), strengthNPerTex: one(`${material}Strength`) });
  const turns = (name: FallFigure): Spread => {
    const { low, high } = two(name);
    return { low, middle: 0.5 * (low + high), high };
  };
  const [straight, bends, zigzag] = [turns('straightTurns'), turns('bendsTurns'), turns('zigzagTurns')];
  const low = frictionFromHalfTurn(two('multiple').high - 1);
  const high = one('barFriction');
  return {
    gravity: one('gravity'),
    units: { footM: one('foot'), poundKg: one('pound'), poundForceKn: one('poundForce') / 1000, kilogramForceKn: one('gravity') / 1000 },
    geometries: [{ raisedM: one('raised'), ropeM: one('rope'), behindM }, { raisedM: one('otherRaised'), ropeM: one('otherRope'), behindM }],
    ropes: { single: drop('single'), half: drop('half'), twin: drop('twin') },
    friction: { low, middle: 0.5 * (low + high), high },
    turns: { straight, bends, zigzag, unknown: { low: straight.low, middle: bends.middle, high: zigzag.high } },
    hitchSlipKn: one('hitchSlip'),
    growth: { low: one('growthLow'), middle: one('growthMiddle'), high: one('growthHigh') },
    yarns: { hmpe: yarn('hmpe'), nylon: yarn('nylon') },
    measured: { ratedKn: one('measuredRated'), topPieceKn: one('measuredTopPiece') },
    lanyardAboveKn: one('lanyardPeak'),
  };
}
