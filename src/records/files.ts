/** The files of the project that the check reads, as a map from path to text, so that a fixture is a few strings. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Path from the project's top folder, with forward slashes, to the file's text. */
export type FileMap = Readonly<Record<string, string>>;

const WANTED: readonly [string, (path: string) => boolean][] = [
  ['data', (path) => /\.(ya?ml|json)$|\/series\/[^/]+\.csv$/.test(path)],
  ['content', (path) => /\.(mdx|md)$/.test(path)],
  ['src', (path) => reachesPage(path)],
];

/** Plain modules that put sentences together for readers; the others speak to the machine, or to who runs a command. */
const SPEAKS_TO_READERS = /^src\/(?:strength\/(?:wording|compare)|build\/words|(?:components|islands|teaching)\/.+(?<!\.d))\.ts$/;

/** Whether the strings of a file below `src` reach a page. */
export const reachesPage = (file: string): boolean => /^src\/.*\.(astro|tsx)$/.test(file) || SPEAKS_TO_READERS.test(file);

/** Reads all records, prose, pages and components under a project's top folder. A folder that is absent is empty. */
export function readFiles(root: string): FileMap {
  const files: Record<string, string> = {};
  const walk = (folder: string, wanted: (path: string) => boolean) => {
    let entries: ReturnType<typeof list>;
    try {
      entries = list(join(root, folder));
    } catch (error) {
      if ((error as { code?: string }).code === 'ENOENT') return;
      throw error;
    }
    for (const entry of entries) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) walk(path, wanted);
      else if (wanted(path)) files[path] = readFileSync(join(root, path), 'utf8').replace(/^\uFEFF/, '');
    }
  };
  for (const [folder, wanted] of WANTED) walk(folder, wanted);
  return files;
}

function list(folder: string) {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
}
