/**
 * Leaves in each page's content policy only the hashes of what stands in that page. The framework writes those of the
 * whole site into every page: a policy that allows less is the better one, and each hash is text that does not compress.
 */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

const META = /(<meta http-equiv="content-security-policy" content=")([^"]*)(">)/i;
const INLINE = /<(script|style)\b[^>]*>([\s\S]*?)<\/\1>/gi;
const HASH = /\s*'sha256-[A-Za-z0-9+/=]+'/g;

/** A page with the hashes of its own inline scripts and styles; unchanged where it has no policy. */
export function withTightPolicy(html: string): string {
  const own = new Set([...html.matchAll(INLINE)].map(([, , text = '']) => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`));
  return html.replace(META, (_, open: string, policy: string, close: string) =>
    `${open}${policy.replace(HASH, (hash) => (own.has(hash.trim()) ? hash : ''))}${close}`);
}

/** The integration: runs when every page is written. */
export function tightPolicy(): AstroIntegration {
  return {
    name: 'tight-policy',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir);
        for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
          if (!file.endsWith('.html')) continue;
          const path = join(folder, file);
          const html = readFileSync(path, 'utf8');
          const tight = withTightPolicy(html);
          if (tight !== html) writeFileSync(path, tight);
        }
      },
    },
  };
}
