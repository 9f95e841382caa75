/** Where a bearing lies among those that were tested. */

/** Bearings closer than this are one bearing, mm; a hair more, so that 4.3 - 3.8 counts as a half. */
export const SAME_BEARING_MM = 0.5 + 1e-9;

/** At a tested bearing, between two of them, or beyond all: there nothing is known. */
export type BearingPlace = { at: number } | { between: readonly [number, number] } | { miss: 'thinner' | 'thicker' };

/**
 * The place of one bearing, mm. Thicker than a test by half a millimetre or less counts as that test; so does thinner,
 * but only where no thinner test gives a line: a bearing is never taken for a thicker one when more is known.
 * @param tested bearings, mm, thinnest first
 */
export function bearingPlace(bearingMm: number, tested: readonly number[]): BearingPlace {
  const same = tested.find((t) => bearingMm >= t && bearingMm - t <= SAME_BEARING_MM);
  if (same !== undefined) return { at: same };
  const thick = tested.find((t) => t > bearingMm);
  const thin = tested.findLast((t) => t < bearingMm);
  if (thin === undefined && thick !== undefined && thick - bearingMm <= SAME_BEARING_MM) return { at: thick };
  if (thin === undefined) return { miss: 'thinner' };
  return thick === undefined ? { miss: 'thicker' } : { between: [thin, thick] };
}
