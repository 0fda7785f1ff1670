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
const ROUNDS = 4;

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
function bestInCell(cell: Cell, field: Float64Array, sign: number): Best {
  const { side } = cell;
  const places = side === 5 ? LOBATTO_NODES : EVEN_NODES;
  const values = Array.from(cell.nodes, (node) => sign * field[node]!);
  let best: Best = { value: -Infinity, cell, u: 0, v: 0 };
  let [u0, v0, width] = [0, 0, 1];
  const steps = Array.from({ length: SEARCH + 1 }, (_, i) => i / SEARCH);
  for (let round = 0; round < ROUNDS; round++) {
    const us = steps.map((step) => Math.min(1, Math.max(0, u0 + width * step)));
    const alongU = us.map((u) => lagrange(places, u));
    for (const step of steps) {
      const v = Math.min(1, Math.max(0, v0 + width * step));
      const rows = combineRows(values, lagrange(places, v), side);
      alongU.forEach((basis, b) => {
        let value = 0;
        for (let i = 0; i < side; i++) value += basis[i]! * rows[i]!;
        if (value > best.value) best = { value, cell, u: us[b]!, v };
      });
    }
    width *= 2 / SEARCH;
    u0 = best.u - width / 2;
    v0 = best.v - width / 2;
  }
  return best;
}

/** Σ_j basis[j] · values[j·side + i] for each i. */
function combineRows(values: readonly number[], basis: readonly number[], side: number): number[] {
  return Array.from({ length: side }, (_, i) =>
    basis.reduce((sum, factor, j) => sum + factor * values[side * j + i]!, 0),
  );
}

/** Node with the largest value of sign·field; the first of equals. */
function bestNode(nodes: Int32Array, field: Float64Array, sign: number): number {
  let best = nodes[0] ?? 0;
  for (const node of nodes) if (sign * field[node]! > sign * field[best]!) best = node;
  return best;
}

/** Where a node lies in its cell, each coordinate from 0 to 1. */
function placeInCell({ side, nodes }: Cell, node: number): { readonly u: number; readonly v: number } {
  const k = nodes.indexOf(node);
  const places = side === 5 ? LOBATTO_NODES : EVEN_NODES;
  return { u: places[k % side]!, v: places[Math.floor(k / side)]! };
}

/** How far a field is from what every second node predicts in a cell. */
function doubt(cell: Cell, field: Float64Array): number {
  const values = Array.from(cell.nodes, (node) => field[node]!);
  const { side } = cell;
  const places = side === 5 ? LOBATTO_NODES : EVEN_NODES;
  const rough = places.filter((_, i) => i % 2 === 0);
  let worst = 0;
  for (let k = 0; k < values.length; k++) {
    const alongU = lagrange(rough, places[k % side]!);
    const alongV = lagrange(rough, places[Math.floor(k / side)]!);
    let predicted = 0;
    alongV.forEach((v, j) => alongU.forEach((u, i) => (predicted += u * v * values[2 * j * side + 2 * i]!)));
    worst = Math.max(worst, Math.abs(values[k]! - predicted));
  }
  return worst;
}

/**
 * The smallest (sign −1) or largest (sign +1) value of a field over the clear aperture.
 *
 * Searched at the nodes, then on the polynomial through the nodes of the cells around the best one;
 * cells that a shadow edge crosses are not interpolated. The error is the largest difference, in
 * those cells, between the field and the polynomial through every second node; at a shadow edge it
 * is the step to the nearest value beside it plus the change from searching every second node.
 *
 * @param field [points] any unit
 * @param isMixed whether a shadow edge crosses a cell
 */
export function extremeOf(
  face: Face,
  { clearCellsAt, clearNodes }: FaceWeights,
  isMixed: (cell: Cell) => boolean,
  field: Float64Array,
  sign: 1 | -1,
): Extreme {
  const top = bestNode(clearNodes.fine, field, sign);
  const around = clearCellsAt(top);
  const [first] = around;
  if (!first) return { value: 0, error: 0, position: [0, 0, 0] };
  const own = around.find(({ nodes }) => nodes.includes(top)) ?? first;
  let best: Best = { value: sign * field[top]!, cell: own, ...placeInCell(own, top) };
  let error = around.some(isMixed)
    ? stepBeside(around, top, field) + Math.abs(field[top]! - field[bestNode(clearNodes.coarse, field, sign)]!)
    : 0;
  for (const cell of around) {
    if (isMixed(cell)) continue;
    error = Math.max(error, doubt(cell, field));
    const polished = bestInCell(cell, field, sign);
    if (polished.value > best.value) best = polished;
  }
  return { value: sign * best.value, error, position: placeOf(face, best) };
}

/** Smallest difference between a node's value and any other node's in the cells around it. */
function stepBeside(around: readonly Cell[], top: number, field: Float64Array): number {
  const steps = around.flatMap(({ nodes }) =>
    Array.from(nodes, (node) => (node === top ? Infinity : Math.abs(field[node]! - field[top]!))),
  );
  return Math.min(...steps);
}

/** Point of the face at a place in a cell. */
function placeOf(face: Face, { cell: { region }, u, v }: Best): readonly [number, number, number] {
  const { a0, a1, b0, b1 } = region;
  const at = createOrientedPoints(1);
  gridNodeInto(at, 0, face.grid, a0 + u * (a1 - a0), b0 + v * (b1 - b0), Math.floor(a0), Math.floor(b0));
  const [x = 0, y = 0, z = 0] = at.position;
  return [x, y, z];
}
