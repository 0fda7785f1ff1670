/** Obstacles as the engine packs them, made visible. The layout of a record is documented in engine/geometry/solids.ts. */
import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  Matrix4,
  RingGeometry,
  SphereGeometry,
} from 'three';
import { STRIDE, type Solids } from '../../engine/geometry/solids.ts';
import type { Triangles } from '../../engine/geometry/stl.ts';

const AROUND = 64;

/** Shape number `kind` in its own frame: z is the axis of everything round. */
function localGeometry(kind: number, [s0 = 0, s1 = 0, s2 = 0, s3 = 0]: readonly number[]): BufferGeometry {
  if (kind === 0) return new BoxGeometry(2 * s0, 2 * s1, 2 * s2);
  if (kind === 1) {
    const frustum = new CylinderGeometry(s2, s1, s0, AROUND, 1, s3 !== 1);
    return frustum.rotateX(Math.PI / 2).translate(0, 0, s0 / 2);
  }
  return kind === 2 ? new RingGeometry(s0, s1, AROUND) : new SphereGeometry(s0, AROUND, AROUND / 2);
}

/** Shape of solid i in its own frame, with a key that is the same for the same shape. */
export function localSolid(
  { records }: Solids,
  i: number,
): { readonly key: string; readonly geometry: () => BufferGeometry } {
  const kind = records[STRIDE * i] ?? 0;
  const sizes = [...records.subarray(STRIDE * i + 13, STRIDE * i + 17)];
  return { key: `${kind} ${sizes.join(' ')}`, geometry: () => localGeometry(kind, sizes) };
}

/** Where solid i is: from its own frame to the mirror's. */
export function placeOfSolid({ records }: Solids, i: number): Matrix4 {
  const [r0, r1, r2, r3, r4, r5, r6, r7, r8, x, y, z] = records.subarray(
    STRIDE * i + 1,
    STRIDE * i + 13,
  ) as unknown as [
    ...[number, number, number, number, number, number],
    ...[number, number, number, number, number, number],
  ];
  // the record turns world into local: its transpose turns back
  return new Matrix4().set(r0, r3, r6, x, r1, r4, r7, y, r2, r5, r8, z, 0, 0, 0, 1);
}

/** An imported mesh in the mirror's frame. */
export function meshGeometry({ position }: Triangles): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.computeVertexNormals();
  return geometry;
}

/** Solid i in the mirror's frame. */
export function solidGeometry(solids: Solids, i: number): BufferGeometry {
  return localSolid(solids, i).geometry().applyMatrix4(placeOfSolid(solids, i));
}
