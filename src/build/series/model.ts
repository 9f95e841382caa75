/** What the strength model says of the rig of a series: its attachment, or why the two cannot be set side by side. */
import type { Eye, RigConditions } from '../../records/schema.ts';
import { compare } from '../../strength/compare.ts';
import type { Evidence, Rig, Row } from '../../strength/types.ts';

/** Nearness at which a sling of the comparator is that of a series, mm: the model's own hard stop. */
const NEAR_MM = { tape: 2, cord: 0.5 };
const EYE_OF: Partial<Record<NonNullable<RigConditions['bearing']>, Eye>> = {
  'bare-wire': 'bare-wire', 'sleeved-wire': 'sleeved-wire', 'plastic-bar': 'wire-under-bar', pin: 'metal-bar',
};

/**
 * Why there is no answer. `method`: no way of attaching a sling is rigged so. `bearing`: what it was pulled over, or how
 * thick that was, is no eye of a device. `sling`: the comparator has no such sling. `state`: it was not new. `pull`: not a
 * slow pull. `silent`: the model gives no number for this rig, for the reasons of its row.
 */
export type NoModel = 'method' | 'bearing' | 'sling' | 'state' | 'pull' | 'silent';
export type SeriesModel = { rig: Rig; row: Row & { attachment: NonNullable<Row['attachment']> } } | { why: NoModel; reasons: readonly string[] };

/** The comparator's sling of a rig, or null. */
function slingOf({ form, material, widthMm, diameterMm }: RigConditions, evidence: Evidence): string | null {
  const width = form === 'cord' ? diameterMm : widthMm;
  if (width === undefined) return null;
  const near = form === 'cord' ? NEAR_MM.cord : NEAR_MM.tape;
  const found = Object.entries(evidence.slings)
    .filter(([, sling]) => sling.form === form && sling.material === material && Math.abs(sling.widthMm - width) <= near)
    .sort(([, a], [, b]) => Math.abs(a.widthMm - width) - Math.abs(b.widthMm - width));
  return found[0]?.[0] ?? null;
}

/** The model's answer for the rig of a series, new and in one slow pull. */
export function seriesModel(rig: RigConditions, evidence: Evidence): SeriesModel {
  const no = (why: NoModel, reasons: readonly string[] = []): SeriesModel => ({ why, reasons });
  const method = Object.entries(evidence.methods).find(([id, one]) => one.role === 'home' && (one.riggings ?? [id]).includes(rig.method as never));
  if (!rig.method || !method) return no('method');
  const eye = rig.bearing && EYE_OF[rig.bearing];
  if (!eye || rig.bearingMm === undefined) return no('bearing');
  const sling = slingOf(rig, evidence);
  if (!sling) return no('sling');
  if (rig.state !== undefined && rig.state !== 'new') return no('state');
  if (rig.pull !== undefined && rig.pull !== 'slow') return no('pull');
  const asked: Rig = { ratingKn: null, eye, bearingMm: rig.bearingMm, sling, lengthCm: null, slingState: 'new', demandKn: null, old: null };
  const row = compare(evidence, asked).rows.find((one) => one.method === method[0]);
  if (!row?.attachment) return no('silent', row?.reasons ?? []);
  return { rig: asked, row: { ...row, attachment: row.attachment } };
}
