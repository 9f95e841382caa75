/** What a comparison page is built from: the evidence, the answer for the page's rig, and the words around it. */
import { axisTicks } from '../../charts/axis-ticks.ts';
import type { Setup } from '../../components/comparator/setup.ts';
import { PREBUILT_EYES, PREBUILT_RATINGS_KN } from '../../links/prebuilt-path.ts';
import { EXAMPLE_RIG, FORCE_UNITS } from '../../links/rig-keys.ts';
import { rigWords, serialiseLink } from '../../links/serialise-link.ts';
import { compare } from '../../strength/compare.ts';
import type { Comparison, Evidence, Rig } from '../../strength/types.ts';
import { NEWTONS_PER } from '../../strength/wording.ts';
import { loadEvidence } from '../evidence.ts';
import { figure } from '../figures/figures.ts';
import { headScript } from './head-script.ts';
import { href } from '../site.ts';

const UPPER_MARK = 'common-practice/upper-mark';
const RIG_TO_RIG = 'assumed/rig-to-rig';
/** How long a reader waits before the page says that the comparison did not come, ms. */
const PATIENCE = 8000;

let known: Evidence | null = null;

/** Evidence of the records in the folder that is built. */
export function pageEvidence(): Evidence {
  // The build runs from a bundle elsewhere, so the records are found from the folder that it was started in.
  known ??= loadEvidence(process.cwd());
  if (Object.keys(known.methods).length === 0) throw new RangeError('the evidence holds no method; start the build in the project folder');
  return known;
}

/** Everything a page needs besides its layout. */
export interface ComparatorPage {
  setup: Setup;
  evidence: Evidence;
  comparison: Comparison;
  head: { text: string; hash: `sha256-${string}` };
}

/**
 * Builds the data of a page.
 * @param rig the rig that the page shows as built
 * @param isPrebuilt whether the page is for this rig, rather than showing it as an example
 */
export function comparatorPage(rig: Readonly<Rig>, isPrebuilt: boolean, title: string): ComparatorPage {
  const evidence = pageEvidence();
  const base = href('/');
  const upper = figure(UPPER_MARK);
  const between = figure(RIG_TO_RIG).value;
  if (typeof between !== 'number') throw new RangeError(`${RIG_TO_RIG}: must be one number`);
  if (typeof upper.value !== 'number' || upper.unit !== 'kN') throw new RangeError(`${UPPER_MARK}: must be one number in kN`);
  return {
    setup: {
      base, title, isFolded: isPrebuilt,
      slings: Object.fromEntries(Object.entries(evidence.slings).map(([id, { name, lengthsCm }]) => [id, { name, lengthsCm }])),
      rig: serialiseLink(rig),
      ticks: Object.fromEntries(FORCE_UNITS.map((unit) => [unit, axisTicks(NEWTONS_PER[unit]).map(({ text }) => Number(text))])) as Setup['ticks'],
      upper: { kn: upper.value, figure: UPPER_MARK },
      rigToRig: { sd: between, figure: RIG_TO_RIG },
    },
    evidence,
    comparison: compare(evidence, rig),
    head: headScript({
      base, patience: PATIENCE, rig: Object.fromEntries(rigWords(rig)), example: Object.fromEntries(rigWords(EXAMPLE_RIG)),
      prebuilt: { rating: PREBUILT_RATINGS_KN.map(String), eye: PREBUILT_EYES, sling: Object.keys(evidence.slings) },
    }),
  };
}

/** Rigs of the prebuilt pages. */
export function prebuiltRigs(): Rig[] {
  const slings = Object.keys(pageEvidence().slings);
  return PREBUILT_RATINGS_KN.flatMap((ratingKn) => PREBUILT_EYES.flatMap((eye) => slings.map((sling): Rig => ({ ...EXAMPLE_RIG, ratingKn, eye, sling }))));
}
