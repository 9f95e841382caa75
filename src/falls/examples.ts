/**
 * Worked examples of falls for teachers: what is given, each step with its own numbers, and what to see in it. The inputs
 * are the exercise's; everything else is worked out when the page is built.
 */
import { type Arrested, arrest } from './arrest.ts';
import type { FallConstants } from './evidence.ts';
import { freeFallSpeed, weightKn } from './fall.ts';
import { pullLeft, type Route } from './friction.ts';
import { modulusFromRated, standardFallFactor } from './rope.ts';
import { type SlingFall, slingFall, slingModulusCeiling } from './sling-fall.ts';

/** What an example gives: a climber, a fall, a rope of a rated force, friction as a share of the pull left at the top piece. */
export interface ExampleInputs {
  massKg: number;
  /** Climber above the top piece (or above the belay, where nothing is between), and slack, m. */
  aboveM: number;
  slackM: number;
  ropeOutM: number;
  isOntoBelay: boolean;
  /** Rated impact force of a single rope, kN. */
  ratedKn: number;
  /** Share of the pull that friction leaves at the top piece; 1: none. */
  pullLeft: number;
  /** Pull at which the belay slips, kN; null: held fast. */
  slipKn: number | null;
}

export interface FallExample {
  id: string;
  title: string;
  /** What a class sees in it. */
  says: string;
  inputs: ExampleInputs;
}

const CRAG: ExampleInputs = { massKg: 75, aboveM: 2, slackM: 0.5, ropeOutM: 15, isOntoBelay: false, ratedKn: 8.7, pullLeft: 1, slipKn: null };

/** The examples, in the order of a lesson. */
export const FALL_EXAMPLES: readonly FallExample[] = [
  { id: 'let-go', title: 'Let go on a tight rope', says: 'Without any fall the rope still has to bear twice the weight.', inputs: { ...CRAG, aboveM: 0, slackM: 0 } },
  { id: 'crag', title: 'A fall above a clip', says: 'Without friction the top piece bears twice what the climber feels.', inputs: CRAG },
  { id: 'crag-with-friction', title: 'The same fall with friction', says: 'Friction shortens the rope that takes part: the climber feels more, the belayer less.', inputs: { ...CRAG, pullLeft: 0.6 } },
  { id: 'crag-twice-as-far', title: 'Twice as far, with twice the rope', says: 'The same fall factor gives the same force, however long the fall.', inputs: { ...CRAG, aboveM: 4, slackM: 1, ropeOutM: 30 } },
  { id: 'onto-belay', title: 'A fall past the belay', says: 'The hardest fall that a rope can stop: twice as deep as the rope is long.', inputs: { ...CRAG, aboveM: 3, slackM: 0, ropeOutM: 3, isOntoBelay: true } },
  { id: 'slipping-belay', title: 'The same with a belay that slips', says: 'A belay that lets rope run sets a ceiling, and costs metres.', inputs: { ...CRAG, aboveM: 3, slackM: 0, ropeOutM: 3, isOntoBelay: true, slipKn: 2.5 } },
];

/** A sling instead of a rope: how stiff it can be at most, by its yarn. */
export const SLING_EXAMPLE = { massKg: 75, slingM: 0.6, fallM: 0.6, breakingKn: 22 } as const;

/** The steps of an example. Every entry is a line of its page. */
export interface WorkedFall {
  weightKn: number;
  fallM: number;
  factor: number;
  speed: number;
  standardFactor: number;
  modulusKn: number;
  route: Route;
  arrested: Arrested;
}

/** Works an example out, with the standard drop of a single rope in the first geometry and no friction in it, as books do. */
export function workExample({ inputs }: FallExample, constants: FallConstants): WorkedFall {
  const { gravity, geometries, ropes } = constants;
  const [geometry] = geometries;
  const weight = weightKn(inputs.massKg, gravity);
  const climberM = inputs.aboveM + inputs.slackM;
  const fallM = 2 * inputs.aboveM + inputs.slackM;
  const modulusKn = modulusFromRated(inputs.ratedKn, { ...geometry, weightKn: weightKn(ropes.single.massKg, gravity) });
  const friction = -Math.log(inputs.pullLeft) / Math.PI;
  const route: Route = inputs.isOntoBelay
    ? { segmentsM: [inputs.ropeOutM], turns: [] }
    : { segmentsM: [climberM, inputs.ropeOutM - climberM], turns: [{ turnDeg: 180, friction: Math.abs(friction) }] };
  return {
    weightKn: weight,
    fallM,
    factor: fallM / inputs.ropeOutM,
    speed: freeFallSpeed(fallM, gravity),
    standardFactor: standardFallFactor(geometry),
    modulusKn,
    route,
    arrested: arrest({ weightKn: weight, modulusKn, fallM, route, slipKn: inputs.slipKn ?? undefined }),
  };
}

/** The example of the sling, for both materials. */
export function workSlingExample({ gravity, yarns }: FallConstants): Record<'hmpe' | 'nylon', SlingFall & { modulusKn: number }> {
  const { massKg, slingM, fallM, breakingKn } = SLING_EXAMPLE;
  const of = (material: 'hmpe' | 'nylon'): SlingFall & { modulusKn: number } => {
    const modulusKn = slingModulusCeiling(breakingKn, yarns[material]);
    return { modulusKn, ...slingFall({ weightKn: weightKn(massKg, gravity), modulusKn, fallM, slingM, breakingKn }) };
  };
  return { hmpe: of('hmpe'), nylon: of('nylon') };
}

/** Share of the pull that the middle of friction leaves at the top piece, to set an example beside. */
export const middlePullLeft = ({ friction }: FallConstants): number => pullLeft({ turnDeg: 180, friction: friction.middle });
