/** What to do with a series: beside the published figures, the next plan, a record for others. Drawn at build; the fields are the state. */
import type { ComponentChildren } from 'preact';

export type Option = readonly [string, string];
export interface UseFormProps {
  methods: readonly Option[];
  slings: readonly Option[];
  forms: readonly Option[];
  materials: readonly Option[];
  bearings: readonly Option[];
  states: readonly Option[];
  rigs: readonly Option[];
}

const OPEN: Option = ['', 'choose'];
const YES_NO: readonly Option[] = [['yes', 'yes'], ['no', 'no']];

function Choice({ name, label, options }: { name: string; label: string; options: readonly Option[] }) {
  return (
    <p class="written">
      <label for={`u-${name}`}>{label}</label>
      <select id={`u-${name}`} name={name} data-input>{[OPEN, ...options].map(([value, words]) => <option key={value} value={value}>{words}</option>)}</select>
    </p>
  );
}

function Written({ name, label, unit, hint }: { name: string; label: string; unit?: string; hint?: string }) {
  return (
    <div class="written">
      <label for={`u-${name}`}>{label}</label>
      <div class="entry"><input id={`u-${name}`} name={name} type="text" autoComplete="off" aria-describedby={hint ? `hint-u-${name}` : undefined} />{unit && <span>{unit}</span>}</div>
      {hint && <p class="small soft" id={`hint-u-${name}`}>{hint}</p>}
    </div>
  );
}

function Part({ id, title, children }: { id: string; title: string; children: ComponentChildren }) {
  return <details id={id}><summary><b>{title}</b></summary>{children}</details>;
}

/** All three. No form of its own: nothing is submitted. */
export function UseForm({ methods, slings, forms, materials, bearings, states, rigs }: UseFormProps) {
  return (
    <fieldset class="uses needs-script" id="use">
      <legend><h2>Use them</h2></legend>
      <Part id="use-rig" title="What was pulled">
        <p>Needed for the comparison and for a record.</p>
        <div class="row">
          <Choice name="method" label="Method" options={methods} />
          <Choice name="sling" label="Sling" options={slings} />
          <Choice name="bearing" label="It bore on" options={bearings} />
          <Written name="bearingMm" label="Diameter of that" unit="mm" />
          <Choice name="state" label="The slings were" options={states} />
          <Choice name="pull" label="Pulled" options={[['slow', 'slowly'], ['drop', 'by a fall'], ['cyclic', 'again and again']]} />
          <Choice name="oneLot" label="All slings of one lot" options={YES_NO} />
          <Choice name="rigs" label="Device and eye" options={rigs} />
        </div>
      </Part>
      <Part id="use-compare" title="Put beside published figures">
        <p>Your pulls become a row of the comparison, marked as your own tests. In the link stand the forces, and nothing else of yours.</p>
        <div class="row"><Written name="rating" label="Rating marked on the device" unit="kN" hint="May stay open." /></div>
        <div id="compare-says" role="status" />
      </Part>
      <Part id="use-plan" title="Plan the next">
        <div id="plan-says" role="status" />
      </Part>
      <Part id="use-record" title="Make a record">
        <p>Three files that the project’s own check reads: the source, the series, its pulls. Nothing is sent. Save them, or copy them into a proposal.</p>
        <div class="row">
          <Written name="id" label="Name of the record" hint="Small letters and hyphens: club-girth-wire." />
          <Written name="what" label="What was broken" hint="The heading of its page." />
          <Written name="called" label="The same in a sentence" hint="Such as: the girth hitch." />
          <Written name="part" label="Part that it is about" hint="A pull in which another broke is a lower limit." />
          <Written name="title" label="Title of your report" />
          <Written name="authors" label="Who pulled" hint="Names, parted by semicolons." />
          <Written name="day" label="Day of the first pull" hint="Year, month, day with hyphens." />
          <Choice name="form" label="Form" options={forms} />
          <Choice name="material" label="Material" options={materials} />
          <Written name="widthMm" label="Width of tape" unit="mm" />
          <Written name="diameterMm" label="Diameter of cord" unit="mm" />
          <Written name="legs" label="Strands that carry the load there" />
          <Written name="machine" label="Kind of machine" hint="Without its maker." />
          <Written name="rateMmPerMin" label="Speed" unit="mm/min" />
          <Written name="capacityKn" label="The load cell ends at" unit="kN" />
          <Written name="calibrated" label="Calibrated on" />
          <Written name="samplesPerSecond" label="Samples" unit="a second" />
          <Written name="conditioning" label="What was done before" hint="Hours, climate, knots drawn tight." />
          <Written name="note" label="Note" />
        </div>
        <div id="record-says" role="status" />
        <div id="record-files" />
      </Part>
    </fieldset>
  );
}
