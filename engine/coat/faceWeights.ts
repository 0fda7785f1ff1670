/** What statistics need of a face, gathered once: areas at its nodes and triangles of its clear aperture. */
import { faceTriangles, isClear, type Cell, type Face } from '../geometry/face.ts';

/** Areas per node, m²; `fine` by the full rule, `coarse` by the embedded lower one. */
export interface NodeAreas {
  readonly fine: Float64Array;
  readonly coarse: Float64Array;
}

export interface FaceWeights {
  /** the whole face */
  readonly all: NodeAreas;
  /** the clear aperture */
  readonly clear: NodeAreas;
  /** its outermost 2 % */
  readonly edge: NodeAreas;
  /** triangles of the clear aperture, and of every second node */
  readonly triangles: { readonly fine: ClearTriangles; readonly coarse: ClearTriangles };
}

export interface ClearTriangles {
  /** [3·n] node indices */
  readonly nodes: Uint32Array;
  /** [n] m² */
  readonly areas: Float64Array;
}

/** Gathers the weights of a face. */
export function faceWeights(face: Face): FaceWeights {
  const { count, position } = face.points;
  const areas = (): NodeAreas => ({ fine: new Float64Array(count), coarse: new Float64Array(count) });
  const weights = { all: areas(), clear: areas(), edge: areas() };
  for (const cell of face.cells) {
    addCell(weights.all, cell);
    if (isClear(cell)) addCell(weights.clear, cell);
    if (cell.zone === 'edge') addCell(weights.edge, cell);
  }
  const clear = face.cells.filter(isClear);
  const triangles = { fine: trianglesOf(clear, position), coarse: trianglesOf(clear.map(everySecondNode), position) };
  return { ...weights, triangles };
}

function addCell({ fine, coarse }: NodeAreas, { nodes, weights, coarse: lower }: Cell): void {
  for (let k = 0; k < nodes.length; k++) {
    fine[nodes[k]!]! += weights[k]!;
    coarse[nodes[k]!]! += lower[k]!;
  }
}

function everySecondNode(cell: Cell): Cell {
  const half = (cell.side + 1) / 2;
  const nodes = new Int32Array(half * half);
  for (let k = 0; k < nodes.length; k++) nodes[k] = cell.nodes[2 * Math.floor(k / half) * cell.side + 2 * (k % half)]!;
  return { ...cell, side: half as 3, nodes };
}

function trianglesOf(cells: readonly Cell[], p: Float64Array): ClearTriangles {
  const nodes = faceTriangles(cells);
  const areas = new Float64Array(nodes.length / 3);
  for (let t = 0; t < areas.length; t++) {
    const [a, b, c] = [3 * nodes[3 * t]!, 3 * nodes[3 * t + 1]!, 3 * nodes[3 * t + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    areas[t] = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
  }
  return { nodes, areas };
}
