/**
 * Names in each page's head the scripts that its own script imports, so that the browser fetches all of them at once
 * instead of one after the other.
 */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

const SCRIPT = /<script type="module" src="([^"]+)"/g;
const IMPORT = /\b(?:from|import)\s*"(\.[^"]+\.js)"/g;

/** Addresses of all that a script imports at once, also by way of others. @param read text of a script by its address */
export function importsAtOnce(address: string, read: (address: string) => string, seen: Set<string> = new Set()): string[] {
  for (const [, path] of read(address).matchAll(IMPORT)) {
    const target = posix.join(dirname(address), path as string);
    if (seen.has(target)) continue;
    seen.add(target);
    importsAtOnce(target, read, seen);
  }
  return [...seen];
}

/** A page with its preloads; unchanged where its scripts import nothing. */
export function withPreloads(html: string, read: (address: string) => string): string {
  const own = [...html.matchAll(SCRIPT)].map(([, address]) => address as string);
  const more = [...new Set(own.flatMap((address) => importsAtOnce(address, read)))].filter((address) => !own.includes(address));
  return more.length === 0 ? html : html.replace('</head>', `${more.map((address) => `<link rel="modulepreload" href="${address}">`).join('')}</head>`);
}

/** The integration: runs when every page is written. @param base folder that the site is served from */
export function preloadScripts(base: string): AstroIntegration {
  return {
    name: 'preload-scripts',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir);
        const read = (address: string): string => readFileSync(join(folder, address.slice(base.replace(/\/+$/, '').length)), 'utf8');
        for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
          if (!file.endsWith('.html')) continue;
          const path = join(folder, file);
          const html = readFileSync(path, 'utf8');
          const whole = withPreloads(html, read);
          if (whole !== html) writeFileSync(path, whole);
        }
      },
    },
  };
}
