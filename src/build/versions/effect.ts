/**
 * What the records in hand change in the answers, against the newest frozen version: so that no figure moves an answer
 * silently. Old and new middle of each method whose numbers or states moved, on a few fixed rigs for each sling.
 */
import { compare } from '../../strength/compare.ts';
import type { Eye } from '../../records/schema.ts';
import type { Evidence, Rig, Row } from '../../strength/types.ts';

/** Eyes and bearings that are asked: a wire that nobody measured, a measured one in its sleeve, a bar as thick as the usual test pin. */
const CASES: readonly { eye: Eye; bearingMm: number | null; words: string }[] = [
  { eye: 'bare-wire', bearingMm: null, words: 'bare wire, not measured' },
  { eye: 'sleeved-wire', bearingMm: 3.8, words: 'sleeved wire, 3.8 mm' },
  { eye: 'metal-bar', bearingMm: 10, words: 'metal bar, 10 mm' },
];
const RATING_KN = 12;

/** One method on one rig, before and after. */
export interface Effect { method: string; sling: string; rig: string; was: string; now: string }

const ABSENT = 'not there';
/** A row in a few words: its group, and its middle where it has one. */
const shown = (row: Row | undefined): string =>
  (row === undefined ? ABSENT : row.attachment ? `${row.attachment.middle.toFixed(1)} kN, ${row.group}` : row.group.replaceAll('-', ' '));

/** Every method and rig whose middle, to the digit shown, or group differs between two states of the evidence. */
export function effects(older: Evidence, newer: Evidence): Effect[] {
  const found: Effect[] = [];
  const slings = [...new Set([...Object.keys(older.slings), ...Object.keys(newer.slings)])];
  for (const sling of slings) for (const { eye, bearingMm, words } of CASES) {
    const rig: Rig = { ratingKn: RATING_KN, eye, bearingMm, sling, lengthCm: null, slingState: 'new', demandKn: null, old: null };
    const rows = (evidence: Evidence): Map<string, Row> => new Map(sling in evidence.slings ? compare(evidence, rig).rows.map((row) => [row.method, row]) : []);
    const [before, after] = [rows(older), rows(newer)];
    for (const method of new Set([...before.keys(), ...after.keys()])) {
      // A sling or a method that comes without a number changes no answer.
      if (!before.has(method) && !after.get(method)?.attachment) continue;
      const [was, now] = [shown(before.get(method)), shown(after.get(method))];
      if (was !== now) found.push({ method, sling, rig: words, was, now });
    }
  }
  return found;
}

/** The effects as lines for a terminal; where nothing moved, one line that says so. */
export function effectReport(version: string, found: readonly Effect[]): string {
  if (found.length === 0) return `Effect: no answer differs from evidence ${version} on the rigs that are asked (rated ${RATING_KN} kN).`;
  const methods = [...new Set(found.map(({ method }) => method))].sort();
  const lines = methods.flatMap((method) => {
    const own = found.filter((one) => one.method === method);
    const width = Math.max(...own.map(({ sling, rig }) => sling.length + rig.length + 2));
    return [method, ...own.map(({ sling, rig, was, now }) => `  ${`${sling}, ${rig}`.padEnd(width)}  ${was} -> ${now}`)];
  });
  return [`Effect on the answers against evidence ${version}, middle of the attachment (rated ${RATING_KN} kN):`, ...lines].join('\n');
}
