/**
 * `npm run -s reference -- <file>`: checks the numerics, pooling and chains against a file of reference values in the
 * format of chain-vectors.json, published-checks.json or distribution-grid.json in tests/reference/.
 */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { checkChains } from './reference/chain-checks.ts';
import { checkDistributions } from './reference/distribution-checks.ts';
import { checkPublished } from './reference/published-checks.ts';
import type { Tally } from './reference/tally.ts';

/**
 * Checks a parsed file, by its shape: an object with `cases`, a list of entries with ids, or an object of rows. A fault
 * of one case, entry or row is one failure that names it; the others are still checked.
 * @throws RangeError when it has none of these shapes.
 */
export function checkReference(file: unknown): Tally {
  if (Array.isArray(file)) return checkPublished(file);
  if (file !== null && typeof file === 'object') {
    const cases = (file as { cases?: unknown }).cases;
    if (Array.isArray(cases)) return checkChains({ cases });
    if (Object.values(file).some(Array.isArray)) return checkDistributions(file as Record<string, unknown>);
  }
  throw new RangeError('file must hold chain cases, a list of checks with ids, or rows of a distribution grid.');
}

/** The report on one file, line by line. */
export function reportLines(tally: Tally): string[] {
  const lines = [...tally.failures];
  let skipped = 0;
  for (const [family, ids] of tally.skipped) {
    lines.push(`skipped: ${family} (${ids.length}): ${ids.join(', ')}`);
    skipped += ids.length;
  }
  if (skipped > 0) lines.push(`${skipped} skipped`);
  lines.push(`${tally.passed} passed, ${tally.failures.length} failed`);
  return lines;
}

function main(): void {
  const path = process.argv[2];
  if (!path) {
    console.error('Name a file of reference values: npm run -s reference -- tests/reference/chain-vectors.json');
    process.exitCode = 2;
    return;
  }
  let tally: Tally;
  try {
    tally = checkReference(JSON.parse(readFileSync(path, 'utf8')));
  } catch (error) {
    console.error(`${path}: ${error instanceof Error ? error.message : String(error)}`);
    process.exitCode = 2;
    return;
  }
  for (const line of reportLines(tally)) console.log(line);
  if (tally.failures.length > 0 || tally.passed === 0) process.exitCode = 1;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) main();
