/** How the coat of one place comes about. */
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Scene } from '../geometry/scene.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { ARRIVAL, createLine, GAS, lineInto, SHADOW, type Line } from './factors.ts';
import { SEEN } from './sight.ts';

/** Vapour that something keeps from a place. */
export interface Blocked {
  /** see sight.ts */
  readonly blocker: number;
  /** kg/m² that would arrive without it */
  readonly deposit: number;
}

/** Means over the points of a place; those of way and angle are weighted by deposit, NaN where nothing arrives. */
export interface Reading {
  /** mass per area that arrives, kg/m² */
  readonly deposit: number;
  /** [filaments] what each lays there, kg/m² */
  readonly byFilament: Float64Array;
  /** [sets] kg/m² */
  readonly bySet: Float64Array;
  /** filaments from which anything arrives */
  readonly seenFilaments: number;
  /** number of equal filaments that would share the work as unevenly: (Σc)²/Σc² (participation ratio) */
  readonly effectiveFilaments: number;
  /** distance to the nearest sub-source that carries a charge, m */
  readonly nearest: number;
  /** way of the vapour, m */
  readonly meanDistance: number;
  /** angle of arrival from the normal, rad */
  readonly meanArrival: number;
  /** what arrives over what would if the same sources sent evenly in all directions, 1 */
  readonly favour: number;
  /** vapour kept away, the most effective blocker first */
  readonly blocked: readonly Blocked[];
}

/** Σ value·weight and Σ weight. */
interface Mean {
  sum: number;
  weight: number;
}

const valueOf = ({ sum, weight }: Mean): number => sum / weight;

/** (Σc)²/Σc² of the filaments at one point; 0 where nothing arrives. */
function participation(contributions: Float64Array): number {
  let [sum, squares] = [0, 0];
  for (const value of contributions) {
    sum += value;
    squares += value * value;
  }
  return squares > 0 ? (sum * sum) / squares : 0;
}

/**
 * Reads a place: sums over all sub-sources at each of its points, which weigh alike.
 *
 * @param points on the face
 * @param freePath see lineInto
 */
export function readPlace(plant: Plant, scene: Scene, points: OrientedPoints, freePath = Infinity): Reading {
  const masses = evaporatedMasses(plant);
  const line = createLine();
  const byFilament = new Float64Array(masses.length);
  const atPoint = new Float64Array(masses.length);
  const blocked = new Map<number, number>();
  const way: Mean = { sum: 0, weight: 0 };
  const angle: Mean = { sum: 0, weight: 0 };
  let ifEven = 0;
  let [seen, effective, nearestSum] = [0, 0, 0];
  for (let i = 0; i < points.count; i++) {
    let nearest = Infinity;
    atPoint.fill(0);
    plant.filaments.forEach(({ source }, f) => {
      if (masses[f] === 0) return;
      for (let j = 0; j < source.count; j++) {
        lineInto(line, scene, source, j, points, i, freePath);
        nearest = Math.min(nearest, line.distance);
        const unblocked = unblockedDeposit(line, masses[f]! * source.weight[j]!);
        ifEven += evenDeposit(line, masses[f]! * source.weight[j]!);
        if (line.blocker !== SEEN) blocked.set(line.blocker, (blocked.get(line.blocker) ?? 0) + unblocked);
        const value = unblocked * line.factors[SHADOW]!;
        if (value === 0) continue;
        atPoint[f]! += value;
        way.sum += value * line.distance;
        angle.sum += value * Math.acos(Math.min(1, line.factors[ARRIVAL]!));
      }
      byFilament[f]! += atPoint[f]! / points.count;
    });
    seen += atPoint.reduce((count, value) => count + (value > 0 ? 1 : 0), 0);
    effective += participation(atPoint);
    nearestSum += nearest;
    way.weight += atPoint.reduce((sum, value) => sum + value, 0);
  }
  angle.weight = way.weight;
  const bySet = new Float64Array(plant.setNames.length);
  plant.filaments.forEach(({ set }, f) => (bySet[set]! += byFilament[f]!));
  return {
    deposit: byFilament.reduce((sum, value) => sum + value, 0),
    byFilament,
    bySet,
    seenFilaments: seen / points.count,
    effectiveFilaments: effective / points.count,
    nearest: nearestSum / points.count,
    meanDistance: valueOf(way),
    meanArrival: valueOf(angle),
    favour: way.weight / ifEven,
    blocked: [...blocked]
      .map(([blocker, sum]) => ({ blocker, deposit: sum / points.count }))
      .toSorted((p, q) => q.deposit - p.deposit),
  };
}

/** Deposit of a line of sight as if nothing stood in it, kg/m². */
function unblockedDeposit({ factors }: Line, mass: number): number {
  return mass * factors[0]! * factors[1]! * factors[ARRIVAL]! * factors[GAS]!;
}

/** Deposit of a line of sight if its source sent evenly in all directions, kg/m². */
function evenDeposit({ factors }: Line, mass: number): number {
  return (mass * factors[0]! * factors[ARRIVAL]! * factors[SHADOW]! * factors[GAS]!) / (4 * Math.PI);
}
