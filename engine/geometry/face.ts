/** The face as quadrature and display points: cells with shared nodes, refined where the coat needs it. */
import { createFaceGrid, gridNodeInto, type FaceGrid, type Region, type Zone } from './faceGrid.ts';
import { LOBATTO_NODES, LOBATTO_WEIGHTS, PANEL, SIMPSON_ON_LOBATTO } from './lobatto.ts';
import type { MirrorShape } from './mirrorShape.ts';
import { createOrientedPoints, joinOrientedPoints, type OrientedPoints } from './orientedPoints.ts';

/** A quadrature cell: side × side nodes, radial index running fastest. */
export interface Cell {
  readonly zone: Zone;
  readonly region: Region;
  /** nodes along a side: 5 (Gauss–Lobatto) in the grid, 3 (Simpson) in a refined cell */
  readonly side: 5 | 3;
  /** how often the grid's cell was halved to get here */
  readonly depth: number;
  /** [side²] indices into the face's points */
  readonly nodes: Int32Array;
  /** [side²] areas, m² */
  readonly weights: Float64Array;
  /** [side²] areas of the embedded lower rule (Simpson, or the trapezoid in a refined cell), m² */
  readonly coarse: Float64Array;
}

export interface Face {
  readonly grid: FaceGrid;
  /** nodes of the grid first: index = azimuth · radialCount + radius; then those of refined cells */
  readonly points: OrientedPoints;
  readonly radialCount: number;
  readonly azimuthCount: number;
  /** the cells that make up the face, without overlap */
  readonly cells: readonly Cell[];
}

const SIMPSON_WEIGHTS = [1 / 6, 2 / 3, 1 / 6];
const TRAPEZOID_ON_SIMPSON = [1 / 2, 0, 1 / 2];

/** The face of a mirror on a regular grid of about `pointCount` points. */
export function createFace(shape: MirrorShape, pointCount: number): Face {
  const grid = createFaceGrid(shape, pointCount);
  const radialPanels = grid.zones.length;
  const azimuthPanels = grid.azimuthEdges.length - 1;
  const radialCount = PANEL * radialPanels + 1;
  const azimuthCount = PANEL * azimuthPanels;
  const points = createOrientedPoints(radialCount * azimuthCount);
  const cells: Cell[] = [];
  for (let q = 0; q < azimuthPanels; q++) {
    for (let p = 0; p < radialPanels; p++) cells.push(gridCell(grid, points, p, q, radialCount, azimuthCount));
  }
  return { grid, points, radialCount, azimuthCount, cells };
}

function gridCell(
  grid: FaceGrid,
  points: OrientedPoints,
  p: number,
  q: number,
  radialCount: number,
  azimuthCount: number,
): Cell {
  const nodes = new Int32Array(25);
  const weights = new Float64Array(25);
  const coarse = new Float64Array(25);
  for (let j = 0; j < 5; j++) {
    for (let i = 0; i < 5; i++) {
      const node = ((PANEL * q + j) % azimuthCount) * radialCount + PANEL * p + i;
      const element = gridNodeInto(points, node, grid, p + (LOBATTO_NODES[i] ?? 0), q + (LOBATTO_NODES[j] ?? 0), p, q);
      nodes[5 * j + i] = node;
      weights[5 * j + i] = element * (LOBATTO_WEIGHTS[i] ?? 0) * (LOBATTO_WEIGHTS[j] ?? 0);
      coarse[5 * j + i] = element * (SIMPSON_ON_LOBATTO[i] ?? 0) * (SIMPSON_ON_LOBATTO[j] ?? 0);
    }
  }
  const region = { a0: p, a1: p + 1, b0: q, b1: q + 1 };
  return { zone: grid.zones[p] ?? 'clear', region, side: 5, depth: 0, nodes, weights, coarse };
}

/**
 * Splits cells into four each; their new nodes are appended, so that values at old nodes stay valid.
 *
 * @param split indices into face.cells
 * @returns the finer face, and its new points alone
 */
export function refineFace(
  face: Face,
  split: readonly number[],
): { readonly face: Face; readonly added: OrientedPoints } {
  const added = createOrientedPoints(25 * split.length);
  const chosen = new Set(split);
  const cells = face.cells.filter((_, index) => !chosen.has(index));
  split.forEach((index, k) => {
    const cell = face.cells[index];
    if (cell) cells.push(...splitCell(face.grid, cell, added, 25 * k, face.points.count));
  });
  return { face: { ...face, points: joinOrientedPoints([face.points, added]), cells }, added };
}

/** Places 5 × 5 even nodes over a cell and makes its quarters, three nodes a side. */
function splitCell(grid: FaceGrid, cell: Cell, added: OrientedPoints, firstAdded: number, base: number): Cell[] {
  const { a0, a1, b0, b1 } = cell.region;
  const panelA = Math.floor(a0);
  const panelB = Math.floor(b0);
  const element = new Float64Array(25);
  for (let j = 0; j < 5; j++) {
    for (let i = 0; i < 5; i++) {
      const [a, b] = [a0 + ((a1 - a0) * i) / 4, b0 + ((b1 - b0) * j) / 4];
      element[5 * j + i] = gridNodeInto(added, firstAdded + 5 * j + i, grid, a, b, panelA, panelB);
    }
  }
  const quarters: Cell[] = [];
  for (const [i0, j0] of [
    [0, 0],
    [2, 0],
    [0, 2],
    [2, 2],
  ] as const) {
    const nodes = new Int32Array(9);
    const weights = new Float64Array(9);
    const coarse = new Float64Array(9);
    const share = ((a1 - a0) * (b1 - b0)) / 4;
    for (let k = 0; k < 9; k++) {
      const i = k % 3;
      const j = Math.floor(k / 3);
      const local = 5 * (j0 + j) + i0 + i;
      nodes[k] = base + firstAdded + local;
      weights[k] = share * (element[local] ?? 0) * (SIMPSON_WEIGHTS[i] ?? 0) * (SIMPSON_WEIGHTS[j] ?? 0);
      coarse[k] = share * (element[local] ?? 0) * (TRAPEZOID_ON_SIMPSON[i] ?? 0) * (TRAPEZOID_ON_SIMPSON[j] ?? 0);
    }
    const region = {
      a0: a0 + ((a1 - a0) * i0) / 4,
      a1: a0 + ((a1 - a0) * (i0 + 2)) / 4,
      b0: b0 + ((b1 - b0) * j0) / 4,
      b1: b0 + ((b1 - b0) * (j0 + 2)) / 4,
    };
    quarters.push({ zone: cell.zone, region, side: 3, depth: cell.depth + 1, nodes, weights, coarse });
  }
  return quarters;
}

/** Whether a cell counts toward the clear aperture. */
export function isClear(cell: Cell): boolean {
  return cell.zone === 'clear' || cell.zone === 'edge';
}

/** Indices of the triangles between the nodes of all cells, three a triangle, for drawing and for area shares. */
export function faceTriangles(cells: readonly Cell[]): Uint32Array {
  const count = cells.reduce((sum, { side }) => sum + 2 * (side - 1) ** 2, 0);
  const triangles = new Uint32Array(3 * count);
  let t = 0;
  for (const { side, nodes } of cells) {
    for (let j = 0; j + 1 < side; j++) {
      for (let i = 0; i + 1 < side; i++) {
        const o = side * j + i;
        triangles[t] = triangles[t + 3] = nodes[o]!;
        triangles[t + 1] = nodes[o + 1]!;
        triangles[t + 2] = triangles[t + 4] = nodes[o + side + 1]!;
        triangles[t + 5] = nodes[o + side]!;
        t += 6;
      }
    }
  }
  return triangles;
}
