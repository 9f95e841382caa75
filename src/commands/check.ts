/**
 * `npm run check`: prints every fault of the records and the prose, and fails when there is one. Without a fault it prints
 * what the records change in the answers, against the newest frozen version.
 */
import { resolve } from 'node:path';
import { effectReport, effects } from '../build/versions/effect.ts';
import { evidenceOf, newestVersion } from '../build/evidence.ts';
import { JOINED_RULES } from '../build/record-rules/joined-rules.ts';
import { readVersion, versionIndex } from '../build/versions/versions.ts';
import { checkProject } from '../records/check-project.ts';
import { formatReport } from '../records/fault.ts';
import { readAll } from '../records/read.ts';

const root = resolve(process.argv[2] ?? `${import.meta.dirname}/../..`);
const faults = checkProject(root, JOINED_RULES);
console.log(formatReport(faults));
if (faults.some((fault) => !fault.warning)) process.exitCode = 1;
else if (newestVersion(root) !== 'unreleased' && versionIndex(root).length > 0) {
  const version = newestVersion(root);
  console.log(effectReport(version, effects(readVersion(version, root).evidence, evidenceOf(readAll(root)))));
}
