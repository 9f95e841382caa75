/** What a rack register holds. Everything is plain data, the same in memory and in the file. Null: not known, and it counts against the sling. */
import type { Exposure, Eye, Material, OldUse, SlingEvent, SlingFinding } from '../records/schema.ts';
import { SLING_EVENTS, SLING_EXPOSURES, SLING_FINDINGS, SLING_MATERIALS, SLING_USES } from '../retirement/answers.ts';
import type { PartDay } from './part-day.ts';

export const FORMAT = 'second-sling-rack';
export const VERSION = 1;

export const RACK_EYES = ['bare-wire', 'sleeved-wire', 'wire-under-bar', 'metal-bar', 'twin-eye'] as const satisfies readonly Eye[];
/** Fibres, use, exposures, events and findings: the words of the rules, so that every answer of a rack is one that they ask for. */
export const RACK_MATERIALS = SLING_MATERIALS;
export const RACK_USES = SLING_USES;
/** What the sling was left in, or met again and again. */
export const EXPOSURES = SLING_EXPOSURES;
/** What happened to the sling once. */
export const EVENTS = SLING_EVENTS;
/** What an inspection found. An empty list: looked at, and nothing found. */
export const FINDINGS = SLING_FINDINGS;

/** One thing that happened, and when as far as it is known. */
export interface RackEvent { kind: SlingEvent; when: PartDay | null }

/** What the maker of the sling or of its device prints. Null: prints nothing, or nobody has read it. */
export interface RackMaker { retireBy: PartDay | null; yearsFromMade: number | null; yearsFromFirstUse: number | null }

/** The textile on the device now. */
export interface RackSling {
  material: Material | null;
  widthMm: number | null;
  made: PartDay | null;
  firstUse: PartDay | null;
  use: OldUse | null;
  /** Null: not known. Empty: known to be none. */
  exposures: readonly Exposure[] | null;
  events: readonly RackEvent[] | null;
  maker: RackMaker;
}

/** One look at the item by somebody. */
export interface Inspection { id: string; day: string; findings: readonly SlingFinding[]; by: string; note: string }

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
export type ItemDraft = Partial<Omit<Item, 'id' | 'sling' | 'inspections' | 'changed' | 'removed' | 'stamp' | 'stamps'>> & { sling?: SlingDraft };

/** What a reader may say of its sling. */
export type SlingDraft = Partial<Omit<RackSling, 'maker'>> & { maker?: Partial<RackMaker> };
