/** What may come between sources and points: shields, glass, obstacles, and gas. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import { canGlassShade } from '../geometry/glass.ts';
import { casterCount, type Scene } from '../geometry/scene.ts';

/** A scene as seen from a kind of points. */
export interface Visibility {
  readonly scene: Scene;
  /**
   * whether the points are on the face or its continuation: then the glass hides them only from sources
   * of which canGlassShade says so; elsewhere it is always tested
   */
  readonly onFace: boolean;
  /** collisions per length of way in the residual gas, 1/m: what arrives straight fades as e^(−r·perFreePath); 0 in vacuum */
  readonly perFreePath: number;
}

/** Prepares a scene for visibility tests of points on the face, or anywhere. */
export function createVisibility(scene: Scene, onFace = true, perFreePath = 0): Visibility {
  return { scene, onFace, perFreePath };
}

/** Whether the glass may hide points from sub-source j. */
export function canGlassHide({ scene, onFace }: Visibility, { position }: FilamentSource, j: number): boolean {
  return !onFace || canGlassShade(scene.glass, position[3 * j]!, position[3 * j + 1]!, position[3 * j + 2]!);
}

/** Whether the glass may hide points from some sub-source of a filament. */
export function canGlassHideFrom(visibility: Visibility, source: FilamentSource): boolean {
  for (let j = 0; j < source.count; j++) if (canGlassHide(visibility, source, j)) return true;
  return false;
}

/** Whether there is anything at all that might hide points from this filament. */
export function canBeHidden(visibility: Visibility, source: FilamentSource): boolean {
  return source.shield !== null || casterCount(visibility.scene) > 0 || canGlassHideFrom(visibility, source);
}
