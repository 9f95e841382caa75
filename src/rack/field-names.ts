/** The fields of an item that are edited and merged one by one. An inspection is one more, by its id. */
export const FIELD_NAMES = [
  'name', 'ratingKn', 'eye', 'sling.material', 'sling.widthMm', 'sling.made', 'sling.firstUse', 'sling.use', 'sling.exposures', 'sling.events',
  'sling.maker.retireBy', 'sling.maker.yearsFromMade', 'sling.maker.yearsFromFirstUse',
  'count', 'notes', 'removed',
] as const;
export type FieldName = (typeof FIELD_NAMES)[number];
/** A field, or `inspections/<id>`. */
export type FieldKey = FieldName | `inspections/${string}`;
