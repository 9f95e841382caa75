/**
 * The questions about a sling, drawn once when the page is built. The script reads and writes the fields by their names,
 * which are those of a link. Each group is a few questions, with the verdict so far under them.
 */
import { SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS, SLING_MATERIALS, SLING_USES } from '../../retirement/answers.ts';
import type { Question, WordKey } from '../../retirement/read-history.ts';
import { EVENT_ANSWERS, EXPOSURE_ANSWERS, FINDING_ANSWERS, MATERIAL_ANSWERS, USE_ANSWERS } from './words.ts';

/** A choice of one. An empty word: not known. */
function Choices({ name, legend, answers }: { name: WordKey; legend: string; answers: readonly (readonly [string, string])[] }) {
  return (
    <fieldset class="one-of">
      <legend>{legend}</legend>
      {[...answers, ['', 'don’t know'] as const].map(([word, label]) => (
        <label key={word} class="chip"><input type="radio" name={name} value={word} />{label}</label>
      ))}
    </fieldset>
  );
}

/** Something to write, with its hint, its "don't know", and room for what is wrong with it. */
function Written({ name, label, hint, unit, none = 'don’t know' }: { name: WordKey; label: string; hint?: string; unit?: string; none?: string }) {
  return (
    <div class="written">
      <label for={`in-${name}`}>{label}</label>
      <span class="entry">
        <input id={`in-${name}`} name={name} type="text" inputMode={unit ? 'decimal' : undefined} aria-describedby={`says-${name}`} />{unit && ` ${unit}`}
        <label class="chip"><input type="checkbox" name={`no-${name}`} />{none}</label>
      </span>
      {hint && <p class="soft small" data-input>{hint}</p>}
      <p id={`says-${name}`} class="fault" data-input></p>
    </div>
  );
}

/** Questions with yes, no and don't know. */
function Asked({ ids, words }: { ids: readonly Question[]; words: Readonly<Record<string, string>> }) {
  return (
    <>
      <p><button type="button" class="rest needs-script">No to all that is open</button></p>
      {ids.map((id) => (
        <fieldset key={id} class="asked">
          <legend>{(words[id] as string).replace(/^\p{Ll}/u, (letter) => letter.toUpperCase())}</legend>
          {([['yes', 'yes'], ['no', 'no'], ['unknown', 'don’t know']] as const).map(([word, label]) => (
            <label key={word} class="chip"><input type="radio" name={id} value={word} />{label}</label>
          ))}
        </fieldset>
      ))}
    </>
  );
}

/** One group of questions; the first stands open. */
function Group({ id, name, children, isOpen = false, isLast = false }: { id: string; name: string; children: preact.ComponentChildren; isOpen?: boolean; isLast?: boolean }) {
  return (
    <details class="group" id={`group-${id}`} open={isOpen}>
      <summary><b>{name}</b> <span class="state" data-input></span></summary>
      {children}
      <p class="so-far" data-working="rules"></p>
      <p>{isLast ? <button type="submit" class="next">To the verdict</button> : <button type="button" class="next">Next questions</button>}</p>
    </details>
  );
}

const DATE_HINT = 'A year, a month or a day: 2019, 2019-05 or 2019-05-31. A month counts from its first day.';

/** The form. */
export function RetirementForm() {
  return (
    <form class="questions needs-script" autoComplete="off">
      <Group id="sling" name="The sling" isOpen>
        <Choices name="material" legend="Material" answers={SLING_MATERIALS.map((id) => [id, MATERIAL_ANSWERS[id] as string])} />
        <Written name="width" label="Width of the tape, or diameter of the cord" unit="mm" />
        <Written name="made" label="Made in" hint={`On the label of the sling. ${DATE_HINT}`} />
        <Choices name="use" legend="Used" answers={SLING_USES.map((id) => [id, USE_ANSWERS[id]])} />
      </Group>
      <Group id="life" name="Its life">
        <Written name="first" label="First used in" />
        <p>Was it ever exposed to:</p>
        <Asked ids={SLING_EXPOSURES} words={EXPOSURE_ANSWERS} />
      </Group>
      <Group id="events" name="What happened to it">
        <p>Did it ever take:</p>
        <Asked ids={SLING_EVENTS} words={EVENT_ANSWERS} />
      </Group>
      <Group id="findings" name="What you see and feel">
        <Written name="inspected" label="Last looked over thoroughly" none="never, or don’t know" />
        <p>Run the whole sling through your fingers, in good light. Do you find:</p>
        <Asked ids={SLING_FINDINGS} words={FINDING_ANSWERS} />
      </Group>
      <Group id="maker" name="What its maker says" isLast>
        <p>Look in the instruction of the device and of the sling. Where it is stricter than our rules, it decides.</p>
        <Written name="makerdate" label="Retire by, as printed" none="not printed" />
        <Written name="makermade" label="Longest life from manufacture" unit="years" none="not printed" />
        <Written name="makerused" label="Longest life from first use" unit="years" none="not printed" />
      </Group>
    </form>
  );
}
