/**
 * Size of a file as people read it: whole kilobytes of 1,000 bytes, and megabytes with one digit from a million on.
 * @throws RangeError when bytes is no whole number above 0
 */
export function fileSize(bytes: number): string {
  if (!Number.isInteger(bytes) || bytes < 1) throw new RangeError(`bytes: must be a whole number above 0 (got ${bytes})`);
  if (bytes < 999_500) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
