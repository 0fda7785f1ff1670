/** Why one place of a mirror gets another deposit than a second one. */
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Scene } from '../geometry/scene.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { createLine, FACTORS, lineInto, type Factor } from './factors.ts';
import { readPlace, type Reading } from './reading.ts';
import { shareProductInto } from './shapley.ts';

/** What one factor contributes to the difference. */
export interface FactorShare {
  readonly factor: Factor;
  /** kg/m², signed; all of them sum to the difference */
  readonly deposit: number;
  /** the same over the deposit at the first place, 1 */
  readonly share: number;
  /** how the first place's deposit would change if this factor alone took the second place's values, 1 */
  readonly alone: number;
}

export interface Decomposition {
  readonly from: Reading;
  readonly to: Reading;
  /** to − from, kg/m² */
  readonly difference: number;
  /** in the order of FACTORS */
  readonly factors: readonly FactorShare[];
}

/**
 * Shares out the difference of deposit between two places among the factors of the deposit:
 *
 *     Δ = Σ_s m_s w_s (1/N) Σ_i [Π_k f_k(s, toᵢ) − Π_k f_k(s, fromᵢ)] = Σ_k Δ_k
 *
 * The difference of each sub-source at each pair of points is shared out by shareProductInto, so the
 * parts add up exactly and no factor is preferred. Points are paired by their index: two zones along
 * the same azimuth.
 *
 * @param from, to points on the face, as many in both
 * @param freePath [m] mean way between collisions with gas; Infinity leaves the gas out
 * @throws RangeError if the places have different numbers of points
 */
export function decompose(
  plant: Plant,
  scene: Scene,
  from: OrientedPoints,
  to: OrientedPoints,
  freePath = Infinity,
): Decomposition {
  if (from.count !== to.count) throw new RangeError('the places must have the same number of points');
  const masses = evaporatedMasses(plant);
  const [a, b] = [createLine(), createLine()];
  const shares = new Float64Array(FACTORS.length);
  const sums = new Float64Array(FACTORS.length);
  const swapped = new Float64Array(FACTORS.length);
  plant.filaments.forEach(({ source }, f) => {
    if (masses[f] === 0) return;
    for (let j = 0; j < source.count; j++) {
      const mass = (masses[f]! * source.weight[j]!) / from.count;
      for (let i = 0; i < from.count; i++) {
        lineInto(a, scene, source, j, from, i, freePath);
        lineInto(b, scene, source, j, to, i, freePath);
        shareProductInto(shares, a.factors, b.factors);
        addScaledInto(sums, shares, mass);
        addSwappedInto(swapped, a.factors, b.factors, mass);
      }
    }
  });
  const [first, second] = [readPlace(plant, scene, from, freePath), readPlace(plant, scene, to, freePath)];
  return {
    from: first,
    to: second,
    difference: second.deposit - first.deposit,
    factors: FACTORS.map((factor, k) => ({
      factor,
      deposit: sums[k]!,
      share: sums[k]! / first.deposit,
      alone: swapped[k]! / first.deposit - 1,
    })),
  };
}

/** out += factor · values. */
function addScaledInto(out: Float64Array, values: Float64Array, factor: number): void {
  for (let k = 0; k < out.length; k++) out[k]! += factor * values[k]!;
}

/** out[k] += mass · the product of `a` with its factor k taken from `b`. */
function addSwappedInto(out: Float64Array, a: Float64Array, b: Float64Array, mass: number): void {
  for (let k = 0; k < out.length; k++) {
    let product = mass * b[k]!;
    for (let j = 0; j < a.length; j++) if (j !== k) product *= a[j]!;
    out[k]! += product;
  }
}
