import { createHash, randomBytes } from 'node:crypto';

/** A name that nobody can guess or form a path with: 128 random bits. */
export const newId = (): string => randomBytes(16).toString('hex');

/** SHA-256, 64 hexadecimal digits. Source: FIPS 180-4. */
export const hashOf = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');
