/** Which points a sub-source sees: shields, glass and obstacles between them. */
import { isShielded, type FilamentSource } from '../emission/filamentSource.ts';
import { canGlassShade } from '../geometry/glass.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import {
  casterBoundInto,
  casterCount,
  END_GAP,
  firstHitOfCaster,
  isOccludedByGlass,
  type Scene,
} from '../geometry/scene.ts';

/** Bounding sphere of points begin … end: x, y, z, radius. */
export function pointsBound({ position: p }: OrientedPoints, begin: number, end: number): Float64Array {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let o = 3 * begin; o < 3 * end; o++) {
    const k = o % 3;
    low[k] = Math.min(low[k]!, p[o]!);
    high[k] = Math.max(high[k]!, p[o]!);
  }
  const radius = Math.hypot(high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!) / 2;
  return Float64Array.of((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2, radius);
}

/** Bounding spheres of all casters, four slots each. */
function allBounds(scene: Scene): Float64Array {
  const bounds = new Float64Array(4 * casterCount(scene));
  for (let c = 0; c < bounds.length / 4; c++) casterBoundInto(bounds.subarray(4 * c, 4 * c + 4), scene, c);
  return bounds;
}

/** Reusable room for the tests of one scene. */
export interface Visibility {
  readonly scene: Scene;
  readonly bounds: Float64Array;
  /**
   * whether the points are on the face or its continuation: then the glass hides them only from sources
   * of which canGlassShade says so; elsewhere it is always tested
   */
  readonly onFace: boolean;
  /** casters that can matter to the run at hand; the first `activeCount` slots are valid */
  readonly active: Int32Array;
}

/** Prepares a scene for visibility tests of points on the face, or anywhere. */
export function createVisibility(scene: Scene, onFace = true): Visibility {
  return { scene, onFace, bounds: allBounds(scene), active: new Int32Array(casterCount(scene)) };
}

/**
 * Casters whose bounding sphere meets the hull of a source and a bounding sphere of points.
 *
 * The hull lies within the target sphere's radius of the segment to its centre.
 */
function gatherActive(
  { bounds, active }: Visibility,
  sx: number,
  sy: number,
  sz: number,
  target: Float64Array,
): number {
  const tx = target[0]! - sx;
  const ty = target[1]! - sy;
  const tz = target[2]! - sz;
  const t2 = tx * tx + ty * ty + tz * tz;
  let activeCount = 0;
  for (let c = 0; c < active.length; c++) {
    const cx = bounds[4 * c]! - sx;
    const cy = bounds[4 * c + 1]! - sy;
    const cz = bounds[4 * c + 2]! - sz;
    const t = t2 > 0 ? Math.min(1, Math.max(0, (cx * tx + cy * ty + cz * tz) / t2)) : 0;
    const gap2 = (cx - t * tx) ** 2 + (cy - t * ty) ** 2 + (cz - t * tz) ** 2;
    if (gap2 <= (bounds[4 * c + 3]! + target[3]!) ** 2) active[activeCount++] = c;
  }
  return activeCount;
}

/**
 * Zeroes the values of points that sub-source j does not see.
 *
 * Points whose value is already zero are not tested. Returns how many were zeroed; `hidden[i]` is 1 for them, else 0.
 *
 * @param values [end − begin] deposits of this sub-source alone
 * @param hidden [end − begin] overwritten
 * @param target bounding sphere of the points
 */
export function hideInto(
  values: Float64Array,
  hidden: Uint8Array,
  visibility: Visibility,
  points: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
  target: Float64Array,
): number {
  const { scene, bounds, active } = visibility;
  const sx = source.position[3 * j]!;
  const sy = source.position[3 * j + 1]!;
  const sz = source.position[3 * j + 2]!;
  const p = points.position;
  const activeCount = gatherActive(visibility, sx, sy, sz, target);
  const glassMatters = !visibility.onFace || canGlassShade(scene.glass, sx, sy, sz);
  const { shield } = source;
  hidden.fill(0, 0, end - begin);
  if (activeCount === 0 && !glassMatters && !shield) return 0;
  let hiddenCount = 0;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    if (values[i - begin] === 0) continue;
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const d2 = dx * dx + dy * dy + dz * dz;
    let isHidden = shield !== null && isShielded(shield, dx, dy, dz, Math.sqrt(d2));
    if (!isHidden && glassMatters) isHidden = isOccludedByGlass(scene.glass, sx, sy, sz, dx, dy, dz);
    for (let k = 0; k < activeCount && !isHidden; k++) {
      const c = active[k]!;
      const cx = bounds[4 * c]! - sx;
      const cy = bounds[4 * c + 1]! - sy;
      const cz = bounds[4 * c + 2]! - sz;
      const t = Math.min(1, Math.max(0, (cx * dx + cy * dy + cz * dz) / d2));
      const gx = cx - t * dx;
      const gy = cy - t * dy;
      const gz = cz - t * dz;
      if (gx * gx + gy * gy + gz * gz > bounds[4 * c + 3]! * bounds[4 * c + 3]!) continue;
      isHidden = firstHitOfCaster(scene, c, sx, sy, sz, dx, dy, dz, END_GAP, 1 - END_GAP) < 1 - END_GAP;
    }
    if (!isHidden) continue;
    values[i - begin] = 0;
    hidden[i - begin] = 1;
    hiddenCount++;
  }
  return hiddenCount;
}

/** Whether anything at all can hide points from this filament: if not, its columns need no visibility tests. */
export function canBeHidden(visibility: Visibility, source: FilamentSource): boolean {
  if (source.shield || !visibility.onFace || casterCount(visibility.scene) > 0) return true;
  for (let j = 0; j < source.count; j++) {
    if (
      canGlassShade(
        visibility.scene.glass,
        source.position[3 * j]!,
        source.position[3 * j + 1]!,
        source.position[3 * j + 2]!,
      )
    )
      return true;
  }
  return false;
}
