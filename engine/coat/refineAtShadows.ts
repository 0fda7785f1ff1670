/** Finds the cells that a shadow edge crosses, so that they can be halved. */
import { LOBATTO_NODES } from '../geometry/lobatto.ts';
import { isClear, type Cell, type Face } from '../geometry/face.ts';

/** Halvings of a cell at a shadow edge: 1/32 of its side. */
export const MAX_DEPTH = 5;
/** A cell whose two rules differ by less than this share of an average cell's mass is left alone. */
const TOLERANCE = 1e-4;
/** A cell whose two rules differ by more than this share of its own mass is halved even without a shadow. */
const ROUGH = 0.02;

/** Cells whose nodes do not all see the same sub-sources. */
export function mixedCells(cells: readonly Cell[], signature: Uint32Array | null): Cell[] {
  return signature ? cells.filter((cell) => isMixed(cell, signature)) : [];
}

/** A plain loop: it runs over all nodes while somebody drags. */
function isMixed({ nodes }: Cell, signature: Uint32Array): boolean {
  const first = signature[nodes[0]!];
  for (let k = 1; k < nodes.length; k++) if (signature[nodes[k]!] !== first) return true;
  return false;
}

/** Lagrange basis of every second place at each place: row k holds what node k expects of the coarser nodes. */
function expectation(places: readonly number[]): number[][] {
  const rough = places.filter((_, i) => i % 2 === 0);
  return places.map((x) =>
    rough.map((at, i) =>
      rough.reduce((product, other, k) => (k === i ? product : (product * (x - other)) / (at - other)), 1),
    ),
  );
}
const EXPECTED = { 5: expectation(LOBATTO_NODES), 3: expectation([0, 0.5, 1]) };

/** Mass by the higher rule and how much of it every second node does not foresee, without cancelling, both kg. */
function cellMass(
  { nodes, weights, side }: Cell,
  areal: Float64Array,
): { readonly mass: number; readonly difference: number } {
  let mass = 0;
  let difference = 0;
  const basis = EXPECTED[side];
  for (let k = 0; k < nodes.length; k++) {
    const [u, v] = [basis[k % side]!, basis[Math.floor(k / side)]!];
    let expected = 0;
    for (let j = 0; j < v.length; j++)
      for (let i = 0; i < u.length; i++) expected += v[j]! * u[i]! * areal[nodes[2 * j * side + 2 * i]!]!;
    mass += weights[k]! * areal[nodes[k]!]!;
    difference += weights[k]! * Math.abs(areal[nodes[k]!]! - expected);
  }
  return { mass, difference };
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
      const isWanted = mixed.has(cell) || difference > ROUGH * mass || difference > TOLERANCE * total;
      return cell.depth < MAX_DEPTH && difference > threshold && isWanted
        ? [{ index, difference: isClear(cell) ? difference : difference / 4 }]
        : [];
    })
    .toSorted((p, q) => q.difference - p.difference)
    .slice(0, limit)
    .map(({ index }) => index);
}
