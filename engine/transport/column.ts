/** The influence columns of filaments: deposit at every point per kilogram that it evaporates. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { createPlainKernel, RUN, type DepositKernel } from './depositKernel.ts';
import { canBeHidden, hideInto, pointsBound, type Visibility } from './visibility.ts';

export interface Column {
  /** [points] 1/m²: kg/m² per kg evaporated */
  readonly deposit: Float64Array;
  /**
   * [points] which sub-sources are hidden, as a hash: two points with the same number see the same
   * sub-sources. Null where nothing can be hidden from this filament.
   */
  readonly signature: Uint32Array | null;
}

/** A number that stands for "sub-source j of this filament is hidden". */
function hiddenMark(source: FilamentSource, j: number): number {
  let mark = 0x811c9dc5 ^ Math.imul(j + 1, 0x9e3779b1);
  const words = new Uint32Array(
    Float64Array.of(source.position[3 * j]!, source.position[3 * j + 1]!, source.position[3 * j + 2]!).buffer,
  );
  for (const word of words) mark = Math.imul(mark ^ word ^ (mark >>> 15), 0x85ebca6b);
  return mark >>> 0;
}

/**
 * Computes the columns of filaments over all points, shadows included.
 *
 *     μ(x) = Σ_s w_s I_s(u) max(0, −u·n) / r² · V(s, x)
 *
 * Several at once share the points' way to the kernel; each column comes out the same as alone.
 *
 * @see Holland & Steckelmacher, Vacuum 2 (1952) 346, for the point-source form
 */
export function computeColumns(
  sources: readonly FilamentSource[],
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel,
): Column[] {
  const columns = sources.map((source): Column => {
    const signature = canBeHidden(visibility, source) ? new Uint32Array(points.count) : null;
    return { deposit: new Float64Array(points.count), signature };
  });
  const scratch = createScratch(points);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end);
    const target = pointsBound(points, begin, end);
    sources.forEach((source, f) => {
      const { deposit, signature } = columns[f]!;
      const run = deposit.subarray(begin, end);
      if (signature)
        addVisibleRun(run, signature.subarray(begin, end), {
          source,
          points,
          begin,
          end,
          target,
          visibility,
          kernel,
          scratch,
        });
      else addClearRun(run, source, kernel);
    });
  }
  return columns;
}

/** The column of one filament in plain TypeScript: for single points, and the reference. */
export function computeColumn(source: FilamentSource, points: OrientedPoints, visibility: Visibility): Column {
  return computeColumns([source], points, visibility, createPlainKernel())[0]!;
}

function addClearRun(run: Float64Array, source: FilamentSource, kernel: DepositKernel): void {
  kernel.clear();
  for (let j = 0; j < source.count; j++) kernel.add(source, j);
  kernel.readInto(run);
}

/** Room for one sub-source's deposits on a run. */
interface Scratch {
  readonly values: Float64Array;
  readonly hidden: Uint8Array;
}

function createScratch(points: OrientedPoints): Scratch {
  const length = Math.min(RUN, points.count);
  return { values: new Float64Array(length), hidden: new Uint8Array(length) };
}

/** A filament over one run of points. */
interface RunJob {
  readonly source: FilamentSource;
  readonly points: OrientedPoints;
  readonly begin: number;
  readonly end: number;
  /** bounding sphere of the run */
  readonly target: Float64Array;
  readonly visibility: Visibility;
  readonly kernel: DepositKernel;
  readonly scratch: Scratch;
}

/** Fills the scratch with the deposits of sub-source j that are not hidden. */
function seeFrom(j: number, { source, points, begin, end, target, visibility, kernel, scratch }: RunJob): void {
  kernel.clear();
  kernel.add(source, j);
  kernel.readInto(scratch.values);
  hideInto(scratch.values, scratch.hidden, visibility, points, begin, end, source, j, target);
}

function addVisibleRun(run: Float64Array, signature: Uint32Array, job: RunJob): void {
  const { values, hidden } = job.scratch;
  for (let j = 0; j < job.source.count; j++) {
    seeFrom(j, job);
    const mark = hiddenMark(job.source, j);
    for (let i = 0; i < run.length; i++) {
      run[i]! += values[i]!;
      if (hidden[i] === 1) signature[i]! ^= mark;
    }
  }
}

/** How steeply a filament's vapour arrives, per kilogram, to be summed like a column. */
export interface ArrivalMoments {
  /** [points] deposit × arrival angle from the normal, rad/m² */
  readonly angle: Float64Array;
  /** [points] deposit that arrives beyond 60° from the normal, 1/m² */
  readonly grazing: Float64Array;
}

/** Cosine beyond which arrival counts as grazing: 60° from the normal. */
const COS_GRAZING = 0.5;

/** Computes the deposit-weighted arrival angle and the grazing share of a filament, shadows included. */
export function computeArrival(
  source: FilamentSource,
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel = createPlainKernel(),
): ArrivalMoments {
  const moments = { angle: new Float64Array(points.count), grazing: new Float64Array(points.count) };
  const scratch = createScratch(points);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end);
    const target = pointsBound(points, begin, end);
    const job: RunJob = { source, points, begin, end, target, visibility, kernel, scratch };
    for (let j = 0; j < source.count; j++) {
      seeFrom(j, job);
      addMoments(moments, job, j);
    }
  }
  return moments;
}

/** Adds angle and grazing share of the deposits in the scratch. */
function addMoments(
  { angle, grazing }: ArrivalMoments,
  { source, points, begin, end, scratch }: RunJob,
  j: number,
): void {
  const { position: p, normal: n } = points;
  const s = source.position;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const value = scratch.values[i - begin]!;
    if (value === 0) continue;
    const dx = p[o]! - s[3 * j]!;
    const dy = p[o + 1]! - s[3 * j + 1]!;
    const dz = p[o + 2]! - s[3 * j + 2]!;
    const cosArrive = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!) / Math.sqrt(dx * dx + dy * dy + dz * dz);
    angle[i]! += value * Math.acos(Math.min(1, cosArrive));
    if (cosArrive < COS_GRAZING) grazing[i]! += value;
  }
}
