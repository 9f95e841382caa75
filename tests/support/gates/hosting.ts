/** What hosts read: `_headers` says of every file of the built site what `npm start` sends, and no file's type is unknown. */
import { extname } from 'node:path';
import { headersOf, TYPES } from '../../../src/build/steps/hosting.ts';
import type { Fault, Gate, Site } from './site.ts';

/** Files that hosts read themselves. */
const FOR_HOSTS = /^\/(?:_headers)$/;

export const hosting: Gate = {
  name: 'hosting',
  holds: 'every file has a known type, and the file _headers gives it what npm start sends',
  check: (site) => [...typeFaults(site), ...headerFaults(site)],
};

function typeFaults(site: Site): Fault[] {
  const strange = [...site.files].filter((path) => !FOR_HOSTS.test(path) && !(extname(path) in TYPES));
  return strange.map((page) => ({ page, message: `its ending has no content type. Add ${extname(page)} to TYPES in src/build/steps/hosting.ts.` }));
}

/** Paths of `_headers`, each with its headers, in the order of the file. */
function readBlocks(text: string): { pattern: string; headers: [string, string][] }[] {
  return text.trim().split(/\n{2,}/).map((block) => {
    const [pattern = '', ...lines] = block.split('\n');
    return { pattern, headers: lines.map((line) => /^\s+([\w-]+):\s*(.+)$/.exec(line)?.slice(1) as [string, string]) };
  });
}

function headerFaults(site: Site): Fault[] {
  if (!site.files.has('/_headers')) return [{ page: '/_headers', message: 'is missing. The build writes it: hostingFiles in astro.config.mjs.' }];
  const blocks = readBlocks(site.read('/_headers').toString('utf8'));
  return [...site.files].filter((path) => !FOR_HOSTS.test(path)).flatMap((path) => {
    const asked = `${site.base.replace(/\/$/, '')}${path}`;
    const sent = new Map<string, string>();
    const faults: Fault[] = [];
    for (const { pattern, headers } of blocks) {
      if (pattern.endsWith('*') ? !asked.startsWith(pattern.slice(0, -1)) : asked !== pattern) continue;
      for (const [name, value] of headers) {
        if (sent.has(name)) faults.push({ page: path, message: `_headers gives it ${name} twice; hosts join the two. Part the paths.` });
        sent.set(name, value);
      }
    }
    // Where nothing is said, a browser asks a host again.
    const wanted = { ...headersOf(path) };
    if (wanted['Cache-Control'] === 'no-cache' && !sent.has('Cache-Control')) delete wanted['Cache-Control'];
    for (const [name, value] of Object.entries(wanted)) {
      if (sent.get(name) !== value) faults.push({ page: path, message: `_headers gives ${name} as ${sent.get(name) ?? 'nothing'}, not as ${value}.` });
    }
    for (const name of sent.keys()) if (!(name in wanted)) faults.push({ page: path, message: `_headers gives ${name}, and npm start does not.` });
    return faults;
  });
}
