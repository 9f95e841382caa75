/**
 * `npm run -s compare -- "<query string>"`: the comparison of a link as JSON on standard output.
 * The same parser and engine as the page; pieces of the link that were not understood are listed in `notUnderstood`.
 */
import { loadEvidence } from '../build/evidence.ts';
import { parseLink } from '../links/parse-link.ts';
import { serialiseLink } from '../links/serialise-link.ts';
import { compare } from '../strength/compare.ts';
import { methodData } from '../strength/method-data.ts';
import type { Rig, Row } from '../strength/types.ts';

/** One method as the page's own JSON has it, with all digits: forces in kN, chances and shares between 0 and 1. */
function methodOf(row: Row, rig: Rig): unknown {
  return {
    ...methodData(row, rig, (kn) => kn),
    aboveRating: row.aboveRating,
    aboveDemand: row.aboveDemand,
    firstBreak: row.links.map(({ name, letter, first }) => ({ link: name, letter, share: first })),
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
  methods: comparison.rows.map((row) => methodOf(row, rig)),
}, null, 2)}\n`);
