/** How strong a method is on one example device, as the comparison says it: for the method's own page, which has no rig of its own. */
import { prebuiltPath } from '../../links/prebuilt-path.ts';
import { EXAMPLE_RIG } from '../../links/rig-keys.ts';
import { compare } from '../../strength/compare.ts';
import type { Evidence, Rig, Row } from '../../strength/types.ts';
import { pageEvidence, prebuiltRigs } from './page.ts';

/** Kinds of eye in the order in which an example is looked for: the usual one first. */
const EYES = ['sleeved-wire', 'metal-bar', 'bare-wire', 'twin-eye', 'wire-under-bar'] as const;
/** Marked rating of the example device, kN: a usual one, and one of those that pages are built for. */
const RATING_KN = 12;

/** `path`: of the page that is built for just this rig, or null. */
export interface MethodExample { rig: Rig; row: Row; evidence: Evidence; path: string | null }

/** The usual test pin, mm: the thickest bar that loops were broken on. */
const BAR_MM = 10;

/** Order of what an example may be: ranked, else computed, else set apart. */
const GROUPS: readonly Row['group'][] = ['maker', 'ranked', 'unranked', 'comparison', 'apart'];
const placeOf = (list: readonly string[], one: string): number => (list.includes(one) ? list.indexOf(one) : list.length);

/** The example of a method: on a wire that is not measured where that gives it a number; else on a thick bar, if it may be ranked there; else null. */
export function methodExample(method: string): MethodExample | null {
  const evidence = pageEvidence();
  const slings = Object.keys(evidence.slings);
  const built = prebuiltRigs().filter(({ ratingKn }) => ratingKn === RATING_KN);
  const onBars = (mayBeRanked().has(method) ? slings : []).map((sling): Rig => ({ ...EXAMPLE_RIG, ratingKn: RATING_KN, eye: 'metal-bar', bearingMm: BAR_MM, sling }));
  const found = [...built, ...onBars].flatMap((rig) => {
    const row = compare(evidence, rig).rows.find((one) => one.method === method);
    return row?.attachment ? [{ rig, row, evidence, path: prebuiltPath(rig, { slings }) }] : [];
  });
  const order = ({ rig, row }: MethodExample): number => placeOf(GROUPS, row.group) * EYES.length + placeOf(EYES, rig.eye ?? '');
  return found.toSorted((a, b) => order(a) - order(b))[0] ?? null;
}

let ranked: Set<string> | null = null;

/** Bearings on which the model is asked, mm: from thin wire to a thick bar, past every published test. */
const BEARINGS_MM = [2.5, 3, 3.5, 3.8, 4.3, 5, 6, 8, 10, 12, 15];

/** Methods that are ranked on some eye with some sling. Steps are given for these alone. */
export function mayBeRanked(): ReadonlySet<string> {
  if (ranked) return ranked;
  const evidence = pageEvidence();
  const found = new Set<string>();
  for (const sling of Object.keys(evidence.slings)) for (const eye of EYES) for (const bearingMm of BEARINGS_MM) {
    const rig: Rig = { ratingKn: RATING_KN, eye, bearingMm, sling, lengthCm: 120, slingState: 'new', demandKn: null, old: null };
    for (const row of compare(evidence, rig).rows) if (row.group === 'ranked') found.add(row.method);
  }
  ranked = found;
  return found;
}
