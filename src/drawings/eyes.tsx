/** The five kinds of eye with a sling in them, drawn for the form. Decoration: the name stands beside each. */
import type { Eye } from '../records/schema.ts';

/** Paths: `w` wire or metal, `p` plastic, `m` solid metal; the sling is the same in all. */
const EYES: Readonly<Record<Eye, { w?: string; p?: string; m?: string; s: string }>> = {
  'bare-wire': { w: 'M26 46V28C14 20 18 6 28 6s14 14 2 22V46', s: 'M6 4C14 22 42 22 50 4' },
  'sleeved-wire': { p: 'M24 27C14 19 18 6 28 6s14 13 4 21', w: 'M26 46V28C14 20 18 6 28 6s14 14 2 22V46', s: 'M6 4C14 22 42 22 50 4' },
  'wire-under-bar': { w: 'M22 46V28C12 20 14 6 28 6s16 14 6 22V46', p: 'M17 15h22', s: 'M6 2C10 24 46 24 50 2' },
  'metal-bar': { m: 'M20 46V12a8 8 0 0 1 16 0V46', s: 'M6 4C12 28 44 28 50 4' },
  'twin-eye': { w: 'M25 46V28C10 22 9 8 17 8s11 10 10 20V46M31 46V28C46 22 47 8 39 8s-11 10-10 20V46', s: 'M4 4C12 24 44 24 52 4' },
};

/** Drawing of one kind of eye. */
export function EyeDrawing({ eye }: { eye: Eye }) {
  const { w, p, m, s } = EYES[eye];
  return (
    <svg class="eye" viewBox="0 0 56 48" aria-hidden="true">
      {p && <path class="plastic" d={p} />}
      {w && <path class="wire" d={w} />}
      {m && <path class="metal" d={m} />}
      <path class="textile" d={s} />
    </svg>
  );
}
