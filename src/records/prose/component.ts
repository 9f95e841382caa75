/** Readable text of `.astro`, `.tsx` and `.ts` files. All are read by Astro's own parser: a component's script is the script of a page without a template. */
import { parse } from '@astrojs/compiler-rs';
import { gatherJsx } from './jsx.ts';
import { type Prose, RunGatherer } from './run.ts';

const FENCE = '---\n';

export function proseOfComponent(file: string, source: string): Prose {
  const gatherer = new RunGatherer();
  const isPage = file.endsWith('.astro');
  const text = isPage ? source : `${FENCE}${source}\n---\n`;
  const shift = isPage ? 0 : -FENCE.length;
  const { ast, diagnostics } = parse(text);
  for (const { text: message, labels, severity } of diagnostics) {
    if (severity === 'error')
      gatherer.prose.failures.push({ offset: Math.max(0, (labels[0]?.start ?? 0) + shift), message });
  }
  gatherJsx(ast, { text, shift, source }, gatherer);
  gatherer.end();
  return gatherer.prose;
}
