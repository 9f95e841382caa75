/**
 * `npm run release -- <date>`: freezes the evidence as `data/versions/<date>.<n>.json` and adds its hash to the index.
 * The date is an input (yyyy-mm-dd): nothing here reads the clock. A frozen file is never changed again.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, loadEvidence } from '../build/evidence.ts';
import { type VersionEntry, frozenVersion, hashOf } from '../build/versions.ts';

const day = process.argv[2];
if (!day || !/^\d{4}-\d{2}-\d{2}$/.test(day)) {
  console.error('release: say the day of the version as yyyy-mm-dd, for example: npm run release -- 2026-11-25');
  process.exit(1);
}
const folder = join(ROOT, 'data/versions');
mkdirSync(folder, { recursive: true });
const indexFile = join(folder, 'index.json');
const index: VersionEntry[] = existsSync(indexFile) ? JSON.parse(readFileSync(indexFile, 'utf8')) : [];
const newest = index.at(-1);
if (newest && newest.version.slice(0, 10) > day) {
  console.error(`release: ${day} is before the newest version ${newest.version}. Give that day or a later one.`);
  process.exit(1);
}
const count = index.filter((entry) => entry.version.startsWith(`${day}.`)).length + 1;
const version = `${day}.${count}`;
const frozen = frozenVersion({ ...loadEvidence(), version });
const text = `${JSON.stringify(frozen)}\n`;
writeFileSync(join(folder, `${version}.json`), text, { flag: 'wx' });
writeFileSync(indexFile, `${JSON.stringify([...index, { version, model: frozen.evidence.model, sha256: hashOf(text) }], null, 2)}\n`);
console.log(`Frozen ${version}: ${Object.keys(frozen.evidence.figures).length} figures, ${Object.keys(frozen.answers).length} prebuilt comparisons.`);
