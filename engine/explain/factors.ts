/** The factors of one sub-source's deposit at one point. */
import { emittedIntensity } from '../emission/emissionLaw.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Scene } from '../geometry/scene.ts';
import { blockerOf, SEEN } from './sight.ts';

/** In the order of the slots; `emission` is the direction of departure, `arrival` that of landing. */
export const FACTORS = ['distance', 'emission', 'arrival', 'shadow', 'gas'] as const;
export type Factor = (typeof FACTORS)[number];
/** Slots of the factors that are looked up by name. */
export const ARRIVAL = 2;
export const SHADOW = 3;
export const GAS = 4;

/** One line of sight, reused. */
export interface Line {
  /** [FACTORS] 1/m², 1/sr, 1, 1, 1: their product times kilograms is the deposit, kg/m² */
  readonly factors: Float64Array;
  /** m */
  distance: number;
  /** see sight.ts */
  blocker: number;
}

/** Room for one line of sight. */
export function createLine(): Line {
  return { factors: new Float64Array(FACTORS.length), distance: 0, blocker: SEEN };
}

/**
 * Overwrites the line of sight from sub-source j to point i on the face.
 *
 *     1/r² · I(u) · max(0, −u·n) · V · exp(−r/λ)
 *
 * V is 1 where nothing would arrive anyway: a shadow is only what takes something away.
 *
 * @param freePath [m] λ, mean way between collisions with gas; Infinity for none
 */
export function lineInto(
  out: Line,
  scene: Scene,
  source: FilamentSource,
  j: number,
  { position: p, normal: n }: OrientedPoints,
  i: number,
  freePath: number,
): Line {
  const { position: s, axis: a } = source;
  const dx = p[3 * i]! - s[3 * j]!;
  const dy = p[3 * i + 1]! - s[3 * j + 1]!;
  const dz = p[3 * i + 2]! - s[3 * j + 2]!;
  const r = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const cosEmit = (dx * a[3 * j]! + dy * a[3 * j + 1]! + dz * a[3 * j + 2]!) / r;
  const cosArrive = -(dx * n[3 * i]! + dy * n[3 * i + 1]! + dz * n[3 * i + 2]!) / r;
  const { factors } = out;
  factors[0] = 1 / (r * r);
  factors[1] = emittedIntensity(source.law, cosEmit);
  factors[2] = Math.max(0, cosArrive);
  out.blocker = factors[1] > 0 && factors[2] > 0 ? blockerOf(scene, source, j, dx, dy, dz) : SEEN;
  factors[3] = out.blocker === SEEN ? 1 : 0;
  factors[4] = Math.exp(-r / freePath);
  out.distance = r;
  return out;
}
