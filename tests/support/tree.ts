/** The files of the project as a contributor sees them: what is generated or ignored is left out. */
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { ROOT } from './step.ts';

/** Folders that a tool writes; `.gitignore` names them too. */
const GENERATED = new Set(['node_modules', 'dist', '.astro', 'test-results', '.mutation', '.git', '.out']);

/** Paths of all files under a folder of the project, relative to its root, with forward slashes. */
export function filesUnder(folder: string): string[] {
  const found: string[] = [];
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    if (GENERATED.has(entry.name) || entry.name.endsWith('.log')) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) found.push(...filesUnder(path));
    else found.push(relative('.', path).split(sep).join('/'));
  }
  return found.sort();
}

/** Names at the top of the project, without what is generated. */
export function topLevel(): string[] {
  return readdirSync(ROOT).filter((name) => !GENERATED.has(name) && !name.endsWith('.log')).sort();
}
