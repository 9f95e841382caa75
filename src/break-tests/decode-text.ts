/** Bytes of a file as text, by its byte-order mark, or by what its bytes can be. */

export type Encoding = 'UTF-8' | 'UTF-16LE' | 'UTF-16BE' | 'windows-1252';
export interface Decoded { readonly text: string; readonly encoding: Encoding }

/** How many bytes are looked at where there is no mark: an even number. */
const SAMPLE = 4096;

/**
 * Decodes text. A byte-order mark decides. Without one: every second byte empty means UTF-16; bytes that are UTF-8 are
 * read so; anything else as windows-1252, in which any byte is a letter (and digits are the same in all of them).
 */
export function decodeText(bytes: Uint8Array): Decoded {
  const read = (label: string, fatal = false): string => new TextDecoder(label, { fatal }).decode(bytes);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: read('utf-16le'), encoding: 'UTF-16LE' };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: read('utf-16be'), encoding: 'UTF-16BE' };
  const sample = bytes.subarray(0, SAMPLE);
  const empty = [0, 0];
  for (const [i, byte] of sample.entries()) if (byte === 0) empty[i % 2] = (empty[i % 2] as number) + 1;
  const pairs = sample.length / 2;
  if (pairs >= 2 && (empty[1] as number) > 0.4 * pairs && empty[0] === 0) return { text: read('utf-16le'), encoding: 'UTF-16LE' };
  if (pairs >= 2 && (empty[0] as number) > 0.4 * pairs && empty[1] === 0) return { text: read('utf-16be'), encoding: 'UTF-16BE' };
  try {
    return { text: read('utf-8', true), encoding: 'UTF-8' };
  } catch {
    return { text: read('windows-1252'), encoding: 'windows-1252' };
  }
}
