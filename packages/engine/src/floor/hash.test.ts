import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contentHash } from './hash.js';

describe('content hash', () => {
  // Canonical form {"a":2,"b":1} (RFC 8785); the hash of that text was computed with another SHA-256 program.
  test('keys are sorted before hashing', () => {
    expect(contentHash({ b: 1, a: 2 })).toBe('sha256:d3626ac30a87e6f7a6428233b3c68299976865fa5508e4267c5415c76af7a772');
  });

  // RFC 8785, section 3.2.2 (from memory): numbers take their shortest round-trip form.
  test('numbers are hashed in their shortest form', () => {
    const expected = createHash('sha256').update('[1e+30,0.002,4.5]').digest('hex');
    expect(contentHash([1e30, 2e-3, 4.5])).toBe(`sha256:${expected}`);
  });

  test('texts agree with the SHA-256 of the platform', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const expected = createHash('sha256').update(JSON.stringify(text)).digest('hex');
        expect(contentHash(text)).toBe(`sha256:${expected}`);
      }),
      { seed: 7 },
    );
  });

  test('a value without JSON form is a bug', () => {
    expect(() => contentHash(undefined)).toThrow();
    expect(() => contentHash({ a: Number.NaN })).toThrow();
  });
});
