/** The reader's rig: every input can be left as not known, nothing typed is lost, and what is wrong is said at the field. */
import { EyeDrawing } from '../../drawings/eyes.tsx';
import { EYE_IDS, INPUT_RANGES, OLD_SLING_MATERIALS, type NumberKey, type RigKey } from '../../links/rig-keys.ts';
import { Kept } from './kept.tsx';
import type { SlingNames } from './setup.ts';
import { EYE_NAMES, materialName, slingsInOrder } from './words.ts';

/** Each input as the word that stands, or would stand, in a link; numbers as typed. */
export type Words = Record<RigKey, string>;
/** Inputs whose "not known" is ticked although something is typed. */
export type Off = Partial<Record<RigKey, boolean>>;

export interface FormProps {
  words: Words;
  off: Off;
  /** What is wrong, for each input that could not be used. */
  faults: Partial<Record<RigKey, string>>;
  slings: SlingNames;
  onInput?: ((key: RigKey, word: string) => void) | undefined;
  onOff?: ((key: RigKey, isOff: boolean) => void) | undefined;
  onDone?: (() => void) | undefined;
}

interface NumberProps extends FormProps { name: NumberKey; label: string; none: string; like: string }

/** A number with its unit and its "not known". */
function NumberInput({ name, label, none, like, words, off, faults, onInput, onOff }: NumberProps) {
  const fault = faults[name];
  const text = words[name];
  return (
    <div class="field">
      <label for={`in-${name}`}>{label}</label>
      <span class="entry">
        <input
          id={`in-${name}`} name={name} type="text" inputMode="decimal" autoComplete="off" value={text}
          aria-describedby={`says-${name}`} aria-invalid={fault ? true : undefined}
          onInput={(event) => onInput?.(name, event.currentTarget.value)}
        />
        {' '}{INPUT_RANGES[name].unit}
      </span>
      <label class="tick">
        <input type="checkbox" checked={off[name] === true || text.trim() === ''} onChange={(event) => onOff?.(name, event.currentTarget.checked)} />
        {' '}{none}
      </label>
      <p id={`says-${name}`} class="says">
        {fault && <b data-input>{`${text.trim()}: ${fault}. Not used; it counts as not known. Write it like ${like}.`}</b>}
      </p>
    </div>
  );
}

/** A choice of one, with its drawing where there is one. */
function Choice({ name, word, label, children, words, onInput }: FormProps & { name: RigKey; word: string; label: string; children?: preact.ComponentChildren }) {
  return (
    <label class="choice">
      <input type="radio" name={name} value={word} checked={words[name] === word} onChange={() => onInput?.(name, word)} />
      {children}<span>{label}</span>
    </label>
  );
}

/** Lengths offered for the chosen sling, and the one that a link asked for. */
function lengths(props: FormProps): string[] {
  const offered = props.slings[props.words.sling]?.lengthsCm.map(String) ?? [];
  const asked = props.words.length.replace(',', '.');
  return asked === '' || asked === 'unknown' || offered.includes(asked) ? offered : [...offered, asked];
}

/** The form. Inputs in the order in which a reader can answer them. */
export function RigForm(props: FormProps) {
  const { words, onInput } = props;
  const all = slingsInOrder(props.slings);
  const materials = [...new Set(all.map(([, sling]) => sling.material))];
  return (
    <form class="rig-form" onSubmit={(event) => { event.preventDefault(); props.onDone?.(); }}>
      <fieldset>
        <legend>Marked rating</legend>
        <NumberInput {...props} name="rating" label="Strength marked on the device" none="can’t be read" like={'12 or 9,5'} />
      </fieldset>
      <fieldset class="eyes">
        <legend>Eye: what the sling sits in</legend>
        {EYE_IDS.map((eye) => <Choice key={eye} {...props} name="eye" word={eye} label={EYE_NAMES[eye]}><Kept of={[]}>{() => <EyeDrawing eye={eye} />}</Kept></Choice>)}
        <Choice {...props} name="eye" word="unknown" label="don’t know: counts as bare wire" />
        <NumberInput {...props} name="bearing" label="Diameter that the sling bears on; of a covered wire, the wire’s own" none="not measured: the smallest tested" like={'4 or 3,8'} />
      </fieldset>
      <fieldset>
        <legend>New sling</legend>
        <div class="field">
          <label for="in-sling">Material and width</label>
          <select id="in-sling" name="sling" data-input value={words.sling} onChange={(event) => onInput?.('sling', event.currentTarget.value)}>
            <Kept of={[words.sling]}>{() => materials.map((material) => (
              <optgroup key={material} label={materialName(material)}>
                {all.filter(([, sling]) => sling.material === material).map(([id, sling]) => (
                  <option key={id} value={id} selected={words.sling === id}>{sling.name}</option>
                ))}
              </optgroup>
            ))}</Kept>
            <option value="unknown" selected={words.sling === 'unknown'}>don’t know</option>
          </select>
        </div>
        <div class="field">
          <label for="in-length">Length</label>
          <select id="in-length" name="length" data-input value={words.length} onChange={(event) => onInput?.('length', event.currentTarget.value)}>
            {lengths(props).map((cm) => <option key={cm} value={cm} selected={words.length === cm}>{`${cm} ${INPUT_RANGES.length.unit}`}</option>)}
            <option value="unknown" selected={words.length === 'unknown' || words.length === ''}>don’t know</option>
          </select>
        </div>
        <div class="row-of-choices">
          <Choice {...props} name="used" word="new" label="new" />
          <Choice {...props} name="used" word="used" label="used, or don’t know" />
        </div>
      </fieldset>
      <details class="more-inputs">
        <summary>More: the old sling, what it must bear</summary>
        <fieldset>
          <legend>Old sling on the device</legend>
          <div class="field">
            <label for="in-oldsling">Material</label>
            <select id="in-oldsling" name="oldsling" value={words.oldsling} onChange={(event) => onInput?.('oldsling', event.currentTarget.value)}>
              <option value="unknown" selected={words.oldsling === 'unknown'}>don’t know</option>
              {OLD_SLING_MATERIALS.map((material) => <option key={material} value={material} selected={words.oldsling === material}>{materialName(material)}</option>)}
            </select>
          </div>
          <NumberInput {...props} name="oldage" label="Age since it was made" none="don’t know" like={'5 or 7,5'} />
        </fieldset>
        <fieldset>
          <legend>What it must bear</legend>
          <NumberInput {...props} name="demand" label="Load that the rig must survive" none="the device’s rating" like={'12 or 15'} />
        </fieldset>
      </details>
      <button type="submit" class="done">Show the comparison</button>
    </form>
  );
}
