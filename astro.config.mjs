import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { hostingFiles } from './src/build/steps/hosting-files.ts';
import { courseKit } from './src/build/kit/course-kit.ts';
import { offlineSet } from './src/build/steps/offline-set.ts';
import { ownNumerics } from './src/build/steps/own-numerics.ts';
import { preloadScripts } from './src/build/steps/preload-scripts.ts';
import { recordCheck } from './src/build/steps/record-check.ts';
import { shortErrors } from './src/build/steps/short-errors.ts';
import { termLinks } from './src/build/steps/term-links.ts';
import { tightPolicy } from './src/build/steps/tight-policy.ts';

/** Where the site stands: both come from the environment, so that any static host and any folder will do. */
const site = process.env.SITE || 'http://localhost:4321';
const base = process.env.BASE_PATH || '/';

/** Draws components at build. No page has islands of Astro's own, whose script would stand beside ours and split it. */
function preactAtBuild() {
  const integration = preact();
  const setup = integration.hooks['astro:config:setup'];
  const hooks = {
    ...integration.hooks,
    'astro:config:setup': (options) => setup({ ...options, addRenderer: ({ clientEntrypoint: _, ...renderer }) => options.addRenderer(renderer) }),
  };
  return { ...integration, hooks };
}

/** What several pages share stands in one file: a page then fetches its own script and this one, side by side. Copies, with a mark behind `?`, are their page's own. */
const SHARED = [
  { name: 'shared', test: /preload-helper|node_modules.preact|src.islands.take-away\.ts$/ },
  { name: 'slings', test: /src.components.retirement.words|src.islands.kept-register|src.retirement.(?:answers|days|verdict)\.|src.rack.(?:register|due|json-file|json-lines|schema|shape|fields|field-names|part-day|stamps|types|sling-history|item-words)\./ },
  { name: 'links', test: /src.(?:links.(?:pieces|read-number|rig-keys|serialise-link)|evidence.bearing-place)\.ts$/ },
];

/** What our script loads on demand needs only what is loaded already: it comes without the helper that preloads the rest. */
const withoutPreloading = {
  name: 'without-preloading',
  enforce: 'pre',
  load: { filter: { id: /vite\/preload-helper/ }, handler: () => 'export const __vitePreload = (load) => load();' },
  configEnvironment: (name) => (name === 'client' ? { build: { modulePreload: false, rollupOptions: { output: { entryFileNames: '_astro/[hash].js', chunkFileNames: '_astro/[hash].js', codeSplitting: { groups: SHARED } } } } } : undefined),
};

export default defineConfig({
  site,
  base,
  trailingSlash: 'always',
  // Two records with one address must stop the build; the default only warns.
  prerenderConflictBehavior: 'error',
  // The default of this version joins words across lines in .astro files.
  compressHTML: true,
  // A reading page is one response: its style stands inside it.
  build: { inlineStylesheets: 'always' },
  // The other highlighter writes style attributes, which the policy below blocks.
  markdown: { syntaxHighlight: 'prism' },
  integrations: [recordCheck(), termLinks(), mdx(), preactAtBuild(), preloadScripts(base), tightPolicy(), courseKit(site, base), offlineSet(base), hostingFiles(base)],
  vite: { plugins: [withoutPreloading, ownNumerics, shortErrors] },
  security: {
    csp: {
      directives: [
        "default-src 'none'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
        "require-trusted-types-for 'script'",
      ],
    },
  },
});
