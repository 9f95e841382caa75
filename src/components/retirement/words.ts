/** The words in which questions about a sling are asked, and verdicts on it are said. One wording for the verdict, the rack and what is printed. */
import type { Exposure, Material, OldUse, SlingEvent, SlingFinding } from '../../records/schema.ts';
import type { Field, Headline } from '../../retirement/verdict.ts';

/** Fibres, as their labels say. */
export const MATERIAL_ANSWERS: Readonly<Partial<Record<Material, string>>> = {
  hmpe: 'HMPE', nylon: 'nylon (polyamide)', polyester: 'polyester', aramid: 'aramid', 'hmpe-nylon': 'HMPE and nylon, woven together',
};
export const USE_ANSWERS: Readonly<Record<OldUse, string>> = {
  stored: 'stored, not used', seldom: 'a few times a year', monthly: 'every month', weekly: 'every week', daily: 'every day',
};
export const EXPOSURE_ANSWERS: Readonly<Record<Exposure, string>> = {
  light: 'out in the sun for months',
  wet: 'used or put away wet',
  salt: 'salt water or salt air',
  chemicals: 'acid, alkali, bleach, solvent or paint',
  heat: 'more heat than hot water gives',
};
export const EVENT_ANSWERS: Readonly<Record<SlingEvent, string>> = {
  'big-fall': 'a big fall',
  edge: 'a load over an edge',
  'bare-wire': 'a load over a bare wire',
  'test-pull': 'a pull in a test, or past its rating',
};
export const FINDING_ANSWERS: Readonly<Record<SlingFinding, string>> = {
  cut: 'a cut, tear or hole',
  'edge-nick': 'a nick in an edge',
  snag: 'a snagged or pulled yarn',
  fuzz: 'fuzz, or a place worn thin',
  melted: 'a melted, glazed or charred spot',
  stiff: 'a stiff or brittle spot',
  'chemical-burn': 'a burn by acid or alkali',
  faded: 'faded or changed colour',
  dirt: 'dirt that does not wash out',
  stitching: 'pulled, worn or broken stitching',
  'label-missing': 'a label that is missing or cannot be read',
  'tails-slipped': 'tails of a knotted loop that have slipped',
  doubt: 'anything else that raises doubt',
};

const PLAIN_FIELDS: Readonly<Record<string, string>> = {
  material: 'its material', widthMm: 'its width', made: 'when it was made', firstUse: 'when it was first used',
  inspected: 'when it was last inspected', use: 'how often it is used',
};

/** An open question in the middle of a sentence: "when it was made"; "a big fall". */
export function fieldWords(field: Field): string {
  const [group, key] = field.split('.') as [string, string?];
  if (key === undefined) return PLAIN_FIELDS[group] as string;
  return { exposures: EXPOSURE_ANSWERS, events: EVENT_ANSWERS, findings: FINDING_ANSWERS }[group as 'exposures']?.[key as Exposure];
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** A day as it is said: "24 November 2026". @throws RangeError where the text is no day */
export function dayWords(day: string): string {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const name = MONTHS[Number(month) - 1];
  if (!year || !name) throw new RangeError(`day must be a day like 2026-11-24 (got ${day})`);
  return `${Number(date)} ${name} ${year}`;
}

/**
 * What has to be done, without its day: the day follows as a `<time>`. Where an inspection is due at once there is no
 * day to name: it comes before the next use.
 * @param on the day of asking
 */
export function headlineWords(headline: Headline, on: string): { says: string; day: string | null } {
  if (headline.kind === 'retire-now') return { says: 'Retire now', day: null };
  if (headline.kind === 'retire-by') return { says: 'Retire by', day: headline.day };
  return headline.day <= on ? { says: 'Inspect before the next use', day: null } : { says: 'Inspect again by', day: headline.day };
}

/** The same in one text: "Retire by 24 November 2026". */
export function headlineText(headline: Headline, on: string): string {
  const { says, day } = headlineWords(headline, on);
  return day === null ? says : `${says} ${dayWords(day)}`;
}
