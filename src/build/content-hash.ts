/** Names for content: a file whose name has this in it is another file once its content changes. */
import { createHash } from 'node:crypto';

/** First 12 hex digits of the SHA-256 of a text (as UTF-8) or of bytes. */
export const contentHash = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex').slice(0, 12);
