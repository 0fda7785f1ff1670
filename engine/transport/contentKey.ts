/** Keys made from content, so that equal content is recognised wherever it comes from. */

/** Two 32-bit FNV-1a hashes over the same words, started apart: a 64-bit key in hexadecimal. */
export function contentKey(...parts: readonly (ArrayBufferView | number | string)[]): string {
  let a = 0x811c9dc5;
  let b = 0x01234567;
  const mix = (word: number): void => {
    a = Math.imul(a ^ word, 0x01000193);
    b = Math.imul(b ^ (word + 0x9e3779b9), 0x01000193);
    b ^= b >>> 13;
    a ^= a >>> 15;
  };
  for (const part of parts) {
    if (typeof part === 'string') for (let i = 0; i < part.length; i++) mix(part.charCodeAt(i));
    else mixWords(typeof part === 'number' ? Float64Array.of(part) : part, mix);
    mix(0xff);
  }
  return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0');
}

function mixWords(view: ArrayBufferView, mix: (word: number) => void): void {
  if (view.byteOffset % 4 === 0 && view.byteLength % 4 === 0) {
    const words = new Uint32Array(view.buffer, view.byteOffset, view.byteLength / 4);
    for (let i = 0; i < words.length; i++) mix(words[i]!);
  } else {
    const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
    for (let i = 0; i < bytes.length; i++) mix(bytes[i]!);
  }
}
