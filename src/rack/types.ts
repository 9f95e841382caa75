/** What a rack register holds. Everything is plain data, the same in memory and in the file. Null: not known, and it counts against the sling. */
import type { Eye, Material, OldUse } from '../records/schema.ts';
import type { PartDay } from './part-day.ts';

export const FORMAT = 'second-sling-rack';
export const VERSION = 1;

export const RACK_EYES = ['bare-wire', 'sleeved-wire', 'wire-under-bar', 'metal-bar', 'twin-eye'] as const satisfies readonly Eye[];
/** Fibres that a sling in the rack may be of. */
export const RACK_MATERIALS = ['hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon'] as const satisfies readonly Material[];
export const RACK_USES = ['stored', 'seldom', 'monthly', 'weekly', 'daily'] as const satisfies readonly OldUse[];
/** What the sling was left in, or met again and again. */
export const EXPOSURES = ['sun', 'wet', 'salt', 'grit', 'heat', 'chemicals'] as const;
/** What happened to the sling once. */
export const EVENTS = ['big-fall', 'heat', 'chemicals', 'crushed', 'edge'] as const;
/** What an inspection found. An empty list: looked at, and nothing found. */
export const FINDINGS = ['fuzz', 'cut', 'stiff', 'melted', 'faded', 'stitching', 'stained', 'sleeve-worn', 'eye-damaged', 'label-gone', 'other'] as const;

export type Exposure = (typeof EXPOSURES)[number];
export interface SlingEvent { kind: (typeof EVENTS)[number]; when: PartDay | null }

/** The textile on the device now. */
export interface RackSling {
  material: (typeof RACK_MATERIALS)[number] | null;
  widthMm: number | null;
  made: PartDay | null;
  firstUse: PartDay | null;
  use: OldUse | null;
  /** Null: not known. Empty: known to be none. */
  exposures: readonly Exposure[] | null;
  events: readonly SlingEvent[] | null;
}

/** One look at the item by somebody. */
export interface Inspection { id: string; day: string; findings: readonly (typeof FINDINGS)[number][]; by: string; note: string }

/** One device with its sling, or several alike. */
export interface Item {
  id: string;
  name: string;
  ratingKn: number | null;
  eye: Eye | null;
  sling: RackSling;
  /** How many of the same; at least one. */
  count: number;
  notes: string;
  /** By day, then by id. */
  inspections: readonly Inspection[];
  /** Latest moment of an edit in universal time, as the devices' clocks had it. For readers; no merge is decided by it. */
  changed: string;
  /** Taken off the rack. It stays in the register, so that another copy hears of it. */
  removed: boolean;
  /** The edit that made the item. */
  stamp: string;
  /** The edits that last set a field, where that was not the first; of every inspection. */
  stamps: Readonly<Record<string, string>>;
}

export interface Register {
  format: typeof FORMAT;
  version: typeof VERSION;
  /** A sentence that says that the register is an invented example; null for a real one. The two are never merged. */
  invented: string | null;
  /** For each copy, the number of its last edit that this register includes. */
  seen: Readonly<Record<string, number>>;
  /** By id. */
  items: readonly Item[];
}

/**
 * Who edits, and when. `copy` names this register on this device, drawn by the page once, when the register is started
 * here or first received here. It is never used for a second register, for edits are told apart by copy and number.
 */
export interface By { copy: string; at: string }

/** What a reader may say of a new item; the rest is not known. */
export type ItemDraft = Partial<Omit<Item, 'id' | 'sling' | 'inspections' | 'changed' | 'removed' | 'stamp' | 'stamps'>> & { sling?: Partial<RackSling> };
