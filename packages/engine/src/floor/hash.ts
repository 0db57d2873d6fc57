import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';

/** The library is a CommonJS function; its types describe it as a module with a default export. */
const canonicalJson = canonicalize as unknown as (value: unknown) => string | undefined;

/**
 * Name of a value by its content: SHA-256 over canonical JSON, as `sha256:` and 64 hexadecimal digits.
 *
 * Key order and spelling of numbers do not matter; order in lists does. A value that JSON cannot hold (NaN, infinity,
 * undefined alone) is a bug of the caller and is thrown.
 * @param value plain JSON-able value [-]
 * @returns     the hash as text
 * Source: RFC 8785 (from memory) for the canonical form, FIPS 180-4 for the hash.
 */
export function contentHash(value: unknown): string {
  const text = canonicalJson(value);
  if (text === undefined) throw new Error('a value without JSON form has no content hash');
  return `sha256:${bytesToHex(sha256(utf8ToBytes(text)))}`;
}
