/** Where a filament's vapour ends, by rays: an estimate of the mass budget that no quadrature enters. */
import { sampleDirectionInto } from '../emission/sampleDirection.ts';
import { isShielded, type FilamentSource } from '../emission/filamentSource.ts';
import { firstHitOfBody, firstHitOfFace } from '../geometry/glass.ts';
import { casterCount, END_GAP, firstHitOfCaster, type Scene } from '../geometry/scene.ts';
import { exitOfTank } from '../geometry/tank.ts';

/** Where vapour can end; obstacles follow, in the order of casters. */
export const FACE = 0;
export const GLASS_BODY = 1;
export const WALL = 2;
export const SHIELD = 3;
export const FIRST_OBSTACLE = 4;

/** Independently shifted copies of the point set; their spread gives the standard error. */
export const REPLICATES = 16;

/** The additive recurrence that fills the square most evenly: powers of 1/ρ, ρ³ = ρ + 1.
 * @see M. Roberts, The unreasonable effectiveness of quasirandom sequences (2018); constants from memory */
const STEP_1 = 0.7548776662466927;
const STEP_2 = 0.5698402909980532;

/** Number of places where vapour can end in a scene. */
export function budgetLength(scene: Scene): number {
  return FIRST_OBSTACLE + casterCount(scene);
}

/** Uniform shift in [0, 1) from whole numbers: two rounds of a 32-bit mixer. */
function shift(seed: number, replicate: number, dimension: number): number {
  let h =
    Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^
    Math.imul(replicate + 1, 0xc2b2ae35) ^
    Math.imul(dimension + 1, 0x27d4eb2f);
  for (let k = 0; k < 2; k++) {
    h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
    h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
    h ^= h >>> 16;
  }
  return (h >>> 0) / 2 ** 32;
}

/**
 * Follows rays from a filament to where each ends and returns the share of its vapour per place.
 *
 * Shifted quasi-random directions, the same for the same seed whoever computes them. Each replicate
 * is an unbiased estimate; rays are dealt out to the sub-sources in turn, weighted by their charge.
 *
 * @param rays rays per replicate, ≥ 1
 * @param seed whole number
 * @returns [REPLICATES · budgetLength] shares, replicate by replicate; each replicate's sum is near 1
 */
export function traceBudget(source: FilamentSource, scene: Scene, rays: number, seed: number): Float64Array {
  const places = budgetLength(scene);
  const shares = new Float64Array(REPLICATES * places);
  const direction = new Float64Array(3);
  for (let replicate = 0; replicate < REPLICATES; replicate++) {
    const [shift1, shift2] = [shift(seed, replicate, 1), shift(seed, replicate, 2)];
    const total = rays * source.count;
    for (let k = 0; k < total; k++) {
      const j = k % source.count;
      const axis = source.axis.subarray(3 * j, 3 * j + 3);
      const weight = sampleDirectionInto(
        direction,
        source.law,
        axis,
        (shift1 + k * STEP_1) % 1,
        (shift2 + k * STEP_2) % 1,
      );
      const place = endOfRay(source, j, scene, direction[0]!, direction[1]!, direction[2]!);
      shares[replicate * places + place]! += (weight * source.weight[j]!) / rays;
    }
  }
  return shares;
}

/** The place where a ray from sub-source j ends. */
function endOfRay(source: FilamentSource, j: number, scene: Scene, dx: number, dy: number, dz: number): number {
  if (source.shield && isShielded(source.shield, dx, dy, dz, 1)) return SHIELD;
  const ox = source.position[3 * j]!;
  const oy = source.position[3 * j + 1]!;
  const oz = source.position[3 * j + 2]!;
  let place = WALL;
  let first = exitOfTank(scene.tank, ox, oy, oz, dx, dy, dz);
  const face = firstHitOfFace(scene.glass, ox, oy, oz, dx, dy, dz, END_GAP);
  if (face < first) {
    first = face;
    place = FACE;
  }
  const body = firstHitOfBody(scene.glass, ox, oy, oz, dx, dy, dz, END_GAP);
  if (body < first) {
    first = body;
    place = GLASS_BODY;
  }
  for (let c = 0; c < casterCount(scene); c++) {
    const t = firstHitOfCaster(scene, c, ox, oy, oz, dx, dy, dz, END_GAP, first);
    if (t < first) {
      first = t;
      place = FIRST_OBSTACLE + c;
    }
  }
  return place;
}
