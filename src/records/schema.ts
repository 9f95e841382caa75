/**
 * The shape of every record in `data/`. Plain zod, no Astro: the build, the
 * record check, the tests and the contributor's editor all read these schemas.
 * A doc comment stands at each field because it is also the contributor's guide.
 *
 * Shape faults are found here; what needs more than one record is a rule in
 * `check/`. In unions the branch is chosen first (by `kind` or `cells`), so one
 * fault gives one message.
 */
import { z } from 'zod';

/** A lower-case name with hyphens: the id of a record, which is also its file name. */
export const slug = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'is not a lower-case name with hyphens');
/** Address of a figure: `source/result`, or `source/result#cell` for one cell of a table. */
export const figureAddress = z
  .string()
  .regex(/^[a-z0-9-]+\/[a-z0-9-]+(?:#[a-z0-9.-]+)?$/, 'is not an address like source/result or source/result#cell');
const words = z.string().min(1);
const positive = z.number().positive();
const isoDate = z.iso.date();

/** Units as printed in sources; code converts to kN and to shares of one. */
export const UNITS = [
  'kN', 'N', 'daN', 'kgf', 'lbf', 'percent', 'ratio', 'mm', 'cm', 'm', 'kg', 'g', 'years', 'months', 'weeks', 'days',
  'celsius', 'count', 'mm per cycle', 'cycles', 'J', 'N/tex', 'g/cm3', 'degrees',
] as const;
export const unit = z.enum(UNITS);

export const MATERIALS = [
  'hmpe', 'nylon', 'polyester', 'aramid', 'hmpe-nylon', 'hmpe-aramid', 'lcp', 'polypropylene', 'steel', 'stainless-steel', 'aluminium',
] as const;
/** Fibre or metal. `hmpe-nylon` is the wide weave of the 1990s: never one with narrow HMPE. */
export const material = z.enum(MATERIALS);

export const FORMS = ['sewn-loop', 'tape', 'cord', 'rope', 'wire', 'device', 'connector', 'yarn', 'lanyard', 'cloth'] as const;
export const form = z.enum(FORMS);

export const EYES = ['bare-wire', 'sleeved-wire', 'wire-under-bar', 'metal-bar', 'twin-eye'] as const;
/** Kind of eye: bare wire; wire in a plastic sleeve; wire under a plastic bar; metal bar or forged loop; twin eye. */
export const eye = z.enum(EYES);

/** What a test loaded the textile over. */
export const bearing = z.enum(['bare-wire', 'sleeved-wire', 'plastic-bar', 'pin', 'connector', 'edge', 'sling', 'drum', 'clamp']);

/** How a test was rigged: a method of ours, or a configuration that is no method (a straight pull, a knot in a single strand). */
export const RIGGINGS = [
  'makers-sling', 'single-layer', 'doubled-layer', 'basket', 'basket-overhand', 'basket-figure-eight', 'girth-hitch',
  'overhand-on-a-bight', 'bowline-on-a-bight', 'quick-link', 'quick-link-doubled', 'double-fishermans-loop',
  'triple-fishermans-loop', 'ring-bend-loop', 'beer-knot-loop', 'twin-eye-basket', 'clip-the-eye', 'keep-the-old-sling',
  'straight', 'doubled', 'girth-sling-to-sling', 'overhand', 'figure-eight', 'figure-nine', 'bowline', 'clove-hitch',
  'overhand-bend', 'offset-bend', 'fishermans-strand', 'barrel', 'butterfly', 'half-hitches', 'two-point-belay',
  'three-arm-anchor', 'flexing', 'sheet-bend', 'wrapped', 'choked',
] as const;
export const rigging = z.enum(RIGGINGS);

/** Conditions of a figure. A field that is absent means: the source does not say. */
export const rig = z.strictObject({
  method: rigging,
  form,
  material,
  /** Width of tape in millimetres. */
  widthMm: positive,
  /** Diameter of cord, rope or wire in millimetres. */
  diameterMm: positive,
  bearing,
  /** Diameter that the textile (or wire) bore on, in millimetres. */
  bearingMm: positive,
  /** Strands that carry the load to the bearing or knot. */
  legs: z.int().min(1),
  state: z.enum(['new', 'used', 'wet', 'frozen', 'exposed']),
  pull: z.enum(['slow', 'drop', 'cyclic']),
  /** Age in years: one number, or from-to. */
  ageYears: z.union([z.number().nonnegative(), z.strictObject({ from: z.number().nonnegative(), to: positive })]),
  note: words,
}).partial();

/** How a printed number is meant. Never a sign inside a string. */
export const RANGE_KINDS = ['extremes of n', 'between products', "author's interval", 'teaching'] as const;
/** The forms of a value, by the field that chooses them. */
export const valueBranches = {
  tests: z.strictObject({
    /** Raw breaks, in the printed unit. */
    tests: z.array(positive).min(1),
    /** Pulls in which something else gave way first: the strength is at least this. */
    censored: z.array(positive).min(1).optional(),
  }),
  mean: z.strictObject({
    mean: positive,
    sd: positive.optional(),
    /** Coefficient of variation as a share of one. */
    cv: positive.max(1).optional(),
    n: z.int().min(1).optional(),
  }),
  low: z.strictObject({
    low: z.number(),
    high: z.number(),
    kind: z.enum(RANGE_KINDS),
    n: z.int().min(1).optional(),
  }).refine((v) => v.low < v.high, { message: 'the low end is not below the high end', path: ['low'] })
    .refine((v) => v.kind !== 'extremes of n' || (v.n ?? 0) >= 2, { message: 'extremes of n need an n of two or more', path: ['kind'] }),
  atLeast: z.strictObject({ atLeast: positive, n: z.int().min(1).optional() }),
  atMost: z.strictObject({ atMost: positive, n: z.int().min(1).optional() }),
  statement: z.strictObject({ statement: words }),
};
export type ValueBranch = keyof typeof valueBranches;
export const VALUE_BRANCHES = Object.keys(valueBranches) as ValueBranch[];

/** One value: a bare number (exact), or an object whose first key names how it is meant. */
export const value = z.unknown().transform((raw, ctx): Value => {
  if (typeof raw === 'number') {
    if (!Number.isFinite(raw)) ctx.addIssue({ code: 'custom', message: 'is not a finite number' });
    return raw;
  }
  const branch = raw && typeof raw === 'object' ? VALUE_BRANCHES.find((key) => key in raw) : undefined;
  if (!branch) {
    ctx.addIssue({ code: 'custom', message: `is neither a number nor an object with one of ${VALUE_BRANCHES.join(', ')}` });
    return z.NEVER;
  }
  const parsed = valueBranches[branch].safeParse(raw);
  if (!parsed.success) {
    for (const issue of parsed.error.issues) ctx.addIssue({ ...issue, path: issue.path } as never);
    return z.NEVER;
  }
  return parsed.data;
});
export type Value =
  | number
  | { tests: number[]; censored?: number[] | undefined }
  | { mean: number; sd?: number | undefined; cv?: number | undefined; n?: number | undefined }
  | { low: number; high: number; kind: (typeof RANGE_KINDS)[number]; n?: number | undefined }
  | { atLeast: number; n?: number | undefined }
  | { atMost: number; n?: number | undefined }
  | { statement: string };

export const KINDS = ['measured', 'required', 'rule', 'constant', 'assumed'] as const;
export const STANDINGS = ['read', 'quoted', 'recalled', 'common-practice', 'derived', 'assumed', 'invented'] as const;

/** One step down in certainty, with its reason. */
export const lowered = z.strictObject({
  /** method: protocol or load cell not stated; few: n; indirect: other material, width, bearing; disagreement: laboratories differ; selected: failures chosen. */
  by: z.enum(['method', 'few', 'indirect', 'disagreement', 'selected']),
  steps: z.union([z.literal(1), z.literal(2)]).default(1),
  why: words,
});

/** Named denominators that are not themselves a figure. */
export const DENOMINATORS = ['rated-minimum', 'unknotted', 'strand', 'twice-strand', 'half-loop-on-10-mm-pins', 'device-rating', 'new', 'catalogue-strength', 'choker-rating', 'vertical-rating'] as const;
/** What a ratio, or a comparison, is a fraction of: a figure's address or one of the named denominators. */
export const denominator = z.union([z.enum(DENOMINATORS), figureAddress]);

/** How a derived value recomputes: a formula over named inputs (`+ - * / ( )`, `sqrt`, `mean`). */
export const derivation = z.strictObject({
  formula: words,
  inputs: z.record(z.string().regex(/^[a-z][a-zA-Z0-9]*$/, 'is not a short name'), figureAddress),
});

const cell = z.strictObject({ value, unit: unit.optional(), of: denominator.optional(), rig: rig.optional(), asPrinted: words.optional(), study: slug.optional(), note: words.optional(), lowered: z.array(lowered).optional() });
const figureCommon = {
  /** What was measured, required or ruled, in the trade's words. */
  what: words,
  kind: z.enum(KINDS),
  /** Unit as printed. */
  unit: unit.optional(),
  of: denominator.optional(),
  rig: rig.optional(),
  /** Laboratory or lineage; two figures of one study count once in a pool. Absent: the source itself. */
  study: slug.optional(),
  /** How we know it. */
  standing: z.enum(STANDINGS),
  /** Page, table, clause or post; `not-recorded` is allowed, shows on the page and lowers certainty. */
  locator: words.optional(),
  /** Day the source was last looked at. */
  checked: isoDate,
  lowered: z.array(lowered).optional(),
  /** The number exactly as printed, quoted, where YAML would change it (`"22.0"`). */
  asPrinted: words.optional(),
  /** Reason for an assumed value. */
  why: words.optional(),
  derived: derivation.optional(),
  note: words.optional(),
};
export const singleFigure = z.strictObject({ ...figureCommon, value: value.optional() });
export const tableFigure = z.strictObject({ ...figureCommon, cells: z.record(z.string().regex(/^[a-z0-9.-]+$/, 'is not a lower-case cell name'), cell) });
export const movedFigure = z.strictObject({ kind: z.literal('moved'), to: figureAddress, on: isoDate, why: words });
export const splitFigure = z.strictObject({ kind: z.literal('split'), to: z.array(figureAddress).min(2), on: isoDate, why: words });
export type Single = z.infer<typeof singleFigure>;
export type Table = z.infer<typeof tableFigure>;
export type Moved = z.infer<typeof movedFigure>;
export type Split = z.infer<typeof splitFigure>;
/** A figure record that leads to a value: what one locator of one source prints, or where that stands now. */
export type FigureRecord = Single | Table | Moved | Split;
export type Cell = z.infer<typeof cell>;
export type RigConditions = z.infer<typeof rig>;
export type Unit = (typeof UNITS)[number];
export type Material = (typeof MATERIALS)[number];
export type Form = (typeof FORMS)[number];
export type Eye = (typeof EYES)[number];
export type Standing = (typeof STANDINGS)[number];
export type Lowered = z.infer<typeof lowered>;

/** Chooses the schema of a figure record by its own words, so that one fault gives one message. */
export function figureSchemaFor(raw: unknown): z.ZodType<FigureRecord | Withdrawn> {
  const r = raw as { kind?: unknown; cells?: unknown } | null;
  if (r && r.kind === 'moved') return movedFigure;
  if (r && r.kind === 'split') return splitFigure;
  if (r && r.kind === 'withdrawn') return withdrawnFigure;
  if (r && r.cells !== undefined) return tableFigure;
  return singleFigure;
}

/** A bibliographic source, in the terms of the Citation Style Language. */
export const source = z.strictObject({
  type: z.enum(['standard', 'report', 'article', 'article-journal', 'paper-conference', 'book', 'chapter', 'webpage', 'post', 'legislation', 'thesis']),
  title: words,
  authors: z.array(words).min(1),
  /** Publisher or issuing body, when it is not the author. */
  publisher: words.optional(),
  container: words.optional(),
  /** Number of a standard, report or law. */
  number: words.optional(),
  edition: words.optional(),
  /** Year, month or day of issue; `unknown` where the source bears none. */
  issued: z.string().regex(/^(unknown|\d{4}(-\d{2}(-\d{2})?)?)$/, 'is not a year, month, day or the word unknown'),
  language: z.string().regex(/^[a-z]{2}$/, 'is not a two-letter language code'),
  url: z.url().optional(),
  doi: words.optional(),
  /** Whether it can be read without paying. */
  free: z.boolean(),
  /** Says that the test is informal, and how. */
  informal: words.optional(),
  checked: isoDate,
  note: words.optional(),
});
export type SourceRecord = z.infer<typeof source>;

const leftOut = z.strictObject({ figure: figureAddress, why: words });
/** A condition that a source implies and does not print: what the factor takes it to be. Each one costs a step of certainty. */
const taken = z.strictObject({ figure: figureAddress, bearingMm: positive.optional(), diameterMm: positive.optional(), why: words })
  .refine((v) => v.bearingMm !== undefined || v.diameterMm !== undefined, { message: 'takes neither a bearing nor a diameter', path: ['figure'] });
const assumedRange = z.strictObject({
  /** Ends of the range that holds nine pieces in ten of what we believe, in the factor's unit. */
  low: positive, high: positive, why: words,
}).refine((v) => v.low < v.high, { message: 'the low end is not below the high end', path: ['low'] });

/** What the model uses: a lognormal factor between figures and a link. */
export const factor = z.strictObject({
  what: words,
  /** `loop`: the factor is a force in kN and no straight strength multiplies it. `rating`: it multiplies the device's rating. Another factor's id: it multiplies that one. */
  acts: z.union([z.literal('loop'), z.literal('rating'), z.strictObject({ multiplies: slug })]),
  class: slug,
  applies: z.strictObject({
    /** How the figures that feed it were rigged. */
    riggings: z.array(rigging).min(1).optional(),
    materials: z.array(material).min(1).optional(),
    forms: z.array(form).min(1).optional(),
    /** Inclusive limits of tape width or cord diameter, in millimetres. */
    widthMm: z.tuple([positive, positive]).optional(),
    /** Bearings of the figures that feed it. */
    bearings: z.array(bearing).min(1).optional(),
    legs: z.int().min(1).optional(),
  }),
  /** `bearingMm`: the factor runs along the diameter that the textile bears on. */
  along: z.literal('bearingMm').optional(),
  from: z.array(figureAddress),
  leftOut: z.array(leftOut).default([]),
  /** What is read into figures of `from` that do not print their bearing or diameter. */
  taken: z.array(taken).default([]),
  /** Assumed multiplier between what was tested and this link (two loops side by side), with spread as sd of ln. */
  times: z.strictObject({ by: positive, spread: z.number().nonnegative(), why: words }).optional(),
  /** Widths to which the factor is carried over with extra spread (sd of ln): certainty becomes very low and the row is never ranked. */
  bridge: z.strictObject({
    widthMm: z.tuple([positive, positive]),
    spread: positive,
    /** The force is carried over with the square of the diameter, as a standard's own minimums go. */
    bySection: z.literal(true).optional(),
    why: words,
  }).optional(),
  /** Where no figure feeds it. */
  assumed: assumedRange.optional(),
  /** A required minimum below which a new piece is not sold: the distribution is cut there. */
  floor: figureAddress.optional(),
});
export type FactorRecord = z.infer<typeof factor>;

const estimated = z.strictObject({ from: z.array(figureAddress).min(1), note: words.optional() });
/** A figure in a group of `tau`: by itself, or as a share of a straight strength of the same lot. */
const compared = z.union([figureAddress, z.strictObject({ figure: figureAddress, over: figureAddress })]);
export type Compared = z.infer<typeof compared>;
/** A class of factors that share one scatter and one spread between studies. */
export const factorClass = z.strictObject({
  what: words,
  /** Within-study coefficient of variation: pooled from the named series, or assumed. */
  cv: z.union([estimated, z.strictObject({ assumed: positive, why: words })]),
  /** The largest coefficient of variation that a series of this class may have before the class itself must be looked at again. Used where a series states no scatter. */
  ceiling: z.strictObject({ cv: positive, why: words }),
  /** Spread between studies, sd of ln: from groups of figures that measured the same thing, borrowed from another class, or assumed. */
  tau: z.union([z.strictObject({ groups: z.array(z.array(compared).min(2)).min(1), note: words.optional() }), z.strictObject({ borrowed: slug, why: words }), z.strictObject({ assumed: positive, why: words })]),
});
export type FactorClassRecord = z.infer<typeof factorClass>;

export const PARTS = ['device', 'sling', 'knot', 'eye', 'connector'] as const;
/** One link of a method's load path. */
export const link = z.strictObject({
  name: words,
  part: z.enum(PARTS),
  /** Where it is: at the eye, at the knot or at the connector. */
  at: z.enum(['device', 'eye', 'knot', 'connector']),
  legs: z.int().min(1).optional(),
  /** Candidates; the first that applies to the sling's material and form governs this link. */
  factors: z.array(slug).min(1),
});
const apartReason = z.strictObject({
  why: words,
  when: z.strictObject({ eyes: z.array(eye).min(1).optional(), materials: z.array(material).min(1).optional() }).optional(),
  /** Inclusive limits of the sling's width that the reason's own figures speak of, in millimetres. */
  widthMm: z.tuple([positive, positive]).optional(),
  /** Figures behind the reason. */
  figures: z.array(figureAddress).default([]),
  /** Published breaks of this very method that the model may not use (a range without n): with them the row is apart, and shows them, even where nothing can be computed. */
  published: z.array(figureAddress).default([]),
});
/** A way of attaching a sling to an eye. Prose stands in `content/methods/`. */
export const method = z.strictObject({
  name: words,
  /** Place in lists. */
  order: z.int().min(1),
  /** `reference`: the maker's own sling, outside every ranking. `comparison`: shown, never ranked. */
  role: z.enum(['reference', 'home', 'comparison']),
  summary: words,
  takes: z.array(form).min(1),
  eyes: z.array(eye).min(1),
  links: z.array(link).min(1),
  /**
   * Finished length: in words; as a share of the sling's length, between 0 and 1; and what knots and turns take off it,
   * in widths (cord: diameters) of the sling. The last is assumed, with its reason.
   */
  length: z.strictObject({ words, share: z.number().min(0).max(1).optional(), lessWidths: positive.optional(), why: words.optional() })
    .refine((v) => v.lessWidths === undefined || (v.share !== undefined && v.why !== undefined), { message: 'what is taken off needs a share to take it from, and a why', path: ['lessWidths'] }),
  /** What it adds to the rack: strands and knots, in words. */
  bulk: words,
  /** How tests that broke this method name their rigging; absent: by the method's own id. */
  riggings: z.array(rigging).min(1).optional(),
  oneClipError: z.strictObject({ what: words, releases: z.boolean() }),
  /** Whether it can be made at all with a closed sling on a closed eye. */
  closed: z.strictObject({ possible: z.boolean(), why: words }),
  apart: z.array(apartReason).default([]),
  /** Figures that a published test gives but that the model may not use. */
  shown: z.array(figureAddress).default([]),
});
export type MethodRecord = z.infer<typeof method>;
export type LinkRecord = z.infer<typeof link>;

/** A sling that a reader may have. */
export const sling = z.strictObject({
  name: words,
  order: z.int().min(1),
  form,
  material,
  /** Width of tape or diameter of cord, in millimetres, as the model uses it. */
  widthMm: positive,
  /** Lengths offered, in centimetres. */
  lengthsCm: z.array(positive).min(1),
  /** The requirement that it is sold under. */
  floor: figureAddress.optional(),
  note: words.optional(),
});
export type SlingRecord = z.infer<typeof sling>;

/** A question that no published figure answers, and the test that would. */
export const gap = z.strictObject({
  question: words,
  /** Cells of the comparison that it leaves empty; an absent field means all. */
  blocks: z.array(z.strictObject({
    methods: z.array(slug).min(1).optional(),
    slings: z.array(slug).min(1).optional(),
    eyes: z.array(eye).min(1).optional(),
    /** Only bearings thinner than this, in millimetres. */
    belowMm: positive.optional(),
    /** Only bearings thicker than this, in millimetres. */
    aboveMm: positive.optional(),
    /** Only where the sling to be attached has been used. */
    used: z.literal(true).optional(),
  })).default([]),
  /** Methods whose page shows this question, besides those that it blocks. */
  concerns: z.array(slug).default([]),
  /** The page that shows it, where that is no method's: that of fall loads. The comparison asks nothing of it. */
  page: z.enum(['falls']).optional(),
  nearest: z.array(figureAddress),
  test: z.strictObject({ rig: words, pulls: z.int().min(1), vary: words.optional(), record: words }),
});
export type GapRecord = z.infer<typeof gap>;

export const OLD_USES = ['stored', 'seldom', 'monthly', 'weekly', 'daily'] as const;
/** How often a sling was used. */
export const oldUse = z.enum(OLD_USES);
export type OldUse = z.infer<typeof oldUse>;
export const OLD_LIGHTS = ['dark', 'sun'] as const;
/** Where a sling was kept when it was not climbed with: in the dark, or out in the sun for months. */
export const oldLight = z.enum(OLD_LIGHTS);
export type OldLight = z.infer<typeof oldLight>;

export const EXPOSURES = ['light', 'salt', 'wet', 'chemicals', 'heat'] as const;
/**
 * What a sling was exposed to: out in the sun for months; salt water or salt air; put away or used wet; acid, alkali,
 * bleach, solvent or paint; more heat than hot water gives.
 */
export const exposure = z.enum(EXPOSURES);
export type Exposure = (typeof EXPOSURES)[number];
export const EVENTS = ['big-fall', 'edge', 'bare-wire', 'test-pull'] as const;
/** What happened to a sling once: a big fall; a load over an edge; a load over a bare wire; a pull in a test, or past its rating. */
export const event = z.enum(EVENTS);
export type SlingEvent = (typeof EVENTS)[number];
export const FINDINGS = [
  'cut', 'edge-nick', 'snag', 'fuzz', 'melted', 'stiff', 'chemical-burn', 'faded', 'stitching', 'label-missing', 'dirt', 'tails-slipped', 'doubt',
] as const;
/**
 * What an inspection finds: a cut, tear or hole; a nick in an edge; a snagged or pulled yarn; fuzz, or a place worn thin;
 * a melted, glazed or charred spot; a stiff or brittle spot; a burn by acid or alkali; faded or changed colour; pulled,
 * worn or broken stitching; a label that is missing or cannot be read; dirt that does not wash out; tails of a knotted
 * loop that have slipped; anything else that raises doubt.
 */
export const finding = z.enum(FINDINGS);
export type SlingFinding = (typeof FINDINGS)[number];
export const DUE_FROM = ['made', 'first-use', 'inspection'] as const;
/** Day that a rule counts from: of manufacture, of first use, of the last thorough inspection. */
export type DueFrom = (typeof DUE_FROM)[number];

/** A rule of retirement: on what condition a sling has to go, or to be looked at. */
export const rule = z.strictObject({
  /** The rule in a few words. */
  what: words,
  /** Place among rules of one verdict. */
  order: z.int().min(1),
  verdict: z.enum(['retire', 'inspect']),
  /** All fields must be met, each by any one of its words. An absent field means any. What the reader does not know counts as met. */
  when: z.strictObject({
    materials: z.array(material).min(1).optional(),
    uses: z.array(oldUse).min(1).optional(),
    /** Inclusive limits of tape width or cord diameter, in millimetres. */
    widthMm: z.tuple([positive, positive]).optional(),
    exposures: z.array(exposure).min(1).optional(),
    events: z.array(event).min(1).optional(),
    findings: z.array(finding).min(1).optional(),
  }).default({}),
  /** Time after which it falls due: a figure's own value, its upper bound, or the age at which its group begins. Absent: at once. */
  due: z.strictObject({
    figure: figureAddress,
    reads: z.enum(['value', 'at most', 'age from']),
    /** What the time is counted from. */
    from: z.enum(DUE_FROM).default('made'),
  }).optional(),
  /** The reason as a sentence for people, without a number. */
  says: words,
  /** Figures behind it. */
  figures: z.array(figureAddress).min(1),
});
export type RuleRecord = z.infer<typeof rule>;
type ReadOfRule = Pick<RuleRecord, 'order' | 'verdict' | 'when' | 'says' | 'figures'>;
/** A rule that the comparison can decide from material, age, use and light, with the number that its figure says: years from manufacture, or null where it holds at once. */
export interface RetirementRule extends Omit<ReadOfRule, 'when'> {
  when: Pick<RuleRecord['when'], 'materials' | 'uses'> & { exposures?: 'light'[] | undefined };
  years: number | null;
}
/** Any rule with the time that its figure says, in whole months; null where it holds at once. */
export interface VerdictRule extends ReadOfRule { what: string; due: { months: number; from: DueFrom } | null }

/** What must be true before a way is open. */
export const ROUTE_CONDITIONS = ['maker-and-workshop-refused', 'not-retire-now'] as const;
/** A way to get a new sling, or to do without one. */
export const replacement = z.strictObject({
  name: words,
  order: z.int().min(1),
  who: words,
  keeps: words,
  /** The way is open only then: both refused, or no verdict says that the sling has to go now. Absent: always. */
  only: z.enum(ROUTE_CONDITIONS).optional(),
  refuses: words.optional(),
  ask: z.array(words).min(1),
  /** How to clean the devices, and how to pack them for the post; only where something is sent. */
  packing: z.array(words).min(1).optional(),
  figures: z.array(figureAddress).default([]),
});
export type ReplacementRecord = z.infer<typeof replacement>;

/** What the law of one region says, sentence by sentence. */
export const law = z.strictObject({
  region: z.enum(['eu', 'uk', 'us', 'elsewhere']),
  /** Where it holds, and what was not looked at. */
  covers: words,
  sentences: z.array(z.strictObject({
    /** One sentence for people, without a number. */
    says: words,
    /** Rules of law that it rests on. */
    figures: z.array(figureAddress).min(1),
    /** Day on which they were last looked at. */
    checked: isoDate,
  })).min(1),
});
export type LawRecord = z.infer<typeof law>;

export const TOPICS = ['knots', 'bearings', 'wet', 'hot', 'light', 'chemicals', 'age', 'repeated'] as const;
/** What may change the strength of a material: knots, thin bearings, water, heat, light, chemicals, age and use, loads that come again and again. */
export type Topic = (typeof TOPICS)[number];
const topic = z.strictObject({
  /** Figures that the pages show here. */
  figures: z.array(figureAddress),
  /** Open questions that ask for what is missing. */
  gaps: z.array(slug).default([]),
  /** What we looked for and did not find, or why there is nothing to look for, as a sentence for people. */
  none: words.optional(),
}).refine((v) => v.figures.length > 0 || v.gaps.length > 0 || v.none !== undefined, { message: 'shows no figure, and says of no gap that it is open and of nothing that it was not found', path: ['figures'] });
export type TopicRecord = z.infer<typeof topic>;

/** A material on the rack. Prose stands in `content/materials/`. */
export const rackMaterial = z.strictObject({
  name: words,
  /** Place in lists. */
  order: z.int().min(1),
  /** Fibres are compared with fibres, metal with metal. */
  family: z.enum(['fibre', 'metal']),
  summary: words,
  /** What the rig of its figures may name as material; a figure whose source names none may stand here too. */
  materials: z.array(material).min(1),
  /** What changes its strength, topic by topic. */
  topics: z.strictObject({ knots: topic, bearings: topic, wet: topic, hot: topic, light: topic, chemicals: topic, age: topic, repeated: topic } satisfies Record<Topic, unknown>),
});
export type RackMaterialRecord = z.infer<typeof rackMaterial>;

/** A figure that we no longer stand behind. Its id and its page stay; nothing may refer to it. */
export const withdrawnFigure = z.strictObject({
  kind: z.literal('withdrawn'),
  on: isoDate,
  /** Reason, as a sentence for people. */
  why: words,
  /** What the figure said, in words and without its number: that stands in the frozen versions. */
  was: words,
});
export type Withdrawn = z.infer<typeof withdrawnFigure>;

export const CORRECTION_STATUSES = ['open', 'reported', 'acknowledged', 'fixed'] as const;
/** An error in a source: what it prints, what we use in its place, and why. The figure carries both, as `asPrinted` and `value`. */
export const correction = z.strictObject({
  figure: figureAddress,
  /** The number or words as the source prints them. */
  printed: words,
  /** What we use: a number in the figure's unit, or words. */
  used: z.union([z.number(), words]),
  /** Why the source must be wrong, as a sentence for people. */
  reason: words,
  /** To whom the error was reported, and when. */
  reported: words.optional(),
  /** Where it stands with the source; `fixed`: a later edition prints what we use. */
  status: z.enum(CORRECTION_STATUSES),
  /** Day on which the correction was made. */
  on: isoDate,
  /** Guard: what the figure's record must go on to say. */
  expect: z.strictObject({
    /** The figure's `asPrinted`, or its value as written. */
    printed: words,
  }),
}).refine((v) => v.status === 'open' || v.reported !== undefined, { message: 'is more than open, and does not say to whom it was reported', path: ['status'] });
export type CorrectionRecord = z.infer<typeof correction>;

const besideSeries = z.strictObject({
  /** Id of the series, of the same source. */
  series: slug,
  /** Why the two belong beside each other, as a sentence for people. */
  why: words,
});
export const RIGS_PULLED = ['one for each pull', 'one for all pulls'] as const;
/** How a series was pulled. What is absent nobody wrote down; the page says so. */
const pulledHow = z.strictObject({
  /** Day of the first pull. */
  on: isoDate,
  /** Kind of machine, without its maker. */
  machine: words,
  /** How fast the ends were drawn apart, in millimetres a minute. */
  rateMmPerMin: positive.optional(),
  loadCell: z.strictObject({
    /** Greatest force that it is made for. */
    capacityKn: positive,
    /** Day of its last calibration. */
    calibrated: isoDate.optional(),
  }).optional(),
  samplesPerSecond: positive.optional(),
  /** What was done with the pieces before: hours, climate, knots drawn tight. */
  conditioning: words.optional(),
  /** Whether all pieces came from one lot: then other lots may scatter more. */
  oneLot: z.boolean(),
  /** Whether the device and what it hung on were new for each pull. */
  rigs: z.enum(RIGS_PULLED),
});
const seriesCommon = {
  /** What was broken, in the trade's words: the heading of its page. */
  what: words,
  /** The same in the middle of a sentence: "the girth hitch". */
  called: words,
  /** Part whose strength the series is about. A pull in which another part broke is a lower limit. Absent: whatever breaks. */
  part: words.optional(),
  beside: z.array(besideSeries).default([]),
  note: words.optional(),
};
/** A series that a source prints pull by pull. Source, standing, conditions and forces are those of its figure. */
export const publishedSeries = z.strictObject({
  ...seriesCommon,
  /** Figure or cell whose `tests` and `censored` these pulls are. */
  figure: figureAddress,
  /** What is known beyond the figure. */
  pulled: pulledHow.optional(),
});
/** A series that stands by itself: contributed with all that a tester records, or invented for the examples. */
export const ownSeries = z.strictObject({
  ...seriesCommon,
  standing: z.enum(['read', 'quoted', 'recalled', 'invented']),
  source: slug.optional(),
  locator: words.optional(),
  checked: isoDate,
  rig,
  pulled: pulledHow,
  lowered: z.array(lowered).optional(),
});
export type PublishedSeries = z.infer<typeof publishedSeries>;
export type OwnSeries = z.infer<typeof ownSeries>;
/** A set of breaks of one rig. The pulls stand in the CSV beside it. */
export type SeriesRecord = PublishedSeries | OwnSeries;

/** Chooses the schema of a series: it names a figure, or it has fields of one that stands by itself. */
export function seriesSchemaFor(raw: unknown): z.ZodType<SeriesRecord> {
  const fields = Object.keys((raw ?? {}) as object);
  const isOwn = !fields.includes('figure') && fields.some((field) => field in ownSeries.shape && !(field in publishedSeries.shape));
  return isOwn ? ownSeries : publishedSeries;
}
