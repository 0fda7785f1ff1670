/** The face's points for one layout: the grid, and what refinement at shadow edges adds to it. */
import { createFace, refineFace, type Cell, type Face } from '../geometry/face.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { keyedPoints } from '../transport/plantRequests.ts';
import { staged } from '../transport/staged.ts';
import type { Control, DepositResult, KeyedPoints } from '../transport/transport.ts';
import { faceWeights, type FaceWeights } from './faceWeights.ts';
import { depositAtEach, joinDeposits, type Job } from './job.ts';
import { cellsToRefine, MAX_DEPTH, mixedCells } from './refineAtShadows.ts';

/** Refined points allowed for each point of the grid. */
const REFINED_SHARE = 1.5;
const NODES_PER_SPLIT = 25;
/** Share of the progress that the grid takes before refinement. */
const GRID_SHARE = 0.6;
const FOR_REFINING = { withSignature: true, withArrival: false } as const;

/** Everything about the points that does not depend on the charges. */
export interface PreparedFace {
  readonly face: Face;
  readonly weights: FaceWeights;
  /** cells that a shadow edge crosses */
  readonly mixed: readonly Cell[];
  /** the grid's points, then those of each refinement */
  readonly blocks: readonly KeyedPoints[];
}

/** Mass per area over a face. */
export interface FaceMap {
  readonly prepared: PreparedFace;
  /** [points] kg/m² */
  readonly areal: Float64Array;
}

/** The grid of a mirror, not refined; lets the caller breathe between its two pieces. */
export async function gridFace(shape: MirrorShape, pointCount: number, control?: Control): Promise<PreparedFace> {
  const face = createFace(shape, pointCount);
  await control?.step(0);
  const weights = faceWeights(face);
  await control?.step(0);
  return { face, weights, mixed: [], blocks: [keyedPoints(face.points)] };
}

/**
 * Halves cells at shadow edges, level by level. Looks at equal charges, so that only the layout counts.
 *
 * @param masses [filaments] kg
 * @param depth halvings of a cell at most; without any, cells at shadow edges keep their wider errors
 * @returns the refined face, and the deposit of `masses` on its points, kg/m²
 */
export async function refineFor(
  grid: PreparedFace,
  job: Job,
  masses: Float64Array,
  depth = MAX_DEPTH,
): Promise<FaceMap> {
  const mixes = [masses, new Float64Array(masses.length).fill(1 / Math.max(1, masses.length))];
  const deposit = async (at: readonly KeyedPoints[], from: number, to: number): Promise<DepositResult> =>
    joinDeposits(await depositAtEach({ ...job, control: staged(job.control, from, to) }, at, mixes, FOR_REFINING));
  let { face } = grid;
  const blocks = [...grid.blocks];
  let known = await deposit(blocks, 0, depth > 0 ? GRID_SHARE : 1);
  let room = Math.floor((REFINED_SHARE * face.points.count) / NODES_PER_SPLIT);
  for (let level = 0; level < depth && room > 0; level++) {
    const split = cellsToRefine(face, known.sums[1]!, known.signature, room);
    if (split.length === 0) break;
    room -= split.length;
    const finer = refineFace(face, split);
    face = finer.face;
    blocks.push(keyedPoints(finer.added));
    const share = (l: number): number => GRID_SHARE + ((1 - GRID_SHARE) * l) / depth;
    known = joinDeposits([known, await deposit(blocks.slice(-1), share(level), share(level + 1))]);
  }
  const mixed = mixedCells(face.cells, known.signature);
  const prepared = face === grid.face ? { ...grid, mixed } : { face, weights: faceWeights(face), mixed, blocks };
  return { prepared, areal: known.sums[0]! };
}
