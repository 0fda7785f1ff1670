/** Pixels as a PNG address, in the page and on the command line alike. */
import { zlibSync } from 'fflate';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];
const TRUECOLOUR_WITH_ALPHA = 6;
/** Filter of a row: each byte minus the one above it; smooth maps shrink best so. */
const UP = 2;

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, i) => {
  let c = i;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

function crc(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = CRC_TABLE[(c ^ byte) & 255]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  for (let i = 0; i < 4; i++) bytes[4 + i] = name.charCodeAt(i);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

/**
 * The PNG of RGBA pixels.
 *
 * @param pixels [4·width·height]
 * @see ISO/IEC 15948:2004, Portable Network Graphics
 */
export function encodePng(width: number, height: number, pixels: Uint8ClampedArray): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header.set([8, TRUECOLOUR_WITH_ALPHA, 0, 0, 0], 8);
  const stride = 4 * width;
  const rows = new Uint8Array((stride + 1) * height);
  for (let y = 0; y < height; y++) {
    const o = y * (stride + 1);
    rows[o] = UP;
    for (let x = 0; x < stride; x++) {
      const above = y > 0 ? pixels[(y - 1) * stride + x]! : 0;
      rows[o + 1 + x] = pixels[y * stride + x]! - above;
    }
  }
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(rows, { level: 9 })),
    chunk('IEND', new Uint8Array(0)),
  ];
  const png = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let o = 0;
  for (const part of parts) {
    png.set(part, o);
    o += part.length;
  }
  return png;
}

/** RGBA pixels as a data: URL. */
export function pngUrl(width: number, height: number, pixels: Uint8ClampedArray): string {
  let binary = '';
  for (const byte of encodePng(width, height, pixels)) binary += String.fromCharCode(byte);
  return `data:image/png;base64,${btoa(binary)}`;
}
