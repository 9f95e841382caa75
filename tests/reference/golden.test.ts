/**
 * The published pulls on wire, alone as evidence, against the model's middle at the eye.
 * Source: M. Ibarra, report of 4 August 2021, 10 mm HMPE sewn sling on a 3.8 mm steel nut cable, printed means 10.793 kN
 * (girth hitch, four pulls) and 13.837 kN (passed doubled, three pulls).
 */
import { expect, test } from 'vitest';
import { loadEvidence } from '../../src/build/evidence.ts';
import { compare } from '../../src/strength/compare.ts';
import type { Evidence, Rig } from '../../src/strength/types.ts';

const wireOnly = (): Evidence => {
  const evidence = structuredClone(loadEvidence());
  for (const factor of Object.values(evidence.factors)) {
    if (factor.along) factor.from = factor.from.filter((id) => id.startsWith('ibarra-2021/') && evidence.figures[id]?.rig.bearing === 'bare-wire');
  }
  return evidence;
};
const rig: Rig = { ratingKn: 12, eye: 'bare-wire', bearingMm: 3.8, sling: 'hmpe-10', lengthCm: 60, slingState: 'new', demandKn: null, old: null };

test.each([['girth-hitch', 10.8], ['basket', 13.8]])('%s of 10 mm HMPE on bare 3.8 mm wire has middle %d kN at the eye, within 3 in 100', (method, printed) => {
  const row = compare(wireOnly(), rig).rows.find((r) => r.method === method);
  const eye = row?.links.find((link) => link.part === 'sling');
  expect(Math.abs((eye?.spread.middle ?? 0) / printed - 1)).toBeLessThan(0.03);
  expect(eye?.factors.flatMap((f) => f.figures)).toEqual([`ibarra-2021/${method === 'basket' ? 'basket' : 'girth'}-on-wire`]);
});
