/** Packs the course kit when every page is written, and says on its page how large it came out. */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { archive } from '../downloads/archive.ts';
import { newestVersion, ROOT } from '../evidence.ts';
import { fileSize } from '../file-size.ts';
import { kitFiles } from './kit-files.ts';
import { KIT_PAGE, KIT_PATH, SIZE_MARK } from './names.ts';

/** Files of the archive are dated as the evidence is; before the first version, as the format's own first day. */
const dayOf = (version: string): string => /^\d{4}-\d{2}-\d{2}/.exec(version)?.[0] ?? '1980-01-01';

/** The integration: must stand last. @param site full address of the site's host @param base folder that it is served from */
export function courseKit(site: string, base: string): AstroIntegration {
  return {
    name: 'course-kit',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir);
        const root = base.replace(/\/+$/, '');
        const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => path.split(sep).join('/'));
        const packed = archive(kitFiles({
          files, base: root, licence: readFileSync(join(ROOT, 'LICENSE'), 'utf8'),
          read: (path) => new Uint8Array(readFileSync(join(folder, path))),
          address: (path) => new URL(`${root}${path}`, site).href,
        }), dayOf(newestVersion()));
        writeFileSync(join(folder, KIT_PATH), packed);
        const page = join(folder, KIT_PAGE, 'index.html');
        const html = readFileSync(page, 'utf8');
        if (html.split(SIZE_MARK).length !== 2) throw new Error(`${KIT_PAGE} must have the words "${SIZE_MARK}" once, where the size of the kit goes.`);
        writeFileSync(page, html.replace(SIZE_MARK, fileSize(packed.length)));
      },
    },
  };
}
