/** A code to scan, as one path: dark modules of a square grid, in runs along each row. */

/** Light modules that must surround a code: four, ISO/IEC 18004. */
export const QUIET_MODULES = 4;

/**
 * Path of the dark modules, each one unit wide, with the quiet zone around them.
 * @param modules rows of the code without its quiet zone, true where dark
 * @returns the path and the side of its square, units
 */
export function codePath(modules: readonly (readonly boolean[])[]): { path: string; side: number } {
  const runs = modules.flatMap((row, y) => {
    const drawn: string[] = [];
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      drawn.push(`M${from + QUIET_MODULES} ${y + QUIET_MODULES}h${x + 1 - from}v1h-${x + 1 - from}z`);
    }
    return drawn;
  });
  return { path: runs.join(''), side: modules.length + 2 * QUIET_MODULES };
}
