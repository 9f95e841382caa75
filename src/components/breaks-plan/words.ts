/** The words of the planner: one wording for the page and for what is copied. */
import { MOST, type Needed, WIDER } from '../../break-tests/plan-steps.ts';
import type { PlanAnswer } from './asked.ts';

/** A share of one in per cent, with one decimal where it has one. */
export const percent = (share: number): string => `${Number((100 * share).toFixed(1))}\u00a0%`;
/** A share of one in hundredths, for a column: always one decimal. */
export const hundredths = (share: number): string => (100 * share).toFixed(1);
/** A share of one as a count of a hundred, with one decimal where it has one. */
export const ofHundred = (share: number): string => `${Number((100 * share).toFixed(1))} of 100`;
/** A difference of two shares, in points of a hundred; what is smaller than a tenth says so. */
export const points = (share: number): string => (share > 0 && share < 0.0005 ? 'below 0.1' : String(Number((100 * share).toFixed(1))));

const isCount = (needed: Needed): needed is number => needed !== null && needed !== Infinity;

/** How many pulls, in one or two sentences. */
export function headline(answer: PlanAnswer): string {
  const { needed } = answer.plan;
  if (answer.want === 'bound') {
    if (needed === Infinity) return `More than ${MOST} pulls. Let the bound fall short by more, or ask to be less sure.`;
    const step = answer.plan.steps.find(({ n }) => n === needed);
    return step ? `Pull ${needed}. On average the bound then falls short of the best possible by ${percent(step.shortfall)} of the mean.` : 'Write how far the bound may fall short. Until then, the table shows what each pull buys.';
  }
  if (answer.want === 'difference') {
    if (needed === Infinity) return `More than ${MOST} pulls of each method. Plan for a larger difference.`;
    const step = answer.plan.steps.find(({ n }) => n === needed);
    return step ? `Pull ${needed} of each method, ${2 * step.n} in all. A true difference of ${percent(answer.plan.difference)} is then found in ${ofHundred(step.power)} such trials.` : 'Write in how many trials the difference is to be found. Until then, the table shows what each pull buys.';
  }
  if (needed === Infinity) return `More than ${MOST} pulls. Take a wider interval.`;
  const step = answer.plan.steps.find(({ n }) => n === needed);
  return step ? `Pull ${needed}. The interval of the share is then ${points(step.width)} points of 100 wide on average.` : 'Write how wide the interval may be. Until then, the table shows what each pull buys.';
}

/** What the first pulls buy and what later ones do. */
export function buysSentence({ want, plan }: PlanAnswer): string {
  const bought = (from: number, to: number): string => points(plan.steps.reduce((sum, { n, bought: one }) => (n > from && n <= to ? sum + one : sum), 0));
  const what = { bound: 'the bound rises by', difference: 'the chance rises by', share: 'the interval narrows by' }[want];
  return `From 3 pulls to 5 ${what} ${bought(3, 5)} points, from 10 to 12 by ${bought(10, 12)}.`;
}

const ifSo = (needed: Needed, of: string): string => (needed === Infinity ? `more than ${MOST} pulls${of}` : `${needed} pulls${of}`);

/** What the plan promises. */
export function promises(answer: PlanAnswer): string[] {
  if (answer.want === 'bound') {
    const { pair: { coverage, confidence }, ifWider, needed } = answer.plan;
    return [
      `Of 100 such series, about ${Number((100 * confidence).toFixed(1))} give a bound above which at least ${ofHundred(coverage)} pieces break.`,
      'That holds for any number of pulls. More of them only lift the bound: it stands closer to what most pieces bear.',
      'The bound is worked out from your pulls: their mean, less k times their standard deviation. The guess serves the plan alone.',
      ...(isCount(needed) ? [`Should they scatter more than guessed, by ${percent(WIDER * answer.plan.cv)} of the mean, it takes ${ifSo(ifWider, '')}.`] : []),
    ];
  }
  if (answer.want === 'difference') {
    const { ifWider, needed } = answer.plan;
    return [
      'A difference of that size is found as often as the table says. A larger one is found more often.',
      'Where there is none, one is called in 5 of 100 trials. That is the custom, and our choice here.',
      ...(isCount(needed) ? [`Should they scatter more than guessed, by ${percent(WIDER * answer.plan.cv)} of the mean, it takes ${ifSo(ifWider, ' of each')}.`] : []),
    ];
  }
  const { atHalf, needed, steps, share } = answer.plan;
  const step = steps.find(({ n }) => n === needed);
  return [
    'In at least 95 of 100 such series, the interval contains the true share. It is exact, whatever the share is.',
    ...(step ? [`Where the part never breaks first in ${step.n} pulls, up to ${ofHundred(step.never)} rigs may still begin with it.`] : []),
    ...(isCount(needed) && share !== 0.5 ? [`Nobody has a guess? One half is the worst case: ${ifSo(atHalf, '')}.`] : []),
  ];
}

/** What the plan does not promise. */
export function limits(answer: PlanAnswer): string[] {
  const lot = 'It speaks of pieces like those that you pull: one lot, one rig, one machine. Other lots and makers differ by more.';
  if (answer.want === 'bound') {
    return [
      'It is no minimum and no working load. It says nothing of a fall, of wet, of wear, or of how a piece is placed.',
      lot,
      'Half of all series, or nearly, fall short by more than the average. The column "give or take" says by how much they differ.',
      `It supposes the bell shape of a normal distribution, which a few pulls cannot show. Without a shape, the weakest of ${answer.plan.withoutShape} pulls is such a bound.`,
    ];
  }
  if (answer.want === 'difference') {
    return [
      'A difference that was not found is not shown to be absent. Give its interval.',
      'It is of means. Of the weakest pieces it says little.',
      'Both methods are supposed to scatter alike. Where they do not, plan with the larger scatter.',
      'Pull both in one session, in an order drawn by lot. Otherwise a difference between one day and the next looks like one between methods.',
    ];
  }
  return ['It counts which part breaks first, not at which force.', 'Which part breaks first changes with bearing, width and lot. It holds for this rig alone.', 'A pull in which something of the machine gave way says nothing of the share, and has to be made again.'];
}

/** The plan as plain text, to send to somebody. */
export function planText(answer: PlanAnswer, address: string): string {
  return [headline(answer), buysSentence(answer), 'What it promises:', ...promises(answer).map((line) => `- ${line}`), 'What it does not:', ...limits(answer).map((line) => `- ${line}`), 'Pieces pulled in a test are destroyed: mark and cut them, and never climb on them.', address].join('\n');
}
