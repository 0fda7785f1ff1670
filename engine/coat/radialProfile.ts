/** Thickness against radius: mean, smallest and largest over azimuth. */
import type { Face } from '../geometry/face.ts';
import { LOBATTO_NODES, LOBATTO_WEIGHTS, PANEL } from '../geometry/lobatto.ts';

/** Parallel arrays over rising radius. */
export interface RadialProfile {
  /** distance from the middle of the glass, m */
  readonly radius: Float64Array;
  readonly mean: Float64Array;
  readonly minimum: Float64Array;
  readonly maximum: Float64Array;
}

/** Radii of the profile: those of the grid's nodes along the azimuth that reaches farthest out. */
function profileRadii({ radialCount, azimuthCount, points, grid }: Face): Float64Array {
  const distance = (node: number): number =>
    Math.hypot(points.position[3 * node]! - grid.shape.centerX, points.position[3 * node + 1]!);
  let longest = 0;
  for (let q = 0; q < azimuthCount; q++) {
    if (distance(q * radialCount + radialCount - 1) > distance(longest * radialCount + radialCount - 1) + 1e-12)
      longest = q;
  }
  return Float64Array.from({ length: radialCount }, (_, p) => distance(longest * radialCount + p));
}

/** Value along one azimuth at a radius: the quartic through the five nodes of its panel, or NaN beyond the glass. */
function alongAzimuth(face: Face, field: Float64Array, q: number, r: number): number {
  const { radialCount, points, grid } = face;
  const first = q * radialCount;
  const radiusAt = (p: number): number =>
    Math.hypot(points.position[3 * (first + p)]! - grid.shape.centerX, points.position[3 * (first + p) + 1]!);
  const reach = radiusAt(radialCount - 1);
  if (r > reach * (1 + 1e-9)) return NaN;
  let panel = 0;
  while (panel + PANEL < radialCount - 1 && radiusAt(panel + PANEL) < r * (1 - 1e-12)) panel += PANEL;
  const inner = radiusAt(panel);
  const u = (r - inner) / (radiusAt(panel + PANEL) - inner);
  let value = 0;
  for (let i = 0; i <= PANEL; i++) {
    let basis = 1;
    for (let k = 0; k <= PANEL; k++)
      if (k !== i) basis *= (u - LOBATTO_NODES[k]!) / (LOBATTO_NODES[i]! - LOBATTO_NODES[k]!);
    value += basis * field[first + panel + i]!;
  }
  return value;
}

/** Azimuth weights of the grid, rad; they sum to 2π. */
function azimuthWeights({ grid, azimuthCount }: Face): Float64Array {
  const weights = new Float64Array(azimuthCount);
  for (let panel = 0; PANEL * panel < azimuthCount; panel++) {
    const width = grid.azimuthEdges[panel + 1]! - grid.azimuthEdges[panel]!;
    for (let j = 0; j <= PANEL; j++) weights[(PANEL * panel + j) % azimuthCount]! += width * LOBATTO_WEIGHTS[j]!;
  }
  return weights;
}

/**
 * The radial profile of a field over the whole face. Where the outline is not round, only the
 * azimuths that reach a radius count there.
 *
 * @param field [points] any unit; values at the grid's nodes are used
 */
export function radialProfile(face: Face, field: Float64Array): RadialProfile {
  const radius = profileRadii(face);
  const weights = azimuthWeights(face);
  const isRound = face.grid.shape.cornerAngle === null;
  const mean = new Float64Array(radius.length);
  const minimum = new Float64Array(radius.length);
  const maximum = new Float64Array(radius.length);
  for (let p = 0; p < radius.length; p++) {
    let [sum, weight, low, high] = [0, 0, Infinity, -Infinity];
    for (let q = 0; q < face.azimuthCount; q++) {
      const value = isRound ? field[q * face.radialCount + p]! : alongAzimuth(face, field, q, radius[p]!);
      if (Number.isNaN(value)) continue;
      sum += weights[q]! * value;
      weight += weights[q]!;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    mean[p] = sum / weight;
    minimum[p] = low;
    maximum[p] = high;
  }
  return { radius, mean, minimum, maximum };
}
