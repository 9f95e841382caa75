/** A quantity as people write it: a number with point or comma, and perhaps its unit. */

/** A value in the unit asked for, or what is wrong with the text in words that say what to do. */
export type ReadQuantity = { ok: true; value: number } | { ok: false; why: string };

/** What a field asks for. */
export interface QuantityRange {
  low: number;
  high: number;
  /** Unit of `low`, `high` and the value; what stands without a unit is in it. */
  unit: string;
  /** Other units that may be written, and how many of `unit` one of them is. */
  others: Readonly<Record<string, number>>;
}

const SHAPE = /^(\d{1,9}(?:[.,]\d{1,9})?|[.,]\d{1,9})\s*([a-z"'\u2032]*)$/;
/** Signs and plurals that stand for a unit. */
const SPELLED: Readonly<Record<string, string>> = {
  metres: 'm', metre: 'm', meters: 'm', meter: 'm', feet: 'ft', foot: 'ft', "'": 'ft', '\u2032': 'ft', kilos: 'kg', kilo: 'kg', kgs: 'kg', lbs: 'lb', pounds: 'lb', pound: 'lb',
};

/** A number without the noise of a conversion. */
const short = (value: number): string => String(Number(value.toPrecision(4)));

/**
 * Reads `80`, `80 kg`, `2,5 m` or `30 ft`. A number outside the range is refused, not moved to its end.
 * @param text as typed; blanks around it and the case of the unit do not matter
 */
export function readQuantity(text: string, { low, high, unit, others }: QuantityRange): ReadQuantity {
  const match = SHAPE.exec(text.trim().toLowerCase());
  const written = match ? (SPELLED[match[2] ?? ''] ?? match[2] ?? '') : '';
  const factor = written === '' || written === unit.toLowerCase() ? 1 : Object.entries(others).find(([name]) => name.toLowerCase() === written)?.[1];
  const range = `from ${short(low)} to ${short(high)} ${unit}`;
  if (!match) return { ok: false, why: `no plain number; write one ${range}` };
  if (factor === undefined) return { ok: false, why: `the unit ${match[2]} is not known here; write ${[unit, ...Object.keys(others)].join(' or ')}` };
  const value = Number((match[1] as string).replace(',', '.')) * factor;
  return value < low || value > high ? { ok: false, why: `outside ${short(low)} to ${short(high)} ${unit}` } : { ok: true, value };
}
