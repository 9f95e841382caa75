/**
 * Runs the record check inside Astro: a build with a fault stops before a page
 * is made, so a plain `astro build` cannot publish bad data. Astro's own content
 * layer only logs a missing reference or a broken file, so it is not relied on.
 */
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { checkProject } from '../../records/check-project.ts';
import { formatReport } from '../../records/fault.ts';
import { JOINED_RULES } from '../record-rules/joined-rules.ts';

export interface RecordCheckOptions {
  /** Top folder of the project; Astro's own root unless given. */
  root?: string;
}

/** The integration: throws on a fault in a build, and prints the faults when the development server starts. */
export function recordCheck(options: RecordCheckOptions = {}): AstroIntegration {
  let root = options.root;
  const report = () => {
    const faults = checkProject(root ?? process.cwd(), JOINED_RULES);
    return { text: formatReport(faults), bad: faults.some((fault) => !fault.warning) };
  };
  return {
    name: 'record-check',
    hooks: {
      'astro:config:done': ({ config }) => {
        root ??= fileURLToPath(config.root);
      },
      'astro:build:start': () => {
        const { text, bad } = report();
        if (bad) throw new Error(`The records or the prose have faults; nothing was built.\n\n${text}`);
      },
      // A server stays up: the next save may mend it.
      'astro:server:setup': ({ logger }) => {
        const { text, bad } = report();
        if (bad) logger.error(`\n${text}`);
      },
    },
  };
}
