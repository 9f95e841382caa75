/** What is typed into the planner is read either way of writing decimals, and what cannot be read is said, not guessed. */
import { expect, test } from 'vitest';
import { planOn } from '../../../src/components/breaks-plan/asked.ts';
import { headline, limits, planText, promises } from '../../../src/components/breaks-plan/words.ts';
import { nothingPlanned, type PlanNumber, type PlanWords } from '../../../src/links/plan-link.ts';

const asked = (numbers: Partial<Record<PlanNumber, string>>, change: Partial<PlanWords> = {}) =>
  planOn({ ...nothingPlanned(), ...change, numbers: { ...nothingPlanned().numbers, ...numbers } });

test('a decimal comma, a decimal point and a percent sign say the same', () => {
  const plans = ['9.3', '9,3', ' 9,3 % '].map((cv) => asked({ cv, short: '8' }));
  for (const { answer, faults } of plans) {
    expect(faults).toEqual({});
    expect(answer).toEqual(plans[0]?.answer);
  }
  // By hand in plan-steps.test.ts.
  expect(plans[0]?.answer?.plan.needed).toBe(16);
});

test('the guess alone gives the steps, and the headline says what is missing', () => {
  const { answer, missing } = asked({ cv: '8' });
  expect(missing).toEqual([]);
  expect(answer?.plan.needed).toBeNull();
  expect(answer && headline(answer)).toContain('Write how far the bound may fall short.');
});

test.each([
  ['cv', 'wide', 'not a plain number; write one from 0.5 to 60 %'],
  ['cv', '0', 'outside 0.5 to 60 %'],
  ['short', '8 or 9', 'not a plain number; write one from 0.5 to 100 %'],
] as const)('%s as "%s" is said and nothing is planned without it', (field, text, why) => {
  const { answer, faults } = asked({ cv: '8', short: '5', [field]: text });
  expect(answer).toBeNull();
  expect(faults).toEqual({ [field]: why });
});

test('a fault in another question is said, and does not stop this one', () => {
  const { answer, faults } = asked({ cv: '8', width: '3' });
  expect(answer?.want).toBe('bound');
  expect(faults).toEqual({ width: 'outside 10 to 90 of 100' });
});

test('what a question needs is named', () => {
  expect(asked({}).missing).toEqual(['cv']);
  expect(asked({}, { pair: 'own', own: ['90', ''] }).missing).toEqual(['confidence', 'cv']);
  expect(asked({ cv: '8' }, { want: 'difference' }).missing).toEqual(['diff']);
  expect(asked({}, { want: 'share' }).missing).toEqual(['share']);
});

test('the own pair is the one that is planned for', () => {
  const { answer } = asked({ cv: '10' }, { pair: 'own', own: ['90', '95'] });
  // CMH-17-1G, kB at three pulls, less than half a unit in its last digits off: 6.157.
  expect(answer?.want === 'bound' && answer.plan.steps[0]?.k).toBeCloseTo(6.155, 2);
});

test('every plan says what it does not promise, and that pulled pieces are destroyed', () => {
  for (const words of [{ cv: '8', short: '5' }, { cv: '8', diff: '10', power: '80' }, { share: '30', width: '40' }]) {
    const want = 'diff' in words ? 'difference' : 'share' in words ? 'share' : 'bound';
    const { answer } = asked(words, { want });
    if (!answer) throw new Error(`${want} gave no plan`);
    expect(headline(answer)).toMatch(/^Pull \d+/);
    expect(promises(answer).length).toBeGreaterThanOrEqual(2);
    expect(limits(answer).length).toBeGreaterThanOrEqual(3);
    expect(planText(answer, 'https://example.org/')).toContain('mark and cut them, and never climb on them');
    expect([...promises(answer), ...limits(answer), headline(answer)].join(' ')).not.toMatch(/NaN|undefined|null|Infinity/);
  }
});

test('where a thousand pulls are too few, it says so and what to do', () => {
  const { answer } = asked({ cv: '60', short: '0.5' });
  expect(answer && headline(answer)).toBe('More than 1000 pulls. Let the bound fall short by more, or ask to be less sure.');
});
