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

/** As the comparison names them; a test holds the two together. */
export const EYES: Readonly<Record<Eye, string>> = {
  'bare-wire': 'bare wire',
  'sleeved-wire': 'wire in a plastic sleeve',
  'wire-under-bar': 'wire under a plastic bar',
  'metal-bar': 'metal bar or forged loop',
  'twin-eye': 'twin eye',
};

const FIELDS: Readonly<Record<string, string>> = {
  name: 'name', ratingKn: 'marked rating', eye: 'eye', count: 'how many', notes: 'notes', removed: 'on the rack or off it',
  'sling.material': 'material', 'sling.widthMm': 'width', 'sling.made': 'date of manufacture', 'sling.firstUse': 'first use', 'sling.use': 'use',
  'sling.exposures': 'exposures', 'sling.events': 'events', 'sling.maker.retireBy': 'the maker’s last day',
  'sling.maker.yearsFromMade': 'the maker’s life from manufacture', 'sling.maker.yearsFromFirstUse': 'the maker’s life from first use',
};

/** A field in the middle of a sentence. */
export const fieldName = (field: FieldKey): string => FIELDS[field] ?? 'inspection';

const NOT_KNOWN = 'not known';
const listed = (texts: readonly string[]): string => (texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`);

/** Findings of one inspection. */
export const findingsText = (findings: readonly SlingFinding[]): string => listed(findings.map((one) => FINDING_ANSWERS[one])) || 'nothing found';

/** The value of a field as a reader reads it. */
export function valueText(field: FieldKey, value: unknown): string {
  if (field.startsWith('inspections/')) {
    const look = value as Inspection | null;
    return look ? `${look.day}: ${findingsText(look.findings)}${look.by && `, by ${look.by}`}${look.note && ` (${look.note})`}` : 'taken out';
  }
  if (field === 'removed') return value ? 'off the rack' : 'on the rack';
  if (value === null || value === '') return field === 'notes' || field === 'name' ? 'empty' : NOT_KNOWN;
  switch (field) {
    case 'eye': return EYES[value as Eye];
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

const MAKER: Readonly<Record<string, string>> = {
  [MAKER_RULES[0]]: 'The day that the maker prints',
  [MAKER_RULES[1]]: 'The longest life from manufacture that the maker prints',
  [MAKER_RULES[2]]: 'The longest life from first use that the maker prints',
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
  return `The ${FIELDS[`sling.${field}`]} lies in the time to come by the day of asking. It counts as not known.`;
}
