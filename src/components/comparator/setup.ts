/** What the page hands to the island besides the evidence: small, and part of the HTML. */
import type { Tick } from '../../charts/axis-ticks.ts';
import type { SlingRecord } from '../../records/schema.ts';
import type { Pair } from '../../strength/compare.ts';
import type { Comparison, Evidence } from '../../strength/types.ts';
import type { ForceUnit } from '../../strength/wording.ts';

/** What the script needs of the slings, so that it answers before the evidence is there. */
export type SlingNames = Record<string, Pick<SlingRecord, 'name' | 'lengthsCm'>>;
/** What the form needs of them when it is built. */
export type ListedSlings = Record<string, Pick<SlingRecord, 'name' | 'order' | 'material' | 'lengthsCm'>>;

/** Read from the page by the script; everything else is computed from the evidence. */
export interface Setup {
  /** Folder that the site is served from, with its closing slash. */
  base: string;
  /** Query of the rig that the page shows as built. */
  rig: string;
  /** Whether the form is folded to its line at first: on pages built for one rig. */
  isFolded: boolean;
  /** Title of the page without the rig, for the window once the rig has changed. */
  title: string;
  slings: SlingNames;
  /** Numbers along the axis in each unit. */
  ticks: Record<ForceUnit, number[]>;
  /** Load that few devices ever see exceeded: a rule of the trade, with the figure that says so. */
  upper: { kn: number; figure: string };
  /** Assumed scatter between one rig and the next, sd of ln, with the figure that says so: for a reader's own tests on one rig. */
  rigToRig: { sd: number; figure: string };
}

/** What the views read besides a row. */
export interface Frame {
  evidence: Pick<Evidence, 'figures' | 'slings' | 'factors' | 'methods'>;
  /** Length of the new sling, cm. */
  lengthCm: Comparison['rig']['lengthCm'];
  /** One method against each other one; worked out only where it is shown. */
  pairsOf: (method: string) => Pair[];
  /** How workings come about: while the page is built; left as built while the script takes over; drawn by the script. */
  stage: 'built' | 'kept' | 'drawn';
  base: string;
  /** Ticks of the axis, in the unit shown at least. */
  ticks: Record<ForceUnit, Tick[]>;
  upper: Setup['upper'];
  unit: ForceUnit;
  ratingKn: number | null;
  /** Null: the rating. */
  demandKn: number | null;
}

/** Address of a figure's page, or of its cell on it. */
export function figureAddress(base: string, id: string): string {
  const [record, cell] = id.split('#');
  return `${base}figures/${record}/${cell ? `#${cell}` : ''}`;
}
