/** One file of the folder `/data/`. */
import { createHash } from 'node:crypto';

export interface DataFile {
  /** Path below `/data/`, which is a contract with readers. */
  path: string;
  mediatype: string;
  bytes: Uint8Array<ArrayBuffer>;
  /** What it is, in a few words. */
  says: string;
}

/** A file from its text, as UTF-8 without a mark at its head. */
export function textFile(path: string, mediatype: string, says: string, text: string): DataFile {
  return { path, mediatype, says, bytes: new TextEncoder().encode(text) };
}

/** SHA-256 of a file's bytes, in hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
