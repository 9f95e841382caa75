/** A fall above a clip, held fast and without friction: exercise of "Falls". Worked by the engine of the page of falls. */
import { FALL_FIGURES, type FallConstants } from '../falls/evidence.ts';
import { workExample } from '../falls/examples.ts';
import { column, type Exercise, given, place } from './exercise.ts';

/** The exercise with the constants of the evidence: gravity, and the drop by which a rope is rated. */
export const fallOnRope = (constants: FallConstants): Exercise => ({
  lesson: 'falls',
  task: 'A climber of {mass} from the club falls {above} above a clip, with {slack} of slack and {out} of rope out. The belay is held fast, and friction is left out. The rope has a rated impact force of {rated}. For a rope so rated, the equation of a spring gives a stiffness of {stiffness}.',
  asks: ['How far is the free fall, and what is the fall factor?', 'What is the weight, as a force?', 'What does the climber feel at the peak?', 'What does the top piece bear?'],
  working: [
    'Down to the clip and as far again, and the slack: {fall}. Over the rope out: {fallFactor}.',
    'Mass times gravity: {weight}.',
    'Weight, and the root of its square and of twice weight times stiffness times fall factor: {climber}.',
    'Without friction both sides of the rope pull alike: {top}.',
  ],
  sees: 'Without friction the top piece bears twice what the climber feels. The length of the fall alone says nothing.',
  given: [column('mass', 'Mass', 'kg', 0), column('above', 'Above the clip', 'm', 1), column('slack', 'Slack', 'm', 2), column('out', 'Rope out', 'm', 1), column('rated', 'Rated force', 'kN', 2)],
  fixed: [],
  between: [column('stiffness', 'Stiffness', 'kN', 2)],
  answers: [column('fall', 'Free fall', 'm', 2), column('fallFactor', 'Fall factor', '', 3), column('weight', 'Weight', 'kN', 3), column('climber', 'Climber', 'kN', 2), column('top', 'Top piece', 'kN', 2)],
  figures: [FALL_FIGURES.gravity, FALL_FIGURES.singleMass, FALL_FIGURES.raised, FALL_FIGURES.rope, FALL_FIGURES.behind],
  work(variant) {
    const mass = given(60, 1, place(variant, 28), 0);
    const above = given(1.5, 0.1, place(variant, 11), 1);
    const slack = given(0.3, 0.02, place(variant, 16), 2);
    const out = given(12, 0.5, place(variant, 20), 1);
    const rated = given(8, 0.05, place(variant, 29), 2);
    const inputs = { massKg: mass, aboveM: above, slackM: slack, ropeOutM: out, isOntoBelay: false, ratedKn: rated, pullLeft: 1, slipKn: null };
    const { weightKn, fallM, factor, modulusKn, arrested } = workExample({ id: 'exercise', title: 'exercise', says: 'exercise', inputs }, constants);
    return { mass, above, slack, out, rated, stiffness: modulusKn, fall: fallM, fallFactor: factor, weight: weightKn, climber: arrested.climberKn, top: arrested.connectorsKn[0] as number };
  },
});
