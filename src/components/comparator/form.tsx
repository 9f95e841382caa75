/**
 * The reader's rig as a form, drawn once when the page is built: every input can be left as not known. The script reads
 * and writes the fields by their names, which are the keys of a link.
 */
import { href } from '../../build/site.ts';
import { EyeDrawing } from '../../drawings/eyes.tsx';
import { EYE_IDS, INPUT_RANGES, OLD_LIGHT_IDS, OLD_SLING_MATERIALS, OLD_USE_IDS, type NumberKey, type RigKey } from '../../links/rig-keys.ts';
import type { Words } from './form-words.ts';
import type { ListedSlings } from './setup.ts';
import { EYE_NAMES, lengthsOf, materialName, OLD_LIGHT_NAMES, OLD_USE_NAMES, slingsInOrder } from './words.ts';

export interface FormProps { words: Words; slings: ListedSlings }

/** A number with its unit, its "not known", and room for what is wrong with it. */
function NumberInput({ name, label, none, words }: FormProps & { name: NumberKey; label: string; none: string }) {
  return (
    <div class="field">
      <label for={`in-${name}`}>{label}</label>
      <span class="entry">
        <input id={`in-${name}`} name={name} type="text" inputMode="decimal" value={words[name]} aria-describedby={`says-${name}`} />
        {' '}{INPUT_RANGES[name].unit}
      </span>
      <label class="tick"><input type="checkbox" name={`no-${name}`} checked={words[name] === ''} /> {none}</label>
      <p id={`says-${name}`} data-input></p>
    </div>
  );
}

/** A choice of one, with its drawing where there is one. */
function Choice({ name, word, label, children, words }: FormProps & { name: RigKey; word: string; label: string; children?: preact.ComponentChildren }) {
  return (
    <label class="choice">
      <input type="radio" name={name} value={word} checked={words[name] === word} />
      {children}{label}
    </label>
  );
}

/** Options of a list: the word of each in a link, and its name. */
const options = <T extends string>(ids: readonly T[], nameOf: (id: T) => string, word: string) =>
  ids.map((id) => <option key={id} value={id} selected={word === id}>{nameOf(id)}</option>);

/** A choice from a list; "don't know" stands last. */
function Select({ name, label, children, words, none = 'unknown' }: FormProps & { name: RigKey; label: string; children: preact.ComponentChildren; none?: string }) {
  return (
    <div class="field">
      <label for={`in-${name}`}>{label}</label>
      <select id={`in-${name}`} name={name} data-input>
        {children}
        <option value={none} selected={words[name] === none}>don’t know</option>
      </select>
    </div>
  );
}

/** The form. Inputs in the order in which a reader can answer them. */
export function RigForm(props: FormProps) {
  const { words, slings } = props;
  const all = slingsInOrder(slings);
  const materials = [...new Set(all.map(([, sling]) => sling.material))];
  return (
    <form class="rig-form" autoComplete="off">
      <fieldset>
        <legend>Marked rating</legend>
        <NumberInput {...props} name="rating" label="Strength marked on the device" none="can’t be read" />
      </fieldset>
      <fieldset class="eyes">
        <legend>Eye: what the sling sits in</legend>
        {EYE_IDS.map((eye) => <Choice key={eye} {...props} name="eye" word={eye} label={EYE_NAMES[eye]}><EyeDrawing eye={eye} /></Choice>)}
        <Choice {...props} name="eye" word="unknown" label="don’t know: counts as bare wire" />
        <NumberInput {...props} name="bearing" label="Diameter that the sling bears on; of a covered wire, the wire’s own" none="not measured: the smallest tested" />
      </fieldset>
      <fieldset>
        <legend>New sling</legend>
        <Select {...props} name="sling" label="Material and width">
          {materials.map((material) => (
            <optgroup key={material} label={materialName(material)}>
              {options(all.filter(([, sling]) => sling.material === material).map(([id]) => id), (id) => slings[id]?.name ?? id, words.sling)}
            </optgroup>
          ))}
        </Select>
        <Select {...props} name="length" label="Length" none="">{options(lengthsOf(slings, words), (cm) => `${cm} ${INPUT_RANGES.length.unit}`, words.length)}</Select>
        <div class="row-of-choices">
          <Choice {...props} name="used" word="new" label="new" />
          <Choice {...props} name="used" word="used" label="used, or don’t know" />
        </div>
      </fieldset>
      <details class="more-inputs">
        <summary>More: the old sling, what it must bear</summary>
        <fieldset>
          <legend>Old sling on the device</legend>
          <Select {...props} name="oldsling" label="Material">{options(OLD_SLING_MATERIALS, materialName, words.oldsling)}</Select>
          <NumberInput {...props} name="oldage" label="Age since it was made" none="don’t know" />
          <Select {...props} name="olduse" label="Use">{options(OLD_USE_IDS, (id) => OLD_USE_NAMES[id], words.olduse)}</Select>
          <Select {...props} name="oldlight" label="Light">{options(OLD_LIGHT_IDS, (id) => OLD_LIGHT_NAMES[id], words.oldlight)}</Select>
        </fieldset>
        <fieldset>
          <legend>What it must bear</legend>
          <NumberInput {...props} name="demand" label="Load that the rig must survive" none="the device’s rating" />
          <a href={href('/falls/')}>What a fall loads</a>
        </fieldset>
      </details>
      <button type="submit" class="done">Show the comparison</button>
    </form>
  );
}
