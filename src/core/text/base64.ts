/** Bytes as text of 64 signs (RFC 4648), in the same way in the browser and on the command line. */

const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Base64 with its padding, as a data address holds it. */
export function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b, c] = bytes.subarray(at, at + 3);
    const bits = (a << 16) | ((b ?? 0) << 8) | (c ?? 0);
    text += SIGNS.charAt(bits >> 18) + SIGNS.charAt((bits >> 12) & 63);
    text += b === undefined ? '=' : SIGNS.charAt((bits >> 6) & 63);
    text += c === undefined ? '=' : SIGNS.charAt(bits & 63);
  }
  return text;
}

/** The same for an address: `-` and `_` in place of `+` and `/`, without padding. */
export function base64Url(bytes: Uint8Array): string {
  return base64(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes of a base64url text; undefined where it is none. */
export function bytesOfBase64Url(text: string): Uint8Array | undefined {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let count = 0;
  let at = 0;
  for (const sign of text.replaceAll('-', '+').replaceAll('_', '/')) {
    bits = ((bits << 6) | SIGNS.indexOf(sign)) & 0xffff;
    count += 6;
    if (count < 8) continue;
    count -= 8;
    bytes[at] = (bits >> count) & 255;
    at += 1;
  }
  return bytes;
}
