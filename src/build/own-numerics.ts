/**
 * The statistics of breaks carry what they use of numerics and evidence in their own script. Shared with the comparator, these would be
 * one more file, for which its results had to wait.
 */
import { readFileSync } from 'node:fs';

const MARK = '?breaks';
/** Who gets copies: the statistics, own tests beside a comparison, and copies themselves. */
const ASKS = /\/src\/(?:break-tests\/[^?]*|islands\/(?:own-tests|analyse-breaks|use-breaks)|components\/comparator\/own-tests)\.tsx?$|\?breaks$/;
/** What is copied: what the comparator uses, too. */
const COPIED = /\/src\/(?:numerics\/[^?]*|evidence\/[^?]*|charts\/lane|strength\/wording|islands\/save-file|components\/comparator\/(?:axis-frame|kept|lane|words))\.tsx?$/;

/** The copy that an import means, or null where it means the file itself. @param file as it was resolved */
export function copyOf(file: string, importer: string | undefined): string | null {
  return importer !== undefined && ASKS.test(importer) && COPIED.test(file) ? file + MARK : null;
}

interface Resolver { resolve(id: string, importer: string | undefined, options: { skipSelf: true }): Promise<{ id: string } | null> }

/** For the builder of the pages' scripts. */
export const ownNumerics = {
  name: 'own-numerics',
  enforce: 'pre' as const,
  apply: 'build' as const,
  applyToEnvironment: ({ name }: { name: string }): boolean => name === 'client',
  resolveId: {
    filter: { id: /\.tsx?$/ },
    async handler(this: Resolver, id: string, importer: string | undefined): Promise<string | null> {
      const found = importer !== undefined && ASKS.test(importer) ? await this.resolve(id, importer, { skipSelf: true }) : null;
      return found && copyOf(found.id, importer);
    },
  },
  load: {
    filter: { id: /\?breaks$/ },
    handler: (id: string) => ({ code: readFileSync(id.slice(0, -MARK.length), 'utf8'), moduleType: id.endsWith(`.tsx${MARK}`) ? 'tsx' : 'ts' }),
  },
};
