/** Keys made from content, so that equal content is recognised wherever it comes from. */

/** Two 32-bit FNV-1a hashes over the same words, started apart: a 64-bit key in hexadecimal. */
export function contentKey(...parts: readonly (ArrayBufferView | number | string)[]): string {
  let a = 0x811c9dc5;
  let b = 0x01234567;
  for (const part of parts) {
    const words = wordsOf(part);
    // one more word ends each part; the hashes stay in registers, where a closure would keep them in memory
    for (let i = 0; i <= words.length; i++) {
      const word = i < words.length ? words[i]! : END;
      a = Math.imul(a ^ word, 0x01000193);
      b = Math.imul(b ^ (word + 0x9e3779b9), 0x01000193);
      b ^= b >>> 13;
      a ^= a >>> 15;
    }
  }
  return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0');
}

const END = 0xff;

function wordsOf(part: ArrayBufferView | number | string): Uint32Array | Uint8Array {
  if (typeof part === 'string') {
    const letters = new Uint32Array(part.length);
    for (let i = 0; i < part.length; i++) letters[i] = part.charCodeAt(i);
    return letters;
  }
  if (typeof part === 'number') return wordsOf(Float64Array.of(part));
  const { buffer, byteOffset, byteLength } = part;
  const isWhole = byteOffset % 4 === 0 && byteLength % 4 === 0;
  return isWhole ? new Uint32Array(buffer, byteOffset, byteLength / 4) : new Uint8Array(buffer, byteOffset, byteLength);
}
