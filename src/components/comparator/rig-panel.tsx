/** The reader's rig: one line that repeats it, and the form. */
import { RigForm, type FormProps } from './form.tsx';
import type { Rig } from '../../strength/types.ts';
import { rigLine } from './words.ts';

/** Where the rig comes from: the page's own example, a page built for it, or the reader. */
export type Origin = 'example' | 'page' | 'reader';
const ORIGIN_WORDS: Readonly<Record<Origin, string>> = { example: 'Example', page: 'This page', reader: 'My rig' };

export interface RigPanelProps extends FormProps {
  rig: Rig;
  origin: Origin;
  /** Whether the form is folded to its one line on a narrow screen. */
  isFolded: boolean;
  onFold?: (() => void) | undefined;
}

/** The panel: at the left on a wide screen, above the results on a narrow one. */
export function RigPanel({ rig, origin, isFolded, onFold, ...form }: RigPanelProps) {
  return (
    <section class={isFolded ? 'rig folded' : 'rig'} aria-labelledby="rig-heading">
      <h2 id="rig-heading">{ORIGIN_WORDS[origin]}</h2>
      <p class="rig-line"><span data-input>{rigLine(rig, form.slings)}</span></p>
      <button type="button" class="change" aria-expanded={!isFolded} onClick={onFold}>{isFolded ? 'Change' : 'Hide the form'}</button>
      <RigForm {...form} />
    </section>
  );
}
