/** What the planner says: how many pulls, what each further one buys as drawing and table, and what that promises and does not. */
import type { ComponentChildren } from 'preact';
import { FEWEST } from '../../break-tests/plan-steps.ts';
import type { NotUnderstood } from '../../links/pieces.ts';
import type { PlanAnswer } from './asked.ts';
import { PlanChart, type PlanPoint } from './plan-chart.tsx';
import { buysSentence, headline, hundredths, limits, percent, promises } from './words.ts';

/** A number of the reader's own, or made of such. */
const N = ({ children }: { children: ComponentChildren }) => <span class="num" data-input>{children}</span>;

interface Column<Step> { name: string; cell: (step: Step) => string }

/** The steps as a table; the row that is enough is marked. */
function StepsTable<Step extends { readonly n: number }>({ caption, columns, steps, needed }: { caption: string; columns: readonly Column<Step>[]; steps: readonly Step[]; needed: number | null }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls sideways must be within reach of the keyboard.
    <div class="scroll" tabIndex={0}>
      <table class="steps">
        <caption>{caption}</caption>
        <thead><tr><th scope="col">Pulls</th>{columns.map(({ name }) => <th key={name} scope="col" class="amount">{name}</th>)}</tr></thead>
        <tbody>
          {steps.map((step) => (
            <tr key={step.n} class={step.n === needed ? 'best' : undefined}>
              <th scope="row"><N>{step.n}</N>{step.n === needed && <b class="tag">enough</b>}</th>
              {columns.map(({ name, cell }) => <td key={name} class="amount" data-input>{cell(step)}</td>)}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The table begins with its first row: nothing was bought before. */
const boughtCell = ({ n, bought }: { n: number; bought: number }): string => (n === FEWEST ? '' : hundredths(bought));

/** Drawing and table of one question. */
function Steps({ answer }: { answer: PlanAnswer }) {
  const { needed } = answer.plan;
  const title = (what: string): string => `${what} against the number of pulls. ${buysSentence(answer)}`;
  if (answer.want === 'bound') {
    const { steps, pair } = answer.plan;
    const drawn = steps.map(({ n, bound, scatter }): PlanPoint => ({ n, value: bound, spread: scatter }));
    return (
      <>
        <PlanChart points={drawn} title={title('The bound on average')} label="bound, in hundredths of the mean" limit={{ value: steps[0]?.known ?? 0, label: 'the best possible' }} needed={needed} />
        <StepsTable caption="What each number of pulls gives on average, in hundredths of the mean" needed={needed} steps={steps} columns={[
          { name: 'Bound', cell: ({ bound }) => (bound > 0 ? hundredths(bound) : 'below nothing') },
          { name: 'Falls short', cell: ({ shortfall }) => hundredths(shortfall) },
          { name: 'Last pull bought', cell: boughtCell },
          { name: 'Give or take', cell: ({ scatter }) => hundredths(scatter) },
          { name: 'k', cell: ({ k }) => k.toFixed(3) },
        ]} />
        <p class="small">The best possible, <N>{percent(steps[0]?.known ?? 0)}</N> of the mean, is what <N>{Number((100 * pair.coverage).toFixed(1))}</N> of <N>100</N> pieces break above, if mean and scatter were known. No number of pulls passes it. “Give or take” is by how much the bound differs from one series to the next, as a standard deviation.</p>
      </>
    );
  }
  if (answer.want === 'difference') {
    const { steps } = answer.plan;
    return (
      <>
        <PlanChart points={steps.map(({ n, power }) => ({ n, value: power }))} title={title('How often the difference is found')} label="found, in hundredths of all trials" needed={needed} />
        <StepsTable caption="How often so many pulls of each method find the difference, in hundredths of all trials" needed={needed} steps={steps} columns={[
          { name: 'Found', cell: ({ power }) => hundredths(power) },
          { name: 'Missed', cell: ({ power }) => hundredths(1 - power) },
          { name: 'Last pull of each bought', cell: boughtCell },
        ]} />
      </>
    );
  }
  const { steps } = answer.plan;
  return (
    <>
      <PlanChart points={steps.map(({ n, width }) => ({ n, value: width }))} title={title('Width of the interval on average')} label="width, in hundredths" needed={needed} />
      <StepsTable caption="Width of the interval on average, in hundredths" needed={needed} steps={steps} columns={[
        { name: 'Width', cell: ({ width }) => hundredths(width) },
        { name: 'Last pull narrowed it by', cell: boughtCell },
        { name: 'If never seen, up to', cell: ({ never }) => hundredths(never) },
      ]} />
    </>
  );
}

/** All of one answer. */
export function PlanResults({ answer }: { answer: PlanAnswer }) {
  return (
    <>
      <p class={answer.plan.needed === null ? undefined : 'headline'}><N>{headline(answer)}</N></p>
      <h3>What each further pull buys</h3>
      <p><N>{buysSentence(answer)}</N></p>
      <Steps answer={answer} />
      <h3>What it promises</h3>
      <ul>{promises(answer).map((line) => <li key={line}><N>{line}</N></li>)}</ul>
      <h3>What it does not</h3>
      <ul>{limits(answer).map((line) => <li key={line}><N>{line}</N></li>)}</ul>
    </>
  );
}

/** What of a link was not used, word for word. */
export function NotUsedPlan({ pieces }: { pieces: readonly NotUnderstood[] }) {
  return (
    <>
      <p><b>Not used from the link.</b> It counts as not written:</p>
      <ul>{pieces.map(({ piece, why }, at) => <li key={at} data-input><code>{piece}</code>: {why}</li>)}</ul>
    </>
  );
}
