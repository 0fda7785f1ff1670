/** One filament as point sub-sources: its loops, or the pieces of its wire. */
import type { EmissionLaw } from './emissionLaw.ts';

/** A shield that removes the directions within a cone; a half-space is the cone of 90°. */
export interface Shield {
  /** unit vector along the middle of the removed cone */
  readonly direction: readonly [number, number, number];
  /** cosine of the cone's half angle */
  readonly cosHalfAngle: number;
}

/** Sub-source j owns slots 3j, 3j+1, 3j+2 of the vector arrays. */
export interface FilamentSource {
  readonly count: number;
  /** [3·count] m */
  readonly position: Float64Array;
  /** [3·count] unit emission axes */
  readonly axis: Float64Array;
  /** [count] share of the filament's charge; they sum to 1 */
  readonly weight: Float64Array;
  readonly law: EmissionLaw;
  readonly shield: Shield | null;
}

/** Whether a direction d (any length, r = |d|) is removed by a shield. */
export function isShielded(shield: Shield, dx: number, dy: number, dz: number, r: number): boolean {
  const [sx, sy, sz] = shield.direction;
  return dx * sx + dy * sy + dz * sz > shield.cosHalfAngle * r;
}
