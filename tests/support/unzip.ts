/** Opens an archive by the layout of a ZIP file (PKWARE APPNOTE 6.3, sections 4.3.7 and 4.3.12) with Node's own inflate, not with what packed it. */
import { inflateRawSync } from 'node:zlib';

/** One file of an archive, with the sum, time and date that its directory gives. */
export interface Entry { path: string; bytes: Buffer; crc: number; time: number; date: number }

/** Entries of the central directory, in its order. @throws Error where there is no entry of the directory in its place */
export function unzip(zip: Uint8Array): Entry[] {
  const file = Buffer.from(zip);
  const end = file.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  const entries: Entry[] = [];
  let at = file.readUInt32LE(end + 16);
  for (let i = 0; i < file.readUInt16LE(end + 10); i++) {
    if (file.readUInt32LE(at) !== 0x02014b50) throw new Error(`no entry of the directory at ${at}`);
    const [name, extra, comment] = [file.readUInt16LE(at + 28), file.readUInt16LE(at + 30), file.readUInt16LE(at + 32)];
    const local = file.readUInt32LE(at + 42);
    const start = local + 30 + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28);
    const packed = file.subarray(start, start + file.readUInt32LE(at + 20));
    const bytes = file.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed);
    entries.push({ path: file.toString('utf8', at + 46, at + 46 + name), bytes, crc: file.readUInt32LE(at + 16), time: file.readUInt16LE(at + 12), date: file.readUInt16LE(at + 14) });
    at += 46 + name + extra + comment;
  }
  return entries;
}
