/** The questions of a fall, drawn once when the page is built. The script reads and writes the fields by their names, which are the keys of a link. */
import { FALL_CHOICES, type FallChoice, type FallField, type FallWords } from '../../falls/read-fall.ts';
import { CHOICE_WORDS } from './words.ts';

interface Common { words: FallWords; label: string; hint?: string }

/** Something to write, with its unit and room for what is wrong with it. */
function Written({ name, label, unit, hint, words }: Common & { name: FallField; unit: string }) {
  return (
    <div class="written" id={`ask-${name}`}>
      <label for={`in-${name}`}>{label}</label>
      <span class="entry"><input id={`in-${name}`} name={name} type="text" inputMode="decimal" placeholder=" " value={words[name]} aria-describedby={`${hint ? `hint-${name} ` : ''}says-${name}`} /> {unit}</span>
      {hint && <p class="soft small" id={`hint-${name}`}>{hint}</p>}
      <p id={`says-${name}`} class="fault" data-input></p>
    </div>
  );
}

/** A choice of one from a list. */
function Chosen({ name, label, words, hint }: Common & { name: FallChoice }) {
  return (
    <div class="written" id={`ask-${name}`}>
      <label for={`in-${name}`}>{label}</label>
      <span class="entry">
        <select id={`in-${name}`} name={name} aria-describedby={`${hint ? `hint-${name} ` : ''}says-${name}`}>
          {FALL_CHOICES[name].map((word) => <option key={word} value={word} selected={words[name] === word}>{CHOICE_WORDS[name][word]}</option>)}
        </select>
      </span>
      {hint && <p class="soft small" id={`hint-${name}`}>{hint}</p>}
      <p id={`says-${name}`} class="fault" data-input></p>
    </div>
  );
}

/** The form. @param words what it begins with */
export function FallForm({ words }: { words: FallWords }) {
  return (
    <form class="questions needs-script" autoComplete="off">
      <section aria-labelledby="q-fall">
        <h2 id="q-fall">The fall</h2>
        <p class="small">It begins with a fall that we made up. Write yours over it, and the loads follow; if they do not, load the page again. Feet, pounds and decimal commas are read, too.</p>
        <fieldset class="wants">
          <legend>What stops the fall?</legend>
          {FALL_CHOICES.onto.map((word) => <label key={word} class="chip"><input type="radio" name="onto" value={word} checked={words.onto === word} />{CHOICE_WORDS.onto[word]}</label>)}
        </fieldset>
        <div class="row">
          <Written name="kg" label="Climber, with all gear" unit="kg" words={words} />
          <Written name="up" label="How far above it" unit="m" words={words} hint="From the piece, or the belay, up to the knot at the harness." />
          <Written name="slack" label="Slack" unit="m" words={words} hint="Loose rope. Nothing, if none." />
          <Written name="out" label="Rope out" unit="m" words={words} hint="All of it from belayer to climber, slack too." />
        </div>
      </section>
      <section aria-labelledby="q-rope">
        <h2 id="q-rope">Rope and belay</h2>
        <div class="row two-up">
          <Chosen name="rope" label="Rope" words={words} />
          <Written name="kn" label="Impact force on its sheet" unit="kN" words={words} hint="May stay open; the range is then wider." />
          <Chosen name="belay" label="How the rope is held" words={words} />
          <Chosen name="route" label="How it runs from belayer to top piece" words={words} />
          <Chosen name="state" label="The rope is" words={words} />
        </div>
        <p class="to-answer"><button type="submit">To the answer</button></p>
      </section>
    </form>
  );
}
