/** Files of the register: out, in, and what two copies disagree on. */
import { Component } from 'preact';
import { faultLine, type FileFault } from '../../rack/json-file.ts';
import type { Choice, Conflict } from '../../rack/merge.ts';
import { Day } from './list.tsx';
import type { RackSetup } from './setup.ts';
import { fieldName, valueText } from './words.ts';

/** What an import said. */
export interface Refused { name: string; faults: readonly FileFault[] | null; why: string | null }

export interface FilesProps {
  hasRegister: boolean;
  isExample: boolean;
  refused: Refused | null;
  pasted: string;
  onPasted: (text: string) => void;
  onFile: (file: File) => void;
  onText: (text: string) => void;
  onExport: (kind: 'json' | 'csv') => void;
  onForget: () => void;
  onExample: () => void;
}

/** The view of files. */
export class FilesView extends Component<FilesProps, { asks: boolean }> {
  override state = { asks: false };

  override render() {
    const { hasRegister, isExample, refused, pasted, onPasted, onFile, onText, onExport, onForget, onExample } = this.props;
    return (
      <section class="files">
        <p><a href="#rack">Back to the rack</a></p>
        <h2 id="files-title" tabIndex={-1}>Export and import</h2>
        <p><a href="#kept">What the files are for, and where the register is kept</a></p>
        {hasRegister && (
          <>
            <h3>Export</h3>
            <p>
              <button type="button" class="main" onClick={() => onExport('json')}>Save as a file (JSON)</button>{' '}
              <button type="button" onClick={() => onExport('csv')}>Save as a table (CSV)</button>
            </p>
          </>
        )}
        <h3>Import</h3>
        <div class="field"><label for="in-file">File</label><input id="in-file" type="file" accept=".json,.csv,application/json,text/csv" onChange={({ currentTarget }) => { const [file] = currentTarget.files ?? []; if (file) onFile(file); currentTarget.value = ''; }} /></div>
        <div class="field"><label for="in-pasted">Or paste its text</label><textarea id="in-pasted" rows={4} value={pasted} onInput={({ currentTarget }) => onPasted(currentTarget.value)} /></div>
        <p><button type="button" aria-disabled={pasted.trim() === ''} onClick={() => pasted.trim() !== '' && onText(pasted)}>Import the text</button></p>
        {refused && (
          <div class="note refused" id="refused" tabIndex={-1}>
            <p><b>Not imported: <span data-input>{refused.name}</span>.</b> The register is as it was.</p>
            {refused.why && <p>{refused.why}</p>}
            {refused.faults && <ul>{refused.faults.map((fault, at) => <li key={at} data-input>{faultLine(fault)}</li>)}</ul>}
          </div>
        )}
        {!isExample && <><h3>The example</h3><p><button type="button" onClick={onExample}>Look at the example rack</button></p></>}
        {hasRegister && !isExample && (
          <>
            <h3>Delete</h3>
            {this.state.asks
              ? <p><b>This deletes the register from this browser. Only a file brings it back.</b> <button type="button" id="really" onClick={onForget}>Delete it</button> <button type="button" onClick={() => this.setState({ asks: false }, () => document.getElementById('forget')?.focus())}>Keep it</button></p>
              : <p><button type="button" id="forget" onClick={() => this.setState({ asks: true }, () => document.getElementById('really')?.focus())}>Delete the register from this browser</button></p>}
          </>
        )}
      </section>
    );
  }
}

/** Key of a conflict, for the choices. */
export const conflictKey = ({ item, field }: Pick<Conflict, 'item' | 'field'>): string => `${item} ${field}`;

export interface ConflictsProps {
  eyes: RackSetup['eyes'];
  /** Where the other copy comes from, in the middle of a sentence. */
  from: string;
  conflicts: readonly Conflict[];
  choices: Readonly<Record<string, Choice>>;
  onChoose: (choices: Readonly<Record<string, Choice>>) => void;
  onSettle: () => void;
  /** Absent where both copies are kept already and one must give way. */
  onCancel: () => void;
  cancel: string;
}

/** What both copies changed: each value in full, and none chosen beforehand. */
export function ConflictsView({ eyes, from, conflicts, choices, onChoose, onSettle, onCancel, cancel }: ConflictsProps) {
  const left = conflicts.filter((one) => !choices[conflictKey(one)]).length;
  const all = (choice: Choice) => onChoose(Object.fromEntries(conflicts.map((one) => [conflictKey(one), choice])));
  return (
    <section class="conflicts">
      <h2 id="merge-title" tabIndex={-1}>Two copies differ</h2>
      <p>Here and in {from} these were changed apart from each other. Choose for each; nothing is written before that.</p>
      <p><button type="button" onClick={() => all('mine')}>All as here</button> <button type="button" onClick={() => all('theirs')}>All as in the other</button></p>
      {conflicts.map((one) => {
        const key = conflictKey(one);
        const name = one.names.mine || one.names.theirs;
        return (
          <fieldset key={key} class="conflict">
            <legend><span data-input>{name || 'Device without a name'}</span>: {fieldName(one.field)}</legend>
            {(['mine', 'theirs'] as const).map((side) => (
              <label key={side} class="tick">
                <input type="radio" name={`choice ${key}`} checked={choices[key] === side} onChange={() => onChoose({ ...choices, [key]: side })} />
                <span>{side === 'mine' ? 'Here' : 'In the other'}: <b data-input>{valueText(one.field, one[side], eyes)}</b>{one.changed[side] && <span class="soft"> (item last edited <Day day={one.changed[side].slice(0, 10)} />)</span>}</span>
              </label>
            ))}
          </fieldset>
        );
      })}
      <p>
        <button type="button" class="main" aria-disabled={left > 0} onClick={() => left === 0 && onSettle()}>Merge as chosen</button>{' '}
        <button type="button" onClick={onCancel}>{cancel}</button>
      </p>
      {left > 0 && <p class="hint">Still to choose: <span data-input>{left}</span>.</p>}
    </section>
  );
}
