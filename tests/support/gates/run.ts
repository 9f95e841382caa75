/**
 * Runs every gate on the built site in `dist/`, prints what is wrong and counts the gates.
 *
 * `node tests/support/gates/run.ts [report file] [words]`: the report is a JSON with `passed` and `failed`;
 * words choose gates by the start of their name. `BUILT_SITE` names another folder than dist/.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { asBase } from '../../../src/commands/static-server.ts';
import { ROOT } from '../step.ts';
import { bytes } from './bytes.ts';
import { headings } from './headings.ts';
import { hosting } from './hosting.ts';
import { links } from './links.ts';
import { markup } from './markup.ts';
import { offline } from './offline.ts';
import { plainWords } from './plain-words.ts';
import { policy } from './policy.ts';
import { provenance } from './provenance.ts';
import { readSite, type Gate } from './site.ts';
import { thirdParty } from './third-party.ts';

export const GATES: readonly Gate[] = [links, provenance, bytes, offline, policy, thirdParty, hosting, markup, headings, plainWords];

/** Faults printed for one gate; the rest is counted. `FAULTS=all` prints every one. */
const SHOWN = process.env['FAULTS'] === 'all' ? Number.POSITIVE_INFINITY : 25;

const [report, ...words] = process.argv.slice(2);
const site = readSite(process.env['BUILT_SITE'] ?? join(ROOT, 'dist'), asBase(process.env['BASE_PATH'] ?? '/'));
const gates = words.length === 0 ? GATES : GATES.filter((gate) => words.some((word) => gate.name.startsWith(word)));
let failed = 0;
for (const gate of gates) {
  const started = performance.now();
  const faults = await gate.check(site);
  const time = `${((performance.now() - started) / 1000).toFixed(1)} s`;
  if (faults.length === 0) {
    console.log(`pass  ${gate.name}: ${gate.holds} (${site.pages.length} pages, ${time})`);
    for (const line of gate.says?.(site) ?? []) console.log(`      ${line}`);
    continue;
  }
  failed += 1;
  console.log(`FAIL  ${gate.name}: ${faults.length} faults on ${new Set(faults.map((fault) => fault.page)).size} of ${site.pages.length} pages (${time})`);
  // A fault of the frame stands on every page: it is said once.
  const byMessage = new Map<string, Set<string>>();
  for (const fault of faults) byMessage.set(fault.message, (byMessage.get(fault.message) ?? new Set()).add(fault.page));
  for (const [message, pages] of [...byMessage].slice(0, SHOWN)) {
    const [first] = pages;
    console.log(`      ${first}${pages.size > 1 ? ` and ${pages.size - 1} more` : ''}: ${message}`);
  }
  if (byMessage.size > SHOWN) console.log(`      ... and ${byMessage.size - SHOWN} more (FAULTS=all prints them)`);
  for (const line of gate.says?.(site) ?? []) console.log(`      ${line}`);
}
if (report && report !== '-') {
  mkdirSync(dirname(report), { recursive: true });
  writeFileSync(report, JSON.stringify({ passed: gates.length - failed, failed }));
}
process.exitCode = failed === 0 ? 0 : 1;
