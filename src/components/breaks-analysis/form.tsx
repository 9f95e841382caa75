/** What a tester is asked: the pulls, how they are read, and what to set beside them. Drawn at build; the fields are the state. */
import { FORCE_UNITS } from '../../break-tests/table-pulls.ts';

/** Ways to say what stands between cells; an empty value leaves it to the page. */
const DELIMITERS = [['', 'found by itself'], ['tab', 'a tab'], ['semicolon', 'a semicolon'], ['comma', 'a comma'], ['blanks', 'blanks'], ['none', 'one number a line']] as const;
const DECIMALS = [['', 'found by itself'], ['.', 'a point'], [',', 'a comma']] as const;

function Choice({ name, label, options, hint }: { name: string; label: string; options: readonly (readonly [string, string])[]; hint?: string }) {
  return (
    <p class="written">
      <label for={`f-${name}`}>{label}</label>
      <select id={`f-${name}`} name={name} aria-describedby={hint ? `hint-${name}` : undefined}>{options.map(([value, words]) => <option key={value} value={value}>{words}</option>)}</select>
      {hint && <span class="small soft" id={`hint-${name}`}>{hint}</span>}
    </p>
  );
}

function Written({ name, label, unit, hint }: { name: string; label: string; unit?: string; hint?: string }) {
  return (
    <div class="written">
      <label for={`f-${name}`}>{label}</label>
      <div class="entry"><input id={`f-${name}`} name={name} type="text" autoComplete="off" aria-describedby={`says-${name}${hint ? ` hint-${name}` : ''}`} />{unit && <span>{unit}</span>}</div>
      <p class="small fault" id={`says-${name}`} role="status" data-input />
      {hint && <p class="small soft" id={`hint-${name}`}>{hint}</p>}
    </div>
  );
}

/** The form. */
export function AnalysisForm() {
  return (
    <form class="questions needs-script" autoComplete="off">
      <section aria-labelledby="q-pulls">
        <h2 id="q-pulls">Your pulls</h2>
        <p><label for="f-text">One force a line, or a table with a heading</label></p>
        <textarea id="f-text" name="text" rows={9} spellcheck={false} aria-describedby="hint-text read" />
        <p class="small soft" id="hint-text">Columns may say how it broke and which part. A sign &gt; before a force says that the part did not break.</p>
        <Choice name="unit" label="Numbers without a unit are in" options={FORCE_UNITS.map((unit) => [unit, unit])} />
        <div id="read" role="status" />
        <p><label for="f-files">Files: a table, or records of force over time, one for each pull</label></p>
        <p><input id="f-files" name="files" type="file" multiple accept=".csv,.txt,.tsv,.dat,.asc,text/*" /></p>
        <p><button type="button" name="example">Try the invented example</button></p>
      </section>
      <div id="traces" />
      <details id="reading-options">
        <summary>How it is read</summary>
        <div class="row">
          <Choice name="delimiter" label="Between cells stands" options={DELIMITERS} />
          <Choice name="decimal" label="Before the decimals stands" options={DECIMALS} />
          <Choice name="force" label="Column of the force" options={[['', 'found by itself']]} />
          <Choice name="mode" label="Column of how it broke" options={[['', 'found by itself']]} />
          <Choice name="link" label="Column of which part broke" options={[['', 'found by itself']]} />
          <Choice name="time" label="Times without a unit are in" options={[['s', 's'], ['ms', 'ms']]} />
          <Written name="hz" label="Samples without times" unit="a second" />
          <Written name="range" label="The cell ends at" unit="kN" hint="A record that comes to it is cut off there." />
        </div>
      </details>
      <details id="own-bound">
        <summary>A bound of your own</summary>
        <div class="row">
          <Written name="coverage" label="Share of pieces above it" unit="%" />
          <Written name="confidence" label="How sure" unit="%" />
        </div>
      </details>
      <details id="second">
        <summary>Compare with a second series</summary>
        <div class="row">
          <Written name="name" label="Call the first" />
          <Written name="other" label="Call the second" />
        </div>
        <p><label for="f-text2">Pulls of the second, read in the same way</label></p>
        <textarea id="f-text2" name="text2" rows={6} spellcheck={false} aria-describedby="read2" />
        <div id="read2" role="status" />
      </details>
      <p class="to-answer"><button type="submit">To the answer</button></p>
    </form>
  );
}
