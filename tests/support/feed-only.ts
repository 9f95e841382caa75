/** Evidence in which one factor is fed by named figures alone: so that pulls of one source can be held against a number worked out by hand from them. */
import { loadEvidence } from '../../src/build/evidence.ts';
import type { Evidence } from '../../src/strength/types.ts';

/** @throws RangeError when there is no such factor, or a figure does not feed it */
export function feedOnly(factor: string, figures: readonly string[]): Evidence {
  const evidence = structuredClone(loadEvidence());
  const fed = evidence.factors[factor];
  const stray = figures.find((id) => !fed?.from.includes(id));
  if (!fed || stray) throw new RangeError(`factor must be one that the figures feed (got ${factor}, ${stray})`);
  fed.from = fed.from.filter((id) => figures.includes(id));
  return evidence;
}

/** Four girth hitches of HMPE on a wire of 3.8 mm: M. Ibarra, post of 4 August 2021. */
export const IBARRA_GIRTH = 'ibarra-2021/girth-on-wire';
