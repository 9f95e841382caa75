/**
 * What the engines' guards say to programmers is text that no reader sees, and every page with a script would carry it.
 * In the script of the pages a guard says its place instead, `chain.ts:120`, where the words stand.
 */

/** A guard whose message is one template or string without another inside. */
const GUARD = /new RangeError\((`(?:[^`\\]|\\.)*`|'(?:[^'\\]|\\.)*')\)/g;

/** The source with each guard's message replaced by its place. @param path of the file, as it is to be said */
export function withShortErrors(source: string, path: string): string {
  return source.replace(GUARD, (_, _message: string, at: number) => `new RangeError('${path}:${source.slice(0, at).split('\n').length}')`);
}

/** For the builder of the pages' scripts: only engines whose guards speak to programmers alone; those of the register are shown to readers. */
export const shortErrors = {
  name: 'short-errors',
  enforce: 'pre' as const,
  apply: 'build' as const,
  applyToEnvironment: ({ name }: { name: string }): boolean => name === 'client',
  transform: {
    filter: { id: /\/src\/(?:(?:numerics|evidence|strength|retirement|break-tests)\/[^?]*|rack\/(?:stamps|part-day|due|calendar|merge|csv-file)|components\/retirement\/words)\.ts(?:\?breaks)?$/ },
    handler: (source: string, id: string): string => withShortErrors(source, id.slice(id.lastIndexOf('/') + 1).replace(/\?.*/, '')),
  },
};
