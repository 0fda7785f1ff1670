/**
 * The obstacles as flat records for rays: box, cylinder, tube, cone frustum, disc, annulus, sphere.
 *
 * Each record owns STRIDE slots:
 *
 *     0       kind
 *     1–9     rotation, local from world, row by row
 *     10–12   origin of the local frame, m
 *     13–16   sizes, by kind:
 *               BOX      half sides x, y, z
 *               FRUSTUM  height, radius at 0, radius at height, 1 if the ends are closed
 *               ANNULUS  inner radius, outer radius
 *               SPHERE   radius
 *     17–20   bounding sphere: centre x, y, z and radius, m
 */
import { mat3, quat, vec3 } from 'gl-matrix';
import type { ObstacleDesign } from '../design/designSchema.ts';
import {
  CLEAR,
  CLEARANCE,
  isClearOfBall,
  standingOfAnnulus,
  standingOfBall,
  standingOfBox,
  standingOfFrustum,
  type Beam,
  type Standing,
} from './beam.ts';
import { hitAnnulus, hitBox, hitFrustum, hitSphere, isFrustumHit } from './solidHits.ts';

export const STRIDE = 21;
export const BOX = 0;
export const FRUSTUM = 1;
export const ANNULUS = 2;
const SPHERE = 3;

export type Vector = readonly [number, number, number];

/** The obstacles that have a closed form; meshes are kept apart. */
export interface Solids {
  readonly count: number;
  /** [STRIDE·count], layout above */
  readonly records: Float64Array;
}

type SolidDesign = Exclude<ObstacleDesign, { shape: 'mesh' }>;

/** Packs obstacles, in order; meshes must have been left out. */
export function packSolids(obstacles: readonly SolidDesign[]): Solids {
  const records = new Float64Array(STRIDE * obstacles.length);
  obstacles.forEach((obstacle, i) => packInto(records.subarray(STRIDE * i, STRIDE * (i + 1)), obstacle));
  return { count: obstacles.length, records };
}

/** Rotation (row by row) that takes unit vector `axis` to local z. */
function rotationFromAxis([x, y, z]: Vector): number[] {
  // orthonormal pair without a branch: Duff et al., J. Computer Graphics Techniques 6 (2017) 1
  const sign = z >= 0 ? 1 : -1;
  const a = -1 / (sign + z);
  const b = x * y * a;
  return [1 + sign * x * x * a, sign * b, -sign * x, b, sign + y * y * a, -y, x, y, z];
}

/** Rotation (row by row) of a box turned about x, then y, then z: local from world. */
export function rotationFromAngles(angles: Vector | undefined): number[] {
  if (!angles) return [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const turn: number[] = [0, 0, 0, 1];
  quat.rotateZ(turn as quat, turn as quat, angles[2]);
  quat.rotateY(turn as quat, turn as quat, angles[1]);
  quat.rotateX(turn as quat, turn as quat, angles[0]);
  quat.conjugate(turn as quat, turn as quat);
  return rowsOf(turn);
}

function rowsOf(turn: number[]): number[] {
  const columns = new Float64Array(9);
  mat3.fromQuat(columns as unknown as mat3, turn as quat);
  return [0, 3, 6, 1, 4, 7, 2, 5, 8].map((k) => columns[k] ?? 0);
}

function packInto(record: Float64Array, obstacle: SolidDesign): void {
  switch (obstacle.shape) {
    case 'box': {
      const half = obstacle.size.map((side) => side / 2);
      fill(
        record,
        BOX,
        rotationFromAngles(obstacle.rotation),
        obstacle.center,
        half,
        obstacle.center,
        Math.hypot(...half),
      );
      return;
    }
    case 'cylinder':
    case 'tube':
      packFrustum(
        record,
        obstacle.from,
        obstacle.to,
        obstacle.diameter / 2,
        obstacle.diameter / 2,
        obstacle.shape === 'cylinder',
      );
      return;
    case 'cone frustum':
      packFrustum(record, obstacle.from, obstacle.to, obstacle.fromDiameter / 2, obstacle.toDiameter / 2, true);
      return;
    case 'disc':
      fill(
        record,
        ANNULUS,
        rotationFromAxis(obstacle.normal),
        obstacle.center,
        [0, obstacle.diameter / 2],
        obstacle.center,
        obstacle.diameter / 2,
      );
      return;
    case 'annulus':
      fill(
        record,
        ANNULUS,
        rotationFromAxis(obstacle.normal),
        obstacle.center,
        [obstacle.innerDiameter / 2, obstacle.outerDiameter / 2],
        obstacle.center,
        obstacle.outerDiameter / 2,
      );
      return;
    case 'sphere':
      fill(
        record,
        SPHERE,
        rotationFromAngles(undefined),
        obstacle.center,
        [obstacle.diameter / 2],
        obstacle.center,
        obstacle.diameter / 2,
      );
  }
}

function packFrustum(record: Float64Array, from: Vector, to: Vector, r0: number, r1: number, closed: boolean): void {
  const along: [number, number, number] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const height = vec3.length(along);
  const axis: Vector = height > 0 ? [along[0] / height, along[1] / height, along[2] / height] : [0, 0, 1];
  const middle: Vector = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
  fill(
    record,
    FRUSTUM,
    rotationFromAxis(axis),
    from,
    [height, r0, r1, closed ? 1 : 0],
    middle,
    Math.hypot(height / 2, Math.max(r0, r1)),
  );
}

function fill(
  record: Float64Array,
  kind: number,
  rotation: number[],
  origin: Vector,
  sizes: readonly number[],
  center: Vector,
  radius: number,
): void {
  record[0] = kind;
  record.set(rotation, 1);
  record.set(origin, 10);
  record.set(sizes, 13);
  record.set(center, 17);
  record[20] = radius;
}

/**
 * Where a ray from (ox, oy, oz) along (dx, dy, dz) first meets solid i, as a multiple of the direction.
 *
 * @param tMin hits at or before this are passed over
 * @returns t > tMin, or Infinity
 */
export function firstHitOfSolid(
  solids: Solids,
  i: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const g = solids.records;
  const o = STRIDE * i;
  const px = ox - g[o + 10]!;
  const py = oy - g[o + 11]!;
  const pz = oz - g[o + 12]!;
  const lx = g[o + 1]! * px + g[o + 2]! * py + g[o + 3]! * pz;
  const ly = g[o + 4]! * px + g[o + 5]! * py + g[o + 6]! * pz;
  const lz = g[o + 7]! * px + g[o + 8]! * py + g[o + 9]! * pz;
  const ux = g[o + 1]! * dx + g[o + 2]! * dy + g[o + 3]! * dz;
  const uy = g[o + 4]! * dx + g[o + 5]! * dy + g[o + 6]! * dz;
  const uz = g[o + 7]! * dx + g[o + 8]! * dy + g[o + 9]! * dz;
  return firstHitInFrame(g, o, lx, ly, lz, ux, uy, uz, tMin);
}

/** The same for a ray in the solid's own frame; the record starts at slot o. */
function firstHitInFrame(
  g: Float64Array,
  o: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
): number {
  switch (g[o]) {
    case BOX:
      return hitBox(g[o + 13]!, g[o + 14]!, g[o + 15]!, lx, ly, lz, ux, uy, uz, tMin);
    case FRUSTUM:
      return hitFrustum(g[o + 13]!, g[o + 14]!, g[o + 15]!, g[o + 16] === 1, lx, ly, lz, ux, uy, uz, tMin);
    case ANNULUS:
      return hitAnnulus(g[o + 13]!, g[o + 14]!, lx, ly, lz, ux, uy, uz, tMin);
    default:
      return hitSphere(g[o + 13]!, lx, ly, lz, ux, uy, uz, tMin);
  }
}

/** Whether a ray in the solid's own frame meets it anywhere between tMin and tMax. */
function isHitInFrame(
  g: Float64Array,
  o: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
  tMax: number,
): boolean {
  switch (g[o]) {
    case BOX:
      return hitBox(g[o + 13]!, g[o + 14]!, g[o + 15]!, lx, ly, lz, ux, uy, uz, tMin) < tMax;
    case FRUSTUM:
      return isFrustumHit(g[o + 13]!, g[o + 14]!, g[o + 15]!, g[o + 16] === 1, lx, ly, lz, ux, uy, uz, tMin, tMax);
    case ANNULUS:
      return hitAnnulus(g[o + 13]!, g[o + 14]!, lx, ly, lz, ux, uy, uz, tMin) < tMax;
    default:
      return hitSphere(g[o + 13]!, lx, ly, lz, ux, uy, uz, tMin) < tMax;
  }
}

/** How solid i stands in a beam. */
export function standingOfSolid(solids: Solids, i: number, beam: Beam): Standing {
  const g = solids.records;
  const o = STRIDE * i;
  if (isClearOfBall(beam, g[o + 17]!, g[o + 18]!, g[o + 19]!, g[o + 20]!)) return CLEAR;
  const px = beam[0]! - g[o + 10]!;
  const py = beam[1]! - g[o + 11]!;
  const pz = beam[2]! - g[o + 12]!;
  const dx = beam[4]! - beam[0]!;
  const dy = beam[5]! - beam[1]!;
  const dz = beam[6]! - beam[2]!;
  const lx = g[o + 1]! * px + g[o + 2]! * py + g[o + 3]! * pz;
  const ly = g[o + 4]! * px + g[o + 5]! * py + g[o + 6]! * pz;
  const lz = g[o + 7]! * px + g[o + 8]! * py + g[o + 9]! * pz;
  const ux = g[o + 1]! * dx + g[o + 2]! * dy + g[o + 3]! * dz;
  const uy = g[o + 4]! * dx + g[o + 5]! * dy + g[o + 6]! * dz;
  const uz = g[o + 7]! * dx + g[o + 8]! * dy + g[o + 9]! * dz;
  const r = beam[3]! + CLEARANCE;
  const dr = beam[7]! - beam[3]!;
  switch (g[o]) {
    case BOX:
      return standingOfBox(g[o + 13]!, g[o + 14]!, g[o + 15]!, lx, ly, lz, ux, uy, uz, r, dr);
    case FRUSTUM:
      return standingOfFrustum(g[o + 13]!, g[o + 14]!, g[o + 15]!, g[o + 16] === 1, lx, ly, lz, ux, uy, uz, r, dr);
    case ANNULUS:
      return standingOfAnnulus(g[o + 13]!, g[o + 14]!, lx, ly, lz, ux, uy, uz, r, dr);
    default:
      return standingOfBall(g[o + 13]!, lx, ly, lz, ux, uy, uz, r, dr);
  }
}

/**
 * Marks which of the points members[from … to) solid i hides from a source at (sx, sy, sz).
 *
 * @param hidden set to 1 at the point's index less `begin`, never cleared; points already marked are passed over
 * @param gap share of a line of sight, at its ends, that is not tested
 * @returns how many were marked
 */
export function hideBehindSolid(
  hidden: Uint8Array,
  solids: Solids,
  i: number,
  sx: number,
  sy: number,
  sz: number,
  position: Float64Array,
  begin: number,
  members: Int32Array,
  from: number,
  to: number,
  gap: number,
): number {
  const g = solids.records;
  const o = STRIDE * i;
  const px = sx - g[o + 10]!;
  const py = sy - g[o + 11]!;
  const pz = sz - g[o + 12]!;
  const lx = g[o + 1]! * px + g[o + 2]! * py + g[o + 3]! * pz;
  const ly = g[o + 4]! * px + g[o + 5]! * py + g[o + 6]! * pz;
  const lz = g[o + 7]! * px + g[o + 8]! * py + g[o + 9]! * pz;
  let count = 0;
  for (let k = from; k < to; k++) {
    const at = members[k]! - begin;
    if (hidden[at] === 1) continue;
    const p = 3 * members[k]!;
    const dx = position[p]! - sx;
    const dy = position[p + 1]! - sy;
    const dz = position[p + 2]! - sz;
    const ux = g[o + 1]! * dx + g[o + 2]! * dy + g[o + 3]! * dz;
    const uy = g[o + 4]! * dx + g[o + 5]! * dy + g[o + 6]! * dz;
    const uz = g[o + 7]! * dx + g[o + 8]! * dy + g[o + 9]! * dz;
    if (!isHitInFrame(g, o, lx, ly, lz, ux, uy, uz, gap, 1 - gap)) continue;
    hidden[at] = 1;
    count++;
  }
  return count;
}

/** Whether a point lies inside solid i; sheets (disc, annulus, tube) have no inside. */
export function isInSolid(solids: Solids, i: number, x: number, y: number, z: number): boolean {
  const kind = solids.records[STRIDE * i];
  if (kind === ANNULUS || (kind === FRUSTUM && solids.records[STRIDE * i + 16] === 0)) return false;
  const first = firstHitOfSolid(solids, i, x, y, z, 0.4, 0.5, 0.77, 0);
  if (first === Infinity) return false;
  return firstHitOfSolid(solids, i, x, y, z, 0.4, 0.5, 0.77, first * (1 + 1e-12)) === Infinity;
}
