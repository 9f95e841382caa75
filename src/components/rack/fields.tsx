/** Fields of an item. What is typed is written into the register when the reader leaves the field; what cannot be read stays, with the reason. */
import { Component } from 'preact';
import { type PartDay, parsePartDay } from '../../rack/part-day.ts';
import { readLabel } from '../../retirement/read-label.ts';

/** A value, or why the text is none. */
export type Read<T> = { value: T } | { why: string };

/** A number, or null where nothing is written. */
export const readNumber = (low: number, high: number, isWhole = false) => (text: string): Read<number | null> => {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return { value: null };
  const value = Number(plain);
  if (!/^\d{1,6}(?:\.\d{1,6})?$/.test(plain) || (isWhole && !Number.isInteger(value))) return { why: `no plain number; write one from ${low} to ${high}` };
  return value < low || value > high ? { why: `outside ${low} to ${high}` } : { value };
};

/** A year, month or day, or null where nothing is written. */
export function readDate(text: string): Read<PartDay | null> {
  if (text.trim() === '') return { value: null };
  const read = readLabel(text);
  if (!read.ok) return { why: read.why };
  const value = parsePartDay(read.label);
  return value ? { value } : { why: 'no day that the register takes' };
}

/** What was typed and could not be read, and why. */
export type Unread = Map<string, { typed: string; why: string }>;

/** Takes a text over where it can be read, and else keeps it with the reason. */
export function takeOver<T>(unread: Unread, key: string, text: string, read: (text: string) => Read<T>, put: (value: T) => void): void {
  const got = read(text);
  if ('why' in got) unread.set(key, { typed: text, why: got.why });
  else {
    unread.delete(key);
    put(got.value);
  }
}

export interface TextProps {
  id: string;
  label: string;
  /** As the register has it. */
  value: string;
  /** What was typed and could not be read, and why. */
  fault?: { typed: string; why: string } | undefined;
  unit?: string;
  isLong?: boolean;
  maxLength?: number;
  onWrite: (text: string) => void;
}

/** One field that is written. Until the reader leaves it, it keeps what is typed: the page may be drawn anew meanwhile. */
export class Text extends Component<TextProps, { typed: string | null }> {
  override state = { typed: null as string | null };

  override componentWillUnmount(): void {
    // A view that closes over an open field takes it over.
    if (this.state.typed !== null) this.props.onWrite(this.state.typed);
  }

  override render() {
    const { id, label, value, fault, unit, isLong, maxLength, onWrite } = this.props;
    const shared = {
      id, value: this.state.typed ?? fault?.typed ?? value, maxLength, 'aria-invalid': fault ? true : undefined, 'aria-describedby': `says-${id}`,
      onInput: ({ currentTarget }: { currentTarget: HTMLInputElement | HTMLTextAreaElement }) => this.setState({ typed: currentTarget.value }),
      onChange: ({ currentTarget }: { currentTarget: HTMLInputElement | HTMLTextAreaElement }) => {
        this.setState({ typed: null });
        onWrite(currentTarget.value);
      },
    } as const;
    return (
      <div class="field">
        <label for={id}>{label}</label>
        {isLong ? <textarea {...shared} data-input /> : <span class="entry"><input type="text" {...shared} inputMode={unit ? 'decimal' : undefined} class={unit ? 'short' : undefined} />{unit && ` ${unit}`}</span>}
        <span id={`says-${id}`} class="fault" data-input>{fault && `${fault.typed.trim()}: ${fault.why}. Not used.`}</span>
      </div>
    );
  }
}

/** One choice from a list. */
export function Choice<T extends string>({ id, label, value, answers, onChoose }: { id: string; label: string; value: T | null; answers: readonly (readonly [T, string])[]; onChoose: (value: T | null) => void }) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value ?? ''} onChange={({ currentTarget }) => onChoose((currentTarget.value || null) as T | null)}>
        <option value="">don’t know</option>
        {answers.map(([word, name]) => <option key={word} value={word}>{name}</option>)}
      </select>
    </div>
  );
}

/** Things of which any may be so. Nothing ticked is an answer, too: none of them. */
export function Ticks<T extends string>({ id, legend, value, answers, onTick, isKnown }: {
  id: string; legend: string; value: readonly T[] | null; answers: readonly (readonly [T, string])[]; onTick: (value: readonly T[] | null) => void; isKnown?: boolean;
}) {
  const has = (word: T): boolean => value?.includes(word) ?? false;
  return (
    <fieldset class="ticks" id={id}>
      <legend>{legend}</legend>
      {!isKnown && <label class="tick"><input type="checkbox" checked={value === null} onChange={({ currentTarget }) => onTick(currentTarget.checked ? null : [])} />don’t know</label>}
      {answers.map(([word, name]) => (
        <label key={word} class="tick">
          <input type="checkbox" name={word} checked={has(word)} onChange={({ currentTarget }) => onTick(answers.map(([one]) => one).filter((one) => (one === word ? currentTarget.checked : has(one))))} />
          {name}
        </label>
      ))}
      {value?.length === 0 && <p class="hint">{isKnown ? 'Nothing ticked: looked at, and nothing found.' : 'Nothing ticked: none of these.'}</p>}
    </fieldset>
  );
}
