/**
 * `npm run -s compare -- "<query string>"`: the comparison of a link as JSON on standard output.
 * The same parser and engine as the page; pieces of the link that were not understood are listed in `notUnderstood`.
 */
import { loadEvidence } from '../build/evidence.ts';
import { parseLink } from '../links/parse-link.ts';
import { serialiseLink } from '../links/serialise-link.ts';
import { compare } from '../strength/compare.ts';
import type { Row } from '../strength/types.ts';

/** One method as JSON: forces in kN, chances and shares between 0 and 1. */
function methodOf(row: Row): unknown {
  return {
    id: row.method,
    name: row.name,
    state: row.state,
    reason: row.reasons,
    group: row.group,
    place: row.place ?? null,
    attachment: row.attachment,
    rig: row.rig,
    aboveRating: row.aboveRating,
    aboveDemand: row.aboveDemand,
    firstBreak: row.links.map(({ name, letter, first }) => ({ link: name, letter, share: first })),
    certainty: row.certainty,
    figures: row.figures,
    shown: row.shown,
    gap: row.gap ?? null,
    nearest: row.nearest ?? null,
  };
}

const query = process.argv.slice(2).join('&').replace(/^\?/, '');
const evidence = loadEvidence();
const { rig, notUnderstood } = parseLink(query, { slings: Object.keys(evidence.slings) });
const comparison = compare(evidence, rig);
process.stdout.write(`${JSON.stringify({
  evidence: comparison.evidence,
  model: comparison.model,
  query: serialiseLink(rig),
  notUnderstood,
  rig,
  bearing: comparison.bearing,
  summary: comparison.summary,
  methods: comparison.rows.map(methodOf),
}, null, 2)}\n`);
