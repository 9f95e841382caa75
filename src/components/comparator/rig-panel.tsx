/** The reader's rig: one line that repeats it, and the form. At the left on a wide screen, above the results on a narrow one. */
import type { Rig } from '../../strength/types.ts';
import { RigForm, type FormProps } from './form.tsx';
import { FOLD_WORDS, ORIGIN_WORDS, type Origin, rigLine } from './words.ts';

export interface RigPanelProps extends FormProps {
  rig: Rig;
  origin: Origin;
  /** Whether the form is folded to its one line on a narrow screen. */
  isFolded: boolean;
}

/** The panel as it is built. */
export function RigPanel({ rig, origin, isFolded, ...form }: RigPanelProps) {
  return (
    <section class={isFolded ? 'rig folded' : 'rig'} aria-labelledby="rig-heading">
      <h2 id="rig-heading">{ORIGIN_WORDS[origin]}</h2>
      <p class="rig-line" data-input>{rigLine(rig, form.slings)}</p>
      <button type="button" class="change" aria-expanded={!isFolded}>{FOLD_WORDS[Number(isFolded)]}</button>
      <RigForm {...form} />
    </section>
  );
}
