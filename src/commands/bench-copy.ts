/** A copy of the project in a folder of its own, to change records in without touching the project's. */
import { cpSync, mkdirSync, readdirSync, symlinkSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** What a copy leaves out: packages are linked, the rest is made again or is no part of the work. */
const LEFT_BEHIND: readonly string[] = ['node_modules', 'dist', '.git', '.astro', 'test-results'];

/** Copies the working tree below `root` into `folder`, which must exist. What is installed is linked, entry by entry. */
export function copyProject(root: string, folder: string): void {
  cpSync(root, folder, {
    recursive: true,
    filter: (path) => !LEFT_BEHIND.includes(relative(root, path).split(sep)[0] ?? ''),
  });
  // Each package by itself: what the build keeps beside them, in folders that begin with a full stop, stays apart.
  mkdirSync(join(folder, 'node_modules'));
  for (const name of readdirSync(join(root, 'node_modules'))) {
    if (name !== '.bin' && name.startsWith('.')) continue;
    symlinkSync(join(root, 'node_modules', name), join(folder, 'node_modules', name), 'junction');
  }
}
