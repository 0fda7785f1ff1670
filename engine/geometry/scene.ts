/** Everything in the tank that a straight line can meet: glass, tank, solids and meshes. */
import { CLEAR, isClearOfBall, MIXED, type Beam, type Standing } from './beam.ts';
import { firstHitOfBody, firstHitOfFace, type Glass } from './glass.ts';
import { firstHitOfSolid, hideBehindSolid, standingOfSolid, type Solids } from './solids.ts';
import type { Tank } from './tank.ts';

/** A triangle mesh behind a bounding-volume hierarchy. */
export interface MeshSolid {
  /** bounding sphere: x, y, z, radius, m */
  readonly bound: readonly [number, number, number, number];
  /** first hit of a ray with tMin < t < tMax as a multiple of its direction, or Infinity */
  firstHit(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, tMin: number, tMax: number): number;
  /** whether a ray hits anything with tMin < t < tMax */
  isHit(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, tMin: number, tMax: number): boolean;
  /** whether a beam keeps clear of every triangle; errs on the side of no */
  isClearOf(beam: Beam): boolean;
}

export interface Scene {
  readonly glass: Glass;
  readonly tank: Tank;
  /** solids come first in the count of casters, meshes after them */
  readonly solids: Solids;
  readonly meshes: readonly MeshSolid[];
}

/** Length of a line of sight, at its ends, that is not tested: it lies on the receiver or in the source. */
export const END_GAP = 1e-9;

/** Number of obstacles: solids, then meshes. */
export function casterCount({ solids, meshes }: Scene): number {
  return solids.count + meshes.length;
}

/** How caster i stands in a beam. */
export function standingOfCaster({ solids, meshes }: Scene, i: number, beam: Beam): Standing {
  if (i < solids.count) return standingOfSolid(solids, i, beam);
  const mesh = meshes[i - solids.count]!;
  return isClearOfBall(beam, ...mesh.bound) || mesh.isClearOf(beam) ? CLEAR : MIXED;
}

/** First hit of a ray on caster i before tMax, as a multiple of its direction, or Infinity. */
export function firstHitOfCaster(
  scene: Scene,
  i: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
): number {
  const { solids, meshes } = scene;
  if (i < solids.count) return firstHitOfSolid(solids, i, ox, oy, oz, dx, dy, dz, tMin);
  return meshes[i - solids.count]?.firstHit(ox, oy, oz, dx, dy, dz, tMin, tMax) ?? Infinity;
}

/**
 * Marks which of the points members[from … to) caster i hides from a source at (sx, sy, sz).
 *
 * @param hidden set to 1 at the point's index less `begin`, never cleared; points already marked are passed over
 * @returns how many were marked
 */
export function hideBehindCaster(
  hidden: Uint8Array,
  { solids, meshes }: Scene,
  i: number,
  sx: number,
  sy: number,
  sz: number,
  position: Float64Array,
  begin: number,
  members: Int32Array,
  from: number,
  to: number,
): number {
  if (i < solids.count) {
    return hideBehindSolid(hidden, solids, i, sx, sy, sz, position, begin, members, from, to, END_GAP);
  }
  const mesh = meshes[i - solids.count]!;
  let count = 0;
  for (let k = from; k < to; k++) {
    const at = members[k]! - begin;
    if (hidden[at] === 1) continue;
    const p = 3 * members[k]!;
    const [dx, dy, dz] = [position[p]! - sx, position[p + 1]! - sy, position[p + 2]! - sz];
    if (!mesh.isHit(sx, sy, sz, dx, dy, dz, END_GAP, 1 - END_GAP)) continue;
    hidden[at] = 1;
    count++;
  }
  return count;
}

/** Whether the glass stands between a source and a point: the segment from o to o + d, ends left out. */
export function isOccludedByGlass(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
): boolean {
  if (firstHitOfFace(glass, ox, oy, oz, dx, dy, dz, END_GAP) < 1 - END_GAP) return true;
  return firstHitOfBody(glass, ox, oy, oz, dx, dy, dz, END_GAP) < 1 - END_GAP;
}
