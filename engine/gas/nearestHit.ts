/** Where a straight flight ends: the nearest of tank, glass and obstacles, found quickly for flights by the million. */
import { firstHitOfBody, firstHitOfFace, type Glass } from '../geometry/glass.ts';
import { sag } from '../geometry/mirrorShape.ts';
import { casterCount, firstHitOfCaster, type Scene } from '../geometry/scene.ts';
import { STRIDE } from '../geometry/solids.ts';
import { exitOfTank } from '../geometry/tank.ts';
import { FACE, FIRST_OBSTACLE, GLASS_BODY, WALL } from '../transport/massRays.ts';

/** A scene ready for flights, with room for the last answer. */
export interface FlightScene {
  readonly scene: Scene;
  /** bounding spheres of the casters: x, y, z, radius² */
  readonly bounds: Float64Array;
  /** whether the glass is a round conic, for which there is a fast way */
  readonly isRoundConic: boolean;
  /** z above which there is no glass, m */
  readonly glassTop: number;
  /** [1] distance to the last hit, m */
  readonly distance: Float64Array;
}

/** z above which there is no glass, m; the heights of an aspheric face are only sampled, so a little is added. */
export function glassTopOf({ highZ, lowZ }: Glass): number {
  return highZ + 1e-9 + 1e-4 * (highZ - lowZ);
}

/** Prepares a scene for flights. */
export function flightSceneOf(scene: Scene): FlightScene {
  const { solids, meshes } = scene;
  const bounds = new Float64Array(4 * casterCount(scene));
  for (let c = 0; c < casterCount(scene); c++) {
    const record = STRIDE * c;
    // a solid's record ends with its bounding sphere (see solids.ts)
    const bound =
      c < solids.count ? solids.records.subarray(record + 17, record + 21) : meshes[c - solids.count]!.bound;
    bounds.set(bound, 4 * c);
    bounds[4 * c + 3] = bound[3]! ** 2 * (1 + 1e-12);
  }
  const { shape } = scene.glass;
  const isRoundConic = shape.aspheric.length === 0 && shape.cornerAngle === null;
  return { scene, bounds, isRoundConic, glassTop: glassTopOf(scene.glass), distance: new Float64Array(1) };
}

/**
 * The place that a flight meets first, and its distance in flight.distance[0].
 *
 * Gives the same places as the rays of the mass budget.
 *
 * @param d unit direction
 * @param tMin [m] hits at or before this are passed over; the tank's wall never is
 * @param tMax [m] length of the flight
 * @returns FACE, GLASS_BODY, WALL or FIRST_OBSTACLE + caster, or −1 if the flight ends before any
 */
export function nearestHit(
  flight: FlightScene,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
): number {
  const { scene, bounds, distance } = flight;
  const exit = exitOfTank(scene.tank, ox, oy, oz, dx, dy, dz);
  let first = tMax;
  let place = -1;
  if (exit <= tMax) {
    first = exit;
    place = WALL;
  }
  const { glass } = scene;
  if (oz < flight.glassTop || oz + first * dz < flight.glassTop) {
    const face = flight.isRoundConic
      ? hitRoundFace(glass, ox, oy, oz, dx, dy, dz, tMin, first)
      : firstHitOfFace(glass, ox, oy, oz, dx, dy, dz, tMin);
    if (face < first) {
      first = face;
      place = FACE;
    }
    const body = flight.isRoundConic
      ? hitRoundBody(glass, ox, oy, oz, dx, dy, dz, tMin, first)
      : firstHitOfBody(glass, ox, oy, oz, dx, dy, dz, tMin);
    if (body < first) {
      first = body;
      place = GLASS_BODY;
    }
  }
  for (let c = 0, o = 0; o < bounds.length; c++, o += 4) {
    const bx = bounds[o]! - ox;
    const by = bounds[o + 1]! - oy;
    const bz = bounds[o + 2]! - oz;
    const along = bx * dx + by * dy + bz * dz;
    const far2 = bx * bx + by * by + bz * bz;
    if (far2 - along * along > bounds[o + 3]! || (along < 0 && far2 > bounds[o + 3]!)) continue;
    const t = firstHitOfCaster(scene, c, ox, oy, oz, dx, dy, dz, tMin, first);
    if (t < first) {
      first = t;
      place = FIRST_OBSTACLE + c;
    }
  }
  distance[0] = first;
  return place;
}

/** firstHitOfFace for a round conic: t with tMin < t < tMax, or Infinity. */
function hitRoundFace(
  { shape }: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
): number {
  const c = shape.curvature;
  const k1 = 1 + shape.conicConstant;
  const a = c * (dx * dx + dy * dy + k1 * dz * dz);
  const b = c * (ox * dx + oy * dy + k1 * oz * dz) - dz;
  const e = c * (ox * ox + oy * oy + k1 * oz * oz) - 2 * oz;
  const root = b * b - a * e;
  if (root < 0) return Infinity;
  const q = b < 0 ? Math.sqrt(root) - b : -Math.sqrt(root) - b;
  const rim2 = shape.rimRadius * shape.rimRadius;
  const hole2 = shape.holeRadius * shape.holeRadius;
  let first = Infinity;
  let t = q / a;
  if (t > tMin && t < tMax && 1 - k1 * c * (oz + t * dz) >= 0) {
    const x = ox + t * dx - shape.centerX;
    const y = oy + t * dy;
    const r2 = x * x + y * y;
    if (r2 >= hole2 && r2 <= rim2) first = t;
  }
  t = e / q;
  if (t > tMin && t < tMax && t < first && 1 - k1 * c * (oz + t * dz) >= 0) {
    const x = ox + t * dx - shape.centerX;
    const y = oy + t * dy;
    const r2 = x * x + y * y;
    if (r2 >= hole2 && r2 <= rim2) first = t;
  }
  return first;
}

/** firstHitOfBody for a round glass: t with tMin < t < tMax, or Infinity. */
function hitRoundBody(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
): number {
  const { shape } = glass;
  const px = ox - shape.centerX;
  const back = (glass.backZ - oz) / dz;
  let first = Infinity;
  if (back > tMin && back < tMax) {
    const x = px + back * dx;
    const y = oy + back * dy;
    const r2 = x * x + y * y;
    if (r2 >= shape.holeRadius * shape.holeRadius && r2 <= shape.rimRadius * shape.rimRadius) first = back;
  }
  const a = dx * dx + dy * dy;
  if (a === 0) return first;
  const b = px * dx + oy * dy;
  const r2 = px * px + oy * oy;
  first = Math.min(first, hitRoundWall(glass, shape.rimRadius, a, b, r2, ox, oy, oz, dx, dy, dz, tMin, tMax));
  if (shape.holeRadius > 0)
    first = Math.min(first, hitRoundWall(glass, shape.holeRadius, a, b, r2, ox, oy, oz, dx, dy, dz, tMin, tMax));
  return first;
}

/** An upright wall of the glass, from its back to its face. */
function hitRoundWall(
  glass: Glass,
  radius: number,
  a: number,
  b: number,
  r2: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
): number {
  const root = b * b - a * (r2 - radius * radius);
  if (root < 0) return Infinity;
  const q = Math.sqrt(root);
  const near = (-b - q) / a;
  if (near >= tMax) return Infinity;
  if (near > tMin && isOnWall(glass, ox + near * dx, oy + near * dy, oz + near * dz)) return near;
  const far = (-b + q) / a;
  return far > tMin && far < tMax && isOnWall(glass, ox + far * dx, oy + far * dy, oz + far * dz) ? far : Infinity;
}

function isOnWall(glass: Glass, x: number, y: number, z: number): boolean {
  if (z < glass.backZ || z > glass.highZ) return false;
  return z <= sag(glass.shape, Math.sqrt(x * x + y * y));
}
