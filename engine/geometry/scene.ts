/** Everything in the tank that a straight line can meet: glass, tank, solids and meshes. */
import { firstHitOfBody, firstHitOfFace, type Glass } from './glass.ts';
import { firstHitOfSolid, STRIDE, type Solids } from './solids.ts';
import type { Tank } from './tank.ts';

/** A triangle mesh behind a bounding-volume hierarchy. */
export interface MeshSolid {
  /** bounding sphere: x, y, z, radius, m */
  readonly bound: readonly [number, number, number, number];
  /** first hit of a ray with tMin < t < tMax as a multiple of its direction, or Infinity */
  firstHit(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, tMin: number, tMax: number): number;
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

/** Bounding sphere of caster i into `out`: x, y, z, radius. Overwrites. */
export function casterBoundInto(out: Float64Array, scene: Scene, i: number): Float64Array {
  const { solids, meshes } = scene;
  if (i < solids.count) out.set(solids.records.subarray(STRIDE * i + 17, STRIDE * i + 21));
  else out.set(meshes[i - solids.count]?.bound ?? [0, 0, 0, 0]);
  return out;
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
