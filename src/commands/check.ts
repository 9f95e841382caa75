/** `npm run check`: prints every fault of the records and the prose, and fails when there is one. */
import { resolve } from 'node:path';
import { JOINED_RULES } from '../build/joined-rules.ts';
import { checkProject } from '../records/check-project.ts';
import { formatReport } from '../records/fault.ts';

const root = resolve(process.argv[2] ?? `${import.meta.dirname}/../..`);
const faults = checkProject(root, JOINED_RULES);
console.log(formatReport(faults));
process.exitCode = faults.some((fault) => !fault.warning) ? 1 : 0;
