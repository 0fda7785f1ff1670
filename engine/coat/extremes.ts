/** The thinnest and thickest place of a field over the clear aperture, between the nodes too. */
import type { Cell, Face } from '../geometry/face.ts';
import { gridNodeInto } from '../geometry/faceGrid.ts';
import { LOBATTO_NODES } from '../geometry/lobatto.ts';
import { createOrientedPoints } from '../geometry/orientedPoints.ts';
import type { FaceWeights } from './faceWeights.ts';

/** An extreme value with its error and its place. */
export interface Extreme {
  readonly value: number;
  readonly error: number;
  /** m */
  readonly position: readonly [number, number, number];
}

const EVEN_NODES = [0, 0.5, 1];
/** Steps a side of each search over a cell, and how often it is repeated around the best place. */
const SEARCH = 8;
const ROUNDS = 6;

/** Values of the Lagrange polynomials over `nodes` at x. */
function lagrange(nodes: readonly number[], x: number): number[] {
  return nodes.map((node, i) =>
    nodes.reduce((product, other, k) => (k === i ? product : (product * (x - other)) / (node - other)), 1),
  );
}

interface Best {
  readonly value: number;
  readonly cell: Cell;
  /** place in the cell, each from 0 to 1 */
  readonly u: number;
  readonly v: number;
}

/** Largest value of sign·field over a cell's interpolating polynomial. */
function bestInCell(cell: Cell, field: Float64Array, sign: number, stride: 1 | 2): Best {
  const side = (cell.side - 1) / stride + 1;
  const nodes = (cell.side === 5 ? LOBATTO_NODES : EVEN_NODES).filter((_, i) => i % stride === 0);
  let best: Best = { value: -Infinity, cell, u: 0, v: 0 };
  let [u0, v0, width] = [0, 0, 1];
  for (let round = 0; round < ROUNDS; round++) {
    for (let a = 0; a <= SEARCH; a++) {
      const v = Math.min(1, Math.max(0, v0 + (width * a) / SEARCH));
      const alongV = lagrange(nodes, v);
      for (let b = 0; b <= SEARCH; b++) {
        const u = Math.min(1, Math.max(0, u0 + (width * b) / SEARCH));
        const alongU = lagrange(nodes, u);
        let value = 0;
        for (let k = 0; k < side * side; k++) {
          const node = cell.nodes[stride * Math.floor(k / side) * cell.side + stride * (k % side)]!;
          value += alongV[Math.floor(k / side)]! * alongU[k % side]! * field[node]!;
        }
        if (sign * value > best.value) best = { value: sign * value, cell, u, v };
      }
    }
    width *= 2 / SEARCH;
    u0 = best.u - width / 2;
    v0 = best.v - width / 2;
  }
  return best;
}

/** Node with the largest value of sign·field; the first of equals. */
function bestNode(nodes: Int32Array, field: Float64Array, sign: number): number {
  let best = nodes[0] ?? 0;
  for (const node of nodes) if (sign * field[node]! > sign * field[best]!) best = node;
  return best;
}

/** Extreme over nodes (every second one with stride 2), then polished inside the cells around the best one. */
function search(
  cells: readonly Cell[],
  nodes: Int32Array,
  isMixed: (cell: Cell) => boolean,
  field: Float64Array,
  sign: number,
  stride: 1 | 2,
): Best | undefined {
  const top = bestNode(nodes, field, sign);
  const value = sign * field[top]!;
  const around = cells.filter((cell) => cell.nodes.includes(top));
  let best = around[0] && { value, cell: around[0], ...placeInCell(around[0], top) };
  for (const cell of around) {
    if (isMixed(cell)) continue;
    const polished = bestInCell(cell, field, sign, stride);
    if (best && polished.value > best.value) best = polished;
  }
  return best;
}

/** Where a node lies in its cell, each coordinate from 0 to 1. */
function placeInCell({ side, nodes }: Cell, node: number): { readonly u: number; readonly v: number } {
  const k = nodes.indexOf(node);
  const places = side === 5 ? LOBATTO_NODES : EVEN_NODES;
  return { u: places[k % side]!, v: places[Math.floor(k / side)]! };
}

/**
 * The smallest (sign −1) or largest (sign +1) value of a field over the clear aperture.
 *
 * Searched at the nodes, then on the polynomial through the nodes of the cells around the best one;
 * cells that a shadow edge crosses are not interpolated. The error is the change from doing the same
 * with every second node.
 *
 * @param field [points] any unit
 * @param isMixed whether a shadow edge crosses a cell
 */
export function extremeOf(
  face: Face,
  { clearCells, clearNodes }: FaceWeights,
  isMixed: (cell: Cell) => boolean,
  field: Float64Array,
  sign: 1 | -1,
): Extreme {
  const best = search(clearCells, clearNodes.fine, isMixed, field, sign, 1);
  const rough = search(clearCells, clearNodes.coarse, isMixed, field, sign, 2);
  if (!best || !rough) return { value: 0, error: 0, position: [0, 0, 0] };
  const { a0, a1, b0, b1 } = best.cell.region;
  const at = createOrientedPoints(1);
  gridNodeInto(at, 0, face.grid, a0 + best.u * (a1 - a0), b0 + best.v * (b1 - b0), Math.floor(a0), Math.floor(b0));
  const [x = 0, y = 0, z = 0] = at.position;
  return { value: sign * best.value, error: Math.abs(best.value - rough.value), position: [x, y, z] };
}
