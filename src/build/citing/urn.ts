/**
 * A permanent name made from a SHA-256: the hash's first sixteen bytes as a UUID of version 8, which RFC 9562 leaves to
 * whoever makes it (its appendix B.2 makes one in this way). It stays the same when the site moves to another address.
 * @param sha256 hexadecimal
 * Throws a RangeError on anything else.
 */
export function uuidUrn(sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new RangeError(`sha256: is no hash of sixty-four hexadecimal digits (got ${sha256})`);
  const variant = ((Number.parseInt(sha256.charAt(16), 16) & 0b0011) | 0b1000).toString(16);
  return `urn:uuid:${sha256.slice(0, 8)}-${sha256.slice(8, 12)}-8${sha256.slice(13, 16)}-${variant}${sha256.slice(17, 20)}-${sha256.slice(20, 32)}`;
}
