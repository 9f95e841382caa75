/** The words of the register: fields, items in short, and what an edit did. */
import type { Eye, SlingFinding } from '../../records/schema.ts';
import type { FieldKey } from '../../rack/field-names.ts';
import { FIBRE_NAMES } from '../../rack/item-words.ts';
import { type PartDay, writePartDay } from '../../rack/part-day.ts';
import type { DateFault } from '../../rack/sling-history.ts';
import type { Inspection, RackEvent } from '../../rack/types.ts';
import { MAKER_RULES, type Reason } from '../../retirement/verdict.ts';
import { EVENT_ANSWERS, EXPOSURE_ANSWERS, fieldWords, FINDING_ANSWERS, USE_ANSWERS } from '../retirement/words.ts';
import type { RackSetup } from './setup.ts';

/** Fields as the form calls them. */
export const FIELDS: Readonly<Record<string, string>> = {
  name: 'Name', ratingKn: 'Marked rating', eye: 'Eye: what the sling sits in', count: 'How many alike', notes: 'Notes', removed: 'On the rack or off it',
  'sling.material': 'Material', 'sling.widthMm': 'Width, or diameter of cord', 'sling.made': 'Date of manufacture', 'sling.firstUse': 'First use', 'sling.use': 'Use',
  'sling.exposures': 'What it was exposed to', 'sling.events': 'What happened to it', 'sling.maker.retireBy': 'Last day that the maker prints',
  'sling.maker.yearsFromMade': 'Longest life from manufacture', 'sling.maker.yearsFromFirstUse': 'Longest life from first use',
};

/** A field in the middle of a sentence. */
export const fieldName = (field: FieldKey): string => (FIELDS[field] ?? 'Inspection').replace(/^./, (letter) => letter.toLowerCase());

const NOT_KNOWN = 'not known';
const listed = (texts: readonly string[]): string => (texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`);

/** Findings of one inspection. */
export const findingsText = (findings: readonly SlingFinding[]): string => listed(findings.map((one) => FINDING_ANSWERS[one])) || 'nothing found';

/** The value of a field as a reader reads it. */
export function valueText(field: FieldKey, value: unknown, eyes: RackSetup['eyes']): string {
  if (field.startsWith('inspections/')) {
    const look = value as Inspection | null;
    return look ? `${look.day}: ${findingsText(look.findings)}${look.by && `, by ${look.by}`}${look.note && ` (${look.note})`}` : 'taken out';
  }
  if (field === 'removed') return value ? 'off the rack' : 'on the rack';
  if (value === null || value === '') return field === 'notes' || field === 'name' ? 'empty' : NOT_KNOWN;
  switch (field) {
    case 'eye': return eyes[value as Eye];
    case 'sling.material': return FIBRE_NAMES[value as 'hmpe'] as string;
    case 'sling.use': return USE_ANSWERS[value as 'stored'];
    case 'sling.exposures': return listed((value as 'light'[]).map((one) => EXPOSURE_ANSWERS[one])) || 'none';
    case 'sling.events': return listed((value as RackEvent[]).map(({ kind, when }) => EVENT_ANSWERS[kind] + (when ? ` (${writePartDay(when)})` : ''))) || 'none';
    case 'sling.made': case 'sling.firstUse': case 'sling.maker.retireBy': return writePartDay(value as PartDay);
    case 'ratingKn': return `${value} kN`;
    case 'sling.widthMm': return `${value} mm`;
    case 'sling.maker.yearsFromMade': case 'sling.maker.yearsFromFirstUse': return `${value} years`;
    default: return String(value);
  }
}

const MAKER: Readonly<Record<string, string | undefined>> = {
  [MAKER_RULES[0]]: FIELDS['sling.maker.retireBy'],
  [MAKER_RULES[1]]: `${FIELDS['sling.maker.yearsFromMade']} that the maker prints`,
  [MAKER_RULES[2]]: `${FIELDS['sling.maker.yearsFromFirstUse']} that the maker prints`,
};

/** Name of the rule behind a reason. */
export const ruleName = ({ rule }: Pick<Reason, 'rule'>, rules: RackSetup['rules']): string => rules[rule]?.what ?? MAKER[rule] ?? rule;

/** Questions that are open, in the middle of a sentence. */
export const openText = (unknown: Reason['unknown']): string => listed(unknown.map(fieldWords));

/** A date that could not be used, as a sentence. */
export function faultText({ field, why }: DateFault): string {
  if (why === 'of-earlier-sling') return 'An inspection before the sling was made was of an earlier sling. It is not counted.';
  if (why === 'before-made') return 'The first use lies before the date of manufacture. One of them is wrong, so both count as not known.';
  if (field === 'inspected') return 'An inspection is dated on a day to come. What it found counts; what it did not find does not.';
  return `${FIELDS[`sling.${field}`]}: a day to come. It counts as not known.`;
}
