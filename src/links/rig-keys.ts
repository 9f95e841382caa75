/**
 * The words that a comparison link may hold, and what each input may be.
 * Meaning 1 of the keys (`v=1`). Ids of slings come from the records, so the reader of a link is given them.
 */
import type { Eye, Material, OldLight, OldUse } from '../records/schema.ts';
import type { Rig } from '../strength/types.ts';

/** The newest meaning of keys and defaults. */
export const CURRENT_MEANING = 1;

/** Keys that describe the rig, in the fixed order in which they are written. */
export const RIG_KEYS = ['rating', 'eye', 'bearing', 'sling', 'length', 'used', 'demand', 'oldsling', 'oldage', 'olduse', 'oldlight'] as const;
export type RigKey = (typeof RIG_KEYS)[number];

/** Limits of a number that an input takes, and its unit. What lies outside is listed and not used, never moved inside. */
export interface InputRange { low: number; high: number; unit: string }
export const INPUT_RANGES = {
  rating: { low: 1, high: 40, unit: 'kN' },
  bearing: { low: 1, high: 40, unit: 'mm' },
  length: { low: 5, high: 500, unit: 'cm' },
  demand: { low: 1, high: 60, unit: 'kN' },
  oldage: { low: 0, high: 60, unit: 'years' },
} as const satisfies Partial<Record<RigKey, InputRange>>;
export type NumberKey = keyof typeof INPUT_RANGES;

/** Kinds of eye, in the order of the form. */
export const EYE_IDS = ['bare-wire', 'sleeved-wire', 'wire-under-bar', 'metal-bar', 'twin-eye'] as const satisfies readonly Eye[];
/** Fibres that an old sling may be of. */
export const OLD_SLING_MATERIALS = ['hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon'] as const satisfies readonly Material[];

/** How often an old sling was used, and where it was kept. */
export const OLD_USE_IDS = ['stored', 'seldom', 'monthly', 'weekly', 'daily'] as const satisfies readonly OldUse[];
export const OLD_LIGHT_IDS = ['dark', 'sun'] as const satisfies readonly OldLight[];

/** Units that a reader may see forces in; a choice of view, never part of a link. */
export const FORCE_UNITS = ['kN', 'lbf', 'kgf'] as const;
export type ForceUnit = (typeof FORCE_UNITS)[number];
/** Orders of the rows inside their groups; a choice of view, never part of a link. */
export const SORT_ORDERS = ['low', 'middle', 'name'] as const;
export type SortOrder = (typeof SORT_ORDERS)[number];

/** What the reader chose to see, apart from the answer. */
export interface View { unit: ForceUnit; sort: SortOrder }

/** What an absent key means under meaning 1. Frozen: another default is another meaning. */
export const EXAMPLE_RIG: Readonly<Rig> = Object.freeze({
  ratingKn: 12,
  eye: 'sleeved-wire',
  bearingMm: null,
  sling: 'hmpe-10',
  lengthCm: 60,
  slingState: 'new',
  demandKn: null,
  old: null,
});
