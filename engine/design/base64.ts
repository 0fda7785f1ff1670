/** Bytes written as text. */

const BASE64 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of base64 text (RFC 4648, section 4), or undefined if it is not that. */
export function decodeBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  const digits = text.replace(/\s+/g, '').replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const digit of digits) {
    const value = BASE64.indexOf(digit);
    if (value < 0) return undefined;
    bits = ((bits << 6) | value) & 0xffffff;
    held += 6;
    if (held >= 8) bytes[at++] = (bits >> (held -= 8)) & 0xff;
  }
  return bytes;
}
