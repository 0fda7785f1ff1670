/** Finds the cells that a shadow edge crosses, so that they can be halved. */
import { isClear, type Cell, type Face } from '../geometry/face.ts';

/** Halvings of a cell at a shadow edge: 1/32 of its side. */
export const MAX_DEPTH = 5;
/** A cell whose two rules differ by less than this share of an average cell's mass is left alone. */
const TOLERANCE = 1e-4;
/** A cell whose two rules differ by more than this share of its own mass is halved even without a shadow. */
const ROUGH = 0.02;

/** Cells whose nodes do not all see the same sub-sources. */
export function mixedCells(cells: readonly Cell[], signature: Uint32Array | null): Cell[] {
  if (!signature) return [];
  return cells.filter(({ nodes }) => nodes.some((node) => signature[node] !== signature[nodes[0]!]));
}

/** Difference of the two rules and the mass by the higher one, both kg. */
function cellMass(
  { nodes, weights, coarse }: Cell,
  areal: Float64Array,
): { readonly mass: number; readonly difference: number } {
  let mass = 0;
  let lower = 0;
  for (let k = 0; k < nodes.length; k++) {
    mass += weights[k]! * areal[nodes[k]!]!;
    lower += coarse[k]! * areal[nodes[k]!]!;
  }
  return { mass, difference: Math.abs(mass - lower) };
}

/**
 * Indices of the cells to halve, worst first, at most `limit`.
 *
 * @param areal [points] kg/m² with equal charges, so that the choice depends on the geometry alone
 */
export function cellsToRefine(face: Face, areal: Float64Array, signature: Uint32Array | null, limit: number): number[] {
  const masses = face.cells.map((cell) => cellMass(cell, areal));
  const total = masses.reduce((sum, { mass }) => sum + mass, 0);
  const base = (face.radialCount - 1) * face.azimuthCount;
  const threshold = (TOLERANCE * total * 16) / base;
  const mixed = new Set(mixedCells(face.cells, signature));
  return face.cells
    .flatMap((cell, index) => {
      const { mass, difference } = masses[index]!;
      const isWanted = mixed.has(cell) || difference > ROUGH * mass;
      return cell.depth < MAX_DEPTH && difference > threshold && isWanted
        ? [{ index, difference: isClear(cell) ? difference : difference / 4 }]
        : [];
    })
    .toSorted((p, q) => q.difference - p.difference)
    .slice(0, limit)
    .map(({ index }) => index);
}
