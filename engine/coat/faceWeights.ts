/** What statistics need of a face, gathered once: areas at its nodes and triangles of its clear aperture. */
import { faceTriangles, isClear, type Cell, type Face } from '../geometry/face.ts';

/** Areas per node, m²; `fine` by the full rule, `coarse` by the embedded lower one. */
export interface NodeAreas {
  readonly fine: Float64Array;
  readonly coarse: Float64Array;
  /** their sums */
  readonly fineTotal: number;
  readonly coarseTotal: number;
}

export interface FaceWeights {
  /** the whole face */
  readonly all: NodeAreas;
  /** the clear aperture */
  readonly clear: NodeAreas;
  /** its outermost 2 % */
  readonly edge: NodeAreas;
  /** cells of the clear aperture that meet at a node's place */
  readonly clearCellsAt: (node: number) => readonly Cell[];
  /** nodes of the clear aperture, and every second one */
  readonly clearNodes: { readonly fine: Int32Array; readonly coarse: Int32Array };
  /** triangles between them, and between every second one */
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
  const clearCells = face.cells.filter(isClear);
  const thinned = clearCells.map(everySecondNode);
  return {
    all: nodeAreas(face.cells, count),
    clear: nodeAreas(clearCells, count),
    edge: nodeAreas(
      face.cells.filter(({ zone }) => zone === 'edge'),
      count,
    ),
    clearCellsAt: cellFinder(face, clearCells),
    clearNodes: { fine: nodesOf(clearCells, count), coarse: nodesOf(thinned, count) },
    triangles: { fine: trianglesOf(clearCells, position), coarse: trianglesOf(thinned, position) },
  };
}

/** Finds cells by node. In the middle of a mirror without a hole every azimuth has a node of its own at one place. */
function cellFinder({ points: { position } }: Face, cells: readonly Cell[]): (node: number) => readonly Cell[] {
  const isMiddle = (node: number): boolean =>
    position[3 * node] === position[0] && position[3 * node + 1] === position[1];
  return (node) =>
    isMiddle(node)
      ? cells.filter(({ nodes }) => nodes.some(isMiddle))
      : cells.filter(({ nodes }) => nodes.includes(node));
}

/** The nodes of cells, ascending, each once. */
function nodesOf(cells: readonly Cell[], count: number): Int32Array {
  const isOwn = new Uint8Array(count);
  for (const { nodes } of cells) for (const node of nodes) isOwn[node] = 1;
  const own = new Int32Array(isOwn.reduce((sum, mark) => sum + mark, 0));
  for (let node = 0, i = 0; node < count; node++) if (isOwn[node] === 1) own[i++] = node;
  return own;
}

function nodeAreas(cells: readonly Cell[], count: number): NodeAreas {
  const fine = new Float64Array(count);
  const coarse = new Float64Array(count);
  for (const cell of cells) addCell(fine, coarse, cell);
  const total = (areas: Float64Array): number => areas.reduce((sum, area) => sum + area, 0);
  return { fine, coarse, fineTotal: total(fine), coarseTotal: total(coarse) };
}

function addCell(fine: Float64Array, coarse: Float64Array, { nodes, weights, coarse: lower }: Cell): void {
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
    const a = 3 * nodes[3 * t]!;
    const b = 3 * nodes[3 * t + 1]!;
    const c = 3 * nodes[3 * t + 2]!;
    const ux = p[b]! - p[a]!;
    const uy = p[b + 1]! - p[a + 1]!;
    const uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!;
    const vy = p[c + 1]! - p[a + 1]!;
    const vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    areas[t] = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  }
  return { nodes, areas };
}
