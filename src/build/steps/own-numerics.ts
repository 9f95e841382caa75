/**
 * The statistics of breaks and the page of falls carry what they use of numerics and evidence in their own script. Shared with the
 * comparator, these would be one more file, for which its results had to wait.
 */
import { readFileSync } from 'node:fs';

/** Who gets copies of what: a mark after the address of each copy, so that no two pages share one that either would wait for. */
const COPIES = [
  {
    mark: '?breaks',
    /** The statistics, what a link sets beside a comparison, and copies themselves. */
    asks: /\/src\/(?:break-tests\/[^?]*|islands\/(?:beside|analyse-breaks|use-breaks)|components\/comparator\/(?:own-tests|fall-beside))\.tsx?$|\?breaks$/,
    /** What the comparator uses, too. */
    copied: /\/src\/(?:numerics\/[^?]*|evidence\/[^?]*|falls\/[^?]*|charts\/lane|strength\/wording|islands\/save-file|components\/comparator\/(?:axis-frame|kept|lane|words))\.tsx?$/,
  },
  {
    mark: '?falls',
    /** The motion in time, charts and words of falls, and copies themselves. */
    asks: /\/src\/(?:falls\/time-course|components\/falls\/(?:charts|words))\.tsx?$|\?falls$/,
    copied: /\/src\/(?:numerics\/[^?]*|charts\/plain-ticks|links\/fall-beside-link)\.tsx?$/,
  },
  {
    mark: '?send',
    /** The page that hands a page on, and copies themselves. */
    asks: /\/src\/(?:islands\/send|links\/send-link)\.ts$|\?send$/,
    copied: /\/src\/(?:links\/[^?]*|strength\/wording|islands\/(?:save-file|take-away)|components\/comparator\/words|evidence\/[^?]*)\.tsx?$/,
  },
] as const;
const MARKS = /\?(?:breaks|falls|send)$/;

/** The copy that an import means, or null where it means the file itself. @param file as it was resolved */
export function copyOf(file: string, importer: string | undefined): string | null {
  const asked = importer === undefined ? undefined : COPIES.find(({ asks }) => asks.test(importer));
  return asked?.copied.test(file) ? file + asked.mark : null;
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
      const found = importer !== undefined && COPIES.some(({ asks }) => asks.test(importer)) ? await this.resolve(id, importer, { skipSelf: true }) : null;
      return found && copyOf(found.id, importer);
    },
  },
  load: {
    filter: { id: MARKS },
    handler: (id: string) => {
      const path = id.replace(MARKS, '');
      return { code: readFileSync(path, 'utf8'), moduleType: path.endsWith('.tsx') ? 'tsx' : 'ts' };
    },
  },
};
