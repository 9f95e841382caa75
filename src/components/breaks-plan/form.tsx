/** The questions of the planner, drawn once when the page is built. The script reads and writes the fields by their names. */
import type { PlanField } from './asked.ts';

/** A pooled scatter that the evidence offers, with the place of its figures. */
export interface OfferedCv { id: string; what: string; /** In per cent, as it is filled in. */ percent: string; address: string }

/** Something to write, with its unit and room for what is wrong with it. */
function Written({ name, label, unit, hint }: { name: PlanField; label: string; unit: string; hint?: string }) {
  return (
    <div class="written" id={`ask-${name}`}>
      <label for={`in-${name}`}>{label}</label>
      <span class="entry"><input id={`in-${name}`} name={name} type="text" placeholder=" " inputMode="decimal" aria-describedby={`${hint ? `hint-${name} ` : ''}says-${name}`} /> <span data-input>{unit}</span></span>
      {hint && <p class="soft small" id={`hint-${name}`}>{hint}</p>}
      <p id={`says-${name}`} class="fault" data-input></p>
    </div>
  );
}

const WANTED = [
  ['bound', 'A lower bound', 'a force that most pieces break above'],
  ['difference', 'A difference', 'whether one method is stronger than another'],
  ['share', 'Which part goes first', 'in how many rigs a part breaks before the others'],
] as const;

/** The form. */
export function PlanForm({ offered }: { offered: readonly OfferedCv[] }) {
  return (
    <form class="questions needs-script" autoComplete="off">
      <fieldset class="wants">
        <legend>What do you want to learn?</legend>
        {WANTED.map(([id, name, says]) => (
          <label key={id} class="chip"><input type="radio" name="want" value={id} checked={id === 'bound'} /><span><b>{name}</b>: {says}</span></label>
        ))}
      </fieldset>
      <section id="q-bound" aria-labelledby="t-bound">
        <h2 id="t-bound">A lower bound</h2>
        <fieldset class="wants pairs">
          <legend>How many pieces above it, and how sure</legend>
          {['90~95', '95~95', '99~95'].map((pair) => {
            const [share, sure] = pair.split('~');
            return <label key={pair} class="chip"><input type="radio" name="pair" value={pair} checked={pair === '95~95'} /><span data-input>{`${share} of 100, ${sure} % sure`}</span></label>;
          })}
          <label class="chip"><input type="radio" name="pair" value="own" />your own</label>
        </fieldset>
        <div class="row" id="own">
          <Written name="coverage" label="Pieces above it" unit="of 100" />
          <Written name="confidence" label="Sure" unit="%" />
        </div>
        <Written name="short" label="It may fall short by" unit="% of the mean" hint="On average, of the best that any number of pulls could give." />
      </section>
      <section id="q-difference" aria-labelledby="t-difference">
        <h2 id="t-difference">A difference between two methods</h2>
        <Written name="diff" label="The difference not to be missed" unit="% of the mean" />
        <Written name="power" label="Found in" unit="of 100 trials" hint="Eighty is usual; ask for more where a miss costs more." />
      </section>
      <section id="q-share" aria-labelledby="t-share">
        <h2 id="t-share">How often a part breaks first</h2>
        <Written name="share" label="Your guess" unit="of 100 rigs" hint="One half is the worst case: it needs the most pulls." />
        <Written name="width" label="The interval may be wide" unit="of 100" hint="From its lower end to its upper." />
      </section>
      <section id="q-cv" aria-labelledby="t-cv">
        <h2 id="t-cv">How much pulls scatter</h2>
        <Written name="cv" label="Your guess of the standard deviation" unit="% of the mean" hint="From pulls that you have made, or from ours." />
        <ul class="offers">
          {offered.map(({ id, what, percent, address }) => (
            <li key={id}><button type="button" name="take-cv" value={percent} data-working={address}>Take {percent}{'\u00a0'}%</button> <span>{what}. <a href={address}>Where it comes from</a></span></li>
          ))}
        </ul>
      </section>
      <p class="to-answer"><button type="submit">To the answer</button></p>
    </form>
  );
}
