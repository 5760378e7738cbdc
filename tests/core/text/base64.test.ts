import fc from 'fast-check';
import { expect, test } from 'vitest';
import { base64, base64Url, bytesOfBase64Url } from '../../../src/core/text/base64.ts';

test('is the base64 that Node writes, and reads back the same bytes', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      expect(base64Url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
      expect(bytesOfBase64Url(base64Url(bytes))).toEqual(bytes);
    }),
  );
});

test.each(['A', 'AA=', 'A+BC', 'AAAAA', 'ä'])('%j is no base64url', (text) => {
  expect(bytesOfBase64Url(text)).toBeUndefined();
});
