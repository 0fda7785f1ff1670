/** What stands between a sub-source and a point of the face. */
import { isShielded, type FilamentSource } from '../emission/filamentSource.ts';
import { canGlassShade } from '../geometry/glass.ts';
import { casterCount, END_GAP, firstHitOfCaster, isOccludedByGlass, type Scene } from '../geometry/scene.ts';

/** Blockers that are no obstacles; obstacles have their number, from 0, in the order of casters. */
export const SEEN = -1;
export const BY_SHIELD = -2;
export const BY_GLASS = -3;

/**
 * What hides a point on the face, d = (dx, dy, dz) away, from sub-source j: its shield, the glass, or the first
 * obstacle in order; SEEN if nothing does. Agrees with the columns of transport/ on what is hidden.
 */
export function blockerOf(scene: Scene, source: FilamentSource, j: number, dx: number, dy: number, dz: number): number {
  const sx = source.position[3 * j]!;
  const sy = source.position[3 * j + 1]!;
  const sz = source.position[3 * j + 2]!;
  const { shield } = source;
  if (shield && isShielded(shield, dx, dy, dz, Math.sqrt(dx * dx + dy * dy + dz * dz))) return BY_SHIELD;
  if (canGlassShade(scene.glass, sx, sy, sz) && isOccludedByGlass(scene.glass, sx, sy, sz, dx, dy, dz)) return BY_GLASS;
  for (let c = 0; c < casterCount(scene); c++) {
    if (firstHitOfCaster(scene, c, sx, sy, sz, dx, dy, dz, END_GAP, 1 - END_GAP) < 1 - END_GAP) return c;
  }
  return SEEN;
}
