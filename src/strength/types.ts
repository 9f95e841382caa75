/** What goes into a comparison and what comes out. Forces in kN, lengths in mm or cm as named, shares between 0 and 1. */
import type { CertaintyWord } from '../evidence/certainty.ts';
import type { ClassValue } from '../evidence/classes.ts';
import type { FactorRead, FactorValue } from '../evidence/factor.ts';
import type { Observation } from '../evidence/observation.ts';
import type { Eye, GapRecord, Material, MethodRecord, OldLight, OldUse, RetirementRule, RigConditions, SlingRecord, Standing, Unit, Value } from '../records/schema.ts';

/** One addressable figure, as the engines read it: a single value or one cell of a table, defaults filled in. */
export interface Figure {
  /** `source/result` or `source/result#cell`. */
  id: string;
  source: string;
  what: string;
  kind: 'measured' | 'required' | 'rule' | 'constant' | 'assumed';
  value?: Value;
  unit?: Unit;
  of?: string;
  rig: RigConditions;
  study: string;
  standing: Standing;
  /** Null for what nobody measured. */
  certainty: CertaintyWord | null;
  /** What it says of a mean and a scatter, read once when the evidence is put together; null where it may not feed. */
  seen: Observation | null;
}

/** All that the engine reads; frozen as one file per evidence version. */
export interface Evidence {
  /** Version of the evidence: `<date>.<n>`. */
  version: string;
  /** Number of the model; goes up when the same evidence gives other answers. */
  model: number;
  figures: Record<string, Figure>;
  factors: Record<string, FactorRead>;
  /** Scatter and spread of each class, worked out from the records when the evidence is put together. */
  classes: Record<string, ClassValue>;
  methods: Record<string, MethodRecord>;
  slings: Record<string, SlingRecord>;
  gaps: Record<string, Pick<GapRecord, 'blocks' | 'nearest'>>;
  /** Rules of retirement, each with the number of years that its figure says. */
  rules: Record<string, RetirementRule>;
}

/** The reader's rig. `null` means: not known. */
export interface Rig {
  /** Strength marked on the device, kN. */
  ratingKn: number | null;
  eye: Eye | null;
  /** Diameter that the sling bears on, mm; for both plastic kinds the wire's own. Null: not measured. */
  bearingMm: number | null;
  /** Id of a sling record. */
  sling: string | null;
  lengthCm: number | null;
  slingState: 'new' | 'used';
  /** What it must stand up to, kN. Null: the device's rating. */
  demandKn: number | null;
  /** The old sling on the device, for the row that keeps it. */
  old: { material: Material | null; ageYears: number | null; use: OldUse | null; light: OldLight | null } | null;
}

export type State = 'result' | 'apart' | 'no-data' | 'other-sling';
export type { CertaintyWord };
/** Where a row stands on the page, in this order. */
export type Group = 'maker' | 'ranked' | 'unranked' | 'apart' | 'comparison' | 'no-data' | 'other-sling';

/** Ends and middle of a 90 % interval: 1 in 20 breaks below `low`, half below `middle`, 19 in 20 below `high`. kN. */
export interface Spread { low: number; middle: number; high: number }

/** What one factor contributes to one link: its id beside its value for this rig. */
export interface FactorShare extends FactorValue { factor: string }

export interface LinkResult {
  name: string;
  part: 'device' | 'sling' | 'knot' | 'eye' | 'connector';
  /** D device, S sling at the eye, K knot or join, E wire eye, C connector end. */
  letter: 'D' | 'S' | 'K' | 'E' | 'C';
  legs?: number;
  spread: Spread;
  certainty: CertaintyWord;
  factors: FactorShare[];
  /** Share of rigs in which this link goes first (whole rig). */
  first: number;
}

export interface Row {
  method: string;
  name: string;
  state: State;
  group: Group;
  /** Place within `ranked`, from 1; rows that count as one share a place. */
  place?: number;
  /** Why apart, why no data, why another sling: sentences for people. */
  reasons: string[];
  /** Every link but the device; null without a result or a published range only. */
  attachment: Spread | null;
  /** All links; null without a rating or a result. */
  rig: Spread | null;
  /** Chance that the attachment breaks above the rating; null without either. */
  aboveRating: number | null;
  /** Chance that it breaks above the demand: the whole rig where a demand is given, else the same as `aboveRating`. */
  aboveDemand: number | null;
  /** Twenty equal parts of the distribution: kN at 2.5 %, 7.5 %, ... 97.5 %. Of the attachment; of the whole rig where a demand is given. Empty without a result. */
  dots: number[];
  /** Raw breaks of the same method, material, kind of eye and near bearing, kN, with their figure. */
  ticks: { figure: string; kn: number[] }[];
  links: LinkResult[];
  /** Twenty letters in order, for the strip. */
  strip: string;
  certainty: CertaintyWord | null;
  /** All figures behind the row. */
  figures: string[];
  /** Published numbers shown beside it, never fed. */
  shown: string[];
  gap?: string;
  /**
   * Nearest tested case; `kn` is its middle. With `weakerThan` it is this method on a thicker wire. `onMm`: the bearing
   * that it was tested on, where that is another one.
   */
  nearest?: { figure: string; why: string; kn: number | null; weakerThan: boolean; onMm?: number };
  /** The two figures whose uncertainty moves the answer most, with the share of ln-variance each brings. */
  moves: { factor: string; figures: string[]; share: number }[];
  oneClipError: { what: string; releases: boolean };
  /** Whether it can be made with a closed sling on a closed eye. */
  closed: { possible: boolean; why: string };
  /** Finished length in cm, when the sling's length is known; 0 where it is too short to be made. What knots and turns take off is assumed. */
  finishedCm: number | null;
  /** Strands and knots that it adds, in words. */
  bulk: string;
}

export interface Comparison {
  evidence: string;
  model: number;
  rig: Rig;
  /** Diameter that was computed with, mm, and whether it was the reader's. */
  bearing: { mm: number; measured: boolean };
  rows: Row[];
  /** One sentence above the rows. */
  summary: string;
}
