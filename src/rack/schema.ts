/** The shape of a register's file, as JSON Schema (draft 2020-12). Import is checked by this same object, and the order of its keys is that of the file. */
import { MAKER_YEARS, WIDTH_RANGE_MM } from '../retirement/answers.ts';
import { FIELD_NAMES } from './field-names.ts';
import { EVENTS, EXPOSURES, FINDINGS, FORMAT, RACK_EYES, RACK_MATERIALS, RACK_USES, VERSION } from './types.ts';

/** The part of JSON Schema that is used here. `title` says in words what the place wants. */
export interface Schema {
  title?: string;
  type?: string | readonly string[];
  const?: string | number;
  enum?: readonly (string | null)[];
  pattern?: string;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  properties?: Readonly<Record<string, Schema>>;
  required?: readonly string[];
  additionalProperties?: false | Schema;
  propertyNames?: Schema;
  items?: Schema;
  maxItems?: number;
  uniqueItems?: boolean;
}

const ID = '^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$';
const COPY = '^[a-z][a-z0-9]{3,15}$';
const ONE_STAMP = '[1-9][0-9]{0,8}@[a-z][a-z0-9]{3,15}';
const id: Schema = { title: 'an id of small letters, digits and hyphens', type: 'string', pattern: ID, maxLength: 60 };
const day: Schema = { title: 'a day such as 2026-11-25', type: 'string', pattern: '^[0-9]{4}-[0-9]{2}-[0-9]{2}$' };
const stamps: Schema = { title: 'an edit such as 3@k7f2, or several with a blank between', type: 'string', pattern: `^${ONE_STAMP}(?: ${ONE_STAMP})*$` };
const words = (maxLength: number): Schema => ({ title: `text of at most ${maxLength} characters`, type: 'string', maxLength });
const nullable = (values: readonly string[]): Schema => ({ enum: [...values, null] });
const range = (minimum: number, maximum: number): Schema => ({ title: `a number from ${minimum} to ${maximum}, or null`, type: ['number', 'null'], minimum, maximum });
/** All keys are required: what is not known is null, never absent. */
const all = (properties: Record<string, Schema>, more: Schema = {}): Schema =>
  ({ title: 'an object', type: 'object', ...more, properties, required: Object.keys(properties), additionalProperties: false });
const partDay: Schema = {
  title: 'a year with or without month and day, or null',
  type: ['object', 'null'],
  properties: {
    year: { title: 'a whole number from 1950 to 2199', type: 'integer', minimum: 1950, maximum: 2199 },
    month: { title: 'a whole number from 1 to 12', type: 'integer', minimum: 1, maximum: 12 },
    day: { title: 'a whole number from 1 to 31', type: 'integer', minimum: 1, maximum: 31 },
  },
  required: ['year'],
  additionalProperties: false,
};

const years = range(MAKER_YEARS.low, MAKER_YEARS.high);

/** One inspection. */
export const INSPECTION_SCHEMA: Schema = all({
  id,
  day,
  findings: { title: 'a list of findings', type: 'array', items: { enum: FINDINGS }, uniqueItems: true },
  by: words(200),
  note: words(4000),
});

/** The events of a sling's life. */
export const EVENTS_SCHEMA: Schema = { title: 'a list of events, or null', type: ['array', 'null'], items: all({ kind: { enum: EVENTS }, when: partDay }), maxItems: 100 };

/** One item. */
export const ITEM_SCHEMA: Schema = all({
  id,
  name: words(200),
  ratingKn: range(1, 40),
  eye: nullable(RACK_EYES),
  sling: all({
    material: nullable(RACK_MATERIALS),
    widthMm: range(WIDTH_RANGE_MM.low, WIDTH_RANGE_MM.high),
    made: partDay,
    firstUse: partDay,
    use: nullable(RACK_USES),
    exposures: { title: 'a list of exposures, or null', type: ['array', 'null'], items: { enum: EXPOSURES }, uniqueItems: true },
    events: EVENTS_SCHEMA,
    maker: all({ retireBy: partDay, yearsFromMade: years, yearsFromFirstUse: years }),
  }),
  count: { title: 'a whole number from 1 to 999', type: 'integer', minimum: 1, maximum: 999 },
  notes: words(4000),
  inspections: { title: 'a list of inspections', type: 'array', items: INSPECTION_SCHEMA },
  changed: { title: 'a moment such as 2026-11-25T10:00:00Z', type: 'string', pattern: '^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z$' },
  removed: { title: 'true or false', type: 'boolean' },
  stamp: stamps,
  stamps: {
    title: 'an object that names fields',
    type: 'object',
    propertyNames: { title: 'the name of a field', type: 'string', pattern: `^(?:${FIELD_NAMES.join('|').replaceAll('.', '\\.')}|inspections/${ID.slice(1, -1)})$` },
    additionalProperties: stamps,
  },
});

/** A whole register. */
export const REGISTER_SCHEMA: Schema = all({
  format: { const: FORMAT },
  version: { const: VERSION },
  invented: { title: 'a sentence, or null', type: ['string', 'null'], maxLength: 500 },
  seen: {
    title: 'an object that counts the edits of each copy',
    type: 'object',
    propertyNames: { title: 'the name of a copy', type: 'string', pattern: COPY },
    additionalProperties: { title: 'a whole number from 1', type: 'integer', minimum: 1, maximum: 999999999 },
  },
  items: { title: 'a list of items', type: 'array', items: ITEM_SCHEMA },
});
