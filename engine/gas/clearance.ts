/** A lower bound of the distance from a place to everything solid: within it an atom needs no ray. */
import { sag, slope, type MirrorShape } from '../geometry/mirrorShape.ts';
import type { Scene } from '../geometry/scene.ts';
import { STRIDE, type Solids } from '../geometry/solids.ts';
import { glassTopOf } from './nearestHit.ts';

/** Kinds of solids in their records (see solids.ts); what is none of these is a disc or an annulus. */
const BOX = 0;
const FRUSTUM = 1;
const SPHERE = 3;

/** Rounding of the bound; an aspheric face, whose steepest place is only sampled, is given more. */
const ROUNDING = 1e-9;
const SAMPLED = 0.02;

/** A scene with what the bound needs at hand. */
export interface Clearance {
  readonly scene: Scene;
  /** z above which there is no glass, m */
  readonly glassTop: number;
  /** 1/√(1 + steepest slope²), a little less */
  readonly faceFactor: number;
}

/** Prepares a scene for the bound. */
export function clearanceOf(scene: Scene): Clearance {
  const { shape, reach } = scene.glass;
  const steepest = steepestSlope(shape, reach);
  const doubt = shape.aspheric.length > 0 ? SAMPLED : ROUNDING;
  return { scene, glassTop: glassTopOf(scene.glass), faceFactor: (1 - doubt) / Math.sqrt(1 + steepest * steepest) };
}

function steepestSlope(shape: MirrorShape, reach: number): number {
  if (shape.aspheric.length === 0) return Math.abs(slope(shape, reach));
  let steepest = 0;
  for (let i = 1; i <= 512; i++) steepest = Math.max(steepest, Math.abs(slope(shape, (reach * i) / 512)));
  return steepest;
}

/**
 * At least so far is every surface from a place in the tank.
 *
 * Exact for the tank, boxes, spheres, discs and frusta; for the glass the larger of the distances to the
 * cylinders and planes around it and of the height above its face times the cosine of the face's steepest
 * slope; for meshes their bounding spheres.
 *
 * @returns [m] 0 where nothing better is known
 */
export function clearanceAt({ scene, glassTop, faceFactor }: Clearance, x: number, y: number, z: number): number {
  const { tank, glass, solids, meshes } = scene;
  const tx = x - tank.centerX;
  let least = Math.min(tank.radius - Math.sqrt(tx * tx + y * y), tank.highZ - z, z - tank.lowZ);
  const { shape } = glass;
  const gx = x - shape.centerX;
  const across = Math.sqrt(gx * gx + y * y);
  const beside = Math.max(across - shape.rimRadius, shape.holeRadius - across, glass.backZ - z, z - glassTop);
  if (beside < least) {
    const height = z - sag(shape, Math.min(Math.sqrt(x * x + y * y), glass.reach));
    least = Math.min(least, Math.max(beside, height * faceFactor));
  }
  for (let i = 0; i < solids.count && least > 0; i++)
    least = Math.min(least, solidClearance(solids, i, x, y, z, least));
  for (const { bound } of meshes)
    least = Math.min(least, Math.sqrt((x - bound[0]) ** 2 + (y - bound[1]) ** 2 + (z - bound[2]) ** 2) - bound[3]);
  return least > 0 ? least * (1 - ROUNDING) : 0;
}

/** Distance from a place to the surface of solid i, or its bounding sphere's if that is beyond `enough`. */
function solidClearance({ records: g }: Solids, i: number, x: number, y: number, z: number, enough: number): number {
  const o = STRIDE * i;
  const bx = x - g[o + 17]!;
  const by = y - g[o + 18]!;
  const bz = z - g[o + 19]!;
  const outside = Math.sqrt(bx * bx + by * by + bz * bz) - g[o + 20]!;
  if (outside >= enough) return outside;
  const px = x - g[o + 10]!;
  const py = y - g[o + 11]!;
  const pz = z - g[o + 12]!;
  const lx = g[o + 1]! * px + g[o + 2]! * py + g[o + 3]! * pz;
  const ly = g[o + 4]! * px + g[o + 5]! * py + g[o + 6]! * pz;
  const lz = g[o + 7]! * px + g[o + 8]! * py + g[o + 9]! * pz;
  switch (g[o]) {
    case BOX:
      return boxDistance(Math.abs(lx) - g[o + 13]!, Math.abs(ly) - g[o + 14]!, Math.abs(lz) - g[o + 15]!);
    case SPHERE:
      return Math.abs(Math.sqrt(lx * lx + ly * ly + lz * lz) - g[o + 13]!);
    case FRUSTUM:
      return frustumDistance(g[o + 13]!, g[o + 14]!, g[o + 15]!, g[o + 16] === 1, Math.sqrt(lx * lx + ly * ly), lz);
    default: {
      const across = Math.sqrt(lx * lx + ly * ly);
      const off = Math.max(g[o + 13]! - across, across - g[o + 14]!, 0);
      return Math.sqrt(off * off + lz * lz);
    }
  }
}

/** Distance to the surface of a box from the excess over its half sides. */
function boxDistance(ex: number, ey: number, ez: number): number {
  const inside = Math.max(ex, ey, ez);
  if (inside <= 0) return -inside;
  const ox = Math.max(ex, 0);
  const oy = Math.max(ey, 0);
  const oz = Math.max(ez, 0);
  return Math.sqrt(ox * ox + oy * oy + oz * oz);
}

/** Distance to a frustum in its own half-plane: its slanted side, and its ends if closed. */
function frustumDistance(height: number, r0: number, r1: number, closed: boolean, r: number, z: number): number {
  const side = segmentDistance(r0, 0, r1, height, r, z);
  if (!closed) return side;
  return Math.min(side, segmentDistance(0, 0, r0, 0, r, z), segmentDistance(0, height, r1, height, r, z));
}

function segmentDistance(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
  const ox = x - ax - t * dx;
  const oy = y - ay - t * dy;
  return Math.sqrt(ox * ox + oy * oy);
}
