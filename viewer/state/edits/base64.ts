/** Bytes as base64 text, so that a design with a mesh stays one file. */

/** Bytes that are turned into characters at a time; more would overflow the stack of arguments. */
const CHUNK = 0x8000;

export function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(text);
}
