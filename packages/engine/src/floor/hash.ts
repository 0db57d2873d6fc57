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
export const contentHash = (value: unknown): string => bytesHash(utf8Bytes(canonicalText(value)));

/** Canonical JSON: keys in order, no white space, shortest numbers. Source: RFC 8785 (from memory). */
export function canonicalText(value: unknown): string {
  const text = canonicalJson(value);
  if (text === undefined) throw new Error('a value without JSON form has no canonical text');
  return text;
}

/** Hash of a file's bytes, as `sha256:` and 64 hexadecimal digits. Source: FIPS 180-4. */
export const bytesHash = (bytes: Uint8Array): string => `sha256:${bytesToHex(sha256(bytes))}`;

export const utf8Bytes = (text: string): Uint8Array => utf8ToBytes(text);
