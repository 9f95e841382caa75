/** Writes `_headers` into the built site, once everything else stands there. */
import { readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { headersFile } from './hosting.ts';

/** @param base folder that the site is served from, `/` or `/name/` */
export function hostingFiles(base: string): AstroIntegration {
  return {
    name: 'hosting-files',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const rooms = readdirSync(fileURLToPath(dir), { withFileTypes: true })
          .filter(({ name }) => !name.startsWith('_h'))
          .map((entry) => (entry.isDirectory() ? `${entry.name}/` : entry.name))
          .sort();
        writeFileSync(new URL('_headers', dir), headersFile(`/${base.replace(/^\/+|\/+$/g, '')}/`.replace('//', '/'), rooms));
      },
    },
  };
}
