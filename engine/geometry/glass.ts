/** Rays against the mirror: its reflecting face, and the body of glass behind it (edge, hole and back). */
import { backHeight, faceHeights, isOnGlass, sag, slope, type MirrorShape } from './mirrorShape.ts';

/** Steps along a ray in which a sign change of an aspheric face is looked for. */
const SEARCH_STEPS = 48;
const BISECTIONS = 60;

/** The glass with what rays need at hand. */
export interface Glass {
  readonly shape: MirrorShape;
  readonly backZ: number;
  readonly lowZ: number;
  readonly highZ: number;
  /** parent radius up to which the surface is used, m */
  readonly reach: number;
  /** whether the face curves the same way everywhere: +1 bowl, −1 dome or flat, 0 mixed */
  readonly bend: 1 | 0 | -1;
}

/** Prepares a mirror for rays. */
export function glassOf(shape: MirrorShape): Glass {
  const { low, high } = faceHeights(shape);
  const reach = shape.centerX + shape.rimRadius;
  return { shape, backZ: backHeight(shape), lowZ: low, highZ: high, reach, bend: bendOf(shape, reach) };
}

function bendOf(shape: MirrorShape, reach: number): 1 | 0 | -1 {
  if (shape.aspheric.length === 0) return shape.curvature > 0 ? 1 : -1;
  let up = 0;
  let down = 0;
  for (let i = 0; i < 256; i++) {
    const change = slope(shape, (reach * (i + 1)) / 256) - slope(shape, (reach * i) / 256);
    if (change > 0) up++;
    if (change < 0) down++;
  }
  return down === 0 && up > 0 ? 1 : up === 0 ? -1 : 0;
}

/**
 * Whether the glass can come between a source and some point of the face that it faces.
 *
 * A bowl continued by its tangent beyond the rim bounds a convex space: whatever lies in it sees
 * the whole face. A dome lies below each of its tangent planes: whatever a point faces, it sees.
 */
export function canGlassShade(glass: Glass, x: number, y: number, z: number): boolean {
  if (glass.bend === -1) return false;
  if (glass.bend === 0) return true;
  const r = Math.hypot(x, y);
  const bowl =
    r <= glass.reach
      ? sag(glass.shape, r)
      : sag(glass.shape, glass.reach) + slope(glass.shape, glass.reach) * (r - glass.reach);
  return !(z >= bowl);
}

/** First hit of a ray on the reflecting face, as a multiple of its direction: t > tMin, or Infinity. */
export function firstHitOfFace(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const { shape } = glass;
  if (shape.aspheric.length > 0) return searchFace(glass, ox, oy, oz, dx, dy, dz, tMin);
  const c = shape.curvature;
  const k1 = 1 + shape.conicConstant;
  // c (x² + y² + (1+K) z²) − 2 z = 0 along the ray
  const a = c * (dx * dx + dy * dy + k1 * dz * dz);
  const b = c * (ox * dx + oy * dy + k1 * oz * dz) - dz;
  const e = c * (ox * ox + oy * oy + k1 * oz * oz) - 2 * oz;
  const root = b * b - a * e;
  if (root < 0) return Infinity;
  const q = -(b + (b < 0 ? -Math.sqrt(root) : Math.sqrt(root)));
  const t1 = faceHit(shape, q / a, ox, oy, oz, dx, dy, dz, tMin);
  const t2 = faceHit(shape, e / q, ox, oy, oz, dx, dy, dz, tMin);
  return Math.min(t1, t2);
}

/** t if it is ahead, on the vertex's sheet of the conic and on the glass; else Infinity. */
function faceHit(
  shape: MirrorShape,
  t: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  if (!(t > tMin) || t === Infinity) return Infinity;
  if (1 - (1 + shape.conicConstant) * shape.curvature * (oz + t * dz) < 0) return Infinity;
  return isOnGlass(shape, ox + t * dx, oy + t * dy) ? t : Infinity;
}

/** An aspheric face: steps along the ray inside the glass's cylinder until it changes sides, then bisects. */
function searchFace(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const span = slabSpan(glass, ox, oy, oz, dx, dy, dz, tMin);
  if (!span) return Infinity;
  const above = (t: number): number => oz + t * dz - sag(glass.shape, Math.hypot(ox + t * dx, oy + t * dy));
  let [t0] = span;
  let f0 = above(t0);
  for (let i = 1; i <= SEARCH_STEPS; i++) {
    const t1 = span[0] + ((span[1] - span[0]) * i) / SEARCH_STEPS;
    const f1 = above(t1);
    if (f0 > 0 !== f1 > 0) {
      const t = bisect(above, t0, t1);
      if (t > tMin && isOnGlass(glass.shape, ox + t * dx, oy + t * dy)) return t;
    }
    t0 = t1;
    f0 = f1;
  }
  return Infinity;
}

function bisect(f: (t: number) => number, from: number, to: number): number {
  const sign = f(from) > 0;
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (from + to) / 2;
    if (f(middle) > 0 === sign) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Part of a ray inside the cylinder of the glass and between the lowest and highest point of its face. */
function slabSpan(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): [number, number] | null {
  const px = ox - glass.shape.centerX;
  const a = dx * dx + dy * dy;
  const b = px * dx + oy * dy;
  const c = px * px + oy * oy - glass.shape.rimRadius ** 2;
  let enter = tMin;
  let leave = Infinity;
  if (a > 0) {
    const root = b * b - a * c;
    if (root < 0) return null;
    enter = Math.max(enter, (-b - Math.sqrt(root)) / a);
    leave = (-b + Math.sqrt(root)) / a;
  } else if (c > 0) return null;
  const margin = 1e-9 + 1e-6 * (glass.highZ - glass.lowZ);
  if (dz !== 0) {
    const t = (glass.lowZ - margin - oz) / dz;
    const s = (glass.highZ + margin - oz) / dz;
    enter = Math.max(enter, Math.min(t, s));
    leave = Math.min(leave, Math.max(t, s));
  }
  return enter < leave && leave < Infinity ? [enter, leave] : null;
}

/** First hit of a ray on the glass's edge, the wall of its hole or its back: t > tMin, or Infinity. */
export function firstHitOfBody(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const { shape } = glass;
  let first = Infinity;
  const back = (glass.backZ - oz) / dz;
  if (back > tMin && isOnGlass(shape, ox + back * dx, oy + back * dy)) first = back;
  if (shape.holeRadius > 0) first = Math.min(first, hitWall(glass, shape.holeRadius, ox, oy, oz, dx, dy, dz, tMin));
  const edge =
    shape.cornerAngle === null
      ? hitWall(glass, shape.rimRadius, ox, oy, oz, dx, dy, dz, tMin)
      : hitHexagonWall(glass, ox, oy, oz, dx, dy, dz, tMin);
  return Math.min(first, edge);
}

/** Whether (x, y, z) on an upright wall of the glass lies between its back and its face. */
function isOnWall(glass: Glass, x: number, y: number, z: number): boolean {
  return z >= glass.backZ && z <= sag(glass.shape, Math.hypot(x, y));
}

function hitWall(
  glass: Glass,
  radius: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const px = ox - glass.shape.centerX;
  const a = dx * dx + dy * dy;
  const b = px * dx + oy * dy;
  const root = b * b - a * (px * px + oy * oy - radius * radius);
  if (root < 0 || a === 0) return Infinity;
  const near = (-b - Math.sqrt(root)) / a;
  if (near > tMin && isOnWall(glass, ox + near * dx, oy + near * dy, oz + near * dz)) return near;
  const far = (-b + Math.sqrt(root)) / a;
  return far > tMin && isOnWall(glass, ox + far * dx, oy + far * dy, oz + far * dz) ? far : Infinity;
}

function hitHexagonWall(
  glass: Glass,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
): number {
  const { centerX, rimRadius, cornerAngle } = glass.shape;
  const apothem = rimRadius * Math.cos(Math.PI / 6);
  let first = Infinity;
  for (let k = 0; k < 6; k++) {
    const angle = (cornerAngle ?? 0) + Math.PI / 6 + (k * Math.PI) / 3;
    const nx = Math.cos(angle);
    const ny = Math.sin(angle);
    const t = (apothem - (ox - centerX) * nx - oy * ny) / (dx * nx + dy * ny);
    if (!(t > tMin && t < first)) continue;
    const x = ox + t * dx;
    const y = oy + t * dy;
    const along = (y * nx - (x - centerX) * ny) * 2;
    if (Math.abs(along) <= rimRadius && isOnWall(glass, x, y, oz + t * dz)) first = t;
  }
  return first;
}
