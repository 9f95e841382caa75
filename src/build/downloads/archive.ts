/** All files in one archive, whose bytes depend on the files and the day alone. */
import { zipSync } from 'fflate';
import type { DataFile } from './file.ts';

/** File name of the archive of a version. The plus sign is spelled out: some hosts read it as a space. */
export function archiveName(version: string): string {
  return `second-sling-${version.replace('+', '-changed')}.zip`;
}

/**
 * Packs files in the order of their paths, each dated noon of the day. An archive keeps the hour of no place, and noon
 * exists on every clock, so the same bytes come out in every time zone. Pictures are packed already, and stay as they are.
 */
export function archive(files: readonly Pick<DataFile, 'path' | 'bytes'>[], day: string): Uint8Array<ArrayBuffer> {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  return zipSync(Object.fromEntries(sorted.map(({ path, bytes }) => [path, path.endsWith('.png') ? [bytes, { level: 0 as const }] : bytes])), { level: 9, mtime: new Date(year, month - 1, date, 12) }) as Uint8Array<ArrayBuffer>;
}
