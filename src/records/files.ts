/** The files of the project that the check reads, as a map from path to text, so that a fixture is a few strings. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Path from the project's top folder, with forward slashes, to the file's text. */
export type FileMap = Readonly<Record<string, string>>;

const WANTED: readonly [string, RegExp][] = [
  ['data', /\.(ya?ml|json)$/],
  ['content', /\.(mdx|md)$/],
  ['src', /\.(astro|tsx)$/],
];

/** Reads all records, prose, pages and components under a project's top folder. A folder that is absent is empty. */
export function readFiles(root: string): FileMap {
  const files: Record<string, string> = {};
  const walk = (folder: string, pattern: RegExp) => {
    let entries: ReturnType<typeof list>;
    try {
      entries = list(join(root, folder));
    } catch (error) {
      if ((error as { code?: string }).code === 'ENOENT') return;
      throw error;
    }
    for (const entry of entries) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) walk(path, pattern);
      else if (pattern.test(entry.name)) files[path] = readFileSync(join(root, path), 'utf8').replace(/^\uFEFF/, '');
    }
  };
  for (const [folder, pattern] of WANTED) walk(folder, pattern);
  return files;
}

function list(folder: string) {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
}
