/**
 * What may be answered about a sling, as lists that a page, a link or a file can offer. The words are those of the rules;
 * the lists stand here as well because the shapes of records are never sent to a reader.
 */
import type { Exposure, Material, OldUse, SlingEvent, SlingFinding } from '../records/schema.ts';

/** Fibres that a sling may be of. */
export const SLING_MATERIALS = ['hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon'] as const satisfies readonly Material[];
/** How often it is used, from the least. */
export const SLING_USES = ['stored', 'seldom', 'monthly', 'weekly', 'daily'] as const satisfies readonly OldUse[];
export const SLING_EXPOSURES = ['light', 'wet', 'salt', 'chemicals', 'heat'] as const satisfies readonly Exposure[];
export const SLING_EVENTS = ['big-fall', 'edge', 'bare-wire', 'test-pull'] as const satisfies readonly SlingEvent[];
/** In the order in which one looks: the edges, the flat, the stitching, the label, the tails. */
export const SLING_FINDINGS = [
  'cut', 'edge-nick', 'snag', 'fuzz', 'melted', 'stiff', 'chemical-burn', 'faded', 'dirt', 'stitching', 'label-missing', 'tails-slipped', 'doubt',
] as const satisfies readonly SlingFinding[];

/** A width or diameter that a sling may have, and a life that a maker may print. */
export const WIDTH_RANGE_MM = { low: 1, high: 60 } as const;
export const MAKER_YEARS = { low: 0.5, high: 60 } as const;
