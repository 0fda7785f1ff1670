/** Imported triangle meshes, read from STL and placed in the tank. Stands on three's reader. */
import { STLLoader } from 'three/addons/loaders/STLLoader.js';
import { rotationFromAngles, type Vector } from './solids.ts';

/** Corners of triangles, three after three, in the mirror's frame. */
export interface Triangles {
  /** [9·count] m; single precision: 0.2 µm at 4 m */
  readonly position: Float32Array<ArrayBuffer>;
}

export interface MeshPlacement {
  /** m per unit of the file */
  readonly scale: number;
  readonly position: Vector;
  /** turned about x, then y, then z, rad */
  readonly rotation: Vector | undefined;
}

const MAX_TRIANGLES = 2_000_000;

/**
 * Reads an STL file, text or binary, and places it in the tank.
 *
 * @throws RangeError with a sentence for the user if the file holds no whole triangles
 */
export function readStl(bytes: Uint8Array<ArrayBuffer>, placement: MeshPlacement): Triangles {
  let corners: ArrayLike<number> | undefined;
  try {
    const geometry = new STLLoader().parse(bytes.slice().buffer);
    corners = geometry.getAttribute('position').array;
  } catch {
    throw new RangeError('expected an STL file; this one cannot be read');
  }
  if (corners.length === 0 || corners.length % 9 !== 0)
    throw new RangeError('expected an STL file with whole triangles; found none');
  if (corners.length / 9 > MAX_TRIANGLES)
    throw new RangeError(`expected at most ${MAX_TRIANGLES} triangles; found ${corners.length / 9}`);
  const position = new Float32Array(corners.length);
  const localFromWorld = rotationFromAngles(placement.rotation);
  for (let o = 0; o < corners.length; o += 3) placeInto(position, o, corners, localFromWorld, placement);
  if (!position.every(Number.isFinite))
    throw new RangeError('expected an STL file with finite coordinates; found NaN or infinity');
  return { position };
}

/** Turns a corner by the transpose of local-from-world and moves it into place. */
function placeInto(
  out: Float32Array,
  o: number,
  corners: ArrayLike<number>,
  m: readonly number[],
  { scale, position }: MeshPlacement,
): void {
  const [x = 0, y = 0, z = 0] = [corners[o], corners[o + 1], corners[o + 2]];
  for (let k = 0; k < 3; k++) {
    out[o + k] = scale * ((m[k] ?? 0) * x + (m[3 + k] ?? 0) * y + (m[6 + k] ?? 0) * z) + position[k as 0 | 1 | 2];
  }
}
