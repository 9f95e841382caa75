/** A rig of three links whose strengths scatter: exercise of "Chains and weak links". Worked by the engine of the comparison. */
import { type ChainLink, firstShares, quantile, survival } from '../strength/chain.ts';
import { column, type Exercise, given, place } from './exercise.ts';

/** Independent lognormal links of one scatter: middles in kN, and the standard deviation of the logarithm as a percentage. */
export const linksOf = (middlesKn: readonly number[], scatterPercent: number): ChainLink[] =>
  middlesKn.map((middle) => ({ muLog: Math.log(middle), shared: [], own: scatterPercent / 100 }));

export const threeLinks: Exercise = {
  lesson: 'weak-links',
  task: 'The club describes a rig by three links. In the middle, the sling at the eye breaks at {eye}, the sling at the connector at {clip}, and the device at {device}. Each scatters on its own: the logarithm of its strength has a standard deviation of {scatter}. The rig is pulled slowly.',
  asks: [
    'Of a hundred slings at the eye, how many break above {load}?',
    'How many at the connector, and how many devices?',
    'Of a hundred whole rigs, how many break above {load}?',
    'At what force does half of all rigs break?',
    'Of a hundred rigs, in how many does the sling at the eye go first?',
  ],
  working: [
    'Take the logarithm of middle over load, over the scatter, and look it up in a table of the normal distribution: {aboveEye}.',
    'Likewise {aboveClip} and {aboveDevice}.',
    'All three must break above it, so the shares are multiplied: {aboveRig}.',
    'Try forces until the product is one half: {middleRig}. That is below the weakest middle, {eye}.',
    'A count over many drawn rigs comes near {first}. The engine integrates it.',
  ],
  sees: 'A chain is weaker in the middle than its weakest link in the middle, and one cannot say of one rig which link goes first.',
  given: [column('eye', 'At the eye', 'kN', 1), column('clip', 'At the connector', 'kN', 1), column('device', 'Device', 'kN', 1), column('scatter', 'Scatter', '%', 1), column('load', 'Load', 'kN', 2)],
  fixed: [],
  between: [],
  answers: [
    column('aboveEye', 'Eye above', '%', 2), column('aboveClip', 'Connector above', '%', 2), column('aboveDevice', 'Device above', '%', 2),
    column('aboveRig', 'Rig above', '%', 2), column('middleRig', 'Middle of the rig', 'kN', 2), column('first', 'Eye first', '%', 1),
  ],
  figures: [],
  work(variant) {
    const eye = given(13, 0.1, place(variant, 8), 1);
    const clip = given(14.5, 0.1, place(variant, 27), 1);
    const device = given(14, 0.1, place(variant, 17), 1);
    const scatter = given(10, 0.1, place(variant, 13), 1);
    const load = given(12, 0.05, place(variant, 1), 2);
    const links = linksOf([eye, clip, device], scatter);
    const above = (of: readonly ChainLink[]): number => 100 * survival(of, load);
    const [aboveEye, aboveClip, aboveDevice] = links.map((link) => above([link])) as [number, number, number];
    return {
      eye, clip, device, scatter, load, aboveEye, aboveClip, aboveDevice, aboveRig: above(links),
      middleRig: quantile(links, 0.5), first: 100 * (firstShares(links)[0] as number),
    };
  },
};
