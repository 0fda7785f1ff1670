/**
 * A whole design as the fragment of a link: a check sum and the JSON text, deflated (RFC 1951), in base64url
 * (RFC 4648, section 5).
 */
import { deflateSync, Inflate } from 'fflate';
import { carriesDesign, LINK_KEY } from './linkKey.ts';
import { textSum } from './records.ts';

/** Largest text that is unpacked, bytes: the engine refuses longer designs anyway (8 million characters). */
export const MAX_UNPACKED = 16_000_000;
/** Above this, some programs cut a link. */
export const LONG_LINK = 8000;
/** Above this, browsers refuse a link. */
export const MAX_LINK = 2_000_000;

/** Bytes unpacked at a time: deflate makes at most 1032 from one, so that a bomb is noticed after 4 MB. */
const PIECE = 4096;

export type Unpacked = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string };

function toBase64Url(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) pieces.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return btoa(pieces.join('')).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** @throws an error if the text is not base64url */
function fromBase64Url(text: string): Uint8Array {
  if (!/^[\w-]*$/.test(text)) throw new Error('not base64url');
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (sign) => sign.charCodeAt(0));
}

/** Bytes of the check sum, before the deflated text: a changed digit must not pass for a design. */
const SUM_BYTES = 4;

/** The fragment that carries a text. */
export function packFragment(text: string): string {
  const deflated = deflateSync(new TextEncoder().encode(text), { level: 9 });
  const packed = new Uint8Array(SUM_BYTES + deflated.length);
  new DataView(packed.buffer).setUint32(0, textSum(text));
  packed.set(deflated, SUM_BYTES);
  return LINK_KEY + toBase64Url(packed);
}

const BROKEN =
  'expected a link with a whole design; this one is cut short or damaged. Ask for it again, or for the file';

/** Inflates piece by piece; null once it grows beyond the limit. @throws an error if the bytes are damaged or cut */
function inflate(bytes: Uint8Array): Uint8Array | null {
  const pieces: Uint8Array[] = [];
  let total = 0;
  let isWhole = false;
  const stream = new Inflate((piece, final) => {
    pieces.push(piece);
    total += piece.length;
    isWhole = final;
  });
  for (let at = 0; at < bytes.length; at += PIECE) {
    stream.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
    if (total > MAX_UNPACKED) return null;
  }
  if (!isWhole) throw new Error('cut short');
  const whole = new Uint8Array(total);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** The text that a fragment carries, or what is wrong with it; never throws. */
export function unpackFragment(fragment: string): Unpacked {
  const packed = fragment.slice(LINK_KEY.length);
  if (!carriesDesign(fragment) || packed === '') return { ok: false, message: BROKEN };
  try {
    const bytes = fromBase64Url(packed);
    const inflated = inflate(bytes.subarray(SUM_BYTES));
    if (!inflated) return { ok: false, message: `expected at most ${MAX_UNPACKED / 1e6} MB in a link; found more` };
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(inflated);
    const sum = new DataView(bytes.buffer).getUint32(0);
    return sum === textSum(text) ? { ok: true, text } : { ok: false, message: BROKEN };
  } catch {
    return { ok: false, message: BROKEN };
  }
}

/** What to tell about a link of so many characters. */
export function linkRemark(length: number): {
  readonly text: string;
  readonly isLong: boolean;
  readonly fits: boolean;
} {
  const shown = length.toLocaleString('en');
  if (length > MAX_LINK) {
    const most = MAX_LINK.toLocaleString('en');
    const text = `The link would be ${shown} characters long; browsers open at most ${most}. Save the design and send the file instead.`;
    return { text, isLong: true, fits: false };
  }
  const whole = `${shown} characters, with the whole design in them.`;
  if (length <= LONG_LINK) return { text: whole, isLong: false, fits: true };
  return { text: `${whole} Some programs cut links this long: try it, or send the file.`, isLong: true, fits: true };
}
