/** Statements of crossings, put together as the strands are. */

/** What one strand of a bundle says that follows a path: it crosses as many strands as the bundle has. */
export const among = (says: string, strands: number): string => says.replace(/./g, (letter) => letter.repeat(strands));

/** The statement of a strand that runs the other way. */
export const backwards = (says: string): string => [...says].reverse().join('');
